"""The bar's own looks at an oil, as evidence for whether a mix with it stays clear."""

from __future__ import annotations

from collections.abc import Hashable, Sequence
from dataclasses import dataclass, replace
from typing import Any

from sqlalchemy import bindparam

from bot.trade.formulas.kinds import IngredientKind
from bot.trade.liquids.clearing import evidence
from bot.trade.liquids.clearing.estimate import MOST_OUTSIDE_SHARE
from bot.trade.liquids.clearing.evidence import Belief, Look, Offset
from bot.trade.liquids.clearing.miscibility import Outcome
from bot.trade.liquids.clearing.mixture import Mixture, mixture_of
from bot.work.batches.batches import UNDO, BatchState, Clarity
from bot.work.context import Context
from bot.work.formulas.formulas import FormulaView
from bot.work.formulas.mixture import Mix, mix_of, mix_of_batch
from storage.tables import Batch, BatchEvent, BatchLine, Trial
from storage.types import JsonObject
from storage.unit import of_bar

_MOST_EVENTS = 200  # of one oil, the newest: more than a bar sees of it in years
_OUTCOMES = {Clarity.CLEAR: Outcome.CLEAR, Clarity.HAZY: Outcome.HAZE, Clarity.SPLIT: Outcome.SPLIT}
EVENTS = (
    of_bar(
        BatchEvent,
        BatchEvent.id,
        BatchEvent.first,
        BatchEvent.corrects,
        BatchEvent.what,
        BatchEvent.clarity,
        BatchEvent.at,
        BatchEvent.mix_before,
        Batch.id.label("batch"),
        Batch.made_at,
        Batch.rest_until,
        Batch.frozen,
    )
    .join(Batch, (Batch.bar_id == BatchEvent.bar_id) & (Batch.id == BatchEvent.batch_id))
    .where(Batch.state != BatchState.UNDONE)
    .order_by(BatchEvent.id.desc())
)
"""The events of the bar's batches with what a look needs, the newest first."""
_OF_OIL = (
    EVENTS.add_columns(BatchEvent.temperature_c, BatchLine.lot, Batch.formula_id, Batch.version)
    .join(BatchLine, (Batch.bar_id == BatchLine.bar_id) & (Batch.id == BatchLine.batch_id))
    .where(
        BatchLine.ingredient_id == bindparam("of_oil"),
        BatchEvent.what.in_(("check", "added", UNDO)),
    )
    .limit(_MOST_EVENTS)
)


@dataclass(frozen=True, slots=True)
class OilLook:
    """The last look at one mix of a batch at one temperature; `mix` is equal for equal mixes."""

    batch: int
    clarity: Clarity
    mixture: Mixture
    mix: Hashable
    lot: str | None
    temperature_c: float


def mixture_in(mix: Mix) -> Mixture | None:
    """Return a mix for the models; None if a spirit's strength is unknown.

    Ingredients without a known volume are named as unknown to the models.
    """
    if mix.without_strength:
        return None
    found = mixture_of(mix.components)
    return replace(found, outside=(*found.outside, *mix.left_out))


def oil_of(kinds: Sequence[tuple[int, IngredientKind]]) -> int | None:
    """Return the number of the citrus oil among ingredients, None for none or several."""
    oils = {number for number, kind in kinds if kind is IngredientKind.CITRUS_OIL}
    return oils.pop() if len(oils) == 1 else None


def oil_in(view: FormulaView) -> int | None:
    """Return the number of a formula's citrus oil, None for none or several."""
    return oil_of([(line.ingredient.id, line.ingredient.kind) for line in view.lines])


def looks_at(context: Context, oil: int) -> tuple[OilLook, ...]:
    """Return the bar's looks at rested mixes with an oil, oldest first."""
    key = ("looks at oil", oil, context.bar.temperature_c)
    return context.book.remembered(context.bar.revision, key, lambda: _looks(context, oil))


def _looks(context: Context, oil: int) -> tuple[OilLook, ...]:
    valid = standing(context.book.found(_OF_OIL, of_oil=oil))
    # What a look teaches would tell which bottle of a blind trial it was at.
    running = context.book.all(Trial, Trial.blind.is_(True), Trial.state == "open")
    hidden = {row.id for row in running}
    found: dict[tuple[int, Hashable, int], OilLook] = {}
    for place, row in enumerate(valid):
        if row.clarity is None or row.at < row.rest_until or _trial_of(row) in hidden:
            continue
        lines, additions = mix_then(valid, place)
        look = _look(context, row, lines, additions)
        if look is not None:
            found[look.batch, look.mix, round(look.temperature_c)] = look
    return tuple(found.values())


def _trial_of(row: Any) -> int | None:
    kept = row.frozen.get("trial")
    return int(kept[0]) if kept else None


def standing(rows: Sequence[Any]) -> list[Any]:
    """Return the events that are not undone, in their order."""
    corrected = {row.corrects for row in rows if row.corrects is not None}
    return sorted(
        (row for row in rows if row.what != UNDO and row.id not in corrected), key=lambda row: row.first
    )


def mix_then(events: Sequence[Any], place: int) -> tuple[Sequence[JsonObject], int]:
    """Return what was in the batch of an event at that time, and how often something had been added.

    `events` are the valid checks and additions in their order, `place` is that of the event.
    """
    row = events[place]
    added = [one.batch == row.batch and one.what == "added" for one in events]
    later = [one for one, adds in zip(events[place:], added[place:], strict=True) if adds]
    return (later[0].mix_before if later else row.frozen["lines"]), sum(added[:place])


def _look(context: Context, row: Any, lines: Sequence[JsonObject], additions: int) -> OilLook | None:
    mix = mix_of_batch(lines)
    mixture = mixture_in(mix)
    if mixture is None or not is_modelled(mixture):
        return None
    degrees = context.bar.temperature_c if row.temperature_c is None else float(row.temperature_c)
    key = batch_key(row.batch, row.frozen, additions, mix_key(row.formula_id, row.version, mix))
    return OilLook(row.batch, Clarity(row.clarity), mixture, key, row.lot, degrees)


def mix_key(formula: int, version: int, mix: Mix) -> Hashable:
    """Return what mixes of one version with the same spirits share, whatever the tools rounded."""
    return formula, version, tuple(one.strength_percent for one in mix.poured)


def batch_key(number: int, frozen: JsonObject, additions: int, usual: Hashable) -> Hashable:
    """Return the key of a batch: its own after additions, that of a trial's variant, or its version's."""
    if additions:
        return number, additions
    return ("trial", *frozen["trial"]) if frozen.get("trial") else usual


def is_modelled(mixture: Mixture) -> bool:
    """Whether the models know enough of a mix of oil with something else."""
    known = mixture.outside_ml <= MOST_OUTSIDE_SHARE * mixture.total_ml
    return known and 0.0 < mixture.oil_ml < mixture.modelled_ml


def as_looks(found: Sequence[OilLook]) -> list[Look]:
    """Return looks for the rule."""
    return [
        Look(
            evidence.margin_of(one.mixture, one.temperature_c),
            _OUTCOMES[one.clarity],
            one.mix,
            one.lot,
            one.temperature_c,
        )
        for one in found
    ]


def belief(context: Context, view: FormulaView, mixture: Mixture, temperature_c: float) -> Belief | None:
    """Return what the bar's looks at a formula's oil say of it; None without looks or without one oil.

    The bottle in use has the lot of the last batch looked at.
    """
    oil = oil_in(view)
    found = () if oil is None else looks_at(context, oil)
    if not found or not is_modelled(mixture):
        return None
    context.take_time()
    return evidence.belief(
        mixture, temperature_c, as_looks(found), found[-1].lot, mix_key(view.id, view.version, mix_of(view))
    )


def offset(found: Sequence[OilLook], lot: str | None, mix: Hashable, temperature_c: float) -> Offset:
    """Return what looks say of one mix with one lot of their oil at a temperature."""
    return evidence.offset_of(as_looks(found), lot, mix, temperature_c)
