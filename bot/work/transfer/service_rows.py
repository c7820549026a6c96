"""The rows of an exported document about the service, peeled fruit and trials."""

from __future__ import annotations

from datetime import date
from fractions import Fraction
from typing import Annotated, Any, Self

from pydantic import Field, StringConstraints, model_validator

from bot.trade.trials.tasting import HIGHEST, LOWEST, Aspect
from bot.trade.trials.triangle import GLASSES
from bot.work.batches.bottles import KINDS, MOST_BOTTLES
from bot.work.formulas import formulas
from bot.work.fruit import peeled
from bot.work.menu.menu import MOST_LINES
from bot.work.reminders import own, planning
from bot.work.transfer.fields import (
    WHOEVER,
    Archived,
    Day,
    DrinkNamed,
    FormulaNamed,
    Fruit,
    Item,
    KnownFormulas,
    Moment,
    Money,
    Name,
    Number,
    Person,
    Positive,
    PositiveThousandths,
    Referenced,
    Row,
    Unit,
    Whole,
    choice,
    text,
    text_or_none,
    wrong,
)
from bot.work.trials.trial_life import MOST_VARIANTS
from bot.work.trials.trials import BASE, TrialKind, TrialState
from storage import tables
from storage.types import exact_text


class MenuLineRow(Row):
    """A preparation in a drink of the list, by sprays or by mL."""

    TABLE = tables.MenuLine

    formula_id: FormulaNamed = Field(alias="formula")
    sprays_low: Positive | None = None
    sprays_high: Positive | None = None
    ml: Positive | None = None


class MenuRow(Row):
    """A drink of the list."""

    TABLE = tables.MenuDrink

    name: Name
    glass_ml: Positive | None = None
    archived_at: Archived = Field(None, alias="archived")
    lines: list[MenuLineRow] = Field(min_length=1, max_length=MOST_LINES)


class BottlingRow(Row):
    """Bottles of a batch filled, opened, emptied, lost, moved or used at an event, and amounts."""

    TABLE = tables.Bottling

    what: Annotated[str, choice(*KINDS)]
    bottles: Annotated[Whole, Field(le=MOST_BOTTLES)] = 0
    size_ml: Positive | None = None
    lost_ml: Positive | None = None
    moved_ml: Positive | None = None
    cost_minor: Money | None = Field(None, alias="cost")
    note: Annotated[str, text(1000)] = ""
    at: Moment
    by: Person = WHOEVER


class EventRow(Row):
    """An event: what was asked, the mL of each formula taken and come back, and the batches made for it.

    `drawn` are the mL that it used of other batches.
    """

    TABLE = tables.Event

    number: Whole = 0
    day: Day
    guests: Whole
    each: Positive
    formulas: KnownFormulas = Field(default_factory=list)
    drinks: list[DrinkNamed] = Field(default_factory=list)
    back: dict[str, str] | None = None
    taken: dict[str, str] = Field(default_factory=dict)
    noted: Day | None = None
    batches: list[str] = Field(default_factory=list)
    drawn: dict[str, str] = Field(default_factory=dict)


class ReminderRow(Referenced):
    """A planned reminder that a person wrote, an open note, or a night without waste, named by its day."""

    KIND = "reminder"
    TABLE = tables.Reminder

    kind: Annotated[str, choice(own.OWN, own.NOTE, planning.CLOSE)]
    words: Annotated[str, text(300)] = Field(alias="text")
    due_at: Moment
    days: Annotated[Whole, Field(le=0b1111111)] = 0
    team: bool = False
    event: Whole = 0

    @classmethod
    def of(cls, row: Any, names: Any, **more: Any) -> Self:
        """Copy a row of the table; its words and repetition are in its details."""
        said = {"words": row.details.get("text") or row.details["day"], "days": row.details.get("days", 0)}
        said["event"] = names.event_of(row)
        team = row.person_id is None or row.kind == planning.CLOSE
        return super().of(row, names, **said, team=team, **more)

    @model_validator(mode="after")
    def _night_by_its_day(self) -> Self:
        if self.kind == planning.CLOSE:
            try:
                date.fromisoformat(self.words)
            except ValueError:
                raise wrong("day", "text") from None
        return self


class PeeledUseRow(Row):
    """A use of peeled fruit, and the waste, juicing or batch that it was for."""

    TABLE = tables.PeeledUse

    what: Annotated[str, choice(*peeled.CAUSES)]
    count_milli: PositiveThousandths = Field(alias="pieces")
    cause: Annotated[str | None, text_or_none(80)] = Field(None, alias="for")
    at: Moment
    by: Person = WHOEVER


class PeeledRow(Referenced):
    """Peeled fruit with its time limit, and its uses."""

    KIND = "peeled"
    TABLE = tables.PeeledFruit

    ingredient_id: Fruit = Field(alias="fruit")
    count_milli: PositiveThousandths = Field(alias="pieces")
    at: Moment
    lost_at: Moment
    uses: list[PeeledUseRow] = Field(default_factory=list)

    @model_validator(mode="after")
    def _no_more_than_can_be_peeled(self) -> Self:
        if self.count_milli > peeled.MOST * 1000:
            raise wrong("number", "pieces")
        if sum(one.count_milli for one in self.uses) > self.count_milli:
            raise wrong("number", "uses")
        return self


# -- trials --------------------------------------------------------------------------------


class VariantLineRow(Row):
    """One ingredient of a variant."""

    ingredient_id: Item = Field(alias="ingredient")
    amount: Positive
    unit: Unit


class VariantRow(Row):
    """A variant of a trial, with its letter."""

    TABLE = tables.TrialVariant

    number: Whole
    code: Annotated[str, StringConstraints(pattern="^[A-Z]$")] | None = None
    changed: Annotated[str, text(500)] = ""
    lines: list[VariantLineRow] = Field(min_length=1, max_length=formulas.MOST_LINES)

    def stored(self, **more: Any) -> Any:
        """Return the row of the table, which holds its lines as numbers and texts."""
        lines = [[one.ingredient_id, exact_text(one.amount), one.unit] for one in self.lines]
        return super().stored(lines=lines, **more)


class ScoreRow(Row):
    """One taster's scores of a variant, or the glass picked in a serving of a triangle test.

    `taster` numbers the tasters of the trial; the people themselves may not be in this bar.
    """

    TABLE = tables.TrialScore

    variant: Whole = BASE
    taster: Whole
    given: dict[str, Whole]
    at: Moment
    by: Annotated[str, text(128)] = ""


class TrialRow(Referenced):
    """A trial with its variants and scores."""

    KIND = "trial"
    TABLE = tables.Trial

    number: Whole
    formula_id: FormulaNamed = Field(alias="formula")
    version: Whole
    kind: Annotated[str, choice(*TrialKind)] = TrialKind.SCORES
    blind: bool = False
    total_ml: Number = Fraction(0)
    state: Annotated[str, choice(TrialState.OPEN, TrialState.CLOSED)]
    seed: Annotated[int, Field(ge=0, lt=2**63)]
    promoted: Whole | None = None
    known: bool = False
    at: Moment
    by: Person = WHOEVER
    variants: list[VariantRow] = Field(min_length=1, max_length=MOST_VARIANTS)
    scores: list[ScoreRow] = Field(default_factory=list)

    @model_validator(mode="after")
    def _of_its_own_variants(self) -> Self:
        numbers = {one.number for one in self.variants}
        codes = {one.code for one in self.variants}
        if BASE not in numbers or len(numbers) < len(self.variants):
            raise wrong("twice", "variants")
        if self.kind == TrialKind.SCORES and (None in codes or len(codes) < len(self.variants)):
            raise wrong("twice", "variants")
        if not {one.variant for one in self.scores} <= numbers:
            raise wrong("unknown", "scores")
        for at, one in enumerate(self.scores):
            if not _fits(self.kind, one.given):
                raise wrong("number", "scores", at, "given")
        return self


def _fits(kind: str, given: dict[str, int]) -> bool:
    if kind == TrialKind.TRIANGLE:
        return given.keys() == {"serving", "picked"} and given["picked"] < GLASSES
    return given.keys() <= {*Aspect} and all(LOWEST <= one <= HIGHEST for one in given.values())
