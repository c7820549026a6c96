"""Tests that a database in use is neither moved nor restored into."""

from __future__ import annotations

import subprocess
import sys
import time
from collections.abc import Callable
from pathlib import Path

import pytest

from storage import migrate, moving
from storage.locks.holding import Hold, InUseError, held
from storage.store import Store
from tests.storage.filled import Make

_ROOT = Path(__file__).parents[3]


def test_programs_share_a_database_and_a_move_needs_it_alone(store: Store) -> None:
    with held(store), held(store), pytest.raises(InUseError):
        Hold(store, alone=True).take()
    with held(store, alone=True), pytest.raises(InUseError):
        Hold(store).take()
    with held(store):
        pass


def test_a_killed_program_holds_nothing(store: Store) -> None:
    code = (
        "import sys\n"
        "from storage.locks.holding import Hold\nfrom storage.store import Store\n"
        "hold = Hold(Store(sys.argv[1]))\nhold.take()\nprint('held', flush=True)\nsys.stdin.read()\n"
    )
    url = store.url.render_as_string(hide_password=False)
    program = subprocess.Popen(
        [sys.executable, "-c", code, url], cwd=_ROOT, stdin=subprocess.PIPE, stdout=subprocess.PIPE, text=True
    )
    try:
        assert program.stdout is not None
        assert program.stdout.readline() == "held\n"
        with pytest.raises(InUseError):
            Hold(store, alone=True).take()
    finally:
        program.kill()
        program.communicate()
    for _tenth in range(50):
        try:
            with held(store, alone=True):
                return
        except InUseError:
            time.sleep(0.1)
    raise AssertionError("still held")


def test_a_database_in_use_is_not_moved_and_a_moved_one_is_closed(
    filled: Callable[[str], Store], place: Make, database: str
) -> None:
    source, target = filled("sqlite"), Store(place(database))
    with held(source), pytest.raises(InUseError):
        moving.move(source, target)
    moving.move(source, target)
    with pytest.raises(migrate.MovedAwayError) as refused:
        migrate.upgrade(source)
    assert refused.value.target == target.shown
    migrate.upgrade(target)
    assert migrate.reopen(source)
    migrate.upgrade(source)
    assert not migrate.reopen(source)
    target.close()
