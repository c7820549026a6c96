"""What an edited message logged before, so that its new words can stand in the place of that."""

from __future__ import annotations

from dataclasses import dataclass

from sqlalchemy import or_

from bot.work.context import Context
from bot.work.log import undo
from storage.tables import Entry

EDITED = ":e"  # a key of an edit is that of the message, this sign, and the edit's own number


@dataclass(frozen=True, slots=True)
class Earlier:
    """The entries that a message and its edits so far have made: those that stand, and whether any do not."""

    standing: tuple[int, ...] = ()
    undone: bool = False
    other: bool = False

    @property
    def any(self) -> bool:
        """Whether the message logged anything at all."""
        return bool(self.standing) or self.undone or self.other


def logged_by(context: Context, key: str) -> Earlier:
    """Return what the message of this key has logged, edits of it included."""
    rows = context.book.all(
        Entry,
        or_(Entry.source == key, Entry.source.startswith(key + EDITED, autoescape=True)),
        Entry.undo_of.is_(None),
        Entry.by == context.person_id,
        order=Entry.id,
    )
    numbers = [row.id for row in rows]
    undone = {row.undo_of for row in context.book.all(Entry, Entry.undo_of.in_(numbers))}
    can = [row.id for row in rows if undo.is_undoable(row.what)]
    return Earlier(
        tuple(number for number in can if number not in undone), bool(undone), len(can) < len(rows)
    )


def take_back(context: Context, earlier: Earlier) -> None:
    """Take back all that stands; what is logged from now on stands in its place.

    Raises what undo raises: TooLateError after 24 hours, and the others.
    """
    for number in sorted(earlier.standing, reverse=True):
        undo.take_back(context, number)
    context.corrects = min(earlier.standing)
    context.entry = None


def has_logged(context: Context) -> bool:
    """Whether anything was logged since the earlier entries were taken back."""
    return context.entry is not None
