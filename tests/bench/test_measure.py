"""Tests of the benchmarks: small runs against the echo bot and against one that replies too much."""

from __future__ import annotations

import os
import sys
from collections.abc import Iterator, Sequence
from dataclasses import replace
from pathlib import Path

import pytest

from tests.bench.__main__ import ECHO, peel_ledger
from tests.bench.databases import Databases
from tests.bench.measure import Contender, Figures, Plan, measure
from tests.bench.parts import cpu_seconds, resident_mib
from tests.bench.soak import Soak
from tests.bench.telling import Found, aims, tell
from tests.bench.ticks import Ticks

_SMALL = Plan(sequential=10, chats=3, each=3, starts=1)


@pytest.fixture
def databases() -> Iterator[Databases]:
    """Databases of the benchmarks, deleted with the test."""
    with Databases() as made:
        yield made


@pytest.mark.long
def test_figures_of_the_echo_bot(databases: Databases) -> None:
    prepared: list[tuple[str, list[int]]] = []

    def prepare(url: str, people: Sequence[int]) -> None:
        prepared.append((url, list(people)))

    figures = measure(replace(ECHO, prepare=prepare), _SMALL, databases)
    assert prepared == [("", [1001, 1002, 1003])]
    assert 0 < figures.latency_p50_ms <= figures.latency_p95_ms < 5000
    assert 0 < figures.together_p50_ms <= figures.together_p95_ms < 5000
    assert figures.replies_per_second > 1
    assert figures.cold_start_s is not None
    assert 0 < figures.cold_start_s < 60
    if sys.platform == "linux":
        assert figures.cpu_ms > 0
        assert figures.memory_after_mib
        assert 5 < figures.memory_after_mib < 1000


@pytest.mark.long
@pytest.mark.skipif(sys.platform != "linux", reason="the private PostgreSQL's processes are read from /proc")
@pytest.mark.usefixtures("_postgres")
def test_two_processes_behind_a_webhook_answer_and_every_part_is_counted(databases: Databases) -> None:
    hooked = peel_ledger("two", "waste 6 oranges mouldy", "postgresql", 2)
    figures = measure(hooked, replace(_SMALL, starts=0), databases, ECHO)
    assert figures.latency_ratio > 0
    assert figures.replies_ratio > 0
    assert figures.cold_start_s is None
    assert figures.replies_per_second > 1
    assert figures.database_cpu_ms is not None


@pytest.fixture
def _postgres() -> None:
    from tests.conftest import need_postgres  # noqa: PLC0415 - the fixtures' own file

    need_postgres()


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


@pytest.mark.parametrize("replies", ["2", "9"])
def test_a_bot_that_says_more_than_one_thing_is_not_measured(replies: str, databases: Databases) -> None:
    talker = Contender("talker", (sys.executable, "-c", _SILENT, "{port}", "{token}", replies), ("x",))
    with pytest.raises(AssertionError, match="replies to"):
        measure(talker, _SMALL, databases)


def test_a_bot_that_does_not_start_shows_its_last_words(databases: Databases) -> None:
    broken = Contender("broken", (sys.executable, "-c", "raise SystemExit('no token')"), ("x",))
    with pytest.raises(AssertionError, match="no token"):
        measure(broken, _SMALL, databases)


def test_memory_and_time_of_this_process() -> None:
    if sys.platform != "linux":
        pytest.skip("/proc is Linux's")
    resident = resident_mib(os.getpid())
    assert resident
    assert 5 < resident < 4000
    assert cpu_seconds(os.getpid()) > 0
    assert cpu_seconds(os.getppid(), family=True) >= cpu_seconds(os.getpid())
    assert resident_mib(2**22 + 1) is None
    assert cpu_seconds(2**22 + 1) == 0


def _figures(p50: float, rate: float, cpu: float, database: float | None = None) -> Figures:
    ratios = p50 / 2.0, rate / 100.0, cpu / 1.0
    return Figures(
        p50, 2 * p50, 5 * p50, 9 * p50, rate, 3 * p50, cpu, 0.5, database, 1.5, 40.0, 50.0, *ratios
    )


_FOUND = Found(
    contenders={
        "echo": _figures(2.0, 100.0, 1.0),
        "scale, SQLite": _figures(2.5, 80.0, 1.2),
        "waste, SQLite": _figures(4.0, 50.0, 2.0),
        "waste, webhook, one process": _figures(5.0, 40.0, 4.0, 2.0),
        "waste, webhook, two processes": _figures(5.0, 60.0, 4.0, 2.0),
    },
    ticks={"SQLite": (Ticks(1.0, 50.0), Ticks(1.2, 80.0))},
    imports=(20.0, 100.0),
    week=[(10_000, 2.0, 3.0), (1_000_000, 2.2, 3.0)],
    soak=Soak(((0, 100.0), (50, 120.0), (100, 121.0)), 9.0),
)


def test_aims_are_held_against_the_figures() -> None:
    found = {one.what: (one.got, one.met) for one in aims(_FOUND)}
    assert found["`scale` on SQLite, p50 against the echo"] == ("1.25", True)
    assert found["its throughput against the echo"] == ("0.80", True)
    assert found["`waste` on SQLite, p50 against the echo"] == ("2.00", False)
    assert found["two processes on PostgreSQL against one"] == ("1.50", False)
    assert found["tick among 100,000 reminders against 1,000, SQLite"] == ("1.60", False)
    assert found["a week among a million rows against alone"] == ("1.10", True)
    assert found["others beside an import against alone"] == ("5.00", False)
    assert found["resident after the soak"] == ("121 MB", True)


def test_the_report_gets_ratios_and_how_far_it_goes() -> None:
    told = "\n".join(tell(_FOUND, _SMALL, 4000))
    assert "| scale, SQLite | 2.50 (1.25) | 5.00 | 12.50 | 22.50 | 80.00 (0.80) |" in told
    # Two cores at 2 ms of database each are a thousand a second, four bot processes at 4 ms each.
    assert "about 1000 logged messages a second, which keeps 4 bot processes busy" in told
    assert "some 30,000 bars in their busiest hour" in told
    # 4 + 0.5 + 2 ms for one reply.
    most = (os.cpu_count() or 1) * 1000 / 6.5
    assert f"its cores allow {most:.0f} replies a second, {most / 40:.2f} times" in told
    assert "come within 20 ms, and within 100 ms while one imports 30,000 rows." in told
    assert "100 at the start, 120 after a quarter, 120 half, 121 at the end" in told


def test_the_picture_is_small(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    from tests.bench import telling  # noqa: PLC0415 - to draw elsewhere

    monkeypatch.setattr(telling, "PICTURE", tmp_path / "pictures" / "bench.png")
    telling.draw(_FOUND)
    assert telling.PICTURE.read_bytes().startswith(b"\x89PNG")
    assert telling.PICTURE.stat().st_size < 60_000
