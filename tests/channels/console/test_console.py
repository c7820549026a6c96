"""Tests of the console's conversation, its clock set by hand."""

from __future__ import annotations

import os
import re
import subprocess
import sys
from datetime import UTC, datetime
from pathlib import Path

import pytest

from bot.channels.console.console import Console, talk
from bot.chat.reply.message import Button, Message, Place, Reply, Sender, reply
from storage import migrate
from storage.store import Store
from tests.house import Hands

MIST = "new formula Lemon mist\\\nlemon oil 9 ml\\\nneutral spirit 96 % 91 ml\\\nkind aroma mist\n1\n"


@pytest.fixture
def clock() -> Hands:
    return Hands(datetime(2026, 11, 25, 18, tzinfo=UTC))


@pytest.fixture
def written() -> list[str]:
    return []


@pytest.fixture
def console(tmp_path: Path, clock: Hands, written: list[str]) -> Console:
    """A console of a person with an open bar."""
    store = Store(f"sqlite:///{tmp_path / 'console.sqlite'}")
    migrate.upgrade(store)
    opened = Console(store, clock, "Ana Bell", written.append)
    for line in ("start", "The Heron", "Lisbon", "EU", "EUR", "metric", "05:00"):
        opened.say(line)
    assert "The Heron is open." in written
    written.clear()
    return opened


def test_a_number_chooses_a_button(console: Console, written: list[str]) -> None:
    talk(console, MIST.splitlines(keepends=True))
    talk(console, ["scale lemon mist to 4 x 50 ml\n"])
    assert "[2] In grams  [3] Cost" in written
    written.clear()
    talk(console, ["2\n"])
    assert written[0] == "Lemon mist: 4 x 50 ml"
    assert any(re.match(r"  Total +\d+\.\d g$", line) for line in written)


def test_a_number_that_is_an_answer_is_never_taken_for_a_button(console: Console, written: list[str]) -> None:
    """'8' is eight lemons, not the eighth button (which would be ten)."""
    talk(console, ["waste\n", "lemon\n"])
    assert "[g] 8  [h] 10  [i] 12" in written
    talk(console, ["8\n", "1\n"])
    assert "Logged: 8 lemons, mouldy." in written
    written.clear()
    talk(console, ["waste\n", "lemon\n", "h\n", "mouldy\n"])
    assert "Logged: 10 lemons, mouldy." in written


def test_a_batch_is_chosen_by_letter_or_by_its_own_number(console: Console, written: list[str]) -> None:
    talk(console, MIST.splitlines(keepends=True))
    talk(console, ["new formula Brine\\\n", "salt 20 g\\\n", "water 80 ml\\\n", "kind saline\n", "1\n"])
    talk(console, ["batch brine x1\n", "batch lemon mist x1\n", "open\n"])
    assert written[-5:-1] == ["Which batch?", "[a] 1 Brine", "[b] 2 Lemon mist", "[c] Cancel"] or (
        written[-5:-1] == ["Which batch?", "[a] 2 Lemon mist", "[b] 1 Brine", "[c] Cancel"]
    )
    written.clear()
    talk(console, ["1\n"])
    assert written[0] == "Batch 1, Brine, is in use."


def test_more_buttons_than_letters_have_signs_too(
    console: Console, written: list[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    said: list[str] = []

    def answer(message: Message) -> list[Reply]:
        said.append(message.text)
        return [reply("Which?", buttons=tuple((Button(f"{n} Mist", f"batch {n}"),) for n in range(1, 61)))]

    monkeypatch.setattr(console.conversation, "answer", answer)
    console.say("batches")
    assert written[26:28] == ["[z] 26 Mist", "[aa] 27 Mist"]
    console.say("aa")
    console.say("BH")
    assert said == ["batches", "batch 27", "batch 60"]


def test_buttons_of_an_answer_stay_where_a_question_comes_below_it(
    console: Console, written: list[str]
) -> None:
    talk(console, MIST.splitlines(keepends=True))
    talk(console, ["new formula\n", "Brine\n", "formulas\n"])
    shown = written[written.index("1 formula in the book") :]
    assert shown[1].startswith("[1] Lemon mist")
    assert "Type the ingredients, a line each: lemon oil 10 ml" in shown
    assert "[3] Back  [4] Cancel" in shown
    written.clear()
    talk(console, ["1\n"])
    assert written[0].startswith("Lemon mist: ")


def test_a_backslash_goes_on_in_the_next_line(console: Console, written: list[str]) -> None:
    talk(console, MIST.splitlines(keepends=True))
    assert "Lemon mist is in the book." in written
    assert any(re.match(r"  neutral spirit 96 % +91 ml$", line) for line in written)


def test_quit_ends_what_comes_through_a_pipe(console: Console, written: list[str]) -> None:
    talk(console, ["waste 2 limes\n", "quit\n", "waste 3 limes\n"])
    assert written[0].startswith("Logged: 2 limes")
    assert not any("3 limes" in line for line in written)


def test_a_backslash_at_the_very_end_loses_nothing(console: Console, written: list[str]) -> None:
    talk(console, ["waste 2 limes\\\n"])
    assert written[0].startswith("Logged: 2 limes")


def test_a_typo_is_answered_with_what_was_meant(console: Console, written: list[str]) -> None:
    talk(console, MIST.splitlines(keepends=True))
    written.clear()
    talk(console, ["scale lemmon mist x2\n"])
    assert written[:3] == ["I know no formula called “lemmon mist”.", "Did you mean:", "[1] Lemon mist"]
    talk(console, ["1\n"])
    assert "Lemon mist: x 2" in written


def test_empty_lines_are_no_messages(console: Console, written: list[str]) -> None:
    talk(console, ["\n", "   \n", "\r\n"])
    assert written == []


def test_reminders_are_shown_at_a_tick_once_and_can_be_answered(
    console: Console, clock: Hands, written: list[str]
) -> None:
    talk(console, MIST.splitlines(keepends=True))
    talk(console, ["batch lemon mist to 200 ml\n"])
    written.clear()
    assert console.tick() == 0
    clock.turn(hours=24, minutes=1)
    shown = console.tick()
    assert any(line == "Batch 1, Lemon mist, has rested. How does it look?" for line in written)
    assert shown >= 1
    assert console.tick() == 0
    written.clear()
    console.say("1")
    assert written[0] == "Batch 1, Lemon mist: clear."


def test_what_is_said_in_a_terminal_greets_asks_and_ends(
    console: Console, written: list[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    typed = iter(["", "waste 2 limes\\", "3 lemons", "quit"])
    prompts: list[str] = []

    def ask(prompt: str) -> str:
        prompts.append(prompt)
        return next(typed)

    monkeypatch.setattr("builtins.input", ask)
    assert talk(console) == 0
    assert written[0] == "You are at The Heron, Ana Bell."
    assert "Logged 2 lines" in written
    assert prompts == ["> ", "> ", ". ", "> "]


def test_two_names_are_two_people(console: Console, clock: Hands) -> None:
    shown: list[str] = []
    Console(console.store, clock, "Ben", shown.append).say("week")
    assert shown[0] == "You are not in a bar yet."


def test_files_are_saved_beside_the_person_and_never_over_another(
    console: Console,
    written: list[str],
    monkeypatch: pytest.MonkeyPatch,
    tmp_path: Path,
) -> None:
    from bot.chat.reply.message import File  # noqa: PLC0415 - only here

    monkeypatch.chdir(tmp_path)
    (tmp_path / "labels.pdf").write_bytes(b"mine")
    made = reply("Labels", files=(File("labels.pdf", b"new"),))
    monkeypatch.setattr(console.conversation, "answer", lambda _message: [made])
    console.say("label 1")
    assert written[:2] == ["Labels", "[labels.pdf: labels-2.pdf]"]
    assert (tmp_path / "labels.pdf").read_bytes() == b"mine"
    assert (tmp_path / "labels-2.pdf").read_bytes() == b"new"


def test_messages_of_one_person_have_keys_of_their_own(
    console: Console, monkeypatch: pytest.MonkeyPatch
) -> None:
    seen: list[tuple[Place, Sender, str]] = []

    def answer(message: Message) -> list[Reply]:
        seen.append((message.place, message.sender, message.key))
        return []

    monkeypatch.setattr(console.conversation, "answer", answer)
    console.say("week")
    console.say("week")
    assert seen[0][:2] == seen[1][:2]
    assert seen[0][2] != seen[1][2]


def test_lines_and_buttons_fit_a_narrow_window(console: Console, written: list[str]) -> None:
    console._width = lambda: 40
    console.say("help")
    console.say("waste 3 lemons mouldy, 2 oranges dried out")
    console.say("bar")
    assert max(len(line) for line in written) <= 40
    console._width = lambda: 100
    written.clear()
    console.say("help")
    assert max(len(line) for line in written) <= 100


def test_ctrl_c_within_an_answer_ends_that_answer_only(
    console: Console, written: list[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    said = iter(["waste 3 lemons mouldy", "waste 4 lemons mouldy", "week", "quit"])
    monkeypatch.setattr("bot.channels.console.console._ask", lambda: next(said))
    answer = console.conversation.answer

    def interrupted(message: Message) -> list[Reply]:
        if "3 lemons" in message.text:
            raise KeyboardInterrupt
        return answer(message)

    monkeypatch.setattr(console.conversation, "answer", interrupted)
    assert talk(console) == 0
    assert "Logged: 4 lemons, mouldy." in written
    assert not any("3 lemons" in line for line in written)


def test_it_starts_where_the_calls_of_unix_are_missing(tmp_path: Path) -> None:
    """As on Windows: no fcntl, no clocks but the plain ones."""
    code = (
        "import sys, time\n"
        "sys.modules['fcntl'] = None\n"
        "for name in dir(time):\n"
        "    if name.startswith(('CLOCK_', 'clock_')): delattr(time, name)\n"
        "from bot.__main__ import main\n"
        "from bot.channels.telegram import channel\n"
        "sys.exit(main(['console']))\n"
    )
    done = subprocess.run(
        [sys.executable, "-c", code],
        cwd=Path(__file__).parents[3],
        env={**os.environ, "DATABASE_URL": f"sqlite:///{tmp_path / 'bar.sqlite'}"},
        input="help\n",
        capture_output=True,
        text=True,
        check=False,
    )
    assert done.returncode == 0, done.stderr
    assert done.stderr == ""
    assert done.stdout
