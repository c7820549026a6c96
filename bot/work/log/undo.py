"""Undo log entries by adding new rows, never by deleting."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from datetime import timedelta

from sqlalchemy import select
from sqlalchemy.orm import aliased

from bot.work.batches import batch_life, shelf
from bot.work.context import Context
from bot.work.errors import (
    AlreadyUndoneError,
    NotAllowedError,
    NothingToUndoError,
    NotThereError,
    TooLateError,
)
from bot.work.formulas import formulas, merging, other_names
from bot.work.fruit import peeled, waste
from bot.work.liquids import strength
from bot.work.money import prices
from bot.work.people import settings_undo
from bot.work.safety import grade
from bot.work.spray import drinks, sprayers
from bot.work.stock import counts, pars
from bot.work.transfer import import_undo
from bot.work.trials import trial_life
from storage.tables import Entry
from storage.types import JsonObject

UNDO_HOURS = 24

# Each returns nothing, or a further message.
_TAKES_BACK: dict[str, Callable[[Context, JsonObject], JsonObject | None]] = {
    "waste": waste.take_back,
    "waste reason": waste.take_back_reason,
    "price": prices.take_back,
    "batch": batch_life.take_back_making,
    "check": batch_life.take_back_move,
    "open batch": batch_life.take_back_move,
    "use up": batch_life.take_back_move,
    "discard": batch_life.take_back_move,
    "lot": batch_life.take_back_lot,
    "formula": formulas.take_back_new,
    "change formula": formulas.take_back_change,
    "rename formula": formulas.take_back_rename,
    "archive formula": formulas.take_back_archive,
    "restore formula": formulas.take_back_restore,
    "other name": other_names.take_back_call,
    "forget name": other_names.take_back_forget,
    "new ingredient": other_names.take_back_new,
    "merge": merging.take_back,
    "settings": settings_undo.take_back,
    "strength": strength.take_back,
    "density": strength.take_back_density,
    "food grade": grade.take_back,
    "opened": shelf.take_back,
    "sprayer": sprayers.take_back_new,
    "weighing": sprayers.take_back_weighing,
    "use sprayer": sprayers.take_back_use,
    "retire sprayer": sprayers.take_back_retire,
    "par": pars.take_back_par,
    "drinks": drinks.take_back,
    "trial": trial_life.take_back_start,
    "trial variant": trial_life.take_back_variant,
    "trial batches": trial_life.take_back_batches,
    "taste": trial_life.take_back_score,
    "close trial": trial_life.take_back_close,
    "promote": trial_life.take_back_promotion,
    "buy stock": counts.take_back_buying,
    "count stock": counts.take_back_count,
    "peeled": peeled.take_back,
    "juiced": peeled.take_back_juice,
    "peeled in batch": peeled.take_back_batch,
    "import": import_undo.take_back,
}


@dataclass(frozen=True, slots=True)
class TakenBack:
    """An undone entry: the log line's number, its kind and its details."""

    entry: int
    what: str
    details: JsonObject


def take_back(context: Context, number: int | None = None) -> TakenBack:
    """Undo one log line, or the person's last one that can be undone.

    The line of another person needs a manager. Raises NothingToUndoError, NotThereError, AlreadyUndoneError,
    NotAllowedError, or TooLateError after 24 hours.
    """
    row = _last(context) if number is None else context.book.get(Entry, number)
    if row is None:
        raise NothingToUndoError if number is None else NotThereError("log entry", str(number))
    if row.what not in _TAKES_BACK or row.undo_of is not None:
        raise NotThereError("log entry", str(row.id))
    if context.book.one(Entry, Entry.undo_of == row.id) is not None:
        raise AlreadyUndoneError
    if row.by != context.person_id and not context.role.manages:
        raise NotAllowedError("manager")
    if row.at < context.now - timedelta(hours=UNDO_HOURS):
        raise TooLateError(UNDO_HOURS)
    more = _TAKES_BACK[row.what](context, row.details)
    context.log("undo", undo_of=row.id, undone=row.what)
    return TakenBack(row.id, row.what, row.details | (more or {}))


def is_undoable(what: str) -> bool:
    """Whether entries of this kind can be undone at all."""
    return what in _TAKES_BACK


def can_be_undone(context: Context, row: Entry) -> bool:
    """Whether this person may undo this entry now, if it is not undone yet."""
    return (
        row.what in _TAKES_BACK
        and row.undo_of is None
        and (row.by == context.person_id or context.role.manages)
        and row.at >= context.now - timedelta(hours=UNDO_HOURS)
    )


def _last(context: Context) -> Entry | None:
    undone = aliased(Entry)
    return context.book.one(
        Entry,
        Entry.by == context.person_id,
        Entry.undo_of.is_(None),
        Entry.what.in_(_TAKES_BACK),
        Entry.at >= context.now - timedelta(hours=UNDO_HOURS),
        ~select(undone.id)
        .where(undone.bar_id == Entry.bar_id, undone.undo_of == Entry.id)
        .correlate(Entry)
        .exists(),
        order=Entry.id.desc(),
    )
