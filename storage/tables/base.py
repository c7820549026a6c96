"""Base classes of all tables."""

from __future__ import annotations

from datetime import date, datetime
from fractions import Fraction
from typing import Any, ClassVar

from sqlalchemy import JSON, BigInteger, ForeignKey, Integer, MetaData
from sqlalchemy.ext.compiler import compiles
from sqlalchemy.orm import DeclarativeBase, Mapped, mapped_column
from sqlalchemy.schema import CreateIndex

from storage.types import Day, Exact, Instant, JsonObject

# SQLite assigns row numbers only for a plain INTEGER key.
WideId = BigInteger().with_variant(Integer, "sqlite")


class Base(DeclarativeBase):
    """The base of all models; it names every constraint so that migrations can find them."""

    metadata = MetaData(
        naming_convention={
            "ix": "ix_%(table_name)s_%(column_0_N_name)s",
            "uq": "uq_%(table_name)s_%(column_0_N_name)s",
            "fk": "fk_%(table_name)s_%(column_0_N_name)s",
            "pk": "pk_%(table_name)s",
        }
    )
    type_annotation_map: ClassVar = {
        datetime: Instant,
        date: Day,
        Fraction: Exact,
        JsonObject: JSON,
        list[Any]: JSON,
        int: BigInteger,
    }


class InBar(Base):
    """A row that belongs to one bar."""

    __abstract__ = True

    bar_id: Mapped[int] = mapped_column(ForeignKey("bar.id"), primary_key=True, sort_order=-2)


class Numbered(InBar):
    """A row of one bar, numbered sequentially within that bar."""

    __abstract__ = True

    id: Mapped[int] = mapped_column(primary_key=True, autoincrement=False, sort_order=-1)


class Correctable(Numbered):
    """A row of one bar that is never edited: a later row replaces or undoes it.

    `first` is the number of the first row of its corrections, its own if it corrects none. Later rows keep
    the position of the first one.
    """

    __abstract__ = True

    corrects: Mapped[int | None] = mapped_column(index=True)
    first: Mapped[int]


@compiles(CreateIndex, "postgresql")
def _with_condition(create: CreateIndex, compiler: Any, **options: Any) -> str:
    """Give an index on PostgreSQL the condition that it has on SQLite.

    `postgresql_where` at the index would load the PostgreSQL dialect at every start.
    """
    created: str = compiler.visit_create_index(create, **options)
    given = create.element.dialect_options
    if given["sqlite"]["where"] is None or given["postgresql"]["where"] is not None:
        return created
    return f"{created} WHERE {compiler.sql_compiler.process(given['sqlite']['where'])}"
