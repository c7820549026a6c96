"""The rows of an exported document about the service: own reminders and notes."""

from __future__ import annotations

from typing import Annotated, Any, Self

from pydantic import Field

from bot.work.batches.bottles import BOTTLED, EMPTIED, LOST, MOST_BOTTLES, MOVED, OPENED
from bot.work.menu.menu import MOST_LINES
from bot.work.reminders import own
from bot.work.transfer.fields import (
    WHOEVER,
    Archived,
    Day,
    DrinkNamed,
    FormulaNamed,
    KnownFormulas,
    Moment,
    Money,
    Name,
    Person,
    Positive,
    Referenced,
    Row,
    Whole,
    choice,
    text,
)
from storage import tables


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
    """Bottles of a batch filled, opened, emptied, lost or moved, and what was lost beside them."""

    TABLE = tables.Bottling

    what: Annotated[str, choice(BOTTLED, OPENED, EMPTIED, LOST, MOVED)]
    bottles: Annotated[Whole, Field(le=MOST_BOTTLES)] = 0
    size_ml: Positive | None = None
    lost_ml: Positive | None = None
    cost_minor: Money | None = Field(None, alias="cost")
    note: Annotated[str, text(1000)] = ""
    at: Moment
    by: Person = WHOEVER


class EventRow(Row):
    """An event: what was asked, and the mL of each formula that came back."""

    TABLE = tables.Event

    day: Day
    guests: Whole
    each: Positive
    formulas: KnownFormulas = Field(default_factory=list)
    drinks: list[DrinkNamed] = Field(default_factory=list)
    back: dict[str, str] | None = None


class ReminderRow(Referenced):
    """A planned reminder that a person wrote, or an open note."""

    KIND = "reminder"
    TABLE = tables.Reminder

    kind: Annotated[str, choice(own.OWN, own.NOTE)]
    words: Annotated[str, text(300)] = Field(alias="text")
    due_at: Moment
    days: Annotated[Whole, Field(le=0b1111111)] = 0
    team: bool = False

    @classmethod
    def of(cls, row: Any, names: Any, **more: Any) -> Self:
        """Copy a row of the table; its words and repetition are in its details."""
        said = {"words": row.details["text"], "days": row.details.get("days", 0)}
        return super().of(row, names, **said, team=row.person_id is None, **more)
