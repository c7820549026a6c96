"""The discard date of a batch: the earliest of its first one, that of its opened bottle, and its lots'."""

from __future__ import annotations

from datetime import date

from bot.trade.formulas.kinds import Preparation
from bot.work.batches import shelf
from bot.work.batches.batches import BatchState
from bot.work.context import Context
from bot.work.reminders import planning
from storage.tables import Batch, BatchLine


def renew(context: Context, row: Batch) -> None:
    """Set the discard date anew, and plan the reminders of an open batch by it."""
    if "discard_on" not in row.frozen:  # an old or imported batch
        row.frozen = row.frozen | {"discard_on": row.discard_on.isoformat()}
    day = _earliest(context, row)
    if day != row.discard_on:
        row.discard_on = day
        if BatchState(row.state).open:
            planning.plan_batch(context.book, context.bar, row, str(row.frozen["formula"]), context.now)


def _earliest(context: Context, row: Batch) -> date:
    days = [date.fromisoformat(row.frozen["discard_on"])]
    if row.opened_at is not None:
        opened_on = context.bar.day_of(row.opened_at)
        days.append(shelf.opened_until(Preparation(row.frozen["preparation"]), opened_on))
    lines = context.book.all(BatchLine, BatchLine.batch_id == row.id)
    return min([*days, *(line.best_before for line in lines if line.best_before is not None)])
