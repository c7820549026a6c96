"""Round amounts to the marks of the bar's tools, and report the effect on the ratio.

Rounding is to the nearest mark of the smallest tool that holds the amount; a non-zero amount never rounds to
zero.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction
from math import ceil
from types import MappingProxyType
from typing import Final

from bot.trade.errors import OutOfRangeError
from bot.trade.formulas.measures import Dimension
from bot.trade.formulas.recipe import Scaled
from bot.trade.words import N_


def _check(step: Fraction, up_to: Fraction, unit: str) -> None:
    if step <= 0:
        raise OutOfRangeError("step of a tool", float(step), 0, None, unit)
    if up_to < step:
        raise OutOfRangeError("capacity of a tool", float(up_to), float(step), None, unit)


@dataclass(frozen=True, slots=True)
class Tool:
    """A measure of volume with marks every `step_ml`, the last at `up_to_ml`.

    Raises OutOfRangeError if it has no mark.
    """

    name: str
    step_ml: Fraction
    up_to_ml: Fraction

    def __post_init__(self) -> None:
        _check(self.step_ml, self.up_to_ml, "mL")


@dataclass(frozen=True, slots=True)
class Scale:
    """A balance that shows every `step_g` and weighs `up_to_g` at once.

    Raises OutOfRangeError if it shows nothing.
    """

    name: str
    step_g: Fraction
    up_to_g: Fraction

    def __post_init__(self) -> None:
        _check(self.step_g, self.up_to_g, "g")


_US_FLUID_OUNCE = Fraction("29.5735295625")  # mL; NIST Handbook 44, Appendix C
_US_TEASPOON = _US_FLUID_OUNCE / 6
_SCALES = (
    Scale(N_("fine scale"), Fraction("0.01"), Fraction(100)),
    Scale(N_("kitchen scale"), Fraction(1), Fraction(5000)),
)

DEFAULT_TOOLS: Final[Mapping[str, tuple[Tool | Scale, ...]]] = MappingProxyType(
    {
        "metric": (
            Tool(N_("1 ml syringe"), Fraction("0.05"), Fraction(1)),
            Tool(N_("5 ml syringe"), Fraction("0.2"), Fraction(5)),
            Tool(N_("10 ml syringe"), Fraction("0.5"), Fraction(10)),
            Tool(N_("50 ml cylinder"), Fraction("0.5"), Fraction(50)),
            Tool(N_("100 ml cylinder"), Fraction(1), Fraction(100)),
            Tool(N_("250 ml cylinder"), Fraction(2), Fraction(250)),
            Tool(N_("500 ml cylinder"), Fraction(5), Fraction(500)),
            Tool(N_("1 l cylinder"), Fraction(10), Fraction(1000)),
            *_SCALES,
        ),
        "us": (
            Tool(N_("1 ml syringe"), Fraction("0.05"), Fraction(1)),
            Tool(N_("measuring spoons"), _US_TEASPOON / 4, _US_TEASPOON * 3),
            Tool(N_("jigger"), _US_FLUID_OUNCE / 4, _US_FLUID_OUNCE * 2),
            Tool(N_("measuring cup"), _US_FLUID_OUNCE / 2, _US_FLUID_OUNCE * 8),
            Tool(N_("quart jug"), _US_FLUID_OUNCE, _US_FLUID_OUNCE * 32),
            *_SCALES,
        ),
    }
)
"""Tools assumed until the bar lists its own: common practice, no source."""


@dataclass(frozen=True, slots=True)
class RoundedLine:
    """One ingredient as measured with the tools.

    `amount` is the rounded amount and `exact` the true one, in mL, g or pieces; `tool` is the tool's name
    (None for pieces, and where no tool fits), filled `fills` times. `deviation_share` is amount / exact - 1.
    With `too_small_to_measure`, no tool has a mark low enough, and `amount` is exact.
    """

    name: str
    exact: Fraction
    amount: Fraction
    dimension: Dimension
    tool: str | None
    fills: int
    deviation_share: Fraction
    too_small_to_measure: bool = False


@dataclass(frozen=True, slots=True)
class Rounded:
    """A recipe as measured with the tools.

    `total_ml` is the sum of the rounded volumes. `largest_ratio_shift` is the largest change in the ratio of
    any two ingredients: 0.02 means that one ratio is 2 % larger than the recipe's.
    """

    lines: tuple[RoundedLine, ...]
    total_ml: Fraction
    largest_ratio_shift: Fraction


@dataclass(frozen=True, slots=True)
class _Measure:
    """A tool for volume or mass."""

    name: str | None
    step: Fraction
    up_to: Fraction


# Fruit and other pieces are halved, not cut finer.
_BY_PIECE = _Measure(None, Fraction(1, 2), Fraction(10**12))


def round_to_tools(scaled: Scaled, tools: Iterable[Tool | Scale]) -> Rounded:
    """Return the scaled recipe rounded to the tools, volumes to `Tool`s and masses to `Scale`s.

    The smallest tool that holds an amount measures it; the largest is filled several times. Where that would
    round an amount to nothing, the tool with the finest marks is used instead. Amounts without a tool stay
    exact.
    """
    measures: dict[Dimension, list[_Measure]] = {
        Dimension.VOLUME: [],
        Dimension.MASS: [],
        Dimension.COUNT: [_BY_PIECE],
    }
    for tool in tools:
        if isinstance(tool, Tool):
            measures[Dimension.VOLUME].append(_Measure(tool.name, tool.step_ml, tool.up_to_ml))
        else:
            measures[Dimension.MASS].append(_Measure(tool.name, tool.step_g, tool.up_to_g))
    for of_one_kind in measures.values():
        of_one_kind.sort(key=lambda measure: (measure.up_to, measure.step))
    lines = tuple(
        _rounded(line.name, line.amount, line.dimension, measures[line.dimension]) for line in scaled.lines
    )
    changes = [1 + line.deviation_share for line in lines if line.exact]
    return Rounded(
        lines=lines,
        total_ml=sum((line.amount for line in lines if line.dimension is Dimension.VOLUME), Fraction(0)),
        largest_ratio_shift=max(changes) / min(changes) - 1 if changes else Fraction(0),
    )


def _rounded(name: str, exact: Fraction, kind: Dimension, by_size: Sequence[_Measure]) -> RoundedLine:
    if not by_size or not exact:
        return RoundedLine(name, exact, exact, kind, None, 0, Fraction(0))
    best = next((measure for measure in by_size if measure.up_to >= exact), by_size[-1])
    amount = _nearest_mark(exact, best)
    if not amount:
        best = min(by_size, key=lambda measure: (measure.step, measure.up_to))
        amount = _nearest_mark(exact, best)
    if not amount:
        return RoundedLine(name, exact, exact, kind, None, 0, Fraction(0), too_small_to_measure=True)
    fills = 0 if best is _BY_PIECE else ceil(amount / best.up_to)
    return RoundedLine(name, exact, amount, kind, best.name, fills, amount / exact - 1)


def _nearest_mark(exact: Fraction, measure: _Measure) -> Fraction:
    """Return the nearest amount that full tools and one mark add up to; halves go to the even mark."""
    full, rest = divmod(exact, measure.up_to)
    mark = round(rest / measure.step) * measure.step
    # The last mark is the capacity, even if that is not a whole number of steps.
    return full * measure.up_to + min(mark, measure.up_to)
