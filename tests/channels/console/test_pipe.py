"""The console as a process, as anybody tries it from a shell."""

from __future__ import annotations

import re
import subprocess
import sys
from pathlib import Path

import pytest

from tests.channels.console.conftest import Run


def test_a_piped_demo_prints_the_answers_and_nothing_else(run: Run) -> None:
    done = run("console", "--demo", typed="week\nscale grapefruit mist to 8 x 50 ml\n")
    assert (done.returncode, done.stderr) == (0, b"")
    # Plain text: no escapes, no carriage returns, no tabs, and every line short enough for a terminal.
    assert not re.search(rb"[\x00-\x09\x0b-\x1f\x7f]", done.stdout)
    lines = done.stdout.decode().split("\n")
    assert max(map(len, lines)) <= 80
    assert re.match(r"Waste: €\d+\.\d\d$", lines[0]) or lines[0] == "No waste logged"
    answers = done.stdout.decode().strip().split("\n\n")
    assert len(answers) == 2
    assert answers[1].split("\n")[:4] == [
        "Grapefruit mist: 8 x 50 ml",
        "  grapefruit oil      36 ml",
        "  propylene glycol  47.5 ml",
        "  neutral spirit     320 ml",
    ]
    assert not any(line.startswith(">") for line in lines)


def test_the_demo_is_thrown_away(run: Run, tmp_path: Path) -> None:
    assert run("console", "--demo", typed="waste 3 limes\n").returncode == 0
    assert list(tmp_path.iterdir()) == []


def test_a_reader_that_goes_away_is_no_error(run: Run, tmp_path: Path) -> None:
    command = f'"{sys.executable}" -m bot console --demo | head -n 1'
    done = subprocess.run(
        ["bash", "-o", "pipefail", "-c", command],
        input=b"batches\n" * 200,
        capture_output=True,
        timeout=60,
        cwd=tmp_path,
        check=False,
    )
    assert (done.returncode, done.stderr) == (0, b"")
    assert done.stdout.count(b"\n") == 1


@pytest.mark.long
def test_a_narrow_pipe_gets_question_marks_and_bad_bytes_do_no_harm(run: Run) -> None:
    done = run("console", "--demo", typed=b"price orange\n\xff\xfe\n", PYTHONIOENCODING="ascii")
    assert (done.returncode, done.stderr) == (0, b"")
    assert done.stdout.startswith(b"orange: ?0.")
    assert b"I'm not sure what you want." in done.stdout


@pytest.mark.long
def test_the_demo_fills_the_database_once(run: Run) -> None:
    first, second = run("demo"), run("demo")
    assert (first.returncode, second.returncode) == (0, 0)
    assert re.match(rb"The Copper Gull is filled: \d+ batches, \d+ lines of waste\.\n", first.stdout)
    counts = rb"\d+ batches, \d+ lines of waste"
    found = re.search(counts, first.stdout)
    assert found is not None
    assert b"The Copper Gull was filled before: " + found[0] in second.stdout
    # The printed instructions open the bar, and so does the console while nobody else uses it.
    assert b"python -m bot console --name Robin" in first.stdout
    for name in (["--name", "Robin"], []):
        opened = run("console", *name, typed="team\n")
        assert opened.stdout.startswith(b"The Copper Gull: 3 in the team\n")
    # Another name can have its own bar, and from then on the console needs the name.
    assert run("console", "--name", "Ana", typed="week\n").stdout.startswith(b"You are not in a bar yet.\n")
    assert run("console", typed="week\n").stdout.startswith(b"You are not in a bar yet.\n")


def test_run_without_a_token_says_one_clear_sentence(run: Run) -> None:
    done = run("run")
    assert (done.returncode, done.stdout) == (2, b"")
    (line,) = done.stderr.decode().splitlines()
    assert line == (
        "No token: set TELEGRAM_BOT_TOKEN to what BotFather gave you, "
        "or try the console, which needs none: python -m bot console"
    )


def test_the_doctor_as_a_process(run: Run) -> None:
    bad = run("doctor")
    assert (bad.returncode, bad.stderr) == (1, b"")
    assert bad.stdout.startswith(b"BAD  token: none set\n")
    good = run("doctor", TELEGRAM_BOT_TOKEN="123456789:" + "a" * 35)
    assert (good.returncode, good.stdout.splitlines()[-1]) == (0, b"All is well.")
