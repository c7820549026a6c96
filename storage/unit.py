"""The unit of work, and the one place where queries are scoped to a bar."""

from __future__ import annotations

from collections.abc import Callable, Hashable, Sequence
from functools import cache
from typing import Any, TypeVar

from sqlalchemy import ColumnElement, Select, bindparam, select
from sqlalchemy.dialects import postgresql, sqlite
from sqlalchemy.orm import Session

from storage.memory import Memory
from storage.tables import Bar, Counter, InBar, Numbered

Row = TypeVar("Row", bound=InBar)
Thing = TypeVar("Thing")


class ReadOnlyError(RuntimeError):
    """A row was to be written by a unit that only reads: it would be lost without a word."""


class Unit:
    """One transaction. Directory tables are reached by `session`, a bar's rows by `bar()`.

    One that only reads (`writes` false) refuses new rows of a bar.
    """

    def __init__(self, session: Session, memory: Memory, writes: bool = True) -> None:
        self.session = session
        self.memory = memory
        self._writes = writes
        self._books: dict[int, Book] = {}

    def bar(self, bar_id: int) -> Book:
        """Return the rows of one bar, and of no other."""
        # One book for the whole transaction: it knows whether anything was changed in it.
        if bar_id not in self._books:
            self._books[bar_id] = Book(self.session, bar_id, self.memory, self._writes)
        return self._books[bar_id]


class Book:
    """All rows of one bar within one transaction: every query here is scoped by its id."""

    def __init__(self, session: Session, bar_id: int, memory: Memory, writes: bool = True) -> None:
        self.session = session
        self.bar_id = bar_id
        self._writes = writes
        self._memory = memory
        self._touched = False

    def remembered(self, revision: int, key: tuple[Hashable, ...], make: Callable[[], Thing]) -> Thing:
        """Return what was made under this key while the bar stood at this revision, or make it now.

        For plain values that depend on nothing but nouns and settings. Once this transaction
        has touched those, nothing is taken from memory or put there.
        """
        if self._touched:
            return make()
        return self._memory.get((self.bar_id, revision, *key), make)

    def select(self, table: type[Row]) -> Select[Row]:
        """Return a query over this bar's rows of `table`."""
        return select(table).where(table.bar_id == self.bar_id)

    def all(self, table: type[Row], *where: ColumnElement[bool], order: Any = None) -> Sequence[Row]:
        """Return this bar's rows of `table` that meet every condition."""
        query = self.select(table).where(*where)
        if order is not None:
            query = query.order_by(*order) if isinstance(order, tuple) else query.order_by(order)
        return self.session.scalars(query).all()

    def one(self, table: type[Row], *where: ColumnElement[bool], order: Any = None) -> Row | None:
        """Return the first such row, or None."""
        query = self.select(table).where(*where)
        if order is not None:
            query = query.order_by(*order) if isinstance(order, tuple) else query.order_by(order)
        return self.session.scalars(query.limit(1)).first()

    def get(self, table: type[Row], *key: int) -> Row | None:
        """Return the row with this key within the bar, or None."""
        return self.session.get(table, (self.bar_id, *key))

    def rows(
        self, table: type[InBar], *columns: Any, where: Sequence[ColumnElement[bool]] = ()
    ) -> Select[Any]:
        """Return a query for some columns, or sums of them, over this bar's rows of `table`."""
        return select(*columns).where(table.bar_id == self.bar_id, *where)

    def add(self, row: Row) -> Row:
        """Write a new row into this bar; a numbered row gets the bar's next number."""
        self.add_all([row])
        return row

    def add_all(self, rows: Sequence[Row]) -> None:
        """Write new rows of one table at once, numbered on in their order where the table is numbered.

        Raises ReadOnlyError in a unit that only reads.
        """
        if not self._writes:
            raise ReadOnlyError
        numbered: Sequence[Any] = rows
        unnumbered = [row for row in numbered if isinstance(row, Numbered) and row.id is None]
        if unnumbered:
            last = self.next_number(unnumbered[0].__tablename__, len(unnumbered))
            for number, one in enumerate(unnumbered, start=last - len(unnumbered) + 1):
                one.id = number
        for row in rows:
            row.bar_id = self.bar_id
        self.session.add_all(rows)
        self.session.flush()

    def next_number(self, name: str, count: int = 1) -> int:
        """Return the last of the bar's next `count` numbers of this name.

        The row lock also keeps one bar's writers in line.
        """
        numbers = {"of_bar": self.bar_id, "of_name": name, "how_many": count}
        number: int = self.session.execute(
            _numbering(self.session.get_bind().dialect.name), numbers
        ).scalar_one()
        return number

    def hold(self) -> None:
        """Keep other writers of this bar waiting until the transaction ends, so that none undoes another.

        On SQLite every writer already has the database to itself.
        """
        if self.session.get_bind().dialect.name == "sqlite":
            return
        # The weaker lock: rows that refer to the bar can still be written by whoever does not hold it.
        wait = select(Bar.id).where(Bar.id == self.bar_id).with_for_update(key_share=True)
        self.session.execute(wait)

    def touched(self) -> None:
        """Say that nouns or settings of the bar changed, so that what was remembered is read anew."""
        self._touched = True
        bar = self.session.get(Bar, self.bar_id)
        if bar is not None:
            # Counted by the database: two processes that both add one to what they read add only one.
            bar.revision = Bar.revision + 1
            self.session.flush()


@cache
def _numbering(dialect: str) -> Any:
    """Return the statement that gives numbers out, built once: every logged thing runs it."""
    insert: Any = sqlite.insert if dialect == "sqlite" else postgresql.insert
    counter: Any = Counter.__table__
    how_many: Any = bindparam("how_many")
    return (
        insert(counter)
        .values(bar_id=bindparam("of_bar"), name=bindparam("of_name"), value=how_many)
        .on_conflict_do_update(index_elements=["bar_id", "name"], set_={"value": counter.c.value + how_many})
        .returning(counter.c.value)
    )
