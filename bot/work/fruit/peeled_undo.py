"""Undo and restore peeled fruit and its uses."""

from __future__ import annotations

from fractions import Fraction

from bot.work import standing
from bot.work.context import Context
from bot.work.errors import OffTheLogError
from bot.work.fruit import peeled
from bot.work.reminders import planning
from bot.work.standing import Details, stands
from storage.tables import Batch, Juicing, PeeledFruit, PeeledUse


def take_back(context: Context, details: Details) -> Details:
    """Undo a logged peeling: remove it from the list, and its reminder.

    Raises UsedSinceError if some of it was used.
    """
    row = context.book.get(PeeledFruit, details["peeled"])
    if row is None:
        return {}
    check(context, details)
    context.book.add(
        PeeledUse(
            peeled_id=row.id, what=peeled.UNDONE, count_milli=row.count_milli, at=row.at, by=context.person_id
        )
    )
    planning.settle_peeled(context.book, row.id, context.person_id)
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


def take_back_juice(context: Context, details: Details) -> Details:
    """Undo a juicing: drop the measurement and restore the peeled fruit."""
    row = context.book.get(Juicing, details["juicing"])
    if row is not None and not standing.takes_back(last := standing.last_of(context, row)):
        standing.reverse(context, last)
        peeled.take_back_juicing(context, last.id)
    return {}


def put_back_juice(context: Context, details: Details) -> Details:
    """Restore an undone juicing; it uses the peeled fruit that is there."""
    row = context.book.get(Juicing, details["juicing"])
    again = None if row is None else standing.restore(context, row)
    if again is None:
        return {}
    peeled.settle(
        context, again.ingredient_id, Fraction(again.count_milli, 1000), peeled.JUICED, juicing_id=again.id
    )
    return {"juicing": again.id}


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
