"""Tests that a start loads no chemistry library before it is needed."""

from __future__ import annotations

import subprocess
import sys
from pathlib import Path

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


def test_a_doctors_visit_loads_nothing_heavy(tmp_path: Path) -> None:
    done = subprocess.run(
        [sys.executable, "-X", "importtime", "-m", "bot", "doctor"],
        capture_output=True,
        text=True,
        check=False,
        timeout=120,
        cwd=Path(__file__).parents[1],
        env={"DATABASE_URL": f"sqlite:///{tmp_path / 'bar.sqlite'}", "PATH": "/usr/bin:/bin"},
    )
    imported = {line.rpartition("|")[2].strip() for line in done.stderr.splitlines() if "|" in line}
    assert "bot.operations.doctor" in imported
    assert imported.isdisjoint(HEAVY)


def test_the_first_question_of_clearing_loads_it() -> None:
    code = (
        "from bot.trade.liquids.clearing.estimate import state_of\n"
        "from bot.trade.liquids.clearing.mixture import Mixture\n"
        "state_of(Mixture(oil_ml=1, spirit_ml=10, spirit_percent=96))"
    )
    assert _loaded(code) == {"numpy"}
