"""Estimate from two models and published data whether a mix stays clear, and find remedies.

Volumes are mL at 20 °C, strengths % vol at 20 °C. The citrus oil counts as d-limonene: real oils contain
polar parts that help and waxes that drop out. The rested bottle decides.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace
from functools import lru_cache
from typing import Any

from bot.trade.errors import OutOfRangeError
from bot.trade.liquids.clearing import phases
from bot.trade.liquids.clearing.mend import Band, Mend, MendKind, State
from bot.trade.liquids.clearing.miscibility import Fact, Outcome, facts_about
from bot.trade.liquids.clearing.mixture import Mixture
from bot.trade.liquids.clearing.rounding import down, up
from bot.trade.liquids.clearing.substances import Model

# No answer is given when more than this share of the volume is unknown to the model.
MOST_OUTSIDE_SHARE = 0.02
# The strength assumed for a spirit that a formula does not contain yet: the minimum for ethyl alcohol of
# agricultural origin under Regulation (EU) 2019/787.
NEUTRAL_SPIRIT_PERCENT = 96.0
# Ordinary distillation stops at about 97 % (the azeotrope): bars cannot buy a stronger spirit.
STRONGEST_SPIRIT_PERCENT = 96.6

# Where water is more than half of the mass, the modified model has no vote on citrus oil: its groups give
# limonene some 1,200 mg/L in pure water, where 7 to 20 are measured (from memory) and the original gives 21.
WATER_RICH_SHARE = 0.5
# Below this the models disagree even on what cold does, so that cold never counts as better than 20 °C.
COLD_BELOW_C = 15.0
_USUAL_C = 20.0

# A change that leaves less than this part of the share of oil is another mix, not a mend.
_KEPT_OIL = 0.25
_MOST_SPIRIT_FACTOR = 4.0
_STEPS, _FINE_STEPS = 60, 16
_WORTH_KEEPING = 0.1
MOST_OIL_SHARE = 0.99  # the largest share of oil tried


@dataclass(frozen=True, slots=True)
class Clearing:
    """Whether a mixture stays one clear liquid, and its limits and remedies.

    `original_clear` and `dortmund_clear` are the models' verdicts (None when withheld, and where a model has
    no vote), `published` the facts that cover exactly this mixture. `lowest_strength` is the weakest spirit,
    % vol, with which this ratio stays clear (None: not even absolute alcohol, or no spirit in it);
    `largest_oil_percent` the largest share of oil, % of the summed volumes, with everything else as it is,
    and `largest_oil_ml` the same in mL (None: any amount). `outside` names ingredients unknown to the model;
    `partial` means that the state ignores them.
    """

    mixture: Mixture
    temperature_c: float
    state: State
    partial: bool
    outside: tuple[str, ...]
    original_clear: bool | None
    dortmund_clear: bool | None
    published: tuple[Fact, ...]
    lowest_strength: Band
    largest_oil_percent: Band
    largest_oil_ml: Band
    mends: tuple[Mend, ...]


# --- the verdict ------------------------------------------------------------


def stays_clear(model: Model, mixtures: Sequence[Mixture], temperature_c: float = 20.0) -> list[bool]:
    """Return whether each mixture stays one liquid by this model alone (UNIFAC, tangent-plane test).

    Raises OutOfRangeError outside 0 to 40 °C.
    """
    import numpy as np  # noqa: PLC0415 - only when first used

    moles = np.array([mixture.moles() for mixture in mixtures])
    return phases.bar_model(model, temperature_c).stable(moles / moles.sum(axis=1, keepdims=True))


def _has_vote(model: Model, mixture: Mixture) -> bool:
    """Whether a model counts for a mixture: not where it is known to be wrong."""
    water_rich = mixture.oil_ml > 0.0 and mixture.water_mass_fraction > WATER_RICH_SHARE
    return model is Model.ORIGINAL or not water_rich


def _voted(model: Model, mixtures: Sequence[Mixture], temperature_c: float) -> list[bool]:
    """Return a model's verdicts with the original in its place where it has no vote; cold never helps."""
    found = stays_clear(model, mixtures, temperature_c)
    if temperature_c < COLD_BELOW_C:
        found = [one and other for one, other in zip(found, stays_clear(model, mixtures), strict=True)]
    silent = [i for i, mixture in enumerate(mixtures) if not _has_vote(model, mixture)]
    if silent:
        instead = _voted(Model.ORIGINAL, [mixtures[i] for i in silent], temperature_c)
        for i, clear in zip(silent, instead, strict=True):
            found[i] = clear
    return found


def combined_state(original_clear: bool, dortmund_clear: bool | None, published: Sequence[Fact]) -> State:
    """Return the state from the two models' verdicts and the published facts that cover the mixture.

    Both clear, both split, or borderline when they disagree; where one has no vote (None) the other decides.
    A published 'clear' then raises the state by one
    step (a historical one only from 'will split'), a published 'does not mix' lowers it by one; both together
    leave it borderline. So a mixture published as clear never comes out as 'will split', and one published as
    split never as 'clear'.
    """
    level = int(original_clear) + int(original_clear if dortmund_clear is None else dortmund_clear)
    clear = [fact for fact in published if fact.outcome is Outcome.CLEAR]
    split = [fact for fact in published if fact.outcome is Outcome.SPLIT]
    if clear and split:
        level = 1
    elif split:
        level = max(0, level - 1)
    elif any(not fact.historical for fact in clear):
        level = min(2, level + 1)
    elif clear:
        level = max(1, level)
    return (State.WILL_SPLIT, State.BORDERLINE, State.CLEAR)[level]


def _verdicts(mixture: Mixture, temperature_c: float) -> tuple[bool, bool | None]:
    original = _voted(Model.ORIGINAL, [mixture], temperature_c)[0]
    if not _has_vote(Model.DORTMUND, mixture):
        return original, None
    return original, _voted(Model.DORTMUND, [mixture], temperature_c)[0]


def model_states(mixtures: Sequence[Mixture], temperature_c: float = 20.0) -> list[State]:
    """Return the state of each mixture by the models alone, without published facts."""
    original = _voted(Model.ORIGINAL, mixtures, temperature_c)
    dortmund = _voted(Model.DORTMUND, mixtures, temperature_c)
    return [combined_state(one, other, ()) for one, other in zip(original, dortmund, strict=True)]


def _is_withheld(mixture: Mixture) -> bool:
    """Whether too much of a mixture is outside the model to give an answer."""
    if mixture.modelled_ml <= 0.0:
        return True
    return mixture.outside_ml / mixture.total_ml > MOST_OUTSIDE_SHARE


def state_of(mixture: Mixture, temperature_c: float = 20.0) -> State:
    """Return only the state, without limits and remedies, as a quick answer.

    Otherwise as `judge`; raises OutOfRangeError outside 0 to 40 °C.
    """
    if _is_withheld(mixture):
        return State.WITHHELD
    return combined_state(*_verdicts(mixture, temperature_c), facts_about(mixture, temperature_c))


# --- limits along one line of change ----------------------------------------


def _limit(
    make: Callable[[float], Mixture], values: Sequence[float], model: Model, temperature_c: float
) -> float | None:
    """Return the first of `values` from which every mixture stays clear, or None.

    `values` lead from the worse to the better side. The step in which the verdict changes is searched again
    in finer steps.
    """
    first = _first_of_the_clear(make, values, model, temperature_c)
    if first is None or first == 0:
        return None if first is None else values[0]
    worse, better = values[first - 1], values[first]
    fine = [worse + (better - worse) * i / _FINE_STEPS for i in range(1, _FINE_STEPS + 1)]
    within = _first_of_the_clear(make, fine, model, temperature_c)
    return better if within is None else fine[within]


def _first_of_the_clear(
    make: Callable[[float], Mixture], values: Sequence[float], model: Model, temperature_c: float
) -> int | None:
    """Return the index after the last value that splits, or None when the last one still does."""
    verdicts = _voted(model, [make(value) for value in values], temperature_c)
    split = [i for i, clear in enumerate(verdicts) if not clear]
    first = split[-1] + 1 if split else 0
    return None if first == len(values) else first


def _band(make: Callable[[float], Mixture], values: Sequence[float], temperature_c: float) -> Band:
    limits = {model: _limit(make, values, model, temperature_c) for model in Model}
    return Band(limits[Model.ORIGINAL], limits[Model.DORTMUND])


def lowest_strength(mixture: Mixture, temperature_c: float = 20.0) -> Band:
    """Return the weakest spirit, whole % vol, with which this ratio stays clear.

    None where not even absolute alcohol clears it, or without spirit. Raises OutOfRangeError outside 0 to
    40 °C.
    """
    if mixture.spirit_ml == 0.0:
        return Band(None, None)
    band = _band(
        lambda percent: replace(mixture, spirit_percent=percent),
        [100.0 * i / _STEPS for i in range(_STEPS + 1)],
        temperature_c,
    )
    # To whole percents: a spirit's label and the models know no more.
    return Band(
        *(
            None if limit is None else float(math.ceil(round(limit, 6)))
            for limit in (band.original, band.dortmund)
        )
    )


def largest_oil_shares(mixture: Mixture, temperature_c: float = 20.0) -> Band:
    """Return the largest share of oil by volume, 0 to 1, that stays clear with the rest unchanged.

    0 if even a trace splits; the largest share tried, 0.99, if any amount stays clear. `mixture` needs
    something besides its oil. Raises OutOfRangeError outside 0 to 40 °C.
    """
    rest = mixture.modelled_ml - mixture.oil_ml
    # Shares from nearly all oil down to a trace, more closely spaced at the small end.
    shares = [MOST_OIL_SHARE * (i / _STEPS) ** 2 for i in range(_STEPS, 0, -1)]
    band = _band(lambda share: replace(mixture, oil_ml=rest * share / (1.0 - share)), shares, temperature_c)
    return Band(band.original or 0.0, band.dortmund or 0.0)


def _largest_oil(mixture: Mixture, temperature_c: float) -> tuple[Band, Band]:
    """Return the largest share of oil in % and in mL, with the rest unchanged; None for any amount."""
    rest = mixture.modelled_ml - mixture.oil_ml
    if rest == 0.0:
        return Band(None, None), Band(None, None)
    band = largest_oil_shares(mixture, temperature_c)
    limits = [None if limit == MOST_OIL_SHARE else limit for limit in (band.original, band.dortmund)]
    percents = [None if limit is None else down(100.0 * limit) for limit in limits]
    volumes = [None if limit is None else down(rest * limit / (1.0 - limit)) for limit in limits]
    return Band(*percents), Band(*volumes)


# --- remedies ----------------------------------------------------------------

_LESS: tuple[tuple[MendKind, str], ...] = (
    (MendKind.LESS_GLYCOL, "glycol_ml"),
    (MendKind.LESS_GLYCEROL, "glycerol_ml"),
    (MendKind.LESS_WATER, "water_ml"),
    (MendKind.LESS_CARRIER, "carrier_ml"),
)
_Change = tuple[MendKind, Mixture, float]


def _with(mixture: Mixture, part: str, volume_ml: float) -> Mixture:
    changed: dict[str, Any] = {part: volume_ml}
    return replace(mixture, **changed)


def _more_spirit(mixture: Mixture, temperature_c: float) -> list[_Change]:
    base = mixture
    if mixture.spirit_ml == 0.0:
        base = replace(mixture, spirit_percent=NEUTRAL_SPIRIT_PERCENT)
    start, most = mixture.spirit_ml, _MOST_SPIRIT_FACTOR * mixture.modelled_ml
    # Growing steps: the first millilitres matter as much as the last litres.
    values = [start + (most - start) * (1.13**i - 1.0) / (1.13**_STEPS - 1.0) for i in range(1, _STEPS + 1)]
    band = _band(lambda volume: replace(base, spirit_ml=volume), values, temperature_c)
    found = {up(limit) for limit in (band.original, band.dortmund) if limit is not None}
    return [(MendKind.MORE_SPIRIT, replace(base, spirit_ml=ml), ml - mixture.spirit_ml) for ml in found]


def _less_oil(mixture: Mixture, largest: Band) -> list[_Change]:
    found = {limit for limit in (largest.original, largest.dortmund) if limit}
    return [
        (MendKind.LESS_OIL, replace(mixture, oil_ml=ml), ml - mixture.oil_ml)
        for ml in found
        if ml < mixture.oil_ml
    ]


def _less(mixture: Mixture, kind: MendKind, part: str, temperature_c: float) -> list[_Change]:
    present: float = getattr(mixture, part)
    if present == 0.0 or mixture.modelled_ml - present in {0.0, mixture.oil_ml, mixture.carrier_ml}:
        return []  # absent, or nothing else would be left
    values = [present * (i / _STEPS) ** 1.5 for i in range(_STEPS - 1, -1, -1)]
    band = _band(lambda volume: _with(mixture, part, volume), values, temperature_c)
    found = {down(limit) for limit in (band.original, band.dortmund) if limit is not None}
    # The remainder must be measurable; otherwise the ingredient is left out altogether.
    kept = {0.0 if volume < _WORTH_KEEPING * present else volume for volume in found}
    return [(kind, _with(mixture, part, volume), volume - present) for volume in kept]


def _stronger(mixture: Mixture, lowest: Band) -> list[_Change]:
    found = {limit for limit in (lowest.original, lowest.dortmund) if limit is not None}
    return [
        (MendKind.STRONGER_SPIRIT, replace(mixture, spirit_percent=limit), 0.0)
        for limit in found
        if mixture.spirit_percent < limit <= STRONGEST_SPIRIT_PERCENT
    ]


def _keeps_oil(before: Mixture, after: Mixture) -> bool:
    """Whether enough of the share of oil is left for the change to be a mend."""
    if before.oil_ml == 0.0:
        return True
    return after.oil_ml / after.modelled_ml >= _KEPT_OIL * before.oil_ml / before.modelled_ml


def _mends(
    mixture: Mixture, state: State, lowest: Band, largest_oil: Band, temperature_c: float
) -> tuple[Mend, ...]:
    """Return every single change that improves the state, best state first, then smallest change."""
    changes = _more_spirit(mixture, temperature_c) + _stronger(mixture, lowest)
    changes += _less_oil(mixture, largest_oil)
    for kind, part in _LESS:
        changes += _less(mixture, kind, part, temperature_c)
    order = (State.WILL_SPLIT, State.BORDERLINE, State.CLEAR)
    mends = [
        Mend(kind, changed, change_ml, state_of(changed, temperature_c))
        for kind, changed, change_ml in changes
    ]
    better = [
        mend
        for mend in mends
        if order.index(mend.reaches) > order.index(state) and _keeps_oil(mixture, mend.mixture)
    ]
    best: dict[tuple[MendKind, State], Mend] = {}
    for mend in sorted(better, key=lambda m: (abs(m.change_ml), m.mixture.spirit_percent)):
        best.setdefault((mend.kind, mend.reaches), mend)
    return tuple(
        sorted(
            best.values(),
            key=lambda m: (-order.index(m.reaches), m.kind is MendKind.STRONGER_SPIRIT, abs(m.change_ml)),
        )
    )


# --- the whole answer -------------------------------------------------------


def judge(mixture: Mixture, temperature_c: float = 20.0) -> Clearing:
    """Return whether a mixture stays clear, its limits, and possible remedies.

    Uses both UNIFAC models with the tangent-plane test, together with published data; results are cached for
    mixtures equal to 0.001 mL and 0.01 % vol. An estimate, never a promise. Raises OutOfRangeError for an
    empty mixture or outside 0 to 40 °C.
    """
    if mixture.modelled_ml <= 0.0 and not mixture.outside:
        raise OutOfRangeError("total volume", mixture.total_ml, 0.0, None, "mL")
    return _judge(mixture.rounded(), round(temperature_c, 1))


@lru_cache(maxsize=1024)
def _judge(mixture: Mixture, temperature_c: float) -> Clearing:
    nothing = Band(None, None)
    if _is_withheld(mixture):
        return Clearing(
            mixture=mixture,
            temperature_c=temperature_c,
            state=State.WITHHELD,
            partial=False,
            outside=mixture.outside,
            original_clear=None,
            dortmund_clear=None,
            published=(),
            lowest_strength=nothing,
            largest_oil_percent=nothing,
            largest_oil_ml=nothing,
            mends=(),
        )
    original, dortmund = _verdicts(mixture, temperature_c)
    published = facts_about(mixture, temperature_c)
    state = combined_state(original, dortmund, published)
    lowest = lowest_strength(mixture, temperature_c)
    percent, volume = _largest_oil(mixture, temperature_c) if mixture.oil_ml > 0.0 else (nothing, nothing)
    return Clearing(
        mixture=mixture,
        temperature_c=temperature_c,
        state=state,
        partial=bool(mixture.outside),
        outside=mixture.outside,
        original_clear=original,
        dortmund_clear=dortmund,
        published=published,
        lowest_strength=lowest,
        largest_oil_percent=percent,
        largest_oil_ml=volume,
        mends=() if state is State.CLEAR else _mends(mixture, state, lowest, volume, temperature_c),
    )
