"""Designs to order: oil and spirit against published solubilities, never bolder than these."""

from __future__ import annotations

from functools import partial

from bot.trade.design import design
from bot.trade.design.design import Bounds, Shelf
from tests.outside.check import Check, Mark

_ROOM = Bounds(20.0)
# Oil, volumes of spirit to one of it, % vol of the spirit, source: published as dissolving.
_DISSOLVES = (
    ("lemon oil", 3.0, 95.0, "USP 28, USP 35 and Merck Index, Lemon Oil: in 3 volumes of alcohol"),
    ("limonene", 5.0, 95.0, "PMC7330110, table 1: 5 volumes of alcohol"),
)


def _most_oil(percent: float) -> float:
    return float(design.most_oil([Shelf(percent)], _ROOM))


CHECKS: list[Check] = [
    *(
        Check(
            "design",
            f"most oil designed with {percent:g} % spirit, no more than {oil} 1 in {volumes:g}",
            source,
            Mark.READ,
            (1.0, 100.0 / (1.0 + volumes)),
            partial(_most_oil, percent),
            "% of the volume",
        )
        for oil, volumes, percent, source in _DISSOLVES
    ),
]
