"""Tests of progress reports."""

from __future__ import annotations

from pathlib import Path

import pytest

from bot.channels.console.console import Console
from bot.chat.dialogue import progress
from bot.chat.reply.message import Reply, reply
from tests.house import House


def test_nobody_listens_and_nothing_is_worded() -> None:
    def words() -> Reply:
        raise AssertionError("worded for nobody")

    progress.tell(words)


def test_the_first_word_waits_and_the_next_ones_too(monkeypatch: pytest.MonkeyPatch) -> None:
    clock = [100.0]
    monkeypatch.setattr("time.monotonic", lambda: clock[0])
    heard: list[str] = []
    with progress.telling(lambda one: heard.append(one.first_line)):
        for second in range(8):
            clock[0] = 100.0 + second
            progress.tell(lambda second=second: reply(str(second)))  # type: ignore[misc]
    assert heard == ["2", "4", "6"]
    progress.tell(lambda: reply("late"))
    assert heard == ["2", "4", "6"]


def test_the_terminal_prints_it_above_the_answer(
    house: House, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(progress, "FIRST_SECONDS", 0.0)
    path = tmp_path / "waste.csv"
    path.write_bytes(b"day,fruit,pieces\n" + b"2026-11-24,orange,6\n" * 150)
    written: list[str] = []
    console = Console(house.store, house.clock, "Ana", written.append)
    for line in ("start", "The Copper Gull", "Lisbon", "1", "1", "1", "1"):
        console.say(line)
    written.clear()
    console.say(f"import {path}")
    assert written[0] == "Trying the file: 100 of 150 rows"
    assert written[1].startswith("waste.csv would add 150 new rows.")
