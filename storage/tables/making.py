"""Tables of production: ingredients, formulas with their versions, batches, trials."""

from __future__ import annotations

from datetime import date, datetime
from fractions import Fraction
from typing import Any

from sqlalchemy import ForeignKey, ForeignKeyConstraint, Index, String, Text, UniqueConstraint
from sqlalchemy.orm import Mapped, mapped_column

from storage.tables.base import Correctable, InBar, Numbered
from storage.types import JsonObject


class Ingredient(Numbered):
    """Anything a bar buys and uses, fruit included."""

    __tablename__ = "ingredient"
    __table_args__ = (UniqueConstraint("bar_id", "match_key"),)

    name: Mapped[str] = mapped_column(String(80))
    match_key: Mapped[str] = mapped_column(String(120))
    kind: Mapped[str] = mapped_column(String(24))
    strength_percent: Mapped[Fraction | None]
    density_g_per_ml: Mapped[Fraction | None]
    density_source: Mapped[str | None] = mapped_column(String(200))
    grams_each: Mapped[Fraction | None]
    food_grade: Mapped[str | None] = mapped_column(String(16))
    details: Mapped[JsonObject] = mapped_column(default=dict)
    made_at: Mapped[datetime]
    archived_at: Mapped[datetime | None]


class OtherName(Numbered):
    """Another name of an ingredient in a bar, as a person confirmed it."""

    __tablename__ = "other_name"
    __table_args__ = (
        UniqueConstraint("bar_id", "kind", "match_key"),
        ForeignKeyConstraint(["bar_id", "ingredient_id"], ["ingredient.bar_id", "ingredient.id"]),
        Index(None, "bar_id", "ingredient_id"),
    )

    kind: Mapped[str] = mapped_column(String(12))
    name: Mapped[str] = mapped_column(String(80))
    match_key: Mapped[str] = mapped_column(String(120))
    ingredient_id: Mapped[int]
    at: Mapped[datetime]
    by: Mapped[int]


class Formula(Numbered):
    """A preparation by name; its contents are in its versions."""

    __tablename__ = "formula"
    __table_args__ = (UniqueConstraint("bar_id", "match_key"),)

    name: Mapped[str] = mapped_column(String(80))
    match_key: Mapped[str] = mapped_column(String(120))
    preparation: Mapped[str] = mapped_column(String(24))
    latest: Mapped[int]
    made_at: Mapped[datetime]
    archived_at: Mapped[datetime | None]


class FormulaVersion(InBar):
    """A formula's content from a given time on. Never changed once written."""

    __tablename__ = "formula_version"
    __table_args__ = (ForeignKeyConstraint(["bar_id", "formula_id"], ["formula.bar_id", "formula.id"]),)

    formula_id: Mapped[int] = mapped_column(primary_key=True)
    number: Mapped[int] = mapped_column(primary_key=True)
    rest_hours: Mapped[Fraction]
    discard_days: Mapped[int]
    sprays_low: Mapped[Fraction | None]
    sprays_high: Mapped[Fraction | None]
    spray_ml_low: Mapped[Fraction | None]
    spray_ml_high: Mapped[Fraction | None]
    garnish_id: Mapped[int | None]  # the fruit whose fresh garnish this replaces
    note: Mapped[str] = mapped_column(Text, default="")
    made_at: Mapped[datetime]
    made_by: Mapped[int]


class FormulaLine(InBar):
    """One ingredient of a formula version, in the unit entered."""

    __tablename__ = "formula_line"
    __table_args__ = (
        ForeignKeyConstraint(
            ["bar_id", "formula_id", "number"],
            ["formula_version.bar_id", "formula_version.formula_id", "formula_version.number"],
        ),
        ForeignKeyConstraint(["bar_id", "ingredient_id"], ["ingredient.bar_id", "ingredient.id"]),
    )

    formula_id: Mapped[int] = mapped_column(primary_key=True)
    number: Mapped[int] = mapped_column(primary_key=True)
    position: Mapped[int] = mapped_column(primary_key=True)
    ingredient_id: Mapped[int]
    amount: Mapped[Fraction]
    unit: Mapped[str] = mapped_column(String(40))


class Batch(Numbered):
    """One batch of a formula, with a frozen copy of everything used."""

    __tablename__ = "batch"
    __table_args__ = (
        ForeignKeyConstraint(["bar_id", "formula_id"], ["formula.bar_id", "formula.id"]),
        Index(None, "bar_id", "state"),
        Index(None, "bar_id", "formula_id"),
    )

    formula_id: Mapped[int]
    version: Mapped[int]
    state: Mapped[str] = mapped_column(String(12))
    total_ml: Mapped[Fraction]
    made_at: Mapped[datetime]
    made_by: Mapped[int]
    rest_until: Mapped[datetime]
    discard_on: Mapped[date]
    opened_at: Mapped[datetime | None]
    ended_at: Mapped[datetime | None]
    lost_ml: Mapped[Fraction | None]
    lost_reason: Mapped[str | None] = mapped_column(String(80))
    clarity: Mapped[str | None] = mapped_column(String(12))
    frozen: Mapped[JsonObject]
    # The bar that made it, and its number there; None for a batch made here.
    came_from: Mapped[str | None] = mapped_column(String(80))
    number_there: Mapped[int | None]


class BatchLine(InBar):
    """One ingredient used in a batch, with its lot if noted."""

    __tablename__ = "batch_line"
    __table_args__ = (
        ForeignKeyConstraint(["bar_id", "batch_id"], ["batch.bar_id", "batch.id"]),
        ForeignKeyConstraint(["bar_id", "ingredient_id"], ["ingredient.bar_id", "ingredient.id"]),
        Index(None, "bar_id", "ingredient_id", "lot"),
    )

    batch_id: Mapped[int] = mapped_column(primary_key=True)
    position: Mapped[int] = mapped_column(primary_key=True)
    ingredient_id: Mapped[int]
    amount: Mapped[Fraction]
    unit: Mapped[str] = mapped_column(String(40))
    lot: Mapped[str | None] = mapped_column(String(60))
    best_before: Mapped[date | None]  # as printed on the lot


class BatchEvent(Correctable):
    """An event of a batch: made, arrived, checked, added to, filtered, opened, moved, used up, discarded.

    'undo' undoes another one. `temperature_c` is that of a checked bottle, None for the room's. `mix_before`
    is what was in the batch before something was added, as in its frozen copy.
    """

    __tablename__ = "batch_event"
    __table_args__ = (
        ForeignKeyConstraint(["bar_id", "batch_id"], ["batch.bar_id", "batch.id"]),
        Index(None, "bar_id", "batch_id"),
    )

    batch_id: Mapped[int]
    what: Mapped[str] = mapped_column(String(16))
    clarity: Mapped[str | None] = mapped_column(String(12))
    note: Mapped[str] = mapped_column(Text, default="")
    photo: Mapped[str | None] = mapped_column(Text)  # the channel's own file ids, with spaces between
    temperature_c: Mapped[Fraction | None]
    mix_before: Mapped[list[Any] | None]
    at: Mapped[datetime]
    by: Mapped[int]


class Bottling(Correctable):
    """Bottles of a batch, and what was lost of it. A void row undoes the row it points to.

    `what` is 'bottled', 'opened', 'emptied', 'lost' (spilt, evaporated, broken), 'moved' to another bar or
    used 'at event'. `bottles` of `size_ml` each; `lost_ml` is the loss on top of them, `moved_ml` what moved
    without bottles, or all that an event used: what is left of its last bottle counts as not bottled.
    """

    __tablename__ = "bottling"
    __table_args__ = (
        ForeignKeyConstraint(["bar_id", "batch_id"], ["batch.bar_id", "batch.id"]),
        Index(None, "bar_id", "batch_id"),
    )

    batch_id: Mapped[int]
    what: Mapped[str] = mapped_column(String(12))
    bottles: Mapped[int] = mapped_column(default=0)
    size_ml: Mapped[Fraction | None]
    lost_ml: Mapped[Fraction | None]
    moved_ml: Mapped[Fraction | None]
    cost_minor: Mapped[int | None]  # of what was lost or moved, at the prices kept with the batch
    note: Mapped[str] = mapped_column(Text, default="")
    at: Mapped[datetime]
    by: Mapped[int]
    void: Mapped[bool] = mapped_column(default=False)


class Trial(Numbered):
    """Variants of one formula version, tasted side by side; or a triangle test of it against fresh fruit."""

    __tablename__ = "trial"
    __table_args__ = (
        ForeignKeyConstraint(
            ["bar_id", "formula_id", "version"],
            ["formula_version.bar_id", "formula_version.formula_id", "formula_version.number"],
        ),
        Index(None, "bar_id", "state"),
    )

    formula_id: Mapped[int]
    version: Mapped[int]
    blind: Mapped[bool]
    total_ml: Mapped[Fraction]  # amount made of each
    state: Mapped[str] = mapped_column(String(12))
    seed: Mapped[int]  # makes the order of the codes unpredictable
    promoted: Mapped[int | None]  # the variant that became the next version
    at: Mapped[datetime]
    by: Mapped[int]
    kind: Mapped[str] = mapped_column(String(12), default="scores")  # or 'triangle'
    known: Mapped[bool] = mapped_column(default=False)  # somebody saw its key in the bar it came from


class TrialVariant(InBar):
    """One variant of a trial: its lines as [ingredient number, amount, unit], and its code once tasted."""

    __tablename__ = "trial_variant"
    __table_args__ = (
        ForeignKeyConstraint(["bar_id", "trial_id"], ["trial.bar_id", "trial.id"]),
        ForeignKeyConstraint(["bar_id", "batch_id"], ["batch.bar_id", "batch.id"]),
        UniqueConstraint("bar_id", "trial_id", "code"),
    )

    trial_id: Mapped[int] = mapped_column(primary_key=True)
    number: Mapped[int] = mapped_column(primary_key=True)
    code: Mapped[str | None] = mapped_column(String(4))
    changed: Mapped[str] = mapped_column(Text)
    lines: Mapped[list[Any]]
    batch_id: Mapped[int | None]
    void: Mapped[bool] = mapped_column(default=False)


class TrialScore(Correctable):
    """One member's scores of one variant, 1 to 5. A void row undoes the row it points to.

    `taster` is 0 for the person; a number tells apart the tasters that the person imported from another bar.
    In a triangle test `given` holds the number of the serving and the place of the glass that was picked.
    """

    __tablename__ = "trial_score"
    __table_args__ = (
        ForeignKeyConstraint(
            ["bar_id", "trial_id", "variant"],
            ["trial_variant.bar_id", "trial_variant.trial_id", "trial_variant.number"],
        ),
        Index(None, "bar_id", "trial_id"),
    )

    trial_id: Mapped[int]
    variant: Mapped[int]
    person_id: Mapped[int] = mapped_column(ForeignKey("person.id"))
    taster: Mapped[int] = mapped_column(default=0)
    given: Mapped[JsonObject]  # aspect: score
    at: Mapped[datetime]
    void: Mapped[bool] = mapped_column(default=False)
