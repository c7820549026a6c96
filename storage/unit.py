"""The unit of work, and the one place where queries are scoped to a bar."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any, TypeVar

from sqlalchemy import ColumnElement, Select, select
from sqlalchemy.dialects import postgresql, sqlite
from sqlalchemy.orm import Session

from storage.tables import Bar, Counter, InBar, Numbered

Row = TypeVar("Row", bound=InBar)


class Unit:
    """One transaction. Directory tables are reached by `session`, a bar's rows by `bar()`."""

    def __init__(self, session: Session) -> None:
        self.session = session

    def bar(self, bar_id: int) -> Book:
        """Return the rows of one bar, and of no other."""
        return Book(self.session, bar_id)


class Book:
    """All rows of one bar within one transaction: every query here is scoped by its id."""

    def __init__(self, session: Session, bar_id: int) -> None:
        self.session = session
        self.bar_id = bar_id

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
        row.bar_id = self.bar_id
        if isinstance(row, Numbered) and row.id is None:
            row.id = self.next_number(row.__tablename__)
        self.session.add(row)
        self.session.flush()
        return row

    def next_number(self, name: str) -> int:
        """Return the bar's next number of this name; the row lock also keeps one bar's writers in line."""
        insert: Any = sqlite.insert if self.session.get_bind().dialect.name == "sqlite" else postgresql.insert
        statement = (
            insert(Counter)
            .values(bar_id=self.bar_id, name=name, value=1)
            .on_conflict_do_update(index_elements=["bar_id", "name"], set_={"value": Counter.value + 1})
            .returning(Counter.value)
        )
        number: int = self.session.execute(statement).scalar_one()
        return number

    def touched(self) -> None:
        """Say that nouns or settings of the bar changed, so that what was remembered is read anew."""
        bar = self.session.get(Bar, self.bar_id)
        if bar is not None:
            bar.revision += 1
            self.session.flush()
