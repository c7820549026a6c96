"""Tests that the long work of one bar holds up nobody else."""

from __future__ import annotations

import asyncio
import threading
from collections.abc import Callable
from functools import partial

import pytest

from bot.channels.telegram.receiving.chat_locks import PersonPace
from bot.chat.dialogue import on_copy, progress
from bot.chat.grammar.lexer import LONGEST_MESSAGE
from bot.chat.reply.message import Reply
from bot.work.people.newcomers import is_newcomer
from storage.tables import Waste
from storage.workbench import Workbench
from tests.bench import imports
from tests.channels.telegram.conftest import Telephone
from tests.house import CHANNEL, House, text
from tests.work.transfer.files import Sends, waste_rows
from tests.work_done import at_most_calls

ONE_DATABASE = pytest.mark.parametrize("database", ["sqlite"], indirect=True)
WORST = [
    "language ",
    "lime ",
    "3 limes mouldy, ",
    "oz ",
    "half a ",
    "what is ",
    "or not ",
    "1/2 ",
    "bar ounces ",
]
# The longest is refused early; of shorter ones more is tried. Each about twice what the worst takes.
_CALLS_A_CHARACTER = {LONGEST_MESSAGE // 4: 2_500, LONGEST_MESSAGE: 250}


@ONE_DATABASE
@pytest.mark.parametrize("count", [3_000, pytest.param(90_000, marks=pytest.mark.long)])
async def test_others_are_answered_while_one_bar_imports(
    telephone: Telephone, monkeypatch: pytest.MonkeyPatch, count: int
) -> None:
    """The import is held until they were. `python -m tests.bench imports` measures how long they wait."""
    stranger, others = await imports.bars_at(telephone)
    telephone.server.idle = None  # the import goes on while others are answered
    loop, stands, goes_on = asyncio.get_running_loop(), asyncio.Event(), threading.Event()
    tell = progress.tell

    def stand_still(words: Callable[[], Reply]) -> None:
        loop.call_soon_threadsafe(stands.set)
        goes_on.wait(60)
        tell(words)

    monkeypatch.setattr(progress, "tell", stand_still)
    importing = asyncio.create_task(imports.imports(telephone.server, stranger, count))
    await asyncio.wait_for(stands.wait(), 60)
    answered = asyncio.create_task(asyncio.sleep(0))
    try:
        async with asyncio.timeout(60):
            await imports.answers_beside(telephone.server, others, answered, least=16)
        assert not any("Nothing is added yet" in one.text for one in telephone.server.messages(stranger))
    finally:
        goes_on.set()
    taken = await imports.answers_beside(telephone.server, others, importing)
    await importing
    print(f"{count} rows: {len(taken)} answers to others, the slowest in {max(taken) * 1000:.0f} ms")


def test_what_others_log_while_a_file_is_tried_and_taken_in_stays(
    house: House, monkeypatch: pytest.MonkeyPatch
) -> None:
    ana = house.open_bar("Ana")
    ben = house.joins("Ben")
    benches = 0
    finish = Workbench.finish

    def interrupted(bench: Workbench) -> None:
        nonlocal benches
        benches += 1
        if benches in {1, 3, 4, 5, 6, 7, 8}:
            assert "Logged" in text(ben.says("waste 1 lime mouldy"))
        finish(bench)

    monkeypatch.setattr(Workbench, "finish", interrupted)
    send = Sends(house, ana)
    tried = send("waste.csv", waste_rows(40))
    assert benches == 2  # the first copy was outdated
    (taken,) = ana.taps_line(next(one.line for row in tried.buttons for one in row if "Import" in one.label))
    assert "40 rows of waste.csv are in." in text([taken])
    assert benches == 2 + on_copy.MOST_TRIES  # and then it was done in the transaction
    week = text(ana.says("waste log")) + text(ana.says("log"))
    assert week.count("Ben") >= 1
    with house.store.reading() as unit:
        rows = unit.bar(1).all(Waste)
        assert sum(row.count_milli or 0 for row in rows) == 1000 * (_sum(40) + 1 + on_copy.MOST_TRIES)
        assert len({row.id for row in rows}) == len(rows)


def _sum(count: int) -> int:
    return sum(1 + number % 9 for number in range(count))


class _Turned:
    """The event loop's time, which only sleeping moves."""

    def __init__(self, monkeypatch: pytest.MonkeyPatch) -> None:
        self.now = 0.0
        self.slept: list[float] = []
        self._gives_way = asyncio.sleep
        monkeypatch.setattr(asyncio.get_running_loop(), "time", lambda: self.now)
        monkeypatch.setattr(asyncio, "sleep", self.sleep)

    async def sleep(self, seconds: float) -> None:
        self.slept.append(seconds)
        self.now += seconds
        await self._gives_way(0)


async def test_one_person_cannot_crowd_out_the_others(monkeypatch: pytest.MonkeyPatch) -> None:
    pace = PersonPace(480)  # one in an eighth of a second, which is exact
    with monkeypatch.context() as patch:
        turned = _Turned(patch)
        for _time in range(481):
            await pace.wait("stranger")
        assert turned.slept == []  # the burst, an eighth of a second later the next
        for _time in range(2):
            await pace.wait("stranger")
        assert turned.slept == [0.125, 0.125]
        await pace.wait("ana")
        assert turned.slept == [0.125, 0.125]


async def test_a_newcomer_may_send_less_at_once(monkeypatch: pytest.MonkeyPatch) -> None:
    asked: list[str] = []

    async def is_newcomer(person: str) -> bool:
        asked.append(person)
        return person == "stranger"

    pace = PersonPace(600, is_newcomer)

    async def within(person: str, seconds: float) -> int:
        """The number of messages of a person that pass in this time."""
        end, passed = turned.now + seconds, 0
        while turned.now < end and passed < 1000:
            await pace.wait(person)
            await asyncio.sleep(0)  # others have their turn between two messages
            passed += 1
        return passed

    # 600 at once for the one, about half for the other, then ten and five a second.
    with monkeypatch.context() as patch:
        turned = _Turned(patch)
        assert 600 <= await within("ana", 1.0) <= 620
        assert 200 <= await within("stranger", 1.0) <= 320
    assert asked == ["ana", "stranger"]


def test_a_newcomer_is_in_no_older_bar(house: House) -> None:
    house.open_bar("Ana")
    known = partial(is_newcomer, house.store, house.clock, CHANNEL)
    assert known("ana")
    assert known("nobody")
    house.clock.turn(days=7)
    assert not known("ana")
    assert known("nobody")


async def test_all_that_one_person_sends_at_once_is_answered_in_order(telephone: Telephone) -> None:
    telephone.channel.intake.pace = PersonPace(1200)
    telephone.channel.intake.pace._free = 0.1
    ana = await telephone.opened_bar()
    mark = telephone.server.mark()
    for count in range(1, 13):
        ana.writes(f"waste {count} limes mouldy")
    followed = await telephone.server.follow(ana, mark, expects=12)
    assert [one.text.split()[1] for one in followed.seen] == [str(count) for count in range(1, 13)]


@pytest.mark.parametrize(
    "words",
    [*WORST[::4], *(pytest.param(one, marks=pytest.mark.long) for one in WORST if one not in WORST[::4])],
)
@pytest.mark.parametrize("length", _CALLS_A_CHARACTER)
def test_no_text_takes_long(house: House, words: str, length: int) -> None:
    ana = house.open_bar("Ana")
    for lead in ("", "invite ", "waste "):
        line = (lead + words * length)[:length]
        ana.says(line)  # the first time loads what it needs
        with at_most_calls(_CALLS_A_CHARACTER[length] * length):
            ana.says(line)


def test_a_big_import_is_undone_on_a_copy_too(house: House, monkeypatch: pytest.MonkeyPatch) -> None:
    ana = house.open_bar("Ana")
    send = Sends(house, ana)
    tried = send("waste.csv", waste_rows(400))
    ana.taps_line(next(one.line for row in tried.buttons for one in row if "Import" in one.label))
    benches: list[Workbench] = []
    finish = Workbench.finish

    def counted(bench: Workbench) -> None:
        benches.append(bench)
        finish(bench)

    monkeypatch.setattr(Workbench, "finish", counted)

    def held() -> int:
        with house.store.reading() as unit:
            return sum(row.count_milli or 0 for row in unit.bar(1).all(Waste)) // 1000

    assert held() == _sum(400)
    assert "400 rows" in text(ana.says("undo"))
    assert held() == 0
    assert len(benches) == 1
