"""Find why a batch is hazy or split: the tests in their order, and how much spirit would clear it."""

from __future__ import annotations

from dataclasses import dataclass, replace
from fractions import Fraction

from bot.trade.formulas.kinds import IngredientKind
from bot.trade.liquids.clearing import estimate
from bot.trade.liquids.clearing import evidence as rule
from bot.trade.liquids.clearing.diagnosis import Case, Cause, Test, next_test, tests_for
from bot.trade.liquids.clearing.evidence import Offset
from bot.work.batches.batches import BatchView, Clarity, EventView
from bot.work.context import Context
from bot.work.formulas.mixture import Mix, mix_of_batch
from bot.work.liquids import evidence


@dataclass(frozen=True, slots=True)
class Spirit:
    """The spirit of a batch: its number, name, and strength in % vol."""

    ingredient_id: int
    name: str
    percent: float


@dataclass(frozen=True, slots=True)
class Diagnosis:
    """The tests of a batch in their order, the shown one, and the numbers that it needs.

    `temperature_c` is that of the last look. `weakest_percent` is the strength of spirit below which the more
    cautious model sees it part (None: not known), `add_ml` the spirit to add for a clear look eight times in
    ten, `water_ml` the water that would cloud a mix like it; None where nothing helps or nothing is known.
    """

    batch: BatchView
    clarity: Clarity
    temperature_c: float
    tests: tuple[Test, ...]
    shown: Cause
    spirit: Spirit | None = None
    weakest_percent: float | None = None
    add_ml: float | None = None
    water_ml: float | None = None


def diagnose(
    context: Context, batch: BatchView, is_blind: bool = False, wanted: int | None = None
) -> Diagnosis:
    """Return the tests for a batch by its last look, and one of them by its number, else the next one.

    The tests of a blind batch do not tell what is in it.
    """
    mix = mix_of_batch(batch.frozen["lines"])
    looks = [one for one in batch.events if one.what == "check"]
    last = looks[-1] if looks else None
    seen = Clarity.HAZY if last is None or last.clarity is None else Clarity(last.clarity)
    degrees = _degrees(context, last)
    mixture = None if is_blind else evidence.mixture_in(mix)
    if mixture is None or not evidence.is_modelled(mixture):
        tests = tests_for(_case(context, batch, seen, degrees, None))
        return Diagnosis(batch, seen, degrees, tests, _shown(tests, wanted))
    context.take_time()
    before, now = _offsets(context, batch, mix, degrees)
    tests = tests_for(_case(context, batch, seen, degrees, before.clear(rule.margin_of(mixture, degrees))))
    shown, spirit = _shown(tests, wanted), _spirit(batch)
    found = Diagnosis(batch, seen, degrees, tests, shown, spirit)
    if shown is Cause.STRENGTH:
        weakest = estimate.lowest_strength(mixture, degrees)
        return replace(
            found, weakest_percent=weakest.dortmund if weakest.original is None else weakest.original
        )
    if shown is Cause.WATER:
        return replace(found, water_ml=rule.water_to_cloud(mixture, degrees, before))
    if shown is Cause.OIL and spirit is not None:
        return replace(found, add_ml=rule.spirit_to_clear(mixture, degrees, now))
    return found


def _shown(tests: tuple[Test, ...], wanted: int | None) -> Cause:
    if wanted is None:
        return next_test(tests)
    return tests[min(max(wanted, 1), len(tests)) - 1].cause


def _degrees(context: Context, look: EventView | None) -> float:
    known = None if look is None else look.temperature_c
    return context.bar.temperature_c if known is None else float(known)


def _case(context: Context, batch: BatchView, seen: Clarity, degrees: float, likely: float | None) -> Case:
    happened = {one.what for one in batch.events}
    return Case(
        batch.rested(context.now),
        seen is Clarity.SPLIT,
        degrees,
        likely,
        "filtered" in happened,
        "added" in happened,
    )


def _offsets(context: Context, batch: BatchView, mix: Mix, degrees: float) -> tuple[Offset, Offset]:
    """Return what the bar's looks say of the batch without those at itself, and with them."""
    kinds = [(line["ingredient"], IngredientKind(line["kind"])) for line in batch.frozen["lines"]]
    oil = evidence.oil_of(kinds)
    found = () if oil is None else evidence.looks_at(context, oil)
    lot = next((line.lot for line in batch.lines if line.ingredient_id == oil), None)
    additions = sum(one.what == "added" for one in batch.events)
    usual = evidence.mix_key(batch.formula_id, batch.version, mix)
    key = evidence.batch_key(batch.number, batch.frozen, additions, usual)
    others = [one for one in found if one.batch != batch.number]
    return evidence.offset(others, lot, key, degrees), evidence.offset(found, lot, key, degrees)


def _spirit(batch: BatchView) -> Spirit | None:
    """Return the strongest spirit of a batch."""
    found = [line for line in batch.frozen["lines"] if line["kind"] == IngredientKind.SPIRIT]
    spirits = [
        Spirit(one["ingredient"], one["name"], float(Fraction(one.get("strength_percent") or 0)))
        for one in found
    ]
    return max(spirits, key=lambda one: one.percent, default=None)
