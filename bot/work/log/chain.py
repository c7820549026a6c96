"""The chain of corrections of each entry, and its one head.

An entry that logs something begins a chain. A reason added later, an edit of the message, an undo and a
restore are later entries of the same chain. The last entry is the head and holds the current state. Every
operation acts on the head, whichever entry of the chain it is given.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import datetime, timedelta

from sqlalchemy import or_

from bot.work import standing
from bot.work.context import Context
from bot.work.errors import (
    AlreadyThereAgainError,
    AlreadyUndoneError,
    BadValueError,
    CannotPutBackError,
    ChangedSinceError,
    NothingToUndoError,
    NotThereError,
    NotYoursError,
    OffTheLogError,
    TooLateError,
    WorkError,
)
from bot.work.fruit import waste
from bot.work.fruit.waste import WasteView
from bot.work.log.kinds import KINDS, Kind
from bot.work.standing import Details
from storage.tables import Entry, Member, Waste

UNDO, PUT_BACK = standing.UNDO, standing.PUT_BACK
UNDO_HOURS = 24
_MANY_ROWS = 300
_AT_ONCE = 20  # chains looked at together
REASON = "waste reason"


@dataclass(frozen=True, slots=True)
class State:
    """The current state of a chain: its first and last entry, with the kind and details of what is logged.

    `stands` is false after an undo; kind and details are then those of the undone entry.
    """

    root: Entry
    last: Entry
    what: str
    details: Details
    stands: bool

    @property
    def kind(self) -> Kind:
        """How to undo and restore it. Raises NotThereError if that is impossible."""
        if self.what not in KINDS:
            raise NotThereError("log entry", str(self.last.id))
        return KINDS[self.what]


@dataclass(frozen=True, slots=True)
class Change:
    """The result of an operation: its entry, and the chain before and after it."""

    entry: int
    before: State
    after: State


# -- reading -------------------------------------------------------------------------------


def state(context: Context, number: int) -> State:
    """Return the chain of an entry. Raises NotThereError."""
    entry = context.book.get(Entry, number)
    if entry is None:
        raise NotThereError("log entry", str(number))
    root = entry.chain or entry.id
    return states(context, [root])[root]


def states(context: Context, roots: Sequence[int]) -> dict[int, State]:
    """Return the chains that begin with these entries, by number."""
    entries: dict[int, list[Entry]] = {number: [] for number in roots}
    where = or_(Entry.id.in_(roots), Entry.chain.in_(roots))
    for entry in context.book.all(Entry, where, order=Entry.id):
        entries[entry.chain or entry.id].append(entry)
    return {number: _state(found) for number, found in entries.items() if found}


def _state(entries: list[Entry]) -> State:
    root, last = entries[0], entries[-1]
    said = next((one for one in reversed(entries) if one.what != UNDO), root)
    what, details = said.what, said.details
    if what == PUT_BACK:
        what = details["kind"]
    elif what == REASON and said is not root:
        what = "waste"
    if last.what == UNDO:
        details = {**details, **last.details.get("left", {})}
    return State(root, last, what, details, last.what != UNDO)


def of_row(context: Context, row: Waste) -> State | None:
    """Return the chain of a line of waste, or None for an imported line."""
    first = context.book.get(Waste, row.first)
    if first is None:
        return None
    logged = Entry.source == first.source[:80], Entry.what == "waste"
    for entry in context.book.all(Entry, *logged):
        if first.id in entry.details["rows"]:
            return state(context, entry.id)
    return None


def may_change(context: Context, found: State) -> bool:
    """Whether this person can undo the chain now."""
    mine = found.root.by == context.person_id or context.role.manages
    if not (found.stands and found.what in KINDS and mine) or _is_late(context, found.root.at):
        return False
    try:
        _refuse_changed_later(context, found)
        found.kind.check(context, found.details)
    except WorkError:
        return False
    return True


def can_put_back(context: Context, found: State) -> bool:
    """Whether this person can restore the chain now."""
    mine = found.last.by == context.person_id or context.role.manages
    can = not found.stands and found.what in KINDS and KINDS[found.what].put_back is not None
    if not (can and mine) or _is_late(context, found.last.at):
        return False
    try:
        _refuse_changed_later(context, found)
    except WorkError:
        return False
    return True


def _already_undone(context: Context, found: State) -> AlreadyUndoneError:
    number = found.last.id if can_put_back(context, found) else None
    return AlreadyUndoneError(number, _name(context, found.last.by), found.last.at)


def _changed_by(context: Context, entry: Entry, found: State) -> ChangedSinceError:
    can = may_change(context, found) or can_put_back(context, found)
    return ChangedSinceError(entry.id if can else None, _name(context, entry.by), entry.at)


def _is_late(context: Context, at: datetime) -> bool:
    return at < (context.edited_at or context.now) - timedelta(hours=UNDO_HOURS)


def _name(context: Context, person_id: int) -> str:
    if person_id == context.person_id:
        return ""
    member = context.book.one(Member, Member.person_id == person_id)
    return "?" if member is None else member.name


# -- undo and put back ---------------------------------------------------------------------


def undo(context: Context, number: int | None = None) -> Change:
    """Undo the chain of an entry, by default the person's latest valid one. An undo is restored.

    Raises NothingToUndoError, NotThereError, AlreadyUndoneError, NotYoursError, TooLateError after 24 hours,
    ChangedSinceError, UsedSinceError, OffTheLogError, and as `put_back`.
    """
    context.book.hold()
    if number is None:
        return _undo_last(context)
    entry = context.book.get(Entry, number)
    if entry is not None and entry.what == UNDO:
        return put_back(context, number)
    return _undo(context, state(context, number))


def _undo_last(context: Context) -> Change:
    since = context.now - timedelta(hours=UNDO_HOURS)
    mine = Entry.by == context.person_id, Entry.chain.is_(None), Entry.what.in_(KINDS), Entry.at >= since
    roots = [entry.id for entry in context.book.all(Entry, *mine, order=Entry.id.desc())]
    for some in (roots[start : start + _AT_ONCE] for start in range(0, len(roots), _AT_ONCE)):
        found = states(context, some)
        for root in some:
            if found[root].stands and found[root].what in KINDS:
                try:
                    return _undo(context, found[root])
                except OffTheLogError:
                    continue  # undone together with its batch or trial
    raise NothingToUndoError


def _undo(context: Context, found: State) -> Change:
    left = take_back(context, found)
    entry = context.log(UNDO, found.last, undone=found.what, left=left)
    return Change(entry, found, state(context, entry))


def take_back(context: Context, found: State) -> Details:
    """Undo the content of a chain; return the details that a restore needs. Raises as `undo` does."""
    kind = found.kind
    if not found.stands:
        raise _already_undone(context, found)
    if found.root.by != context.person_id and not context.role.manages:
        raise NotYoursError(_name(context, found.root.by))
    if _is_late(context, found.root.at):
        raise TooLateError(UNDO_HOURS)
    _refuse_changed_later(context, found)
    try:
        return kind.take_back(context, found.details)
    except ChangedSinceError:
        raise _changed_since(context, found) from None


def put_back(context: Context, number: int | None = None) -> Change:
    """Restore the undone chain of an entry, by default the last one that the person has undone.

    Raises NothingToUndoError, NotThereError, AlreadyThereAgainError, NotYoursError, TooLateError,
    CannotPutBackError, ChangedSinceError, UsedSinceError, OffTheLogError.
    """
    context.book.hold()
    found = _last_undone(context) if number is None else state(context, number)
    kind, last = found.kind, found.last
    if found.stands:
        raise AlreadyThereAgainError(last.id, _name(context, last.by), last.at)
    if last.by != context.person_id and not context.role.manages:
        raise NotYoursError(_name(context, last.by))
    if _is_late(context, last.at):
        raise TooLateError(UNDO_HOURS)
    if kind.put_back is None:
        raise CannotPutBackError(found.what)
    _refuse_changed_later(context, found)
    try:
        changed = kind.put_back(context, found.details)
    except ChangedSinceError:
        raise _changed_since(context, found) from None
    except CannotPutBackError:
        raise CannotPutBackError(found.what) from None
    entry = context.log(PUT_BACK, last, **{**found.details, **changed, "kind": found.what})
    return Change(entry, found, state(context, entry))


def _last_undone(context: Context) -> State:
    since = context.now - timedelta(hours=UNDO_HOURS)
    mine = Entry.by == context.person_id, Entry.what == UNDO, Entry.follows.is_not(None), Entry.at >= since
    for entry in context.book.all(Entry, *mine, order=Entry.id.desc()):
        found = state(context, entry.id)
        if found.last.id == entry.id:
            return found
    raise NothingToUndoError


def _refuse_changed_later(context: Context, found: State) -> None:
    """Raise ChangedSinceError if a later valid chain has changed the same, or OffTheLogError."""
    found.kind.look(context, found.details)
    about = set(found.kind.about(found.details))
    if not about:
        return
    where = Entry.id > found.root.id, Entry.chain.is_(None), Entry.what.in_(KINDS)
    later = states(context, [entry.id for entry in context.book.all(Entry, *where)])
    for one in reversed(later.values()):
        if one.stands and one.what in KINDS and about & set(one.kind.about(one.details)):
            raise _changed_by(context, one.last, one)


def _changed_since(context: Context, found: State) -> ChangedSinceError:
    """Return the error with the last entry that changed the same, if any."""
    about = set(found.kind.about(found.details))
    later = context.book.all(Entry, Entry.id > found.last.id, order=Entry.id.desc())
    chains = states(context, [entry.chain or entry.id for entry in later])
    for entry in later:
        one = chains[entry.chain or entry.id]
        if one.root.id != found.root.id and one.what in KINDS and about & set(one.kind.about(one.details)):
            return _changed_by(context, entry, one)
    return ChangedSinceError()


# -- a reason added later ------------------------------------------------------------------


@dataclass(frozen=True, slots=True)
class ReasonGiven:
    """A line of waste with its reason, and its previous reason."""

    line: WasteView
    before: str


def give_reason(context: Context, waste_id: int, reason: str) -> ReasonGiven:
    """Add or change the reason of a line of waste. Raises BadValueError, AlreadyUndoneError."""
    context.book.hold()
    row = context.book.get(Waste, waste_id)
    if row is None:
        raise BadValueError("waste line", str(waste_id))
    last = standing.last_of(context, row)
    found = of_row(context, row)
    if standing.takes_back(last):
        if found is None:
            raise AlreadyUndoneError
        raise _already_undone(context, found)
    before = last.reason
    if before == reason:
        context.entry = None if found is None else found.last.id
        return ReasonGiven(waste.view_of(context, last), before)
    new = waste.change_reason(context, last, reason)
    if found is None:
        context.log(REASON, rows=[new.id], before=before, after=reason)
    else:
        rows = [new.id if number == last.id else number for number in found.details["rows"]]
        context.log(REASON, found.last, **{**found.details, "rows": rows})
    return ReasonGiven(waste.view_of(context, new), before)


def takes_long(context: Context, number: int | None) -> bool:
    """Whether undoing an entry, by default the person's last one, changes so many rows that it takes long."""
    if number is None:
        row = context.book.one(Entry, Entry.by == context.person_id, order=Entry.id.desc())
    else:
        row = context.book.get(Entry, number)
    root = row if row is None or row.chain is None else context.book.get(Entry, row.chain)
    return root is not None and root.what == "import" and int(root.details.get("count", 0)) > _MANY_ROWS
