"""Tests of sharing stock among events and the usual use."""

from __future__ import annotations

from datetime import date, timedelta

from bot.trade.events.allotment import Lot, Share, Wanted, allot

TODAY = date(2026, 12, 1)
LATER = date(2027, 3, 1)


def _lot(number: int, closed: float, **more: object) -> Lot:
    facts = {"open_ml": 0.0, "ready_on": None, "last_day": LATER, **more}
    return Lot(number, closed, **facts)  # type: ignore[arg-type]


def _none(day: date) -> float:
    return 0.0


def test_two_events_do_not_take_the_same_stock() -> None:
    first, second = Wanted(1, TODAY + timedelta(days=5), 300.0), Wanted(2, TODAY + timedelta(days=9), 300.0)
    shares = allot([_lot(42, 420.0)], [second, first], _none, TODAY)
    assert shares == [Share(1, 42, 300.0), Share(2, 42, 120.0)]


def test_the_usual_use_until_the_packing_comes_first() -> None:
    # Packed on the 5th: the bar uses 10 ml on the 1st, 2nd, 3rd and 4th, 15 of them from the open bottle.
    event = Wanted(1, date(2026, 12, 6), 500.0)
    shares = allot([_lot(42, 400.0, open_ml=15.0)], [event], lambda day: 10.0, TODAY)
    assert shares == [Share(1, 42, 375.0)]


def test_what_goes_off_before_the_day_or_rests_until_after_packing_is_not_taken() -> None:
    day = date(2026, 12, 6)
    lots = [
        _lot(1, 100.0, last_day=date(2026, 12, 5)),
        _lot(2, 100.0, ready_on=date(2026, 12, 6)),
        _lot(3, 100.0, last_day=day, ready_on=date(2026, 12, 5)),
    ]
    assert allot(lots, [Wanted(1, day, 300.0)], _none, TODAY) == [Share(1, 3, 100.0)]


def test_a_batch_made_for_an_event_serves_it_first_and_nothing_else() -> None:
    lots = [_lot(1, 100.0), _lot(2, 100.0, kept_for=7)]
    day = date(2026, 12, 6)
    assert allot(lots, [Wanted(7, day, 150.0)], _none, TODAY) == [Share(7, 2, 100.0), Share(7, 1, 50.0)]
    assert allot(lots, [Wanted(8, day, 150.0)], lambda day: 20.0, TODAY) == [Share(8, 1, 20.0)]


def test_a_few_drops_are_left_where_they_are() -> None:
    assert allot([_lot(1, 9.0)], [Wanted(1, date(2026, 12, 6), 300.0)], _none, TODAY) == []
