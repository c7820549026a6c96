"""Tests of moving a batch between bars: what goes along, who may, and that nothing is lost or doubled."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from contextlib import contextmanager, suppress
from dataclasses import dataclass, field
from decimal import Decimal
from fractions import Fraction
from pathlib import Path
from typing import Any

import pytest
from hypothesis import HealthCheck, given
from hypothesis import strategies as st
from sqlalchemy import update

import bot
from bot.work.batches import batch_life, batches, bottles, moving
from bot.work.batches.arriving import Part
from bot.work.batches.batches import BatchState
from bot.work.context import Context, Role
from bot.work.errors import (
    BadValueError,
    MovedSinceError,
    NotAllowedError,
    NotManagedError,
    UsedThereError,
    WorkError,
    WrongStateError,
)
from bot.work.formulas import formulas
from bot.work.log import chain
from bot.work.people import other_bars
from bot.work.reminders.planning import ReminderState
from bot.work.stock import on_hand
from storage.tables import Batch, BatchLine, Bottling, Entry, Member, Reminder
from tests.examples import examples
from tests.house import House, Person, first_lines, text
from tests.work.acting import acting
from tests.work.transfer.files import Sends, answers, exported

MIST = """new formula Mist
orange oil 12 ml
neutral spirit 96 % 388 ml
kind aroma mist
rest 0 h"""
SAID = (
    MIST,
    "price orange oil 10 ml 8",
    "price neutral spirit 1 l 20",
    "batch mist to 400 ml",
    "lot 1 orange oil A2231",
    "bottled 1 7 x 50 ml",
)
GULL, ANNEX = 1, 2
THREE = Part.of_bottles(3, Fraction(50))


def _two_bars(house: House, city: str = "Lisbon") -> Person:
    """Open a bar with a bottled batch, and a second one of the same owner, who stands in the first again."""
    ana = house.open_bar(said=SAID)
    ana.says("another bar")
    ana.says(f"The Annex, {city}")
    ana.taps("Looks right")
    ana.says(f"bars {GULL}")
    return ana


@contextmanager
def _both(house: House, name: str = "Ana") -> Iterator[tuple[Context, Context]]:
    with acting(house, name) as here:
        yield here, other_bars.at(here, ANNEX)


def _rows(context: Context, number: int) -> list[Any]:
    lines = context.book.all(BatchLine, BatchLine.batch_id == number, order=BatchLine.position)
    return [(line.lot, line.amount, line.unit) for line in lines]


# -- what goes along -------------------------------------------------------------------------------


def test_lots_dates_strength_and_cautions_go_along_and_the_amounts_in_proportion(house: House) -> None:
    _two_bars(house)
    with _both(house) as (here, there):
        done = moving.move(here, 1, THREE, ANNEX, "3 x 50 ml")
        was, now = batches.get(here, 1), batches.get(there, done.number)
        assert (now.made_at, now.rest_until, now.discard_on) == (was.made_at, was.rest_until, was.discard_on)
        assert (now.total_ml, now.state) == (Fraction(150), BatchState.READY)
        assert (now.came_from, now.number_there) == (here.bar.name, 1)
        for name in ("strength_percent", "cautions", "allergens", "preparation", "discard_rule", "keep_cold"):
            assert now.frozen[name] == was.frozen[name]
        share = Fraction(150) / was.total_ml
        expected = [(lot, amount * share, unit) for lot, amount, unit in _rows(here, 1)]
        assert _rows(there, done.number) == expected
        assert expected[0][0] == "A2231"
        (size,) = bottles.unopened(there, [now.number])[now.number]
        assert (size.size_ml, size.unopened) == (Fraction(50), 3)
        assert formulas.get(there, now.formula_id).name == "Mist"
        assert now.version == 1


def test_its_discard_is_planned_there_until_the_move_is_undone(house: House) -> None:
    _two_bars(house)
    with _both(house) as (here, there):
        number = moving.move(here, 1, THREE, ANNEX, "").number
        planned = (Reminder.batch_id == number, Reminder.kind == "discard")
        assert [one.state for one in there.book.all(Reminder, *planned)] == [ReminderState.WAITING] * 2
        chain.undo(here)
        there.book.session.expire_all()
        assert {one.state for one in there.book.all(Reminder, *planned)} == {ReminderState.CANCELLED}
        assert formulas.listed(there) == []


def test_the_cost_goes_along_and_is_unknown_in_another_currency(house: House) -> None:
    _two_bars(house, "Mexico City")
    with _both(house) as (here, there):
        moving.move(here, 1, THREE, ANNEX, "")
        row = batches.row_of(there, 1)
        assert bottles.cost_of(row, row.total_ml) is None
        assert moving.came_between(there, there.today, there.today) == (Fraction(150), Decimal(0))
        _ml, cost = bottles.gone_between(here, bottles.MOVED, here.today, here.today)
        known = bottles.cost_of(batches.row_of(here, 1), Fraction(150))
        assert known is not None
        assert cost == round(known, 2) > 0


def test_a_formula_of_the_same_name_stays_as_it_is_and_another_content_is_no_version_of_it(
    house: House,
) -> None:
    ana = _two_bars(house)
    ana.says(f"bars {ANNEX}")
    ana.says(MIST.replace("12 ml", "15 ml"))
    ana.says(f"bars {GULL}")
    with _both(house) as (here, there):
        assert not moving.lacks_formula(here, 1, ANNEX)
        moving.move(here, 1, THREE, ANNEX, "")
        assert batches.row_of(there, 1).version == 0
        assert formulas.get(there, 1).latest == 1
        assert moving.move(there, 1, Part.of_bottles(1, Fraction(50)), GULL, "").number == 2
        assert batches.row_of(here, 2).version == 0


def test_an_unbottled_amount_arrives_without_bottles_with_the_date_of_the_opened_one(house: House) -> None:
    ana = _two_bars(house)
    ana.says("batch mist to 300 ml")
    ana.says("open 2")
    with _both(house) as (here, there):
        number = moving.move(here, 2, Part.of_amount(Fraction(100)), ANNEX, "").number
        row = batches.row_of(there, number)
        assert row.total_ml == 100
        assert row.discard_on == batches.row_of(here, 2).discard_on
        assert row.opened_at is None
        assert bottles.left(there, number) is None
        assert bottles.left_of(Fraction(300), bottles.rows_of(here, [2])[2]).bulk_ml == 200


# -- what reports count ----------------------------------------------------------------------------


def test_the_stock_of_the_other_bar_is_not_used(house: House) -> None:
    ana = _two_bars(house)
    ana.says(f"bars {ANNEX}")
    ana.says("price neutral spirit 1 l 20")
    ana.says("stock neutral spirit 4 l")
    ana.says(f"bars {GULL}")
    house.clock.turn(hours=1)
    ana.says("batch mist to 200 ml")
    with _both(house) as (here, there):
        moving.move(here, 2, Part.of_amount(Fraction(100)), ANNEX, "")
        assert [one.book for one in on_hand.on_hand(there).values()] == [4000]


def test_what_moved_is_neither_lost_nor_discarded(house: House) -> None:
    _two_bars(house)
    with _both(house) as (here, _there):
        moving.move(here, 1, THREE, ANNEX, "")
        assert not any(bottles.gone_between(here, bottles.LOST, here.today, here.today))
        total = batches.row_of(here, 1).total_ml
        assert batch_life.discard(here, 1, None, "").batch.lost_ml == total - 150


def test_a_batch_ends_with_its_last_bottle_and_its_undo_opens_it_again(house: House) -> None:
    ana = _two_bars(house)
    ana.says("spilt 1 52 ml")
    with _both(house) as (here, _there):
        moving.move(here, 1, Part.of_bottles(7, Fraction(50)), ANNEX, "")
        assert batches.get(here, 1).state is BatchState.MOVED
        with pytest.raises(WrongStateError):
            moving.move(here, 1, Part.of_bottles(1, Fraction(50)), ANNEX, "")
        chain.undo(here)
        assert batches.get(here, 1).state is BatchState.READY


# -- undo ------------------------------------------------------------------------------------------


def test_what_the_other_bar_has_used_cannot_be_undone_until_it_undoes_that(house: House) -> None:
    _two_bars(house)
    with _both(house) as (here, there):
        moving.move(here, 1, THREE, ANNEX, "")
        batch_life.open_batch(there, 1)
        with pytest.raises(UsedThereError):
            chain.undo(here)
        chain.undo(there)
        chain.undo(here)
        assert there.book.session.get_one(Batch, (ANNEX, 1)).state == BatchState.UNDONE
        assert [one.what for one in there.book.all(Entry, order=Entry.id)][-4:] == [
            *("moved in", "open batch", "undo", "undo")
        ]


def test_the_making_of_what_stands_elsewhere_cannot_be_undone(house: House) -> None:
    _two_bars(house)
    with _both(house) as (here, _there):
        (made,) = here.book.all(Entry, Entry.what == "batch")
        moving.move(here, 1, THREE, ANNEX, "")
        with pytest.raises(MovedSinceError):
            chain.undo(here, made.id)


def test_both_logs_keep_it_and_the_receiver_is_told_where_to_undo(house: House) -> None:
    ana = _two_bars(house)
    ana.says("moved 3 bottles of 1 to the annex")
    ana.taps("Move it")
    assert "3 x 50 ml of batch 1 moved to The Annex" in text(ana.says("log"))
    ana.says(f"bars {ANNEX}")
    assert "3 x 50 ml Mist came from The Copper Gull: batch 1" in text(ana.says("log"))
    assert first_lines(ana.says("undo")) == [
        "That came from The Copper Gull: undo it there, or move it back."
    ]


# -- who may ---------------------------------------------------------------------------------------


def _roles(house: House, here: Role, there: Role | None) -> None:
    """Give Ben a role in the first bar, and one or none in the second."""
    house.joins("Ben")
    with house.store.writing() as unit:
        member = unit.session.get(Member, (GULL, 2))
        assert member is not None
        member.role = here
        if there is not None:
            unit.bar(ANNEX).add(
                Member(person_id=2, role=there, name="Ben", joined_at=house.clock.now(), room_id=None)
            )


@pytest.mark.parametrize("there", [None, *Role])
@pytest.mark.parametrize("here", list(Role))
def test_only_who_manages_both_bars_moves(house: House, here: Role, there: Role | None) -> None:
    _two_bars(house)
    _roles(house, here, there)
    ben = house.person("Ben")
    ben.says("moved 3 bottles of 1 to the annex")
    ben.taps_line(f"moved yes 3 x 50 ml of batch 1 to #{ANNEX}")
    may = here.manages and there is not None and there.manages
    with house.store.reading() as unit:
        assert len(unit.bar(ANNEX).all(Batch)) == len(unit.bar(GULL).all(Bottling)) - 1 == int(may)
    with acting(house, "Ben") as context:
        if not may:
            with pytest.raises(NotManagedError if here.manages else NotAllowedError):
                other_bars.at(context, ANNEX)


def test_a_bar_that_the_person_is_not_in_is_answered_like_one_that_does_not_exist(house: House) -> None:
    _two_bars(house)
    _roles(house, Role.MANAGER, None)
    ben = house.person("Ben")
    for line in ("moved 3 bottles of 1 to the annex", "moved 3 bottles of 1 to the moon", "moved"):
        assert first_lines(ben.says(line)) == ["You run no other bar."]
        assert "Annex" not in text(ben.says(line))
    for number in (ANNEX, 99):
        assert first_lines(ben.says(f"moved 3 bottles of 1 to #{number}")) == ["You run no other bar."]


def test_who_no_longer_manages_the_other_bar_cannot_undo_the_move(house: House) -> None:
    _two_bars(house)
    _roles(house, Role.MANAGER, Role.MANAGER)
    with _both(house, "Ben") as (here, there):
        moving.move(here, 1, THREE, ANNEX, "")
        mine = Member.bar_id == ANNEX, Member.person_id == here.person_id
        there.book.session.execute(update(Member).where(*mine).values(role=Role.MEMBER))
        there.book.session.expire_all()
        with pytest.raises(NotManagedError, match="The Annex"):
            chain.undo(here)


def test_only_one_module_reaches_from_one_bar_to_another() -> None:
    folder = Path(bot.__file__).parent
    found = [path.name for path in folder.rglob("*.py") if ".beside(" in path.read_text("utf-8")]
    assert found == ["other_bars.py"]


# -- nothing is lost or doubled --------------------------------------------------------------------


@dataclass
class _Ledger:
    """Two bars in one transaction, with the entries of the moves."""

    here: Context
    there: Context
    moves: list[tuple[Context, int]] = field(default_factory=list)

    def sums(self) -> tuple[Fraction, int, Decimal]:
        """Return the mL, bottles and cost over both bars."""
        ml, count, cost = Fraction(0), 0, Decimal(0)
        for context in (self.here, self.there):
            for row in context.book.all(Batch, Batch.state != BatchState.UNDONE):
                left = bottles.left_of(row.total_ml, bottles.rows_of(context, [row.id]).get(row.id, ()))
                assert left.bulk_ml >= 0
                assert all(one.unopened >= 0 and one.open >= 0 for one in left.sizes)
                here = bottles.here_ml(context, row)
                assert here == left.closed_ml + left.open_ml
                ml += here
                count += sum(one.unopened + one.open for one in left.sizes)
                cost += bottles.cost_of(row, here) or 0
        return ml, count, round(cost, 8)  # costs are computed to about the eleventh place

    def act(self, what: str, at: int, number: int) -> None:
        """Move, undo, put back, open or count on; what is refused changes nothing."""
        context, other = (self.here, self.there) if at else (self.there, self.here)
        if what in {"undo", "put back"}:
            if self.moves:
                whose, entry = self.moves[number % len(self.moves)]
                (chain.undo if what == "undo" else chain.put_back)(whose, entry)
            return
        known = [one.number for one in batches.listed(context)]
        if not known:
            return
        batch = known[number % len(known)]
        if what == "open":
            batch_life.open_batch(context, batch)
            return
        part = (
            Part.of_bottles(1 + number % 4, Fraction(50))
            if what == "bottles"
            else Part.of_amount(Fraction(number))
        )
        moving.move(context, batch, part, other.bar.id, "")
        assert context.entry is not None
        self.moves.append((context, context.entry))


_ACTS = st.tuples(
    st.sampled_from(["bottles", "bottles", "amount", "undo", "undo", "put back", "open"]),
    st.integers(0, 1),
    st.integers(1, 40),
)


class _BackError(Exception):
    """Leaves a transaction without a trace."""


def _play(house: House, acts: Sequence[tuple[str, int, int]]) -> None:
    with suppress(_BackError), _both(house) as (here, there):
        ledger = _Ledger(here, there)
        whole = ledger.sums()
        for what, at, number in acts:
            before = ledger.sums()
            try:
                with here.book.session.begin_nested():
                    ledger.act(what, at, number)
            except WorkError:
                assert ledger.sums() == before
            assert ledger.sums() == whole, (what, at, number)
        raise _BackError


def test_volume_bottles_and_cost_of_both_bars_are_kept_by_moves_and_undos(house: House) -> None:
    ana = _two_bars(house)
    ana.says("batch mist to 300 ml")

    @examples(10, HealthCheck.too_slow)
    @given(st.lists(_ACTS, min_size=5, max_size=25))
    def play(acts: list[tuple[str, int, int]]) -> None:
        _play(house, acts)

    play()


def test_more_than_is_left_is_refused_and_changes_nothing(house: House) -> None:
    _two_bars(house)
    with _both(house) as (here, there):
        for part in (
            Part.of_bottles(8, Fraction(50)),
            Part.of_amount(Fraction(60)),
            Part.of_amount(Fraction(0)),
        ):
            with pytest.raises(BadValueError):
                moving.move(here, 1, part, ANNEX, "")
        assert there.book.all(Batch) == []


# -- export and import -----------------------------------------------------------------------------


def test_an_export_of_either_bar_carries_the_move(house: House, another_house: Callable[[], House]) -> None:
    ana = _two_bars(house)
    ana.says("moved 3 bottles of 1 to the annex")
    ana.taps("Move it")
    for bar in (GULL, ANNEX):
        ana.says(f"bars {bar}")
        other = another_house()
        kim = other.open_bar("Kim")
        taken = Sends(other, kim).and_takes_in("peel-ledger.json", exported(ana)["peel-ledger.json"])
        assert "are in." in taken.first_line
        ana.says(f"bars {bar}")
        asked = ("batch 1", "batches", "bottled 1 90 x 50 ml")
        was, now = (answers(one, asked) for one in (ana, kim))
        assert {
            line: said.replace("(Kim)", "(Ana)").replace("by Kim", "by Ana") for line, said in now.items()
        } == was
        assert ("at The Copper Gull as batch 1" in was["batch 1"]) == (bar == ANNEX)
        assert ("150 ml moved" in was["batch 1"]) == (bar == GULL)


def _imported(house: House, export: bytes) -> tuple[Person, Sends]:
    """Open two bars and import an export of another bar into the first."""
    house.clock.turn(hours=1)  # bars are told apart by when they were opened
    kim = house.open_bar("Kim")
    kim.says("another bar")
    kim.says("The Annex, Lisbon")
    kim.taps("Looks right")
    kim.says(f"bars {GULL}")
    sends = Sends(house, kim)
    sends.and_takes_in("peel-ledger.json", export)
    return kim, sends


def _undoes_the_import(kim: Person) -> str:
    line = next(line for line in text(kim.says("log")).splitlines() if "imported" in line)
    return text(kim.says(f"undo {line.split()[0][1:]}"))


def test_the_undo_of_an_import_keeps_a_batch_of_which_bottles_were_moved(
    house: House, another_house: Callable[[], House]
) -> None:
    ana = _two_bars(house)
    ana.says("batch mist to 100 ml")
    export = exported(ana)["peel-ledger.json"]
    other = another_house()
    kim, sends = _imported(other, export)
    kim.says("moved 3 bottles of 1 to the annex")
    kim.taps("Move it")
    said = _undoes_the_import(kim)
    assert "These stay, because you use them: Mist, orange oil, neutral spirit" in said
    assert "Batch 1 stays: some of it is at The Annex now." in said
    assert "Batch 2" not in said
    with acting(other, "Kim") as here:
        assert [one.number for one in batches.listed(here)] == [1]
        assert batches.get(other_bars.at(here, ANNEX), 1).number_there == 1
        assert bottles.here_ml(here, batches.row_of(here, 1)) == Fraction(252)
        chain.undo(here)  # the move
        assert bottles.here_ml(here, batches.row_of(here, 1)) == Fraction(402)
    sends.and_takes_in("peel-ledger.json", export)
    with acting(other, "Kim") as here:
        assert len(batches.listed(here)) == 2


@pytest.mark.parametrize("undone", [False, True])
def test_a_move_in_the_file_or_one_that_was_undone_keeps_nothing(
    house: House, another_house: Callable[[], House], undone: bool
) -> None:
    ana = _two_bars(house)
    if not undone:
        ana.says("moved 3 bottles of 1 to the annex")
        ana.taps("Move it")
    other = another_house()
    kim, _sends = _imported(other, exported(ana)["peel-ledger.json"])
    if undone:
        kim.says("moved 3 bottles of 1 to the annex")
        kim.taps("Move it")
        kim.says("undo")
    assert "stay" not in _undoes_the_import(kim)
    with acting(other, "Kim") as here:
        assert batches.listed(here) == []
