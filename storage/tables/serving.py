"""Tables of the service: the drink list and events."""

from __future__ import annotations

from datetime import date, datetime
from fractions import Fraction

from sqlalchemy import ForeignKeyConstraint, Index, String, UniqueConstraint
from sqlalchemy.orm import Mapped, mapped_column

from storage.tables.base import InBar, Numbered
from storage.types import JsonObject


class MenuDrink(Numbered):
    """A drink on the list, by name; its preparations are in its lines."""

    __tablename__ = "menu_drink"
    __table_args__ = (UniqueConstraint("bar_id", "match_key"),)

    name: Mapped[str] = mapped_column(String(80))
    match_key: Mapped[str] = mapped_column(String(120))
    glass_ml: Mapped[Fraction | None]  # the drink without what is sprayed on it
    made_at: Mapped[datetime]
    archived_at: Mapped[datetime | None]


class MenuLine(InBar):
    """A preparation in a drink of the list: by sprays, or by mL."""

    __tablename__ = "menu_line"
    __table_args__ = (
        ForeignKeyConstraint(["bar_id", "menu_id"], ["menu_drink.bar_id", "menu_drink.id"]),
        ForeignKeyConstraint(["bar_id", "formula_id"], ["formula.bar_id", "formula.id"]),
    )

    menu_id: Mapped[int] = mapped_column(primary_key=True)
    position: Mapped[int] = mapped_column(primary_key=True)
    formula_id: Mapped[int]
    sprays_low: Mapped[Fraction | None]
    sprays_high: Mapped[Fraction | None]
    ml: Mapped[Fraction | None]


class Event(Numbered):
    """An evening planned apart from the usual service.

    `plan` holds what was asked (guests, drinks each, formulas), the batches made for it, the mark of its
    reminders, and once something came back the mL taken and the day it was noted; `back` what came back,
    mL by formula number, None before that.
    """

    __tablename__ = "event"
    __table_args__ = (Index(None, "bar_id", "day"),)

    day: Mapped[date]
    plan: Mapped[JsonObject]
    back: Mapped[JsonObject | None]
    made_at: Mapped[datetime]
    by: Mapped[int]
    cancelled_at: Mapped[datetime | None]
