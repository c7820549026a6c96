"""The rows of an exported document about the service: own reminders and notes."""

from __future__ import annotations

from typing import Annotated, Any, Self

from pydantic import Field

from bot.work.reminders import own
from bot.work.transfer import fields as of
from bot.work.transfer.fields import Referenced, choice, text
from storage import tables


class ReminderRow(Referenced):
    """A planned reminder that a person wrote, or an open note."""

    KIND = "reminder"
    TABLE = tables.Reminder

    kind: Annotated[str, choice(own.OWN, own.NOTE)]
    words: Annotated[str, text(300)] = Field(alias="text")
    due_at: of.Moment
    days: Annotated[of.Whole, Field(le=0b1111111)] = 0
    team: bool = False

    @classmethod
    def of(cls, row: Any, names: Any, **more: Any) -> Self:
        """Copy a row of the table; its words and repetition are in its details."""
        said = {"words": row.details["text"], "days": row.details.get("days", 0)}
        return super().of(row, names, **said, team=row.person_id is None, **more)
