"""Undo and restore peeled fruit and its uses."""

from __future__ import annotations

from fractions import Fraction

from bot.work.context import Context
from bot.work.errors import OffTheLogError
from bot.work.fruit import peeled
from bot.work.standing import Details, Rows, stands
from storage.tables import Batch, Juicing, PeeledUse


def take_back(context: Context, details: Details) -> Details:
    """Undo a logged peeling: remove it from the list, and its reminder.

    Raises UsedSinceError if some of it was used.
    """
    check(context, details)
    peeled.drop(context, details["peeled"])
    return {}


def check(context: Context, details: Details) -> None:
    """Raise UsedSinceError if some of the peeled fruit was used."""
    number = details["peeled"]
    if context.book.one(PeeledUse, PeeledUse.peeled_id == number, stands(PeeledUse)) is not None:
        raise peeled.used_since(context, number)


def put_back(context: Context, details: Details) -> Details:
    """Restore peeled fruit to the list."""
    peeled.unsettle(context, PeeledUse.peeled_id == details["peeled"], PeeledUse.what == peeled.UNDONE)
    return {}


def _juiced_again(context: Context, row: Juicing) -> None:
    """Use the peeled fruit that is there."""
    count = Fraction(row.count_milli, 1000)
    peeled.settle(context, row.ingredient_id, count, peeled.JUICED, juicing_id=row.id)


JUICINGS = Rows(
    Juicing, "juicing", lambda context, row: peeled.take_back_juicing(context, row.id), _juiced_again
)


def take_back_batch(context: Context, details: Details) -> Details:
    """Undo the use of peeled fruit in a batch. Raises OffTheLogError if the batch is undone."""
    look_at_batch(context, details)
    firsts = [row.first for number in details["rows"] if (row := context.book.get(PeeledUse, number))]
    peeled.unsettle(context, PeeledUse.first.in_(firsts))
    return {}


def put_back_batch(context: Context, details: Details) -> Details:
    """Restore the use of peeled fruit in a batch. Raises UsedSinceError, OffTheLogError."""
    look_at_batch(context, details)
    return {"rows": peeled.settle_again(context, details["rows"])}


def look_at_batch(context: Context, details: Details) -> None:
    """Raise OffTheLogError if the batch is undone."""
    batch = context.book.get(Batch, details["batch"])
    if batch is None or batch.state == peeled.UNDONE:
        raise OffTheLogError("batch", str(details["batch"]))
