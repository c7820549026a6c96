"""Put one fault after another into the program, and run the tests that could notice it.

The tests are loaded once. A fault inside a function is put into the loaded program, in a child process. Any
other one needs a new import: it is written into a copy of the tree.
"""

from __future__ import annotations

import gc
import os
import resource
import shutil
import signal
import subprocess
import sys
import tempfile
import time
from collections import defaultdict
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from functools import _lru_cache_wrapper
from pathlib import Path
from types import CodeType, FunctionType

import pytest
from _pytest.runner import runtestprotocol

from tests import prepared
from tests.mutants.changes import ROOT, Change
from tests.mutants.covering import Covering, near_items, read, run_once, write

KILLED, SURVIVED, UNREACHED = "killed", "survived", "no test"
_HOUR = 3600
_SECONDS = 10  # of processor time, beside five times what the tests take
_PATIENCE = 40  # the longest time by the clock, in the same measure: other programs may hold the processor


@dataclass(frozen=True)
class Tried:
    """A fault and what became of it."""

    change: Change
    outcome: str


class Loop:
    """A pytest plugin that tries faults instead of running the tests."""

    def __init__(
        self, changes: list[Change], told: Callable[[Sequence[Tried]], None], kept: Path | None = None
    ) -> None:
        self.changes = changes
        self.told = told
        self.kept = kept
        self.tried: list[Tried] = []

    @pytest.hookimpl(tryfirst=True)
    def pytest_runtestloop(self, session: pytest.Session) -> bool:
        """Find out what each test reaches; then try each change."""
        items = near_items(session.items, self.changes)
        with tempfile.TemporaryDirectory() as folder:
            kept = self.kept or Path(folder) / "covering"
            missing = [item for name, item in items.items() if name not in read(kept).seconds]
            if missing:
                _in_child(lambda: _cover(missing, kept), _HOUR, 10 * _HOUR)
            covering = read(kept)
            _forget_results()
            functions = _functions()
            gc.freeze()
            for change in self.changes:
                outcome = _outcome(change, covering, items, functions, Path(folder) / "tree")
                self.tried.append(Tried(change, outcome))
                self.told(self.tried)
        return True


def _cover(items: list[pytest.Item], kept: Path) -> bool:
    covering = read(kept)
    run_once(items, covering)
    write(covering, kept)
    return True


def _outcome(
    change: Change,
    covering: Covering,
    items: dict[str, pytest.Item],
    functions: dict[tuple[str, str], list[FunctionType]],
    copy: Path,
) -> str:
    tests = [test for test in covering.tests(change) if test in items]
    if not tests:
        return UNREACHED
    seconds = _SECONDS + 5 * sum(covering.seconds[test] for test in tests)
    found = functions.get((str(ROOT / change.path), change.function or ""))
    if found:
        chosen = [items[test] for test in tests]
        passed = _in_child(lambda: _passes(change, found, chosen), seconds, seconds * _PATIENCE)
    else:
        passed = _passes_in_a_copy(change, tests, copy, seconds)
    return SURVIVED if passed else KILLED


def _functions() -> dict[tuple[str, str], list[FunctionType]]:
    """Every loaded function of the program, by file and name."""
    found = defaultdict(list)
    for one in gc.get_objects():
        if isinstance(one, FunctionType) and "/bot/" in one.__code__.co_filename:
            found[one.__code__.co_filename, one.__code__.co_qualname].append(one)
    return found


def _forget_results() -> None:
    """Empty what was computed before a fault is there: prepared bars and cached results."""
    prepared._PREPARED.clear()
    for one in gc.get_objects():
        if isinstance(one, _lru_cache_wrapper) and one.__module__.startswith(("bot.trade", "bot.work")):
            one.cache_clear()


def _passes(change: Change, functions: list[FunctionType], items: list[pytest.Item]) -> bool:
    """Put the change into the loaded functions; whether all tests pass."""
    whole = compile(change.text(), functions[0].__code__.co_filename, "exec")
    code = next(one for one in _codes(whole) if one.co_qualname == change.function)
    for one in functions:
        one.__code__ = code
    for item, following in zip(items, [*items[1:], None], strict=True):
        if not all(report.passed for report in runtestprotocol(item, log=False, nextitem=following)):
            return False
    return True


def _codes(code: CodeType) -> Iterator[CodeType]:
    for one in code.co_consts:
        if isinstance(one, CodeType):
            yield one
            yield from _codes(one)


def _in_child(work: Callable[[], bool], seconds: float, patience: float) -> bool:
    """Do the work in a child process; whether it said yes within these seconds of processor time."""
    child = os.fork()
    if child == 0:
        os.setsid()
        quiet = os.open(os.devnull, os.O_RDWR)
        for stream in (0, 1, 2):
            os.dup2(quiet, stream)
        resource.setrlimit(resource.RLIMIT_CPU, (int(seconds) + 1, int(seconds) + 5))
        good = False
        try:
            good = work()
        finally:
            os._exit(0 if good else 1)
    until = time.monotonic() + patience
    pause = 0.01
    while True:
        ended, status = os.waitpid(child, os.WNOHANG)
        if ended:
            return status == 0
        if time.monotonic() > until:
            os.killpg(child, signal.SIGKILL)
            os.waitpid(child, 0)
            return False
        time.sleep(pause)
        pause = min(pause * 1.5, 0.2)


def _passes_in_a_copy(change: Change, tests: list[str], copy: Path, seconds: float) -> bool:
    if not copy.exists():
        ignored = shutil.ignore_patterns("__pycache__", ".*_cache", ".git", ".hypothesis")
        shutil.copytree(ROOT, copy, ignore=ignored)
    changed = copy / change.path
    changed.write_text(change.text(), "utf-8")
    try:
        return _pytest_passes(tests, copy, seconds)
    finally:
        shutil.copyfile(ROOT / change.path, changed)


def _pytest_passes(tests: list[str], copy: Path, seconds: float) -> bool:
    command = [
        sys.executable,
        "-B",
        "-m",
        "pytest",
        "-x",
        "-q",
        "-p",
        "no:randomly",
        "-p",
        "no:cacheprovider",
    ]
    try:
        done = subprocess.run(
            [*command, *tests],
            cwd=copy,
            env={**os.environ, "PYTHONPATH": str(copy)},
            stdout=subprocess.DEVNULL,
            stderr=subprocess.DEVNULL,
            timeout=seconds * _PATIENCE,
            check=False,
        )
    except subprocess.TimeoutExpired:
        return False
    return done.returncode == 0
