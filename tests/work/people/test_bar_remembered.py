"""Tests of the bar cache: every change is visible immediately, and a rolled-back one never."""

from __future__ import annotations

from datetime import UTC, datetime

from bot.trade.safety.jurisdiction import Jurisdiction
from bot.work.context import BarView, Context, Role
from bot.work.people import bars, people
from storage.store import Store
from storage.unit import Unit

_NOW = datetime(2026, 11, 25, 18, tzinfo=UTC)
_WHERE = ("test", "ana", "room", True)


def _found(unit: Unit) -> BarView:
    bar = people.find(unit, *_WHERE).bar
    assert bar is not None
    return bar


def _open(unit: Unit, name: str, closing_minute: int) -> BarView:
    who = people.meet(unit, "test", "ana", "Ana", "en", "room", True, "")
    return bars.open_bar(
        unit,
        who,
        "Ana",
        True,
        _NOW,
        name=name,
        zone="Europe/Lisbon",
        jurisdiction=Jurisdiction.EU,
        currency="EUR",
        units="metric",
        closing_minute=closing_minute,
    )


def test_a_bar_that_did_not_come_to_be_is_forgotten(store: Store) -> None:
    # SQLite gives the number of the first one, rolled back, to the second.
    with store.writing() as unit:
        _open(unit, "The Never Was", 180)
        assert _found(unit).name == "The Never Was"
        unit.connection.rollback()
    with store.writing() as unit:
        made = _open(unit, "The Copper Gull", 300)
        assert _found(unit) == made
    with store.reading() as unit:
        assert (_found(unit).name, _found(unit).closing_minute) == ("The Copper Gull", 300)


def test_a_change_is_seen_at_once_and_one_taken_back_never_was(store: Store) -> None:
    with store.writing() as unit:
        made = _open(unit, "The Copper Gull", 300)
        room = people.find(unit, *_WHERE).room_id

    def context(unit: Unit) -> Context:
        return Context(unit.bar(made.id), _found(unit), 1, "Ana", Role.OWNER, room or 0, _NOW, "test")

    with store.writing() as unit:
        bars.change(context(unit), closing_minute=120)
        assert _found(unit).closing_minute == 120
        unit.connection.rollback()
    with store.writing() as unit:
        assert _found(unit).closing_minute == 300
        bars.change(context(unit), closing_minute=240)
        assert _found(unit).closing_minute == 240
    with store.reading() as unit:
        assert _found(unit).closing_minute == 240
