"""Tests of the life of a batch: what each state allows, what is lost, and that undo restores all of it."""

from __future__ import annotations

from collections.abc import Callable
from datetime import timedelta
from fractions import Fraction

import pytest

from bot.work.batches import batch_life, batches, bottles
from bot.work.batches.batches import BatchState, BatchView, Clarity
from bot.work.errors import NotThereError, WrongStateError
from bot.work.log import chain
from storage.tables import Batch
from tests.house import House
from tests.work.acting import acting

MIST = """new formula Mist
orange oil 2 ml
neutral spirit 96 % 402 ml
kind tincture
rest 48 h
discard 300 days"""


def _made(house: House) -> None:
    house.open_bar(said=[MIST])
    house.person("Ana").says("batch mist x1")


def _batch(house: House) -> BatchView:
    with acting(house) as context:
        return batches.get(context, 1)


def _check(house: House, clarity: Clarity) -> BatchState:
    with acting(house) as context:
        return batch_life.check(context, 1, clarity).batch.state


def test_a_clear_batch_is_ready_from_the_end_of_its_rest_on(house: House) -> None:
    _made(house)
    house.clock.turn(hours=47, minutes=59)
    assert _check(house, Clarity.CLEAR) is BatchState.RESTING
    house.clock.turn(minutes=1)
    assert _check(house, Clarity.HAZY) is BatchState.RESTING
    assert _check(house, Clarity.SPLIT) is BatchState.RESTING
    assert _check(house, Clarity.CLEAR) is BatchState.READY
    assert _check(house, Clarity.HAZY) is BatchState.READY


def test_what_is_used_up_or_thrown_out_is_neither_checked_nor_opened_nor_ended_again(house: House) -> None:
    _made(house)
    with acting(house) as context:
        batch_life.open_batch(context, 1)
        with pytest.raises(WrongStateError):
            batch_life.open_batch(context, 1)
        assert batch_life.use_up(context, 1).batch.state is BatchState.USED_UP
        again: Callable[[], object]
        for again in (
            lambda: batch_life.check(context, 1, Clarity.CLEAR),
            lambda: batch_life.open_batch(context, 1),
            lambda: batch_life.use_up(context, 1),
            lambda: batch_life.discard(context, 1, None, ""),
        ):
            with pytest.raises(WrongStateError) as refused:
                again()
            assert (refused.value.batch, refused.value.state) == (1, "used up")
        with pytest.raises(NotThereError):
            batch_life.use_up(context, 2)


@pytest.mark.parametrize(("said", "lost"), [(None, None), (900, None), (10, 10), (0, 0)])
def test_no_more_is_thrown_out_than_was_made(house: House, said: int | None, lost: int | None) -> None:
    _made(house)
    total = _batch(house).total_ml
    assert 395 < total < 405
    with acting(house) as context:
        amount = None if said is None else Fraction(said)
        found = batch_life.discard(context, 1, amount, "mouldy " * 20).batch
        row = context.book.get(Batch, 1)
    assert row is not None
    assert found.state is BatchState.DISCARDED
    assert found.lost_ml == (total if lost is None else lost)
    assert row.lost_reason == ("mouldy " * 20)[:80]


def test_what_was_spilt_before_is_not_thrown_out_again(house: House) -> None:
    _made(house)
    with acting(house) as context:
        before = batches.get(context, 1)
        bottles.spill(context, 1, Fraction(104))
        assert bottles.held_ml(context, before) == before.total_ml - 104
        assert batch_life.discard(context, 1, None, "").batch.lost_ml == before.total_ml - 104


def test_undo_of_an_end_restores_everything_as_it_was(house: House) -> None:
    _made(house)
    with acting(house) as context:
        batch_life.check(context, 1, Clarity.HAZY)
        batch_life.open_batch(context, 1)
    house.clock.turn(hours=3)
    before = _batch(house)
    assert before.discard_on.isoformat() < before.frozen["discard_on"]
    with acting(house) as context:
        ended = batch_life.discard(context, 1, Fraction(20), "spilt")
        assert (ended.batch.clarity, ended.batch.opened_at) == (Clarity.HAZY, before.opened_at)
    with acting(house) as context:
        undone = chain.undo(context, ended.entry)
    assert _batch(house) == before
    with acting(house) as context:
        row = context.book.get(Batch, 1)
        assert row is not None
        assert (row.ended_at, row.lost_reason) == (None, None)
    with acting(house) as context:
        chain.put_back(context, undone.entry)
    again = _batch(house)
    assert again.state is BatchState.DISCARDED
    assert again.lost_ml == 20


def test_undo_of_an_opening_closes_the_bottle_and_its_date(house: House) -> None:
    _made(house)
    before = _batch(house)
    with acting(house) as context:
        opened = batch_life.open_batch(context, 1)
        assert opened.batch.state is BatchState.IN_USE
        assert opened.batch.opened_at == context.now
    with acting(house) as context:
        chain.undo(context, opened.entry)
    assert _batch(house) == before


def test_the_list_goes_by_discard_date_and_leaves_out_what_is_over(house: House) -> None:
    _made(house)
    ana = house.person("Ana")
    ana.says("batch mist x1")
    house.clock.turn(hours=48)
    ana.says("batch mist x1")
    with acting(house) as context:
        batch_life.open_batch(context, 2)  # an opened bottle goes first
        batch_life.use_up(context, 1)
        assert [one.number for one in batches.listed(context)] == [2, 3]
        assert [one.number for one in batches.listed(context, everything=True)] == [3, 2, 1]
        last = batches.get(context, 3)
        day = last.discard_on - timedelta(days=7)
        assert batches.near_discard(last, day, 7)
        assert not batches.near_discard(last, day, 6)
        assert not batches.near_discard(batches.get(context, 1), last.discard_on, 7)
        assert not last.rested(last.rest_until - timedelta(seconds=1))
        assert last.rested(last.rest_until)


def test_a_lot_is_found_wherever_it_went_in(house: House) -> None:
    _made(house)
    ana = house.person("Ana")
    ana.says("batch mist x1")
    for number in (1, 2):
        ana.says(f"lot {number} orange oil L7")
    with acting(house) as context:
        assert [one.number for one in batches.with_lot(context, " L7 ")] == [2, 1]
        assert batches.with_lot(context, "L8") == []
        with pytest.raises(NotThereError):
            batch_life.note_lot(context, 1, 999, "L7")
