"""Round amounts to the marks of the bar's tools, and report the effect on the ratio.

Rounding is to the nearest mark of the smallest tool that holds the amount; a non-zero amount never rounds to
zero. Where that changes the ratio too much, a finer tool is filled a few times, or measures the rest.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction
from itertools import count
from math import ceil, floor
from types import MappingProxyType
from typing import Final

from bot.trade.errors import OutOfRangeError
from bot.trade.formulas.measures import Dimension
from bot.trade.formulas.recipe import Line, Scaled
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
SPOONS = N_("measuring spoons")
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
            Tool(SPOONS, _US_TEASPOON / 4, _US_TEASPOON * 3),
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
    (None for pieces, and where no tool fits), filled `fills` times; `rest_tool` measures the last `rest` of
    the amount where the marks of the first are too wide apart. `deviation_share` is amount / exact - 1. With
    `too_small_to_measure`, no tool has a mark low enough, and `amount` is exact.
    """

    name: str
    exact: Fraction
    amount: Fraction
    dimension: Dimension
    tool: str | None
    fills: int
    deviation_share: Fraction
    too_small_to_measure: bool = False
    rest_tool: str | None = None
    rest: Fraction = Fraction(0)


@dataclass(frozen=True, slots=True)
class Rounded:
    """A recipe as measured with the tools.

    `total_ml` is the sum of the rounded volumes. `largest_ratio_shift` is the largest change in the ratio of
    any two ingredients: 0.02 means that one ratio is 2 % larger than the recipe's.
    """

    lines: tuple[RoundedLine, ...]
    total_ml: Fraction
    largest_ratio_shift: Fraction

    @property
    def keeps_ratio(self) -> bool:
        """Whether every ratio is within 3 % of the recipe's; otherwise it should be weighed."""
        return self.largest_ratio_shift <= MOST_RATIO_SHIFT


# The largest change of a ratio that a recipe may take from its tools: common practice, no source.
MOST_RATIO_SHIFT = Fraction(3, 100)
# How far off one amount may be, tried in turn; two that are 1.4 % off in opposite directions still keep it.
_MOST_DEVIATIONS = (Fraction(2, 100), Fraction(16, 1000), Fraction(14, 1000))
_MOST_FILLS = 3
# How much more of a recipe is made, step by step, so that rounding leaves enough. Common practice, no source.
_MORE_SHARE = Fraction(1, 500)
_STEPS_FOR_RATIO = 26
_COARSE_STEPS = 5


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
    usual = lines
    for most in _MOST_DEVIATIONS:
        if _ratio_shift(lines) <= MOST_RATIO_SHIFT:
            break
        lines = tuple(_refined(line, measures[line.dimension], most) for line in usual)
    return Rounded(
        lines=lines,
        total_ml=sum((line.amount for line in lines if line.dimension is Dimension.VOLUME), Fraction(0)),
        largest_ratio_shift=_ratio_shift(lines),
    )


def round_to_enough(
    scaled: Scaled, tools: Iterable[Tool | Scale], is_enough: Callable[[Rounded], bool]
) -> Rounded:
    """Return the recipe rounded to the tools so that it is enough, made a little larger where it must be.

    Of the recipe and those up to 5 % larger, the first that is enough and keeps the ratio; without one, the
    first that is enough in steps of 1 %. Half as much more is always enough, because rounding takes a third
    at most.
    """
    measures = tuple(tools)

    def larger(step: int) -> Rounded:
        more = 1 + step * _MORE_SHARE
        lines = tuple(Line(line.name, line.amount * more, line.dimension) for line in scaled.lines)
        return round_to_tools(replace(scaled, lines=lines), measures)

    near = filter(is_enough, map(larger, range(_STEPS_FOR_RATIO)))
    keeping = next((one for one in near if one.keeps_ratio), None)
    return keeping or next(filter(is_enough, map(larger, count(0, _COARSE_STEPS))))


def _ratio_shift(lines: Sequence[RoundedLine]) -> Fraction:
    changes = [1 + line.deviation_share for line in lines if line.exact]
    return max(changes) / min(changes) - 1 if changes else Fraction(0)


def _refined(line: RoundedLine, by_size: Sequence[_Measure], most: Fraction) -> RoundedLine:
    """Return a line measured more closely: a finer tool filled a few times, or one that measures the rest."""
    if line.tool is None or abs(line.deviation_share) <= most:
        return line
    alone = [
        replace(line, amount=amount, tool=one.name, fills=fills, deviation_share=amount / line.exact - 1)
        for one in by_size
        if (amount := _nearest_mark(line.exact, one)) and (fills := ceil(amount / one.up_to)) <= _MOST_FILLS
    ]
    together = []
    for coarse in by_size:
        first = floor(line.exact / coarse.step) * coarse.step
        if not 0 < first <= _MOST_FILLS * coarse.up_to:
            continue
        for fine in by_size:
            rest = _nearest_mark(line.exact - first, fine)
            if fine.step < coarse.step and 0 < rest <= fine.up_to:
                together.append(
                    replace(
                        line,
                        amount=first + rest,
                        tool=coarse.name,
                        fills=ceil(first / coarse.up_to),
                        deviation_share=(first + rest) / line.exact - 1,
                        rest_tool=fine.name,
                        rest=rest,
                    )
                )
    found = [line]
    for ways in (alone, together):
        found += sorted(ways, key=lambda one: (one.fills, abs(one.deviation_share)))
    close = [one for one in found if abs(one.deviation_share) <= most]
    return close[0] if close else min(found, key=lambda one: abs(one.deviation_share))


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
