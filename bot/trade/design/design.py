"""Find the shares of oil, glycol and spirit of a spray that stays clear, on a grid of whole percents.

Shares are of the volume poured, temperatures °C, strengths % vol at 20 °C. Two models must both find a mix
clear, with a margin; as for `bot.trade.liquids.clearing` the citrus oil counts as d-limonene.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass, replace

from bot.trade.liquids.clearing import estimate
from bot.trade.liquids.clearing.mend import State
from bot.trade.liquids.clearing.mixture import Mixture

# The margin: clear with a tenth more oil and with spirit one % vol weaker. Common practice, no source.
MORE_OIL = 1.1
WEAKER_PERCENT = 1.0
# The share of oil without a wish for one, and the bounds of the search, in percent of the volume. Common
# practice, no source.
USUAL_OIL = 10
MOST_OIL, MOST_GLYCOL = 40, 60
# Spirit below this share of the volume would no longer carry the spray.
LEAST_SPIRIT = 25
STRONGEST_PERCENT = estimate.NEUTRAL_SPIRIT_PERCENT


@dataclass(frozen=True, slots=True)
class Shelf:
    """A spirit to pour, % vol, and what a mL of each ingredient costs, in any one money (0 if unknown)."""

    percent: float
    spirit_per_ml: float = 0.0
    oil_per_ml: float = 0.0
    glycol_per_ml: float = 0.0


@dataclass(frozen=True, slots=True)
class Shares:
    """The percent of oil and of glycol in what is poured, the rest spirit, and the shelf that it is from."""

    oil: float
    glycol: float
    shelf: Shelf

    def mixture(self) -> Mixture:
        """Return 100 mL of it."""
        spirit = 100.0 - self.oil - self.glycol
        return Mixture(
            oil_ml=self.oil, glycol_ml=self.glycol, spirit_ml=spirit, spirit_percent=self.shelf.percent
        )

    @property
    def per_ml(self) -> float:
        """The cost of a mL poured."""
        spirit = 100.0 - self.oil - self.glycol
        shelf = self.shelf
        money = self.oil * shelf.oil_per_ml + self.glycol * shelf.glycol_per_ml + spirit * shelf.spirit_per_ml
        return money / 100.0


@dataclass(frozen=True, slots=True)
class Bounds:
    """What every mix must keep to: the coldest temperature, °C, and the most glycol, percent."""

    temperature_c: float
    most_glycol: float = MOST_GLYCOL


def with_margin(mixture: Mixture) -> Mixture:
    """Return a mixture with as much more oil and weaker spirit as it must bear."""
    weaker = max(0.0, mixture.spirit_percent - WEAKER_PERCENT)
    return replace(mixture, oil_ml=mixture.oil_ml * MORE_OIL, spirit_percent=weaker)


def holds(found: Sequence[Shares], bounds: Bounds) -> list[bool]:
    """Return whether each mix is within the bounds, and clear by both models with the margin and without.

    Raises OutOfRangeError outside 0 to 40 °C.
    """
    fits = [_is_within(one, bounds) for one in found]
    asked = [one.mixture() for one, good in zip(found, fits, strict=True) if good]
    if not asked:
        return fits
    states = estimate.model_states([*asked, *map(with_margin, asked)], bounds.temperature_c)
    pairs = zip(states[: len(asked)], states[len(asked) :], strict=True)
    return [good and set(next(pairs)) == {State.CLEAR} for good in fits]


def _is_within(one: Shares, bounds: Bounds) -> bool:
    spirit = 100 - one.oil - one.glycol
    return one.oil >= 0 and 0 <= one.glycol <= bounds.most_glycol and spirit >= LEAST_SPIRIT


def _glycols(bounds: Bounds) -> range:
    return range(int(min(bounds.most_glycol, MOST_GLYCOL)) + 1)


def with_oil(oil: float, shelves: Iterable[Shelf], bounds: Bounds) -> list[Shares]:
    """Return every mix on the grid with this share of oil that holds, for each of the shelves."""
    grid = [Shares(oil, glycol, shelf) for shelf in shelves for glycol in _glycols(bounds)]
    return [one for one, fits in zip(grid, holds(grid, bounds), strict=True) if fits]


def by_hold(found: Iterable[Shares]) -> list[Shares]:
    """Return mixes by the most glycol, which slows the aroma; then by the least cost and strongest spirit."""
    return sorted(found, key=lambda one: (-one.glycol, one.per_ml, -one.shelf.percent))


def by_cost(found: Iterable[Shares]) -> list[Shares]:
    """Return mixes by the least cost; then by the most glycol and the strongest spirit."""
    return sorted(found, key=lambda one: (one.per_ml, -one.glycol, -one.shelf.percent))


def most_oil(shelves: Sequence[Shelf], bounds: Bounds, least_glycol: int = 0) -> int:
    """Return the largest share of oil with which some mix holds, whole percent; 0 if none does.

    `least_glycol` percent of glycol are in it.
    """
    least = min(least_glycol, int(bounds.most_glycol))
    found = _last(lambda oil: [Shares(oil, least, one) for one in shelves], range(1, MOST_OIL + 1), bounds)
    return int(found or 0)


def weakest_spirit(oil: float, bounds: Bounds) -> float | None:
    """Return the weakest spirit, % vol, with which a share of oil holds without glycol; None if none does."""
    steps = [STRONGEST_PERCENT - i / 2 for i in range(2 * 60)]
    return _last(lambda percent: [Shares(oil, 0, Shelf(percent))], steps, bounds)


def mildest_cold(oil: float, shelves: Sequence[Shelf], bounds: Bounds) -> float | None:
    """Return the lowest whole °C, up to 25, at which a share of oil holds without glycol; None if none is."""
    mixes = [Shares(oil, 0, one) for one in shelves]
    for celsius in range(int(bounds.temperature_c) + 1, 26):
        if any(holds(mixes, Bounds(float(celsius), bounds.most_glycol))):
            return float(celsius)
    return None


def _last(make: Callable[[float], list[Shares]], values: Sequence[float], bounds: Bounds) -> float | None:
    """Return the last of values, from the better side on, up to which some mix holds; None if none does."""
    grid = [(value, one) for value in values for one in make(value)]
    fits = dict.fromkeys(values, False)
    for (value, _one), good in zip(grid, holds([one for _value, one in grid], bounds), strict=True):
        fits[value] |= good
    best = None
    for value in values:
        if not fits[value]:
            break
        best = value
    return best
