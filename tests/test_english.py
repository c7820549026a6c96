"""Tests that comments and docstrings are plain technical English.

The patterns are recurring mistakes: sentences about an unnamed person, inversions, and module docstrings
that ask a question instead of saying what the module provides.
"""

from __future__ import annotations

import ast
import io
import re
import tokenize
from pathlib import Path

import pytest

_HERE = Path(__file__).parent
_ROOT = _HERE.parent
# Folders whose comments follow the rules. Add a folder once its comments do.
_FOLDERS = (
    "bot/__main__.py",
    "bot/channels",
    "bot/chat",
    "bot/clock",
    "bot/demo",
    "bot/documents",
    "bot/operations",
    "bot/settings.py",
    "bot/trade",
    "bot/work",
    "storage",
    "tests/api",
    "tests/bench",
    "tests/channels",
    "tests/chat",
    "tests/clock",
    "tests/demo",
    "tests/deploy",
    "tests/documents",
    "tests/faults",
    "tests/fuzz",
    "tests/operations",
    "tests/outside",
    "tests/pictures",
    "tests/security",
    "tests/storage",
    "tests/stories",
    "tests/trade",
    "tests/work",
)
_WORDS = {
    r"\b(?:by|for|to|of|with) whom(?:ever)?\b": "name the person, or use the active voice",
    r"\bwhoever'?s?\b": "name the person",
    r"\bwhosoever\b": "name the person",
    r"\b(?:out )?of which\b": "start a new sentence",
    r"\bby which\b": "say how, with a verb",
    r"\bthat nobody\b": "say what happens instead",
    r"\bbe it\b|\bthough it be\b|\balthough \w+ \w+ be\b|\b(?:its|the) \w+ be over\b": "use the indicative",
    r"\bstands? still\b|\bstanding still\b|\bstood still\b": "a process stalls",
    r"\bheld against\b|\bset against\b": "compared with",
    r"\bas if never\b|\bnever was\b(?! [a-z]+ed\b)": "undone",
    r"\btak(?:e|es|en|ing) back\b|\btook back\b": "undo",
    r"\bput (?:away|aside)\b": "archive, retire or leave out",
    r"\bwritten down\b|\bwrites? down\b|\bwriting down\b": "store, log or add",
    r"\breckon(?:s|ed|ing)?\b": "compute",
    r"\bwhat is said\b|\bwhat was said\b": "name it",
    r"\bnowise\b|\bhalf said\b|\bwherefor\b|\bwhereof\b|\bthereof\b|\bthereby\b|\bherewith\b": "plain words",
    r"\bso many (?:days|hours|minutes|seconds|times)\b": "this many",
    r"\bis to (?!say\b)be \w+ed\b|\bare to be \w+ed\b": "must be",
    r"\b(?:our|the) (?:own )?door\b": "endpoint",
    r"\bas (?:it|they) stands?\b": "current",
}
_QUESTION = re.compile(r"(?:What|Who|Whom|Whose|Whether|How|Why|Which|Where|When|Will|Does|Is|Are)\b")


def _files(folder: str) -> list[Path]:
    path = _ROOT / folder
    return [path] if path.is_file() else sorted(path.rglob("*.py"))


def _texts(source: str) -> list[tuple[int, str]]:
    """Return every comment block and docstring with its line."""
    found: list[tuple[int, str]] = []
    end = 0
    for token in tokenize.generate_tokens(io.StringIO(source).readline):
        if token.type == tokenize.COMMENT:
            words = token.string.lstrip("#: ")
            if token.start[0] == end + 1 and token.line.lstrip().startswith("#"):
                line, before = found.pop()
                found.append((line, f"{before} {words}"))
            else:
                found.append((token.start[0], words))
            end = token.start[0]
    for node in ast.walk(ast.parse(source)):
        if (
            isinstance(node, ast.Expr)
            and isinstance(node.value, ast.Constant)
            and isinstance(node.value.value, str)
        ):
            found.append((node.lineno, " ".join(node.value.value.split())))
    return found


def _mistakes(path: Path) -> list[str]:
    source = path.read_text(encoding="utf-8")
    where = path.relative_to(_ROOT)
    found = [
        f"{where}:{line}: {match.group()!r}: {advice}"
        for line, text in _texts(source)
        for pattern, advice in _WORDS.items()
        for match in re.finditer(pattern, text, re.IGNORECASE)
    ]
    title = ast.get_docstring(ast.parse(source))
    if title and _QUESTION.match(title):
        found.append(f"{where}:1: {title.splitlines()[0]!r}: say what the module provides")
    return found


@pytest.mark.parametrize("folder", _FOLDERS)
def test_comments_are_plain_english(folder: str) -> None:
    assert [mistake for path in _files(folder) for mistake in _mistakes(path)] == []


def test_comments_of_the_test_tools_are_plain_english() -> None:
    assert [mistake for path in sorted(_HERE.glob("*.py")) for mistake in _mistakes(path)] == []


@pytest.mark.parametrize(
    ("source", "count"),
    [
        ('"""What keeps an update."""\n', 1),
        ('"""Keep updates."""\n\nx = 1  # left to whoever\'s next\n', 1),
        ('"""Keep updates."""\n\n# Rows written by\n# whomever.\nx = "by whom it may be"\n', 1),
        ('"""Keep updates."""\n\n\ndef f():\n    """Return the parts, of which some are empty."""\n', 1),
        ('"""Keep updates."""\n\n# The stored row names the owner.\n', 0),
    ],
)
def test_the_check_sees_comments_and_docstrings_only(
    source: str, count: int, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(f"{__name__}._ROOT", tmp_path)
    path = tmp_path / "example.py"
    path.write_text(source, encoding="utf-8")
    assert len(_mistakes(path)) == count
