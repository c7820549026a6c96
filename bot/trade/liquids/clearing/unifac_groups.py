"""The published parameters of the two UNIFAC models, read from a file on first use.

Original UNIFAC: Fredenslund, Jones and Prausnitz 1975 and its revisions. Modified UNIFAC: Gmehling and
others, Dortmund, as of 2016. Both as the library thermo has them; `tests/unifac_tables.py` writes the file.
"""

from __future__ import annotations

import json
import math
from dataclasses import dataclass
from functools import cache
from pathlib import Path
from typing import Any

from bot.trade.errors import TradeError
from bot.trade.liquids.clearing.substances import Model

FILE = Path(__file__).with_name("unifac.json")


@dataclass
class MissingParameterError(TradeError):
    """The model has no parameters for two groups, so it cannot describe mixtures of both."""

    model: Model
    group: int
    other_group: int


@dataclass(frozen=True, slots=True)
class Subgroup:
    """A subgroup's main group, relative volume R and relative surface Q."""

    main: int
    volume: float
    surface: float


@cache
def _tables() -> dict[str, dict[str, dict[str, Any]]]:
    return json.loads(FILE.read_text("utf-8"))  # type: ignore[no-any-return]


def subgroup(model: Model, number: int) -> Subgroup:
    """Return a subgroup by its number. Raises KeyError for one that the model does not have."""
    return Subgroup(*_tables()[model.name.casefold()]["subgroups"][str(number)])


def interaction(model: Model, number: int, other: int, kelvin: float) -> float:
    """Return psi, the interaction of one subgroup with another: exp(-(a + b T + c T^2) / T).

    1 between subgroups of one main group. Raises MissingParameterError for a pair without parameters, because
    zero would mean that the two are alike.
    """
    main, other_main = subgroup(model, number).main, subgroup(model, other).main
    if main == other_main:
        return 1.0
    found = _tables()[model.name.casefold()]["interactions"].get(str(main), {}).get(str(other_main))
    if found is None:
        raise MissingParameterError(model, number, other)
    a, b, c = found
    return math.exp(-(a / kelvin + b + c * kelvin))
