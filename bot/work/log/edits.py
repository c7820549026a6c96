"""Edits: the entries of a message before an edit, and their replacement by those of the new text."""

from __future__ import annotations

import hashlib
from collections.abc import Sequence
from dataclasses import dataclass

from sqlalchemy import func, or_

from bot.work.context import Context, Replaced
from bot.work.log import chain
from bot.work.log.chain import State
from bot.work.log.kinds import KINDS
from storage.tables import Entry

EDITED = ":e"  # between the key of the message and the number of the edit, in the key of an edit
_NAMINGS = frozenset({"other name", "new ingredient"})


@dataclass(frozen=True, slots=True)
class Earlier:
    """The chains begun by a message and its edits so far.

    `undone` is one of the undone chains; `other` tells whether there are entries that cannot be undone.
    """

    standing: tuple[State, ...] = ()
    undone: State | None = None
    other: bool = False

    @property
    def any(self) -> bool:
        """Whether the message logged anything at all."""
        return bool(self.standing) or self.undone is not None or self.other


@dataclass(frozen=True, slots=True)
class Corrected:
    """A chain before the edit, None for a new one, and after it."""

    before: State | None
    after: State


def logged_by(context: Context, key: str) -> Earlier:
    """Return the chains of the message with this key, its edits included."""
    rows = context.book.all(
        Entry,
        or_(Entry.source == key, Entry.source.startswith(key + EDITED, autoescape=True)),
        Entry.chain.is_(None),
        Entry.by == context.person_id,
        order=Entry.id,
    )
    found = list(chain.states(context, [row.id for row in rows]).values())
    can = [one for one in found if one.what in KINDS]
    undone = next((one for one in reversed(can) if not one.stands), None)
    return Earlier(tuple(one for one in can if one.stands), undone, len(can) < len(found))


def of_entries(context: Context, numbers: Sequence[int]) -> Earlier | None:
    """Return the chains of entries, as if their message were edited; None if one of them does not stand."""
    if any(context.book.get(Entry, number) is None for number in numbers):
        return None
    found = [chain.state(context, number) for number in numbers]
    return Earlier(tuple(found)) if all(one.stands and one.what in KINDS for one in found) else None


def marks_of(lines: Sequence[str]) -> list[str]:
    """Return a mark for each line of a message; an edit finds the unchanged lines by their marks."""
    plain = [" ".join(line.casefold().split()) for line in lines]
    numbered = [f"{plain[:place].count(line)} {line}" for place, line in enumerate(plain)]
    return [hashlib.blake2b(line.encode(), digest_size=6).hexdigest() for line in numbered]


class Edit:
    """One edit of a message, within one transaction. Raises the errors of `undo` on creation."""

    def __init__(self, context: Context, earlier: Earlier, marks: Sequence[str]) -> None:
        self._context = context
        kept = [one for one in earlier.standing if one.details.get("said") in marks]
        context.replaced = Replaced(kept=frozenset(one.details["said"] for one in kept))
        replaced = [one for one in earlier.standing if one not in kept]
        self._replaced = [(one, chain.take_back(context, one)) for one in reversed(replaced)][::-1]
        self._since = context.book.session.scalar(context.book.rows(Entry, func.max(Entry.id))) or 0
        # The new entries count from the time of the message.
        context.edited_at = context.now
        context.now = min((one.root.at for one in earlier.standing), default=context.now)
        context.entry = None

    @property
    def keeps(self) -> bool:
        """Whether a line with entries is unchanged."""
        return bool(self._context.replaced and self._context.replaced.kept)

    def finish(self) -> list[Corrected]:
        """Continue the old chains with the new entries; a chain without a new entry is undone.

        Returns nothing if the new text logs nothing.
        """
        context = self._context
        new = self._logged()
        if not new and not self.keeps:
            return []
        pairs = _pairs([one for one, _left in self._replaced], new)
        found = []
        for before, entry in pairs:
            if before is not None:
                entry.chain, entry.follows = before.root.id, before.last.id
                if "photo" in before.details and entry.what == before.what:
                    entry.details = {"photo": before.details["photo"], **entry.details}
            found.append((before, entry.id))
        context.book.session.flush()
        continued = [before.root.id for before, _entry in pairs if before is not None]
        for one, left in self._replaced:
            if one.root.id not in continued:
                found.append((one, context.log(chain.UNDO, one.last, undone=one.what, left=left)))
        if new:
            context.entry = new[-1].id
        return [Corrected(before, chain.state(context, number)) for before, number in found]

    def _logged(self) -> list[Entry]:
        new = Entry.id > self._since, Entry.source == self._context.source[:80], Entry.chain.is_(None)
        return list(self._context.book.all(Entry, *new, order=Entry.id))


def _pairs(before: list[State], new: list[Entry]) -> list[tuple[State | None, Entry]]:
    """Return each new entry with the chain it continues: of the same thing, of the same kind, or any.

    What a new name means is no other version of something else.
    """
    rest = list(before)
    found: dict[int, State] = {}
    for same in (_same_thing, _same_kind, lambda one, entry: entry.what not in _NAMINGS):
        for entry in new:
            match = next((one for one in rest if same(one, entry)), None)
            if entry.id not in found and match is not None:
                found[entry.id] = match
                rest.remove(match)
    return [(found.get(entry.id), entry) for entry in new]


def _same_kind(one: State, entry: Entry) -> bool:
    return one.what == entry.what


def _same_thing(one: State, entry: Entry) -> bool:
    names = ("ingredient", "formula", "name", "trial")
    return one.what == entry.what and any(
        name in entry.details and one.details.get(name) == entry.details[name] for name in names
    )
