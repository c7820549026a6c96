"""Undo and restore the steps of a trial."""

from __future__ import annotations

from typing import Any

from bot.work.batches import batch_undo
from bot.work.context import Context
from bot.work.errors import OffTheLogError
from bot.work.formulas import formula_undo
from bot.work.standing import Details, Rows, Value
from bot.work.trials import trial_life
from bot.work.trials.trials import TrialState
from storage.tables import Batch, Trial, TrialScore, TrialVariant


def _trial(context: Context, number: int) -> Trial:
    """Return the row of a trial that is not undone. Raises OffTheLogError."""
    row = context.book.get(Trial, number)
    if row is None or row.state == TrialState.UNDONE:
        raise OffTheLogError("trial", str(number))
    return row


# -- the trial itself ----------------------------------------------------------------------


def check_start(context: Context, details: Details) -> None:
    """Raise OffTheLogError if the trial is undone."""
    _trial(context, details["trial"])


def take_back_start(context: Context, details: Details) -> Details:
    """Undo a trial; its logged batches stay. Raises OffTheLogError."""
    row = _trial(context, details["trial"])
    state, row.state = row.state, TrialState.UNDONE
    context.book.session.flush()
    return {"state": state}


def put_back_start(context: Context, details: Details) -> Details:
    """Restore a trial in its last state."""
    row = context.book.get(Trial, details["trial"])
    if row is not None:
        row.state = details["state"]
        context.book.session.flush()
    return {}


def _read_state(context: Context, details: Details) -> str:
    return _trial(context, details["trial"]).state


def _write_state(context: Context, details: Details, state: str) -> None:
    _trial(context, details["trial"]).state = state
    context.book.session.flush()
    context.book.touched()


CLOSE = Value(_read_state, _write_state, states=(TrialState.OPEN.value, TrialState.CLOSED.value))


# -- variants, their batches and scores ----------------------------------------------------


def _read_void(context: Context, details: Details) -> bool:
    _trial(context, details["trial"])
    row = context.book.get(TrialVariant, details["trial"], details["number"])
    return row is None or row.void


def _write_void(context: Context, details: Details, void: bool) -> None:
    row = context.book.get(TrialVariant, details["trial"], details["number"])
    if row is not None:
        trial_life.refuse_telling(context, row.trial_id)
        row.void = void
        context.book.session.flush()
        trial_life.give_codes(context, _trial(context, row.trial_id))


VARIANT = Value(_read_void, _write_void, states=(True, False))  # its scores go with it


def take_back_batches(context: Context, details: Details) -> Details:
    """Undo the small batches of a trial. Raises OffTheLogError."""
    _trial(context, details["trial"])
    undone: dict[str, Any] = {}
    for number in details["batches"]:
        batch = context.book.get(Batch, number)
        if batch is not None and batch.state != "undone":
            undone[str(number)] = batch_undo.take_back_making(context, {"batch": number})
    of: dict[str, int | None] = {}
    for row in context.book.all(TrialVariant, TrialVariant.trial_id == details["trial"]):
        if row.batch_id in details["batches"]:
            of[str(row.number)], row.batch_id = row.batch_id, None
    context.book.session.flush()
    return {"undone": undone, "of": of}


def put_back_batches(context: Context, details: Details) -> Details:
    """Restore the small batches of a trial. Raises OffTheLogError, UsedSinceError."""
    _trial(context, details["trial"])
    for number, stood in details["undone"].items():
        batch_undo.put_back_making(context, {"batch": int(number), **stood})
    for number, batch_id in details["of"].items():
        row = context.book.get(TrialVariant, details["trial"], int(number))
        if row is not None and row.batch_id is None:
            row.batch_id = batch_id
    context.book.session.flush()
    return {}


SCORE = Rows(TrialScore, "row")


# -- promotion -----------------------------------------------------------------------------


def take_back_promotion(context: Context, details: Details) -> Details:
    """Undo a promotion: add the previous version of the formula as a new one, and reopen the trial."""
    return _promotion(context, details, "trial_before", formula_undo.take_back_change(context, details))


def put_back_promotion(context: Context, details: Details) -> Details:
    """Restore an undone promotion."""
    return _promotion(context, details, "trial_after", formula_undo.put_back_change(context, details))


def _promotion(context: Context, details: Details, which: str, changed: Details) -> Details:
    row = context.book.get(Trial, details["trial"])
    if row is not None and which in details:
        row.state, row.promoted = details[which]
        context.book.session.flush()
    return changed
