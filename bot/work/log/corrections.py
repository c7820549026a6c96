"""The entries of an edited message, so that its new text can replace them."""

from __future__ import annotations

from dataclasses import dataclass

from sqlalchemy import or_

from bot.work.context import Context
from bot.work.log import undo
from storage.tables import Entry

EDITED = ":e"  # the key of an edit is the message's key, this sign, and the number of the edit


@dataclass(frozen=True, slots=True)
class Earlier:
    """The entries of a message and its edits so far: those still valid, and whether any are not."""

    standing: tuple[int, ...] = ()
    undone: bool = False
    other: bool = False

    @property
    def any(self) -> bool:
        """Whether the message logged anything."""
        return bool(self.standing) or self.undone or self.other


def logged_by(context: Context, key: str) -> Earlier:
    """Return the entries logged by the message of this key, including its edits."""
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
    """Undo all valid entries; later entries replace them.

    Raises the errors of undo: TooLateError after 24 hours, and the others.
    """
    for number in sorted(earlier.standing, reverse=True):
        undo.take_back(context, number)
    context.corrects = min(earlier.standing)
    context.entry = None


def has_logged(context: Context) -> bool:
    """Whether anything was logged since the earlier entries were undone."""
    return context.entry is not None
