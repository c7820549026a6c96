"""Properties of designs in a bar: each passes the bar's own answers, and no neighbour does better."""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from bot.trade.design import design as rules
from bot.trade.design.design import Shares
from bot.trade.formulas.amounts import ByBottles, ByTotal
from bot.trade.formulas.kinds import IngredientKind
from bot.trade.liquids.clearing.mend import State
from bot.trade.safety.limits import Part
from bot.trade.spray.dose import LimitState
from bot.work.context import Context
from bot.work.design import design
from bot.work.design.bench import USUAL_DRINK_ML, Bench, Names, Wishes, bench_for
from bot.work.design.design import Aim, Design
from bot.work.formulas import ingredients
from bot.work.liquids import clearing
from bot.work.spray import dose
from bot.work.spray.dose import DoseQuestion
from storage.store import Store
from tests.examples import examples
from tests.work.opened_bar import opened_bar

_NAMES = Names("orange oil", "propylene glycol", "neutral spirit", "strong spirit")


def _tenths(low: int, high: int) -> st.SearchStrategy[Fraction]:
    return st.integers(low, high).map(lambda tenth: Fraction(tenth, 10))


_sizes = st.builds(ByBottles, st.integers(1, 20), st.sampled_from([Fraction(50), Fraction(100)])) | st.builds(
    ByTotal, st.integers(50, 2000).map(Fraction)
)
_wishes = st.builds(
    Wishes,
    st.just("orange"),
    oil_percent=st.none() | _tenths(5, 200),
    oil_ml=st.none() | _tenths(20, 500),
    spirit_percent=st.none() | st.sampled_from([Fraction(151, 2), Fraction(92), Fraction(96)]),
    target=st.none() | _sizes,
    glycol_g_per_l=st.none() | _tenths(1, 20),
    drink_ml=st.none() | st.integers(30, 200).map(Fraction),
    sprays=st.none() | st.integers(1, 6).map(lambda count: (Fraction(count), Fraction(count))),
    temperature_c=st.none() | st.integers(0, 25).map(float),
    cheapest=st.booleans(),
)


@pytest.mark.long
@pytest.mark.parametrize("units", ["us", "metric"])
def test_every_design_passes_clear_dose_and_rounding(store: Store, units: str) -> None:
    with store.writing() as unit:
        context = opened_bar(unit, units)
        for name, percent in (("neutral spirit", 96), ("rectified spirit", 92)):
            ingredients.add(context, name, IngredientKind.SPIRIT, Fraction(percent))

        @examples(6)
        @given(_wishes)
        def designs(wishes: Wishes) -> None:
            found = design.propose(context, wishes, _NAMES)
            assert bool(found.designs) != bool(found.give_up)
            for one in found.designs:
                _passes(context, wishes, one, found.temperature_c)
            if found.designs:
                assert found.designs[0].aim is Aim.WANTED
                _is_best(bench_for(context, wishes, _NAMES), found.designs[0])

        designs()


def _passes(context: Context, wishes: Wishes, one: Design, temperature_c: float) -> None:
    made = one.answer.measured
    clear = clearing.answer(context, made, temperature_c)
    assert clear is not None
    assert clear.clearing.state is State.CLEAR
    question = DoseQuestion(wishes.drink_ml or USUAL_DRINK_ML, sprays=one.answer.formula.sprays)
    dosed = dose.answer(context, made, question)
    assert all(verdict.state is not LimitState.OVER for verdict in dose.composition(dosed))
    if wishes.glycol_g_per_l is not None:
        assert dosed.doses[Part.GLYCOL].mg_per_litre.high <= 1000 * wishes.glycol_g_per_l
    assert one.answer.rounded.keeps_ratio
    if isinstance(wishes.target, ByBottles):
        assert one.answer.fill is not None
        assert sum(count for _size, count in one.answer.fill.full) >= wishes.target.count


def _is_best(bench: Bench, wanted: Design) -> None:
    """Check that no neighbour with more glycol, or one that costs less, holds on the grid and with tools."""
    key = _cheaper if bench.wishes.cheapest else _lasting
    near = [
        Shares(wanted.shares.oil, wanted.shares.glycol + step, shelf)
        for shelf in bench.shelves
        for step in (-2, -1, 0, 1, 2)
    ]
    better = [one for one in near if key(one) < key(wanted.shares)]
    for one, holds in zip(better, rules.holds(better, bench.bounds), strict=True):
        assert not holds or design.judged(bench, Aim.WANTED, one) is None


def _lasting(one: Shares) -> float:
    return -one.glycol


def _cheaper(one: Shares) -> float:
    return one.per_ml
