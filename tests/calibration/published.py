"""Published clear and split mixes as held-out points: each is answered from the others of its oil."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from bot.trade.liquids.clearing.estimate import model_states
from bot.trade.liquids.clearing.evidence import Look, belief, margin_of
from bot.trade.liquids.clearing.mend import State
from bot.trade.liquids.clearing.miscibility import Outcome
from bot.trade.liquids.clearing.mixture import Mixture
from tests.outside.check import Mark
from tests.outside.checks_clearing import DISSOLVES

ROOM_C = 20.0


@dataclass(frozen=True)
class Point:
    """One published mix: the oil it is about, the mix, what was seen, and the source."""

    oil: str
    mixture: Mixture
    clear: bool
    source: str
    mark: Mark


def _in_spirit(oil: str, volumes: float, percent: float) -> Mixture:
    return Mixture(oil_ml=1.0, spirit_ml=volumes, spirit_percent=percent, oil_name=oil)


_PHARMACOGRAPHIA = "Flückiger and Hanbury, Pharmacographia, 1879: an equal weight of SG 0.830 is turbid"
_CODEX = "Food Chemicals Codex, Lemon Oil, Distilled: not in glycol or glycerol"

POINTS = (
    *(
        Point(oil, _in_spirit(oil, volumes, percent), True, source, Mark.READ)
        for oil, volumes, percent, source, _alone in DISSOLVES
    ),
    Point("lemon oil", _in_spirit("lemon oil", 1.0, 91.0), False, _PHARMACOGRAPHIA, Mark.READ),
    Point("orange oil", _in_spirit("orange oil", 6.0, 84.8), False,
          "A Treatise on Beverages, 1888: needs 8 to 10 parts of SG 0.850", Mark.READ),
    *(
        Point("lemon oil", Mixture(oil_ml=share, glycol_ml=100 - share), False, _CODEX, Mark.READ)
        for share in (10.0, 33.0)
    ),
    Point("lemon oil", Mixture(oil_ml=10.0, glycerol_ml=90.0), False, _CODEX, Mark.READ),
    *(
        Point("limonene", Mixture(oil_ml=share, water_ml=100 - share), False,
              "Merck Index: limonene is practically insoluble in water", Mark.READ)
        for share in (0.1, 1.0)
    ),
)  # fmt: skip


def alone(point: Point) -> float:
    """Return the models' own answer as a probability: clear 1, borderline a half, split 0."""
    return {State.CLEAR: 1.0, State.BORDERLINE: 0.5}.get(model_states([point.mixture])[0], 0.0)


def _seen(point: Point) -> Outcome:
    return Outcome.CLEAR if point.clear else Outcome.SPLIT


def held_out(point: Point) -> float:
    """Return the probability of clear from the other points of the same oil."""
    looks = [
        Look(
            margin_of(one.mixture, ROOM_C),
            Outcome.CLEAR if one.clear else Outcome.SPLIT,
            one.mixture,
            one.source,
        )
        for one in POINTS
        if one is not point and one.oil == point.oil
    ]
    return belief(point.mixture, ROOM_C, looks, point.source, point.mixture).clear


def brier(answer: Callable[[Point], float]) -> float:
    """Return the mean squared error of the probabilities; 0 is best, 0.25 is a coin."""
    return sum((answer(one) - one.clear) ** 2 for one in POINTS) / len(POINTS)
