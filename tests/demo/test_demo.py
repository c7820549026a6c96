"""Tests of the demo bar: realistic, the same every time, and isolated from other bars."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from datetime import datetime, timedelta
from decimal import Decimal
from fractions import Fraction
from itertools import pairwise
from typing import Any
from zoneinfo import ZoneInfo

import pytest
from sqlalchemy import func, select

from bot.demo import book as demo_book
from bot.demo import filling
from bot.trade.days import business_day
from bot.trade.formulas.kinds import Preparation
from bot.trade.liquids.clearing.estimate import judge
from bot.trade.liquids.clearing.mend import State
from bot.trade.liquids.clearing.mixture import mixture_of
from bot.trade.liquids.strength import Component
from bot.work.batches import batches
from bot.work.batches.batches import BatchState
from bot.work.context import Context
from bot.work.errors import AlreadyThereError
from bot.work.formulas import formulas, ingredients
from bot.work.fruit import week
from bot.work.money import prices
from bot.work.people import people, team
from bot.work.reminders import delivery
from storage.store import Store
from storage.tables import Base, BatchEvent, Entry, InBar, Invite, Member, Price, Reminder, Waste
from tests.demo.conftest import AUTUMN, MOMENTS, OWNER, SPRING, Filler, fill
from tests.house import CHANNEL, Hands, House, text


class _Context:
    """The owner's context in the filled bar, within a read-only transaction."""

    def __init__(self, store: Store, now: datetime, name: str = OWNER) -> None:
        self._reading = store.reading()
        self._now, self._name = now, name

    def __enter__(self) -> Context:
        unit = self._reading.__enter__()
        who = self._name.casefold()
        return people.find(unit, CHANNEL, who, f"{CHANNEL} {who}", True).context(unit, self._now, "test")

    def __exit__(self, *error: Any) -> None:
        self._reading.__exit__(*error)


def _rows(store: Store, leave_out: Sequence[str] = ()) -> dict[str, list[tuple[Any, ...]]]:
    with store.reading() as unit:
        return {
            table.name: sorted(map(tuple, unit.session.execute(select(table))), key=repr)
            for table in Base.metadata.sorted_tables
            if table.name not in leave_out
        }


def test_the_same_moment_gives_the_same_bar(filler: Filler, filled: Store, store: Store) -> None:
    first, second = filler.told[AUTUMN], fill(store, AUTUMN)
    assert (first.batches, first.waste_lines) == (second.batches, second.waste_lines)
    # Joining codes are secrets, so they differ.
    leave_out = [Invite.__tablename__]
    assert _rows(filled, leave_out) == _rows(store, leave_out)


def test_what_is_told_is_what_is_there(filler: Filler, filled: Store) -> None:
    told = filler.told[AUTUMN]
    assert told.bar == demo_book.BAR
    assert not told.already
    with _Context(filled, AUTUMN) as context:
        assert told.batches == len(batches.listed(context, everything=True))
        waste = context.book.all(Waste)
        assert told.waste_lines == sum(one.corrects is None for one in waste) - sum(
            one.corrects is not None for one in waste
        )
        assert (context.bar.currency, context.bar.jurisdiction, context.bar.units) == ("EUR", "EU", "metric")
        assert (context.bar.zone, context.bar.closing_minute) == ("Europe/Lisbon", 300)
        assert context.bar.settings.service_days == demo_book.SERVICE_DAYS


@pytest.mark.parametrize("now", MOMENTS, ids=str)
def test_there_are_batches_in_every_state_whatever_the_day(filler: Filler, now: datetime) -> None:
    filled = filler.at(now)
    with _Context(filled, now) as context:
        known = [batches.get(context, one.number) for one in batches.listed(context, everything=True)]
        assert {one.state for one in known} == set(BatchState) - {BatchState.UNDONE, BatchState.MOVED}
        assert any(one.state is BatchState.RESTING and not one.rested(now) for one in known)
        thrown = [one for one in known if one.state is BatchState.DISCARDED]
        assert all(one.lost_ml and one.events[-1].note for one in thrown)
        seen = [[event.clarity for event in one.events if event.clarity] for one in known]
        assert ["hazy", "clear"] in seen
        assert any(event.note for one in known for event in one.events if event.what == "check")
        assert any(line.lot for one in known for line in one.lines)
        # Nothing ready or in use rested too briefly, and no event precedes the making.
        for one in known:
            opened = [event.at for event in one.events if event.what == "opened"]
            assert all(at >= one.rest_until for at in opened), one.number
            clear = [event.at for event in one.events if event.clarity == "clear"]
            assert all(at >= one.rest_until for at in clear), one.number
            assert [event.at for event in one.events] == sorted(event.at for event in one.events)
            if one.state.open:
                assert one.discard_on >= business_day(now, context.bar.zone, context.bar.closing_minute)


@pytest.mark.parametrize("now", MOMENTS, ids=str)
def test_the_work_ends_with_the_last_night(filler: Filler, now: datetime) -> None:
    filled = filler.at(now)
    with _Context(filled, now) as context:
        today = business_day(now, context.bar.zone, context.bar.closing_minute)
        days = [row.business_day for row in context.book.all(Waste)]
        assert today - timedelta(days=2) <= max(days) < today
        assert timedelta(weeks=11) < max(days) - min(days) <= timedelta(weeks=12)
        logged = [row.at for row in context.book.all(Entry, order=Entry.id) if row.what != "invite"]
        assert max(logged) < now
        assert logged == sorted(logged)


@pytest.mark.parametrize("now", [AUTUMN, SPRING], ids=str)
def test_waste_belongs_to_its_business_day_where_the_clocks_change(filler: Filler, now: datetime) -> None:
    filled = filler.at(now)
    with _Context(filled, now) as context:
        offsets = set()
        for row in context.book.all(Waste):
            assert row.business_day == business_day(row.at, context.bar.zone, context.bar.closing_minute)
            offsets.add(row.at.astimezone(ZoneInfo(context.bar.zone)).utcoffset())
        assert len(offsets) == 2


def test_waste_has_its_week_and_drops_with_the_spray(filled: Store) -> None:
    with _Context(filled, AUTUMN) as context:
        whole_weeks = [week.this_week(context, weeks_ago=back).cost for back in range(1, 12)]
        since, before = whole_weeks[:4], whole_weeks[6:]
        assert max(since) < Decimal("0.7") * min(before)
        by_weekday: Counter[int] = Counter()
        for row in context.book.all(Waste, Waste.corrects.is_(None)):
            by_weekday[row.business_day.weekday()] += row.cost_minor or 0
        assert by_weekday[5] > 1.5 * by_weekday[1]
        # Closed on Mondays: only waste from the crates.
        monday = [row.reason for row in context.book.all(Waste) if row.business_day.weekday() == 0]
        assert set(monday) == {"damaged on delivery"}
        found = week.summary(context, min(_days(context)), max(_days(context)))
        assert {one.name for one in found.fruit} == {"orange", "grapefruit", "lemon", "lime"}
        assert {reason for reason, _sum in found.reasons} <= set(context.bar.settings.reasons)
        assert all(one.unpriced == 0 for one in found.fruit)


def _days(context: Context) -> list[Any]:
    return [row.business_day for row in context.book.all(Waste)]


def test_the_mists_are_our_own_and_as_now_written_should_stay_clear(filled: Store) -> None:
    with _Context(filled, AUTUMN) as context:
        mists = [
            formulas.get(context, one.id, version)
            for one in formulas.listed(context)
            if one.preparation is Preparation.AROMA_MIST
            for version in range(1, one.version + 1)
        ]
        assert len({one.id for one in mists}) == 2
        assert len(mists) == 4  # each was changed since
        for mist in mists:
            oil, carrier, *_others, spirit = (line.amount for line in mist.lines)
            shares = {oil / 10, carrier / 20, spirit / Fraction("36.5")}
            assert len(shares) > 1
            assert mist.garnish is not None
            mixture = mixture_of(
                Component(
                    line.ingredient.kind,
                    line.ingredient.name,
                    float(line.amount),
                    float(line.ingredient.strength_percent or 0),
                )
                for line in mist.lines
            )
            # The models disagreed on the first orange mist, and it split: the change fixed it.
            doubtful = mist.name == demo_book.ORANGE_MIST and mist.version == 1
            assert judge(mixture).state is (State.BORDERLINE if doubtful else State.CLEAR)
        kinds = {one.preparation for one in formulas.listed(context)}
        assert kinds >= {Preparation.SYRUP, Preparation.SALINE, Preparation.TINCTURE}
        grades = {one.food_grade for one in ingredients.all_of(context)}
        assert grades == {"confirmed", "not confirmed", None}


def test_prices_rise_and_fall_in_packs_of_several_units(filled: Store) -> None:
    with _Context(filled, AUTUMN) as context:
        units = {row.pack_unit for row in context.book.all(Price)}
        assert {"each", "dozen", "kg", "g", "l", "ml"} <= units
        named = {one.name: one for one in ingredients.all_of(context)}
        told = [one.per_base for one in prices.history(context, named["orange"].id)]
        steps = [later - earlier for earlier, later in pairwise(told)]
        assert min(steps) < 0 < max(steps)
        assert prices.history(context, named["lime"].id)[-1].pack.unit == "kg"


@pytest.mark.parametrize("now", MOMENTS, ids=str)
def test_old_reminders_do_not_flood(filler: Filler, now: datetime) -> None:
    filled = filler.at(now)
    with _Context(filled, now) as context:
        waiting = context.book.all(Reminder, Reminder.state == "waiting")
        old = [one for one in waiting if one.due_at <= now - timedelta(hours=24)]
        assert [one.kind for one in old] in ([], ["rested"])
        # Future reminders reach a person: the colleagues' own channel delivers nothing.
        assert {one.channel for one in waiting} == {CHANNEL}
        assert sum(one.kind == "close" for one in waiting) == 1
        assert {"rested", "discard", "close"} <= {one.kind for one in waiting}
    assert len(delivery.claim(filled, CHANNEL, now)) <= 3


def test_no_row_lies_outside_the_bar(house: House) -> None:
    house.open_bar("Ana", "The Heron")
    before = _rows(house.store)
    filled = fill(house.store, house.clock.now())
    after = _rows(house.store)
    with _Context(house.store, house.clock.now()) as context:
        bar_id = context.bar.id
    in_bars = {mapper.class_.__tablename__ for mapper in Base.registry.mappers} & {
        one.__tablename__ for one in _subclasses(InBar) if hasattr(one, "__tablename__")
    }
    assert len(in_bars) > 10
    for name in in_bars:
        new = [row for row in after[name] if row not in before[name]]
        assert [row for row in before[name] if row not in after[name]] == [], name
        assert {row[0] for row in new} <= {bar_id}, name
    # In the directory only the bar, its three people and their chats are new.
    grown = {
        name: len(after[name]) - len(before[name])
        for name in after
        if name not in in_bars and len(after[name]) != len(before[name])
    }
    assert grown == {"bar": 1, "person": 3, "room": 3}
    assert filled.bar == demo_book.BAR


def _subclasses(of: type[Any]) -> set[type[Any]]:
    return {below for one in of.__subclasses__() for below in ({one} | _subclasses(one))}


def test_the_team_is_an_owner_a_manager_and_a_member(filled: Store) -> None:
    with _Context(filled, AUTUMN) as context:
        assert [(one.name, one.role) for one in team.team(context)] == [
            (OWNER, "owner"),
            ("Ines", "manager"),
            ("Caio", "member"),
        ]
        did = context.book.session.execute(
            context.book.rows(BatchEvent, BatchEvent.by, func.count()).group_by(BatchEvent.by)
        )
        assert len(did.all()) == 3
        assert context.book.session.scalar(context.book.rows(Member, func.count())) == 3


def test_filled_twice_it_is_said_to_be_there(filler: Filler, filled: Store) -> None:
    first = filler.told[AUTUMN]
    leave_out = ["invite", "entry", "counter"]
    before = _rows(filled, leave_out)
    second = fill(filled, AUTUMN + timedelta(days=3))
    assert second.already
    assert (second.bar, second.batches, second.waste_lines) == (first.bar, first.batches, first.waste_lines)
    assert _rows(filled, leave_out) == before
    assert second.joining_code != first.joining_code


def test_two_people_have_a_demo_bar_each(filled: Store) -> None:
    assert not fill(filled, AUTUMN, "Kim").already
    with _Context(filled, AUTUMN) as one, _Context(filled, AUTUMN, "Kim") as other:
        assert one.bar.id != other.bar.id
        assert len(team.team(one)) == len(team.team(other)) == 3


def test_nobody_is_taken_out_of_their_own_bar(house: House) -> None:
    house.open_bar("Ana", "The Heron")
    before = _rows(house.store)
    with pytest.raises(AlreadyThereError):
        filling.fill(house.store, house.clock, CHANNEL, "Ana")
    assert _rows(house.store) == before


def test_the_joining_code_lets_one_manager_in(house: House) -> None:
    filled = fill(house.store, house.clock.now())
    zoe = house.person("Zoe")
    assert zoe.says(f"/join {filled.joining_code}")[0].first_line == f"Welcome to {demo_book.BAR}."
    assert "Zoe, manager" in str(zoe.says("team")[0].blocks)


SHOWN = {
    "formulas": "6 formulas in the book",
    "formula grapefruit mist": "Grapefruit mist: aroma mist, version 2",
    "formula grapefruit mist version 1": "Grapefruit mist: aroma mist, version 1",
    "scale grapefruit mist to 8 x 50 ml": "Grapefruit mist: 8 x 50 ml",
    "scale house syrup to 2 l": "House syrup: 2,000 ml",
    "cost grapefruit mist to 8 x 50 ml": "Grapefruit mist, 8 x 50 ml: €24.42",
    "cost lime-strength orange to 1 l": "Lime-strength orange, 1,000 ml: ",
    "price orange": "orange: €0.48 each",
    "price lime": "lime: €3.20 for 1 kg",
    "batches": "1 to check, 2 resting, 1 ready, 5 in use, 1 near discard",
    "batch 18": "Batch 18: Grapefruit mist, used up",
    "which batches used lot GO-118": "Lot GO-118 is in 2 batches",
    "week": "Waste: €5.46",
    "week last week": "Waste: €",
    "team": "The Copper Gull: 3 in the team",
    "bar": "The Copper Gull",
    "cautions grapefruit mist": "Cautions for Grapefruit mist",
    "undo": "You have logged nothing here tonight.",
}


@pytest.mark.parametrize("line", SHOWN)
def test_every_command_has_something_to_show(filled: Store, line: str) -> None:
    replies = House(filled, Hands(AUTUMN)).person(OWNER).says(line)
    assert replies[0].first_line.startswith(SHOWN[line]), text(replies)
    assert len(text(replies).splitlines()) > 1 or replies[0].buttons
