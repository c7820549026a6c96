"""Estimate whether a mix stays clear, from the models and the bar's own checks, which weigh more."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction

from sqlalchemy import bindparam

from bot.trade.formulas.kinds import IngredientKind
from bot.trade.liquids.clearing import estimate
from bot.trade.liquids.clearing.estimate import Clearing
from bot.trade.liquids.clearing.evidence import Belief
from bot.trade.liquids.clearing.mend import State
from bot.trade.liquids.clearing.mixture import Mixture
from bot.trade.spray.release import Release, release
from bot.work.batches.batches import LOOKING, Clarity
from bot.work.context import Context
from bot.work.formulas.formulas import FormulaView
from bot.work.formulas.mixture import mix_of
from bot.work.liquids import evidence
from bot.work.liquids.evidence import mixture_in
from storage.memory import Memory
from storage.tables import Batch, BatchEvent
from storage.types import JsonObject

# After this many clear checks a formula counts as clear in this bar, whatever a model says.
TIMES_TO_TRUST = 3
RELEASE_TEMPERATURE_C = 20.0
# The number of latest checks and undone checks to use: enough to trust, quick to read.
_MOST_LOOKS = 24
_states = Memory(8192)  # the models' results by ratio
_LOOKS = evidence.EVENTS.where(
    Batch.formula_id == bindparam("of_formula"),
    Batch.version == bindparam("of_version"),
    BatchEvent.what.in_((*LOOKING, "added")),
).limit(_MOST_LOOKS)


@dataclass(frozen=True, slots=True)
class Sighting:
    """One check of a rested batch: the look, and whole days since it was made."""

    batch: int
    clarity: Clarity
    days: int


@dataclass(frozen=True, slots=True)
class Seen:
    """The bar's checks of a formula, oldest first: rested batches of the same version and spirit."""

    sightings: tuple[Sighting, ...] = ()

    @property
    def last_looks(self) -> tuple[Sighting, ...]:
        """The latest check of each batch."""
        return tuple({one.batch: one for one in self.sightings}.values())

    @property
    def times_clear(self) -> int:
        """The number of clear checks."""
        return sum(one.clarity is Clarity.CLEAR for one in self.sightings)

    @property
    def worst_last(self) -> Sighting | None:
        """The worst of the latest checks that were not clear, or None."""
        order = [Clarity.CLEAR, Clarity.HAZY, Clarity.SPLIT]
        bad = [one for one in self.last_looks if one.clarity is not Clarity.CLEAR]
        return max(bad, key=lambda one: order.index(one.clarity), default=None)

    @property
    def clear_here(self) -> bool:
        """Whether it was clear often enough, and no batch was left hazy or split."""
        return self.times_clear >= TIMES_TO_TRUST and self.worst_last is None


@dataclass(frozen=True, slots=True)
class Standing:
    """The quick answer: the models' state (None if a spirit's strength is unknown) and the bar's checks."""

    state: State | None
    outside: tuple[str, ...]
    seen: Seen


@dataclass(frozen=True, slots=True)
class ClearAnswer:
    """The full answer for a formula as written: the models' result and the bar's checks.

    `belief` is what both say together; None without looks at its oil.
    """

    view: FormulaView
    mixture: Mixture
    clearing: Clearing
    seen: Seen
    belief: Belief | None = None


def _state(context: Context, mixture: Mixture, temperature_c: float) -> State:
    def reckon() -> State:
        context.take_time()
        return estimate.state_of(mixture, temperature_c)

    return _states.get((mixture, temperature_c), reckon)


def standing(context: Context, view: FormulaView, temperature_c: float) -> Standing | None:
    """Return the quick answer for a formula, or None for one without oil.

    The models' part is cached by ratio.
    """
    mix = mix_of(view)
    if not mix.has_oil:
        return None
    mixture = mixture_in(mix)
    if mixture is None:
        return Standing(None, (), Seen())
    return Standing(
        _state(context, mixture.rounded(), temperature_c), mixture.outside, seen_here(context, view)
    )


def answer(context: Context, view: FormulaView, temperature_c: float) -> ClearAnswer | None:
    """Return the full answer; None if a spirit's strength is unknown.

    Raises OutOfRangeError for an empty mix or outside 0 to 40 °C.
    """
    mixture = mixture_in(mix_of(view))
    if mixture is None:
        return None
    judged = estimate.judge(mixture, temperature_c)
    believed = evidence.belief(context, view, mixture, temperature_c)
    return ClearAnswer(view, mixture, judged, seen_here(context, view), believed)


def release_of(view: FormulaView) -> Release | None:
    """Return the aroma release of the film at 20 °C; None without citrus oil or strength."""
    mixture = mixture_in(mix_of(view))
    if mixture is None or mixture.oil_ml <= 0:
        return None
    return release(mixture, RELEASE_TEMPERATURE_C)


def seen_here(context: Context, view: FormulaView) -> Seen:
    """Return the checks of rested batches of this version with its spirits, as written: no trials."""
    of = {"of_formula": view.id, "of_version": view.version}
    key = ("looks", view.id, view.version)
    rows = context.book.remembered(context.bar.revision, key, lambda: context.book.found(_LOOKS, **of))
    valid = evidence.standing(rows)
    return Seen(
        tuple(
            Sighting(row.batch, Clarity(row.clarity), (row.at - row.made_at).days)
            for place, row in enumerate(valid)
            if row.clarity is not None
            and row.at >= row.rest_until
            and not row.frozen.get("trial")
            and _is_as_written(*evidence.mix_then(valid, place), _strengths(view))
        )
    )


def _is_as_written(lines: Sequence[JsonObject], additions: int, strengths: Sequence[Fraction | None]) -> bool:
    return not additions and _frozen_strengths(lines) == strengths


def _strengths(view: FormulaView) -> list[Fraction | None]:
    lines = [line.ingredient for line in view.lines]
    return [one.strength_percent for one in lines if one.kind is IngredientKind.SPIRIT]


def _frozen_strengths(lines: Sequence[dict[str, str | None]]) -> list[Fraction | None]:
    found: list[Fraction | None] = []
    for line in lines:
        if line["kind"] == IngredientKind.SPIRIT:
            percent = line.get("strength_percent")
            found.append(None if percent is None else Fraction(percent))
    return found
