"""Properties of designs on the grid: they hold, and no neighbour that holds is better."""

from __future__ import annotations

from dataclasses import replace

from hypothesis import given
from hypothesis import strategies as st

from bot.trade.design import design
from bot.trade.design.design import Bounds, Shares, Shelf
from bot.trade.liquids.clearing import estimate
from bot.trade.liquids.clearing.mend import State
from tests.examples import examples

_prices = st.floats(0.001, 1.0)
_shelves = st.lists(
    st.builds(Shelf, st.sampled_from([75.5, 90.0, 92.0, 95.0, 96.0]), _prices, _prices, _prices),
    min_size=1,
    max_size=2,
)
_bounds = st.builds(Bounds, st.floats(0, 30), st.floats(0, 60))


def _holds(one: Shares, bounds: Bounds) -> bool:
    return design.holds([one], bounds)[0]


def _around(one: Shares, shelves: list[Shelf]) -> list[Shares]:
    """Return the neighbours with the same oil, from each of the shelves."""
    steps = range(-2, 3)
    return [Shares(one.oil, one.glycol + step, shelf) for step in steps for shelf in shelves]


@examples(6)
@given(st.integers(1, 20), _shelves, _bounds)
def test_no_neighbour_that_holds_has_more_glycol_or_costs_less(
    oil: int, shelves: list[Shelf], bounds: Bounds
) -> None:
    found = design.with_oil(oil, shelves, bounds)
    for one in found[:3]:
        for mixture in (one.mixture(), design.with_margin(one.mixture())):
            assert estimate.model_states([mixture], bounds.temperature_c) == [State.CLEAR]
            assert estimate.state_of(mixture, bounds.temperature_c) is not State.WILL_SPLIT
        assert one.glycol <= bounds.most_glycol
    if not found:
        assert not any(_holds(Shares(oil, 0, shelf), bounds) for shelf in shelves)
        return
    lasting, cheapest = design.by_hold(found)[0], design.by_cost(found)[0]
    near = [one for one in _around(lasting, shelves) if _holds(one, bounds)]
    assert all(one.glycol <= lasting.glycol for one in near)
    near = [one for one in _around(cheapest, shelves) if _holds(one, bounds)]
    assert all(one.per_ml >= cheapest.per_ml for one in near)


@examples(6)
@given(_shelves, _bounds, st.integers(0, 10))
def test_no_oilier_neighbour_holds(shelves: list[Shelf], bounds: Bounds, glycol: int) -> None:
    most = design.most_oil(shelves, bounds, glycol)
    least = min(glycol, int(bounds.most_glycol))
    assert not most or any(_holds(Shares(most, least, shelf), bounds) for shelf in shelves)
    assert not any(_holds(Shares(most + 1, least, shelf), bounds) for shelf in shelves)


@examples(6)
@given(st.integers(1, 15), _bounds)
def test_what_to_give_up_is_enough_and_no_less_is(oil: int, bounds: Bounds) -> None:
    weakest = design.weakest_spirit(oil, bounds)
    if weakest is None:
        assert not _holds(Shares(oil, 0, Shelf(design.STRONGEST_PERCENT)), bounds)
        return
    assert _holds(Shares(oil, 0, Shelf(weakest)), bounds)
    assert not _holds(Shares(oil, 0, Shelf(weakest - 0.5)), bounds)
    cold = design.mildest_cold(oil, [Shelf(weakest - 0.5)], bounds)
    if cold is not None:
        assert _holds(Shares(oil, 0, Shelf(weakest - 0.5)), replace(bounds, temperature_c=cold))
