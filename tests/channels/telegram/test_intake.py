"""Tests that every confirmed update is on disk, or was answered and changed nothing."""

from __future__ import annotations

import asyncio
from collections.abc import AsyncIterator
from concurrent.futures import ThreadPoolExecutor
from datetime import UTC, datetime

import pytest
from sqlalchemy import select

from bot.channels.telegram.confirmation_gate import Hold
from bot.channels.telegram.metrics import Figures
from bot.channels.telegram.receiving.intake import Answering, Left, OwnIntake, Update
from bot.channels.telegram.updates import CHANNEL, Incoming
from bot.chat.conversation.settlement import Receipt
from bot.work.inbox import inbox
from bot.work.inbox.inbox import Letter, MailState
from storage.store import Store
from storage.tables import Inbox
from storage.trouble import AwayError
from tests.house import Hands

pytestmark = pytest.mark.parametrize("database", ["sqlite"], indirect=True)
NOW = datetime(2026, 11, 25, 18, 0, tzinfo=UTC)


class Answers(Answering):
    """Answers each update when its gate is open; those without one immediately.

    The answers of `leave` have left before that, those of `fail` did not arrive at the first attempt.
    """

    def __init__(self) -> None:
        self.worked: list[int] = []
        self.gates: dict[int, asyncio.Event] = {}
        self.leave: set[int] = set()
        self.fail: set[int] = set()
        self.failed_once = asyncio.Event()

    def read(self, update: Update) -> Incoming:
        return Incoming(update["update_id"], str(update["chat"]))

    async def work(
        self, incoming: Incoming, letter: Letter, receipt: Receipt, hold: Hold | None, left: Left
    ) -> None:
        if incoming.update_id in self.leave | self.fail:
            assert hold is not None
            hold.let_go()
        if incoming.update_id in self.fail:
            assert hold is not None
            await hold.stuck()
            self.failed_once.set()
        if incoming.update_id in self.gates:
            await self.gates[incoming.update_id].wait()
        self.worked.append(letter.update_id)

    async def suggest(self, incoming: Incoming) -> None:
        raise AssertionError("nothing is typed here")

    async def excuse(self, incoming: Incoming) -> None:
        raise AssertionError("the database is there")

    async def failed(self, incoming: Incoming, letter: Letter) -> None:
        raise AssertionError("nothing fails here")


class Taking:
    """An intake and the object that answers its updates."""

    def __init__(self, store: Store) -> None:
        self.store = store
        self.answers = Answers()
        self.workers = ThreadPoolExecutor(2)
        self.intake = OwnIntake(store, Hands(NOW), self.answers, self.workers, Figures(), CHANNEL)

    def on_disk(self) -> dict[int, int]:
        with self.store.reading() as unit:
            rows = unit.session.execute(select(Inbox.update_id, Inbox.state))
            return {row.update_id: row.state for row in rows}

    def gate(self, number: int) -> asyncio.Event:
        return self.answers.gates.setdefault(number, asyncio.Event())


@pytest.fixture
async def taking(store: Store) -> AsyncIterator[Taking]:
    taking = Taking(store)
    await taking.intake.open()
    yield taking
    await taking.intake.close()
    taking.workers.shutdown()


def _update(number: int, chat: int = 1) -> Update:
    return {"update_id": number, "chat": chat}


async def test_answered_in_a_moment_it_is_written_down_afterwards(taking: Taking) -> None:
    assert await taking.intake.take_in([_update(1), _update(2, chat=2)])
    assert taking.answers.worked == [1, 2]
    await taking.intake.close()
    assert taking.on_disk() == {1: MailState.ANSWERED, 2: MailState.ANSWERED}


async def test_what_takes_longer_is_on_disk_before_it_is_confirmed(taking: Taking) -> None:
    gate = taking.gate(2)
    assert await taking.intake.take_in([_update(1), _update(2, chat=2)])
    assert taking.on_disk()[2] == MailState.WAITING
    gate.set()
    await taking.intake.close()
    assert taking.on_disk() == {1: MailState.ANSWERED, 2: MailState.ANSWERED}


async def test_an_answer_that_has_left_is_not_waited_for(taking: Taking) -> None:
    taking.answers.leave.add(1)
    gate = taking.gate(1)
    assert await taking.intake.take_in([_update(1)])
    assert taking.answers.worked == []
    assert taking.on_disk() == {}
    gate.set()
    await taking.intake.close()
    assert taking.on_disk() == {1: MailState.ANSWERED}


async def test_an_answer_that_did_not_arrive_is_written_down_before_the_next_try(taking: Taking) -> None:
    taking.answers.fail.add(1)
    gate = taking.gate(1)
    assert await taking.intake.take_in([_update(1)])
    await taking.answers.failed_once.wait()
    assert taking.on_disk() == {1: MailState.WAITING}
    gate.set()
    await taking.intake.close()
    assert taking.on_disk() == {1: MailState.ANSWERED}


async def test_the_same_update_again_is_not_worked_again(taking: Taking) -> None:
    gate = taking.gate(1)
    first = asyncio.create_task(taking.intake.take_in([_update(1)]))
    await asyncio.sleep(0)
    # It arrives again while it is neither answered nor on disk: it is confirmed with the first.
    assert await taking.intake.take_in([_update(1)])
    assert taking.on_disk() == {1: MailState.WAITING}
    assert await first
    gate.set()
    await taking.intake.close()
    assert await taking.intake.take_in([_update(1)])
    assert taking.answers.worked == [1]


async def test_not_written_down_it_is_not_confirmed(taking: Taking, monkeypatch: pytest.MonkeyPatch) -> None:
    def refuse(*_: object) -> None:
        raise AwayError("database or disk is full")

    gate = taking.gate(2)
    with monkeypatch.context() as broken:
        broken.setattr(inbox, "take_in", refuse)
        assert not await taking.intake.take_in([_update(1), _update(2, chat=2)])
    # Both arrive again: the answered one is known, the other starts again behind its first turn.
    again = asyncio.create_task(taking.intake.take_in([_update(1), _update(2, chat=2)]))
    assert await again
    assert taking.on_disk()[2] == MailState.WAITING
    gate.set()
    await taking.intake.close()
    assert taking.answers.worked.count(1) == 1
    assert taking.on_disk() == {1: MailState.ANSWERED, 2: MailState.ANSWERED}


async def test_what_a_change_wrote_down_itself_is_only_marked(taking: Taking, store: Store) -> None:
    letter = Letter(CHANNEL, 7, '{"update_id": 7, "chat": 1}', chat="1")
    with store.writing() as unit:
        assert inbox.mark_worked(unit, letter, "[]", NOW)
    with store.writing() as unit:
        assert not inbox.mark_worked(unit, letter, "[]", NOW)
    inbox.put_away(store, [letter], NOW)
    assert taking.on_disk() == {7: MailState.ANSWERED}
    with store.reading() as unit:
        assert unit.session.scalar(select(Inbox.replies)) is None
