"""The bench measures what it says: run small, against the echo bot and against one that talks too much."""

from __future__ import annotations

import os
import sys
from dataclasses import replace

import pytest

from tests.api.remote import Remote
from tests.bench.__main__ import ECHO, table
from tests.bench.measure import Contender, Figures, Plan, cpu_seconds, measure, resident_mib

_SMALL = Plan(sequential=10, chats=3, each=3, starts=1)


def test_figures_of_the_echo_bot() -> None:
    prepared: list[int] = []

    def prepare(remote: Remote, person: int) -> None:
        prepared.append(person)
        remote.ask("says", person=person, text="/start and something")

    figures = measure(replace(ECHO, prepare=prepare), _SMALL)
    assert len(prepared) == 3
    assert 0 < figures.latency_p50_ms <= figures.latency_p95_ms < 5000
    assert figures.replies_per_second > 1
    assert 0 < figures.cold_start_s < 60
    if sys.platform == "linux":
        assert figures.memory_after_mib
        assert 5 < figures.memory_after_mib < 1000


_SILENT = """
import json, sys, urllib.request
base = f"http://127.0.0.1:{sys.argv[1]}/bot{sys.argv[2]}"
offset = 0
while True:
    found = json.load(urllib.request.urlopen(f"{base}/getUpdates?timeout=5&offset={offset}"))["result"]
    for update in found:
        offset = update["update_id"] + 1
        for _ in range(int(sys.argv[3])):
            chat = update["message"]["chat"]["id"]
            urllib.request.urlopen(f"{base}/sendMessage?chat_id={chat}&text=x").read()
"""


@pytest.mark.parametrize(("replies", "complaint"), [("2", "replies to"), ("9", "replies to")])
def test_a_bot_that_says_more_than_one_thing_is_not_measured(replies: str, complaint: str) -> None:
    talker = Contender("talker", (sys.executable, "-c", _SILENT, "{port}", "{token}", replies), ("x",))
    with pytest.raises(AssertionError, match=complaint):
        measure(talker, _SMALL)


def test_a_bot_that_does_not_start_shows_its_last_words() -> None:
    broken = Contender("broken", (sys.executable, "-c", "raise SystemExit('no token')"), ("x",))
    with pytest.raises(AssertionError, match="no token"):
        measure(broken, _SMALL)


def test_memory_and_time_of_this_process() -> None:
    if sys.platform != "linux":
        pytest.skip("/proc is Linux's")
    resident = resident_mib(os.getpid())
    assert resident
    assert 5 < resident < 4000
    assert cpu_seconds(os.getpid()) > 0
    assert resident_mib(2**22 + 1) is None


def test_table_has_ratios_to_the_first() -> None:
    first = Figures(2.0, 4.0, 100.0, 1.0, 0.5, 40.0, None)
    second = Figures(3.0, 4.0, 50.0, 1.0, 0.5, 60.0, None)
    lines = table({"echo": first, "ledger": second}).splitlines()
    assert lines[0].split() == ["echo", "ledger"]
    assert lines[1].split() == ["latency_p50_ms", "2.00", "3.00", "(x1.50)"]
    assert lines[3].split() == ["replies_per_second", "100.00", "50.00", "(x0.50)"]
    assert lines[7].split() == ["memory_after_mib", "-", "-"]
