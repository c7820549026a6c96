"""Tests of rounding to tools: nearest mark, smallest tool, never to zero, and the effect on the ratio."""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from bot.trade.errors import OutOfRangeError
from bot.trade.formulas.amounts import ByFactor, ByTotal, Line, Recipe, scale
from bot.trade.formulas.measures import Dimension
from bot.trade.formulas.tools import (
    DEFAULT_TOOLS,
    Rounded,
    RoundedLine,
    Scale,
    Tool,
    round_to_enough,
    round_to_tools,
)

VOLUME, MASS, COUNT = Dimension.VOLUME, Dimension.MASS, Dimension.COUNT

SYRINGE = Tool("syringe", Fraction("0.5"), Fraction(10))
CYLINDER = Tool("cylinder", Fraction(2), Fraction(100))
JUG = Tool("jug", Fraction(250), Fraction(1000))
BALANCE = Scale("balance", Fraction("0.1"), Fraction(200))


def rounded_line(
    amount: str, dimension: Dimension = VOLUME, tools: tuple[Tool | Scale, ...] = (CYLINDER, SYRINGE, BALANCE)
) -> RoundedLine:
    scaled = scale(Recipe((Line("x", Fraction(amount), dimension),)), ByFactor(Fraction(1)))
    return round_to_tools(scaled, tools).lines[0]


@pytest.mark.parametrize(
    ("amount", "rounded", "tool", "fills"),
    [
        ("3.2", "3", "syringe", 1),
        ("3.3", "3.5", "syringe", 1),
        ("3.25", "3", "syringe", 1),
        ("3.75", "4", "syringe", 1),
        ("10", "10", "syringe", 1),
        ("10.1", "10", "cylinder", 1),
        ("36.5", "36", "cylinder", 1),
        ("37.1", "38", "cylinder", 1),
        ("100", "100", "cylinder", 1),
        ("237", "236", "cylinder", 3),
        ("299.5", "300", "cylinder", 3),
        ("300", "300", "cylinder", 3),
    ],
)
def test_nearest_mark_of_the_smallest_tool_that_holds_it(
    amount: str, rounded: str, tool: str, fills: int
) -> None:
    line = rounded_line(amount)
    assert (line.amount, line.tool, line.fills) == (Fraction(rounded), tool, fills)
    assert line.exact == Fraction(amount)
    assert line.deviation_share == line.amount / line.exact - 1
    assert not line.too_small_to_measure


def test_an_amount_is_never_rounded_to_nothing() -> None:
    line = rounded_line("0.1")
    assert line.too_small_to_measure
    assert line.amount == line.exact == Fraction("0.1")
    assert line.tool is None
    # A finer tool is used where the smaller one would give zero.
    narrow = Tool("narrow", Fraction(4), Fraction(4))
    fine = Tool("fine", Fraction(1), Fraction(20))
    line = rounded_line("1.2", tools=(narrow, fine))
    assert (line.tool, line.amount, line.fills) == ("fine", Fraction(1), 1)


def test_the_last_mark_is_the_capacity() -> None:
    odd = Tool("odd", Fraction("0.6"), Fraction(1))
    assert rounded_line("0.95", tools=(odd,)).amount == 1
    assert rounded_line("1.3", tools=(odd,)).amount == 1
    assert rounded_line("1.31", tools=(odd,)).amount == Fraction("1.6")


def test_masses_are_weighed_and_pieces_halved() -> None:
    assert rounded_line("12.34", MASS).amount == Fraction("12.3")
    assert rounded_line("12.34", MASS).tool == "balance"
    assert rounded_line("2.7", COUNT).amount == Fraction("2.5")
    assert rounded_line("2.7", COUNT).tool is None
    assert rounded_line("0.2", COUNT).too_small_to_measure


def test_without_a_tool_the_amount_stays_exact() -> None:
    line = rounded_line("12.345", MASS, tools=(SYRINGE,))
    assert (line.amount, line.tool, line.too_small_to_measure) == (Fraction("12.345"), None, False)


def test_nothing_stays_nothing() -> None:
    line = rounded_line("0")
    assert (line.amount, line.deviation_share) == (Fraction(0), Fraction(0))
    assert not line.too_small_to_measure


def test_the_largest_shift_of_a_ratio_is_between_the_extremes() -> None:
    recipe = Recipe(
        (
            Line("oil", Fraction("3.3"), VOLUME),  # to 3.5, up by 2/33: no tool here is finer
            Line("spirit", Fraction(37), VOLUME),  # 36 in the cylinder and 1 in the syringe
            Line("sugar", Fraction(10), MASS),  # as it is
        )
    )
    rounded = round_to_tools(scale(recipe, ByFactor(Fraction(1))), (SYRINGE, CYLINDER, BALANCE))
    assert rounded.largest_ratio_shift == Fraction(2, 33)
    assert not rounded.keeps_ratio
    assert rounded.total_ml == Fraction("40.5")
    spirit = rounded.lines[1]
    assert (spirit.tool, spirit.rest_tool, spirit.rest) == ("cylinder", "syringe", Fraction(1))


_OUNCE = Fraction("29.5735295625")


@pytest.mark.parametrize("ounces", [Fraction(5, 2), 3, Fraction(7, 2), 4, 5, 6, 9, 14, 33])
@pytest.mark.parametrize(
    "parts", [("1/2", "3/4", "2"), ("3/4", "3/4", "2"), ("1/4", "1", "3"), ("1", "1", "1"), ("1/8", "2", "2")]
)
def test_american_tools_keep_a_sour_within_three_percent(
    parts: tuple[str, str, str], ounces: Fraction
) -> None:
    # Jiggers alone made 1/2 : 3/4 : 2 for 4 oz a third wrong.
    recipe = Recipe(tuple(Line(part, Fraction(part) * _OUNCE, VOLUME) for part in parts))
    rounded = round_to_tools(scale(recipe, ByTotal(ounces * _OUNCE)), DEFAULT_TOOLS["us"])
    assert rounded.keeps_ratio
    assert all(line.fills <= 5 for line in rounded.lines)


@pytest.mark.parametrize(("step", "up_to"), [(0, 1), (-1, 1), (2, 1)])
def test_a_tool_needs_a_mark(step: int, up_to: int) -> None:
    with pytest.raises(OutOfRangeError):
        Tool("broken", Fraction(step), Fraction(up_to))
    with pytest.raises(OutOfRangeError):
        Scale("broken", Fraction(step), Fraction(up_to))


amounts = st.fractions(min_value=Fraction(1, 1000), max_value=5000, max_denominator=1000)


@given(st.lists(st.builds(Line, st.just("x"), amounts, st.sampled_from(Dimension)), min_size=1, max_size=6))
@pytest.mark.parametrize("system", sorted(DEFAULT_TOOLS))
def test_rounding_with_the_default_tools(system: str, lines: list[Line]) -> None:
    scaled = scale(Recipe(tuple(lines)), ByFactor(Fraction(1)))
    rounded = round_to_tools(scaled, DEFAULT_TOOLS[system])
    assert rounded.total_ml == sum(line.amount for line in rounded.lines if line.dimension is VOLUME)
    assert rounded.largest_ratio_shift >= 0
    steps = {
        tool.name: tool.step_ml if isinstance(tool, Tool) else tool.step_g for tool in DEFAULT_TOOLS[system]
    }
    for line in rounded.lines:
        assert line.amount > 0
        if line.tool is not None:
            assert abs(line.amount - line.exact) <= steps[line.tool] / 2
            assert line.fills >= 1
    # Rounding a rounded recipe keeps its ratio.
    again = round_to_tools(
        scale(
            Recipe(tuple(Line("x", line.amount, line.dimension) for line in rounded.lines)),
            ByFactor(Fraction(1)),
        ),
        DEFAULT_TOOLS[system],
    )
    assert again.keeps_ratio or not rounded.keeps_ratio


@given(
    st.lists(st.builds(Line, st.just("x"), amounts, st.just(VOLUME)), min_size=1, max_size=6),
    st.sampled_from(
        [*DEFAULT_TOOLS.values(), (CYLINDER,), (Tool("jug", Fraction(250), Fraction(1000)),), ()]
    ),
)
def test_rounding_to_enough_never_leaves_less_than_was_asked(
    lines: list[Line], tools: tuple[Tool | Scale, ...]
) -> None:
    scaled = scale(Recipe(tuple(lines)), ByFactor(Fraction(1)))

    def is_enough(rounded: Rounded) -> bool:
        return rounded.total_ml >= scaled.total_ml

    found, usual = round_to_enough(scaled, tools, is_enough), round_to_tools(scaled, tools)
    assert is_enough(found)
    if is_enough(usual) and usual.keeps_ratio:
        assert found == usual
