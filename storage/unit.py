"""The unit of work, and the only place where queries are scoped to a bar."""

from __future__ import annotations

from collections.abc import Callable, Hashable, Iterator, Sequence
from contextlib import contextmanager
from functools import cache, cached_property
from importlib import import_module
from typing import Any, TypeVar

from sqlalchemy import ColumnElement, Connection, Insert, Select, bindparam, insert, select
from sqlalchemy import Row as RowOfColumns
from sqlalchemy.orm import Session

from storage.memory import BarMemory
from storage.tables import Bar, Correctable, Counter, InBar, Numbered

Row = TypeVar("Row", bound=InBar)
Thing = TypeVar("Thing")


class ReadOnlyError(RuntimeError):
    """A write in a read-only unit, where it would be lost silently."""


class Unit:
    """One transaction. Use `session` for directory tables and `bar()` for a bar's rows.

    `connection` runs statements that need no ORM objects, at a third of the cost of the session. A read-only
    unit (`writes` false) refuses new rows of a bar.
    """

    def __init__(self, connection: Connection, memory: BarMemory, writes: bool = True) -> None:
        self.connection = connection
        self.memory = memory
        self.writes = writes
        self._books: dict[int, Book] = {}

    @cached_property
    def session(self) -> Session:
        """The ORM session of this transaction, created on first use."""
        # The connection owns the transaction; a session only takes part in it.
        return Session(
            self.connection,
            autoflush=False,
            expire_on_commit=False,
            join_transaction_mode="rollback_only",
        )

    def flush(self) -> None:
        """Flush changed ORM objects."""
        if "session" in self.__dict__:
            self.session.flush()

    def close(self) -> None:
        """Close the session."""
        if "session" in self.__dict__:
            self.session.close()

    @contextmanager
    def attempt(self) -> Iterator[None]:
        """Keep all changes of the block, or none if an exception leaves it."""
        self.flush()
        before = {book: book.is_touched for book in self._books.values()}
        try:
            with self.connection.begin_nested():
                yield
                self.flush()
        except BaseException:
            # ORM objects still have the values that were just rolled back.
            if "session" in self.__dict__:
                self.session.expunge_all()
            for book in self._books.values():
                book.is_touched = before.get(book, False)
            raise

    def bar(self, bar_id: int) -> Book:
        """Return the rows of one bar, and of no other."""
        # One book per transaction: it records whether anything changed.
        if bar_id not in self._books:
            self._books[bar_id] = Book(self, bar_id)
        return self._books[bar_id]


class Book:
    """All rows of one bar within one transaction; every query here is scoped by the bar's id."""

    def __init__(self, unit: Unit, bar_id: int) -> None:
        self.bar_id = bar_id
        self._unit = unit
        self.is_touched = False

    @property
    def session(self) -> Session:
        """The ORM session of the transaction."""
        return self._unit.session

    def remembered(self, revision: int, key: tuple[Hashable, ...], make: Callable[[], Thing]) -> Thing:
        """Return the cached value of the key at this revision of the bar, computing it on a miss.

        For plain values that depend only on nouns, settings and checks of batches. Once this transaction has
        changed those, it bypasses the cache.
        """
        if self.is_touched:
            return make()
        return self._unit.memory.get(self.bar_id, revision, key, make)

    def beside(self, bar_id: int) -> Book:
        """Return the rows of another bar in the same transaction. `other_bars.at` checks the right to it."""
        return self._unit.bar(bar_id)

    def select(self, table: type[Row]) -> Select[Row]:
        """Return a query over this bar's rows of `table`."""
        return select(table).where(table.bar_id == self.bar_id)

    def all(self, table: type[Row], *where: ColumnElement[bool], order: Any = None) -> Sequence[Row]:
        """Return this bar's rows of `table` that satisfy every condition, by number or in `order`."""
        return self.session.scalars(self._ordered(table, where, order)).all()

    def one(self, table: type[Row], *where: ColumnElement[bool], order: Any = None) -> Row | None:
        """Return the first such row, or None."""
        return self.session.scalars(self._ordered(table, where, order).limit(1)).first()

    def _ordered(self, table: type[Row], where: Sequence[ColumnElement[bool]], order: Any) -> Select[Row]:
        # Without an order PostgreSQL returns a changed row last, so an answer would tell what was changed.
        if order is None:
            order = tuple(table.__table__.primary_key)
        return self.select(table).where(*where).order_by(*(order if isinstance(order, tuple) else (order,)))

    def get(self, table: type[Row], *key: int) -> Row | None:
        """Return the row with this key within the bar, or None."""
        return self.session.get(table, (self.bar_id, *key))

    def rows(
        self, table: type[InBar], *columns: Any, where: Sequence[ColumnElement[bool]] = ()
    ) -> Select[Any]:
        """Return a query for some columns of this bar's rows of `table`, or their sums."""
        return select(*columns).where(table.bar_id == self.bar_id, *where)

    def add(self, row: Row) -> Row:
        """Add a new row to this bar; a numbered row gets the bar's next number."""
        self.add_all([row])
        return row

    def add_all(self, rows: Sequence[Row]) -> None:
        """Add new rows of one table at once; numbered tables number them in order.

        Raises ReadOnlyError in a read-only unit.
        """
        self._refuse_reader()
        numbered: Sequence[Any] = rows
        unnumbered = [row for row in numbered if isinstance(row, Numbered) and row.id is None]
        if unnumbered:
            last = self.next_number(unnumbered[0].__tablename__, len(unnumbered))
            for number, one in enumerate(unnumbered, start=last - len(unnumbered) + 1):
                one.id = number
        for row in numbered:
            row.bar_id = self.bar_id
            if isinstance(row, Correctable) and row.first is None:
                row.first = row.id
        self.session.add_all(rows)
        self.session.flush()

    def write(self, table: type[Numbered], rows: Sequence[dict[str, Any]]) -> list[int]:
        """Add rows given as plain values with the same columns; return the numbers of the new rows.

        For rows written with every message: it costs a third of ORM objects.
        """
        self._refuse_reader()
        self._unit.flush()
        last = self.next_number(table.__tablename__, len(rows))
        numbers = list(range(last - len(rows) + 1, last + 1))
        filled = [
            {"bar_id": self.bar_id, "id": number, **row} for number, row in zip(numbers, rows, strict=True)
        ]
        if issubclass(table, Correctable):
            filled = [{**row, "first": row.get("first") or row["id"]} for row in filled]
        self._unit.connection.execute(_insertion(table), filled if len(filled) > 1 else filled[0])
        return numbers

    def value(self, statement: Select[Any], **values: Any) -> Any:
        """Return the first column of the only row of a statement built by `of_bar`."""
        return self._unit.connection.scalar(statement, {"of_bar": self.bar_id, **values})

    def found(self, statement: Select[Any], **values: Any) -> Sequence[RowOfColumns[Any]]:
        """Return all rows of a statement built by `of_bar`."""
        return self._unit.connection.execute(statement, {"of_bar": self.bar_id, **values}).all()

    def _refuse_reader(self) -> None:
        if not self._unit.writes:
            raise ReadOnlyError

    def next_number(self, name: str, count: int = 1) -> int:
        """Reserve the bar's next `count` numbers of this name and return the last.

        The row lock also serialises a bar's writers.
        """
        numbers = {"of_bar": self.bar_id, "of_name": name, "how_many": count}
        connection = self._unit.connection
        number: int = connection.execute(_numbering(connection.dialect.name), numbers).scalar_one()
        return number

    def hold(self) -> None:
        """Lock the bar until the transaction ends, so that writers do not undo one another.

        On SQLite every writer already has exclusive access.
        """
        if self._unit.connection.dialect.name == "sqlite":
            return
        # The weaker lock: other transactions can still write rows that refer to the bar.
        wait = select(Bar.id).where(Bar.id == self.bar_id).with_for_update(key_share=True)
        self._unit.connection.execute(wait)

    def made(self) -> None:
        """Mark the bar as new, so that nothing about it is cached before the commit."""
        self.is_touched = True

    def touched(self) -> None:
        """Record a change of nouns, settings or checks of batches, which invalidates the cache."""
        self.is_touched = True
        bar = self.session.get(Bar, self.bar_id)
        if bar is not None:
            # Incremented by the database: two processes that each add one to a value they read would add only
            # one.
            bar.revision = Bar.revision + 1
            self.session.flush()


def insertion(is_sqlite: bool) -> Any:
    """Return the dialect's insert, which knows ON CONFLICT. Loads only the dialect in use."""
    return import_module(f"sqlalchemy.dialects.{'sqlite' if is_sqlite else 'postgresql'}").insert


@cache
def _numbering(dialect: str) -> Any:
    """Return the statement that assigns numbers, built once because every log entry runs it."""
    counter: Any = Counter.__table__
    how_many: Any = bindparam("how_many")
    return (
        insertion(dialect == "sqlite")(counter)
        .values(bar_id=bindparam("of_bar"), name=bindparam("of_name"), value=how_many)
        .on_conflict_do_update(index_elements=["bar_id", "name"], set_={"value": counter.c.value + how_many})
        .returning(counter.c.value)
    )


@cache
def _insertion(table: type[Numbered]) -> Insert:
    """Return the insert statement of a table, built once."""
    columns: Any = table.__table__
    return insert(columns)


def of_bar(table: type[InBar], *columns: Any) -> Select[Any]:
    """Return a query for some columns of a bar's rows, to be built once and executed by a book."""
    return select(*columns).where(table.bar_id == bindparam("of_bar"))
