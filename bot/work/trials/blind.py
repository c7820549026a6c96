"""Show a bottle of a blind trial in the same way as every other bottle of that trial."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

from bot.work.batches import batches
from bot.work.batches.batches import BatchView
from bot.work.context import Context
from bot.work.trials import trials
from storage.tables import TrialVariant


def trial_of(context: Context, batch: BatchView) -> int | None:
    """Return the running blind trial of this bottle, or None."""
    kept = batch.frozen.get("trial")
    if not kept or not trials.hides(context, int(kept[0])):
        return None
    # A batch imported from another bar carries that bar's numbers: only the trial itself knows its bottles.
    variant = context.book.get(TrialVariant, *map(int, kept))
    return int(kept[0]) if variant is not None and variant.batch_id == batch.number else None


def bottles_of(context: Context, batch: BatchView) -> list[BatchView]:
    """Return all bottles of a batch's running blind trial; of another batch, only itself."""
    trial = trial_of(context, batch)
    if trial is None:
        return [batch]
    rows = trials.variant_rows(context, trial)
    return [batches.get(context, row.batch_id) for row in rows if row.batch_id is not None] or [batch]


def as_any_bottle(context: Context, batch: BatchView) -> BatchView:
    """Return a bottle of a blind trial with the combined facts of all its bottles; other batches unchanged.

    The reader needs the highest strength, all allergens and the earliest discard date; identical texts on all
    bottles do not reveal which is which.
    """
    trial = trial_of(context, batch)
    if trial is None:
        return batch
    bottles = bottles_of(context, batch)
    strengths = [one.frozen.get("strength_percent") for one in bottles]
    known = [one for one in strengths if one is not None]
    lines = {int(line["ingredient"]): line for one in bottles for line in one.frozen["lines"]}
    found = [kept for one in bottles for kept in one.frozen.get("allergens", ())]
    # Certain allergens of one bottle come before likely ones of another.
    allergens = {
        str(kept["allergen"]): kept for kept in sorted(found, key=lambda kept: bool(kept["certain"]))
    }
    frozen = {
        **batch.frozen,
        "lines": [lines[number] for number in sorted(lines)],
        "strength_percent": max(known, key=lambda one: Fraction(str(one))) if known else None,
        "allergens": [allergens[name] for name in sorted(allergens)],
    }
    return replace(
        batch,
        frozen=frozen,
        total_ml=trials.row_of(context, trial).total_ml,
        discard_on=min(one.discard_on for one in bottles),
    )
