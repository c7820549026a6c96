"""Tests of scaling: bottles and drinks asked for are there after rounding to the tools."""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from bot.trade.formulas.amounts import ByBottles, ByDrinks
from bot.trade.formulas.kinds import Preparation
from bot.trade.formulas.measures import Quantity
from bot.work.formulas import formulas, scaling
from bot.work.formulas.formulas import Draft, DraftLine
from storage.store import Store
from tests.work.opened_bar import opened_bar

_SPRAYS = Fraction(3)
# Spirit and water contract; sugar is weighed in; the last is oil and spirit as a mist is.
_RECIPES = {
    "proofed": ((Fraction(700), "ml", "neutral spirit", 96), (Fraction(300), "ml", "water", None)),
    "sweet": (
        (Fraction(200), "g", "sugar", None),
        (Fraction(150), "ml", "water", None),
        (Fraction(90), "ml", "gin", 40),
    ),
    "mist": (
        (Fraction(12), "ml", "grapefruit oil", None),
        (Fraction(22), "ml", "propylene glycol", None),
        (Fraction(62), "ml", "neutral spirit", 96),
    ),
}


@pytest.mark.parametrize("units", ["metric", "us"])
@pytest.mark.parametrize("recipe", sorted(_RECIPES))
def test_bottles_and_drinks_asked_for_are_there_after_rounding(store: Store, recipe: str, units: str) -> None:
    with store.writing() as unit:
        context = opened_bar(unit, units)
        lines = tuple(
            DraftLine(name, Quantity(number, unit_), None if percent is None else Fraction(percent))
            for number, unit_, name, percent in _RECIPES[recipe]
        )
        view = formulas.add(context, recipe, Draft(Preparation.OTHER, lines, sprays=(_SPRAYS, _SPRAYS)))

        @given(st.integers(1, 40), st.integers(20, 1000), st.integers(0, 20))
        def bottles(count: int, size_ml: int, loss: int) -> None:
            size, share = Fraction(size_ml), Fraction(loss, 100)
            target = ByBottles(count, size, share)
            answer = scaling.scale_formula(context, view, target, (size,), share)
            assert answer.fill is not None
            assert sum(full for _size, full in answer.fill.full) >= count
            assert answer.rounded.keeps_ratio
            # No more is made than the ratio and the marks of the tools need.
            assert answer.finished_ml is not None
            assert answer.scaled.finished_ml is not None
            assert answer.finished_ml <= Fraction(110, 100) * answer.scaled.finished_ml

        @given(st.integers(200, 5000), st.integers(0, 20))
        def drinks(count: int, loss: int) -> None:
            share = Fraction(loss, 100)
            target = ByDrinks(count, _SPRAYS, view.spray_ml[1], share)
            answer = scaling.scale_formula(context, view, target, (), share)
            assert answer.drinks is not None
            assert answer.drinks[0] >= count
            assert answer.rounded.keeps_ratio

        bottles()
        drinks()
