"""The regions of a ternary map: where a mix of oil, glycol and everything else stays clear or splits.

The third part is the spirit as bought, with whatever else the formula holds (water, glycerol, carrier) in the
formula's own ratio to it. The map may be cut off at a share of that part, so that its top is enlarged.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import dataclass, replace
from functools import lru_cache

from bot.trade.liquids.clearing.estimate import NEUTRAL_SPIRIT_PERCENT, model_states
from bot.trade.liquids.clearing.mend import State
from bot.trade.liquids.clearing.mixture import Mixture

STEPS = 64  # from corner to corner
_STRIDE = 4  # of the first look; cells whose corners differ are looked at step by step
_CUTS = (0.6, 0.4, 0.2, 0.0)
_MARGIN = 0.06  # of the third part, below the lowest point that must be on the map

Node = tuple[int, int]  # steps of oil, steps of glycol


@dataclass(frozen=True, slots=True)
class Regions:
    """The state at each node (i, j): i / STEPS oil and j / STEPS glycol of the part of the map shown.

    `cut` is the share of the third part along the bottom edge, 0 for the whole triangle.
    """

    cut: float
    states: dict[Node, State]

    def place(self, mixture: Mixture) -> tuple[float, float]:
        """Return where a mixture lies, in steps of oil and of glycol."""
        shown = STEPS / (1.0 - self.cut)
        total = mixture.modelled_ml
        return shown * mixture.oil_ml / total, shown * mixture.glycol_ml / total


def cut_for(mixtures: Iterable[Mixture]) -> float:
    """Return the highest cut that leaves these mixtures on the map."""
    rests = [1.0 - (one.oil_ml + one.glycol_ml) / one.modelled_ml for one in mixtures]
    lowest = min(rests, default=1.0)
    return next((cut for cut in _CUTS if lowest >= cut + _MARGIN), 0.0)


def on_map(mixture: Mixture, of: Mixture) -> bool:
    """Whether a mixture has the same third part as the formula of a map."""
    one, other = _third(mixture), _third(of)
    return all(
        abs(getattr(one, name) - getattr(other, name)) < _SAME
        for name in ("carrier_ml", "glycerol_ml", "water_ml", "spirit_percent")
    )


_SAME = 0.5  # % of the third part, and % vol: no difference on a picture


def _third(mixture: Mixture) -> Mixture:
    """Return 100 mL of everything but oil and glycol, in the mixture's ratio; spirit if there is nothing."""
    total = mixture.modelled_ml - mixture.oil_ml - mixture.glycol_ml
    if total <= 0.0:
        return Mixture(spirit_ml=100.0, spirit_percent=NEUTRAL_SPIRIT_PERCENT)
    names = ("carrier_ml", "glycerol_ml", "water_ml", "spirit_ml")
    parts = {name: 100.0 * getattr(mixture, name) / total for name in names}
    return Mixture(spirit_percent=mixture.spirit_percent, **parts)


@lru_cache(maxsize=64)
def _regions(third: Mixture, cut: float, temperature_c: float) -> Regions:
    make = _maker(third, cut)
    states: dict[Node, State] = {}

    def look(nodes: Iterable[Node]) -> None:
        new = [node for node in nodes if node not in states and sum(node) <= STEPS]
        found = model_states([make(*node) for node in new], temperature_c) if new else []
        states.update(zip(new, found, strict=True))

    coarse = range(0, STEPS + 1, _STRIDE)
    look([(i, j) for i in coarse for j in coarse])
    mixed = [cell for cell in ((i, j) for i in coarse[:-1] for j in coarse[:-1]) if _is_mixed(cell, states)]
    look({node for cell in mixed for node in _inside(cell)})
    for i in coarse[:-1]:
        for j in coarse[:-1]:
            if i + j < STEPS:
                for node in _inside((i, j)):
                    if sum(node) <= STEPS:
                        states.setdefault(node, states[i, j])
    return Regions(cut, states)


def regions(mixture: Mixture, cut: float, temperature_c: float) -> Regions:
    """Return the map around a mixture by the models alone. Raises OutOfRangeError outside 0 to 40 °C."""
    return _regions(_third(mixture).rounded(), cut, round(temperature_c, 1))


def _maker(third: Mixture, cut: float) -> Callable[[int, int], Mixture]:
    def make(oil: int, glycol: int) -> Mixture:
        oil_ml, glycol_ml = (100.0 * (1.0 - cut) * steps / STEPS for steps in (oil, glycol))
        share = max(0.0, 100.0 - oil_ml - glycol_ml) / 100.0
        parts = {
            name: share * getattr(third, name)
            for name in ("carrier_ml", "glycerol_ml", "water_ml", "spirit_ml")
        }
        return replace(third, oil_ml=oil_ml, glycol_ml=glycol_ml, **parts)

    return make


def _inside(cell: Node) -> list[Node]:
    return [(cell[0] + i, cell[1] + j) for i in range(_STRIDE + 1) for j in range(_STRIDE + 1)]


def _is_mixed(cell: Node, states: dict[Node, State]) -> bool:
    """Whether the corners of a cell on the map differ."""
    corners = [(cell[0] + i, cell[1] + j) for i in (0, _STRIDE) for j in (0, _STRIDE)]
    return len({states[one] for one in corners if one in states}) > 1
