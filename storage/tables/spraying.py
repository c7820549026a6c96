"""Tables of sprayers and their weighings."""

from __future__ import annotations

from datetime import datetime
from fractions import Fraction

from sqlalchemy import ForeignKeyConstraint, Index, String, UniqueConstraint
from sqlalchemy.orm import Mapped, mapped_column

from storage.tables.base import InBar, Numbered


class Sprayer(Numbered):
    """One sprayer of the bar, by name; its output is in its runs."""

    __tablename__ = "sprayer"
    __table_args__ = (UniqueConstraint("bar_id", "match_key"),)

    name: Mapped[str] = mapped_column(String(80))
    match_key: Mapped[str] = mapped_column(String(120))
    made_at: Mapped[datetime]
    archived_at: Mapped[datetime | None]


class SprayerRun(Numbered):
    """One weighing of a sprayer: masses before and after a number of sprays of a mix of this density.

    An undone run stays, with the time of the undo.
    """

    __tablename__ = "sprayer_run"
    __table_args__ = (
        ForeignKeyConstraint(["bar_id", "sprayer_id"], ["sprayer.bar_id", "sprayer.id"]),
        ForeignKeyConstraint(["bar_id", "formula_id"], ["formula.bar_id", "formula.id"]),
        Index(None, "bar_id", "sprayer_id"),
    )

    sprayer_id: Mapped[int]
    formula_id: Mapped[int | None]  # the formula it held; None for water
    before_g: Mapped[Fraction]
    after_g: Mapped[Fraction]
    step_g: Mapped[Fraction]  # the scale's resolution
    sprays: Mapped[int]
    density_g_per_ml: Mapped[Fraction]
    priming: Mapped[bool]
    at: Mapped[datetime]
    by: Mapped[int]
    undone_at: Mapped[datetime | None]


class FormulaSprayer(InBar):
    """The sprayer used for a formula."""

    __tablename__ = "formula_sprayer"
    __table_args__ = (
        ForeignKeyConstraint(["bar_id", "formula_id"], ["formula.bar_id", "formula.id"]),
        ForeignKeyConstraint(["bar_id", "sprayer_id"], ["sprayer.bar_id", "sprayer.id"]),
    )

    formula_id: Mapped[int] = mapped_column(primary_key=True)
    sprayer_id: Mapped[int]
