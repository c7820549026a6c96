"""Tests of peeled fruit: the oldest goes first, what is gone is gone, and undo brings it back."""

from __future__ import annotations

from datetime import timedelta
from fractions import Fraction

import pytest

from bot.work.context import Context
from bot.work.errors import BadValueError, NotThereError
from bot.work.formulas import ingredients
from bot.work.fruit import peeled
from storage.tables import PeeledFruit
from tests.house import House, first_lines
from tests.work.acting import acting


def _id(context: Context, name: str = "orange") -> int:
    view = ingredients.by_name(context, name)
    assert view is not None
    return view.id


def _left(house: House, name: str | None = None) -> list[tuple[str, float, float]]:
    with acting(house) as context:
        wanted = None if name is None else _id(context, name)
        return [
            (one.ingredient.name, float(one.count), float(one.left))
            for one in peeled.waiting(context, wanted)
        ]


def _peeled_twice(house: House) -> None:
    ana = house.open_bar()
    ana.says("peeled 3 oranges")
    house.clock.turn(hours=2)
    ana.says("peeled 2 oranges")
    ana.says("peeled 4 lemons")


def test_the_oldest_is_used_first_and_what_is_gone_is_not_waiting(house: House) -> None:
    _peeled_twice(house)
    assert _left(house) == [("orange", 3, 3), ("orange", 2, 2), ("lemon", 4, 4)]
    with acting(house) as context:
        assert peeled.juice(context, _id(context), Fraction(4), Fraction(300)).from_peeled == 4
    assert _left(house) == [("orange", 2, 1), ("lemon", 4, 4)]
    with acting(house) as context:
        # One is left: the others were fresh.
        assert peeled.juice(context, _id(context), Fraction(3), Fraction(220)).from_peeled == 1
    assert _left(house) == [("lemon", 4, 4)]
    assert _left(house, "orange") == []


def test_another_bars_use_takes_nothing_away(house: House) -> None:
    _peeled_twice(house)
    house.open_bar("Zoe", "The Grey Gull")
    zoe = house.person("Zoe")
    zoe.says("peeled 3 oranges")
    zoe.says("juiced 3 oranges 200 ml")
    assert _left(house, "orange") == [("orange", 3, 3), ("orange", 2, 2)]


def test_undo_brings_peeled_fruit_back_once(house: House) -> None:
    _peeled_twice(house)
    ana = house.person("Ana")
    ana.says("juiced 4 oranges 300 ml")
    assert _left(house, "orange") == [("orange", 2, 1)]
    ana.taps("Undo")
    assert _left(house, "orange") == [("orange", 3, 3), ("orange", 2, 2)]
    ana.taps("Put it back")
    assert _left(house, "orange") == [("orange", 2, 1)]


def _row(context: Context, count: Fraction) -> PeeledFruit:
    return PeeledFruit(
        ingredient_id=_id(context),
        count_milli=round(count * 1000),
        business_day=context.today,
        lost_at=context.now,
        at=context.now,
        by=context.person_id,
    )


@pytest.mark.parametrize("count", [Fraction(0), Fraction(-1), Fraction(10_001)])
def test_a_number_of_fruit_that_cannot_be_is_refused(house: House, count: Fraction) -> None:
    _peeled_twice(house)
    with acting(house) as context:
        for act in (
            lambda: peeled.peel(context, _id(context), count),
            lambda: peeled.juice(context, _id(context), count, Fraction(10)),
            lambda: peeled.into_batch(context, _id(context), count, 1),
            lambda: peeled.bring_in(context, _row(context, count), ()),
        ):
            with pytest.raises(BadValueError):
                act()
        peeled.peel(context, _id(context), Fraction(10_000))


@pytest.mark.parametrize("volume", [Fraction(0), Fraction(1_000_001)])
def test_a_volume_that_cannot_be_is_refused(house: House, volume: Fraction) -> None:
    _peeled_twice(house)
    with acting(house) as context:
        with pytest.raises(BadValueError):
            peeled.juice(context, _id(context), Fraction(1), volume)
        peeled.juice(context, _id(context), Fraction(1), Fraction(1_000_000))


def test_peeled_fruit_goes_into_a_batch_of_the_log_only(house: House) -> None:
    _peeled_twice(house)
    ana = house.person("Ana")
    ana.says("new formula Brine\nsalt 20 g\nwater 80 ml\nkind saline\nrest 2 h")
    ana.says("batch brine x1")
    with acting(house) as context:
        with pytest.raises(NotThereError):
            peeled.into_batch(context, _id(context), Fraction(2), 2)
        assert peeled.into_batch(context, _id(context), Fraction(9), 1) == 5
        with pytest.raises(NotThereError):
            peeled.into_batch(context, _id(context), Fraction(1), 1)
    ana.says("undo")
    with acting(house) as context:
        assert len(peeled.waiting(context)) == 3
    ana.says("batch brine x1")
    ana.taps("Undo")
    with acting(house) as context, pytest.raises(NotThereError):
        peeled.into_batch(context, _id(context), Fraction(2), 2)


def test_it_counts_as_lost_after_the_bars_own_hours(house: House) -> None:
    ana = house.open_bar()
    ana.says("bar peeled 6 h")
    ana.says("peeled 3 oranges")
    with acting(house) as context:
        (view,) = peeled.waiting(context)
        assert view.lost_at - view.at == timedelta(hours=6)


def test_fruit_of_an_earlier_day_counts_from_noon(house: House) -> None:
    ana = house.open_bar()
    ana.says("peeled 3 oranges")
    with acting(house) as context:
        yesterday = context.today - timedelta(days=1)
        view = peeled.peel(context, _id(context), Fraction(2), yesterday).peeled
        today = peeled.peel(context, _id(context), Fraction(2), context.today).peeled
    assert (view.lost_at - house.clock.now()) < (today.lost_at - house.clock.now())
    assert (today.lost_at - view.lost_at) == timedelta(hours=30)  # noon of yesterday to 18:00


def test_the_reminder_is_done_when_nothing_is_left_and_again_after_an_undo(house: House) -> None:
    ana = house.open_bar()
    ana.says("bar close reminder off")
    ana.says("peeled 3 oranges")
    ana.says("juiced 3 oranges 200 ml")
    house.clock.turn(hours=20)
    assert [one.due.kind for one in house.reminders()] == []
    house.clock.turn(hours=-20)
    ana.says("undo")
    house.clock.turn(hours=20)
    assert [one.due.kind for one in house.reminders()] == ["peeled"]


def test_the_bars_own_yields_are_the_standing_ones(house: House) -> None:
    ana = house.open_bar()
    ana.says("juiced 4 oranges 300 ml")
    ana.says("juiced 2 oranges 160 ml")
    ana.says("juiced 5 oranges 100 ml")
    ana.says("undo")
    ana.says("juiced 3 lemons 90 ml")
    with acting(house) as context:
        assert [
            (float(one.count), float(one.volume_ml)) for one in peeled.measured(context, _id(context))
        ] == [
            (2, 160),
            (4, 300),
        ]
    assert first_lines(ana.says("undo")) != []
