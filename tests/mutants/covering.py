"""Find the lines of the rules and use cases that each test reaches, by one run under coverage."""

from __future__ import annotations

import hashlib
import json
import math
import re
import sys
from dataclasses import dataclass, field
from functools import cached_property
from pathlib import Path
from time import process_time

import pytest
from _pytest.runner import runtestprotocol
from coverage import Coverage

from tests.mutants.changes import ROOT, Change

# Where the tests of a layer's subjects stand, under the same name as the subject.
_MIRRORED = {"trade": ("tests/trade",), "work": ("tests/work", "tests/chat/features")}
_OUTSIDE = "tests/outside"
_TOO_LONG = 8.0  # seconds of one test
_MOST_SECONDS, _MOST_TESTS = 25.0, 80


def _subjects(changes: list[Change]) -> set[tuple[str, str]]:
    found = (Path(change.path).parts for change in changes)
    return {(layer, Path(subject).stem) for _bot, layer, subject, *_rest in found}


def nearest(changes: list[Change]) -> list[str]:
    """Return the folders and files of the tests nearest to the changed modules."""
    found = {_OUTSIDE} if any(layer == "trade" for layer, _subject in _subjects(changes)) else set()
    for layer, subject in _subjects(changes):
        for mirror in _MIRRORED[layer]:
            found |= {f"{mirror}/{subject}", f"{mirror}/test_{subject}.py"}
    return sorted(one for one in found if (ROOT / one).exists())


def near_items(items: list[pytest.Item], changes: list[Change]) -> dict[str, pytest.Item]:
    """Return the tests that may notice a change: of the outside checks those that use its subject."""
    named = [f"bot.{layer}.{subject}" for layer, subject in _subjects(changes)]
    using = {
        id(check)
        for name, module in sys.modules.items()
        if name.startswith("tests.outside.checks_")
        and any(one in Path(str(module.__file__)).read_text("utf-8") for one in named)
        for check in module.CHECKS
    }

    def is_near(item: pytest.Item) -> bool:
        if "[postgresql" in item.nodeid:
            return False
        given = getattr(item, "callspec", None)
        return not item.nodeid.startswith(_OUTSIDE) or (
            given is not None and id(given.params.get("check")) in using
        )

    return {item.nodeid: item for item in items if is_near(item)}


@dataclass
class Covering:
    """The tests that reach each line, and how long each test takes."""

    seconds: dict[str, float] = field(default_factory=dict)
    reached: dict[str, dict[int, list[str]]] = field(default_factory=dict)

    def tests(self, change: Change) -> list[str]:
        """Return the tests that could notice a change: the nearest first, then the shortest."""
        if change.function:
            found = self._at(change.path, change.lines)
        else:
            found = {test for path, lines in self._uses(change) for test in self._at(path, lines)}
        subject = Path(change.path).parts[2]
        chosen: list[str] = []
        spent = 0.0
        for test in sorted(found, key=lambda one: (f"/{subject}/" not in one, self.seconds[one], one)):
            spent += self.seconds[test]
            if len(chosen) == _MOST_TESTS or spent > _MOST_SECONDS:
                break
            chosen.append(test)
        return chosen

    def _at(self, path: str, lines: range) -> set[str]:
        here = self.reached.get(path, {})
        found = {test for line in lines for test in here.get(line, ())}
        return {test for test in found if self.seconds[test] <= _TOO_LONG}

    def _uses(self, change: Change) -> list[tuple[str, range]]:
        """Return where a value outside of functions is used: by name, else all of its module's importers."""
        name = re.compile(r"\b(" + "|".join(map(re.escape, change.names)) + r")\b") if change.names else None
        uses = [
            (path, range(at, at + 1))
            for path, text in self._texts.items()
            for at, line in enumerate(text.splitlines(), 1)
            if name and name.search(line) and self.reached.get(path, {}).get(at)
        ]
        if uses:
            return uses
        module = change.path.removesuffix(".py").replace("/", ".")
        parent, _dot, own = module.rpartition(".")
        importing = (f"from {module} import", f"from {parent} import {own}")
        return [
            (path, range(1, len(text.splitlines()) + 1))
            for path, text in self._texts.items()
            if path == change.path or any(one in text for one in importing)
        ]

    @cached_property
    def _texts(self) -> dict[str, str]:
        return {
            path.relative_to(ROOT).as_posix(): path.read_text("utf-8")
            for layer in ("trade", "work")
            for path in (ROOT / "bot" / layer).rglob("*.py")
        }


def run_once(items: list[pytest.Item], covering: Covering) -> None:
    """Run each test once and add which lines it reaches."""
    measured = Coverage(data_file=None, source=[str(ROOT / "bot" / layer) for layer in _MIRRORED])
    measured.start()
    for item, following in zip(items, [*items[1:], None], strict=True):
        measured.switch_context(item.nodeid)
        began = process_time()
        reports = runtestprotocol(item, log=False, nextitem=following)
        seconds = process_time() - began
        passed = all(one.passed for one in reports)
        covering.seconds[item.nodeid] = seconds if passed else math.inf
    measured.stop()
    data = measured.get_data()
    for file in data.measured_files():
        reached = covering.reached.setdefault(Path(file).relative_to(ROOT).as_posix(), {})
        for line, contexts in data.contexts_by_lineno(file).items():
            reached[line] = [*reached.get(line, ()), *filter(None, contexts)]


def _digest() -> str:
    files = sorted(path for layer in _MIRRORED for path in (ROOT / "bot" / layer).rglob("*.py"))
    return hashlib.sha256(b"".join(path.read_bytes() for path in files)).hexdigest()


def write(covering: Covering, path: Path) -> None:
    """Keep what was found, for the process that tries the changes and for the next run."""
    path.write_text(json.dumps([_digest(), covering.seconds, covering.reached]), "utf-8")


def read(path: Path) -> Covering:
    """Return what is kept; nothing if the program has changed since."""
    if not path.exists():
        return Covering()
    digest, seconds, reached = json.loads(path.read_text("utf-8"))
    if digest != _digest():
        return Covering()
    lines = {file: {int(line): tests for line, tests in here.items()} for file, here in reached.items()}
    return Covering(seconds, lines)
