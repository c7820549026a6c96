"""Tests that a start loads no chemistry library before it is needed."""

from __future__ import annotations

import os
import pty
import subprocess
import sys
from pathlib import Path

import pytest

_ROOT = Path(__file__).parents[1]

HEAVY = ("thermo", "chemicals", "fluids", "numpy", "scipy", "matplotlib")
_CHEMISTRY = (
    "liquids.clearing.estimate",
    "liquids.clearing.phases",
    "liquids.clearing.miscibility",
    "liquids.clearing.mixture",
    "spray.release",
    "liquids.clearing.substances",
    "liquids.spirit_substitution",
    "liquids.strength",
    "spray.dose",
    "spray.sprayers",
    "batches.shelf",
    "liquids.flash",
)


def _loaded(code: str) -> set[str]:
    """Run code in a fresh process; return the names of the heavy libraries it loaded."""
    done = subprocess.run(
        [sys.executable, "-c", f"{code}\nimport sys\nprint(*sys.modules)"],
        capture_output=True,
        text=True,
        check=True,
        timeout=120,
    )
    return set(HEAVY) & set(done.stdout.split())


def test_the_trade_rules_of_the_chemistry_load_no_numbers_library() -> None:
    modules = ", ".join(f"bot.trade.{name}" for name in _CHEMISTRY)
    assert _loaded(f"import {modules}") == set()


def test_the_whole_conversation_starts_without_the_chemistry() -> None:
    code = (
        "from bot.chat.dialogue.registry import all_commands\nall_commands()\n"
        "import bot.channels.console, bot.channels.telegram, bot.chat.conversation"
    )
    # The unit registry's own library looks for numpy and scipy by itself; our code does not.
    assert _loaded(code) <= {"numpy", "scipy"}


def _imported(*words: str, typed: str = "", database: str = "") -> set[str]:
    """Run the program; return the names of all modules it imported."""
    done = subprocess.run(
        [sys.executable, "-X", "importtime", "-m", "bot", *words],
        input=typed,
        capture_output=True,
        text=True,
        check=False,
        timeout=120,
        cwd=_ROOT,
        env={"DATABASE_URL": database, "PATH": "/usr/bin:/bin"},
    )
    return {line.rpartition("|")[2].strip() for line in done.stderr.splitlines() if "|" in line}


def test_a_doctors_visit_loads_nothing_heavy(tmp_path: Path) -> None:
    imported = _imported("doctor", database=f"sqlite:///{tmp_path / 'bar.sqlite'}")
    assert "bot.operations.doctor" in imported
    assert imported.isdisjoint(HEAVY)


@pytest.mark.parametrize("word", ["--help", "--version"])
def test_help_and_version_load_nothing(word: str) -> None:
    imported = _imported(word)
    assert {name for name in imported if name.partition(".")[0] in {"bot", "storage"}} == {"bot"}
    assert imported.isdisjoint({"sqlalchemy", "babel", "lark", "platformdirs", "asyncio"})


def test_the_first_answer_of_the_demo_loads_only_what_it_needs() -> None:
    imported = _imported("console", "--demo", typed="week\n")
    assert {"bot.channels.console.console", "bot.chat.features.fruit.week", "sqlalchemy.orm"} <= imported
    others = {"telegram", "httpx", "tornado", "alembic", "pydantic", "pint", "fpdf", "apscheduler"}
    assert imported.isdisjoint({*HEAVY, *others, "sqlalchemy.dialects.postgresql", "bot.demo.story"})


def test_a_terminal_is_greeted_before_anything_slow_is_loaded(tmp_path: Path) -> None:
    (tmp_path / "sqlalchemy.py").write_text("raise SystemExit('too early')")
    ours, theirs = pty.openpty()
    done = subprocess.run(
        [sys.executable, "-m", "bot", "console", "--demo"],
        stdin=theirs,
        stdout=theirs,
        stderr=subprocess.PIPE,
        text=True,
        check=False,
        timeout=120,
        cwd=tmp_path,
        env={**os.environ, "PYTHONPATH": f"{tmp_path}{os.pathsep}{_ROOT}"},
    )
    assert done.stderr.strip() == "too early"
    assert os.read(ours, 80).decode().startswith("Peel Ledger. Type what you want to do")
    os.close(ours)
    os.close(theirs)


def test_the_first_question_of_clearing_loads_it() -> None:
    code = (
        "from bot.trade.liquids.clearing.estimate import state_of\n"
        "from bot.trade.liquids.clearing.mixture import Mixture\n"
        "state_of(Mixture(oil_ml=1, spirit_ml=10, spirit_percent=96))"
    )
    assert _loaded(code) == {"numpy"}
