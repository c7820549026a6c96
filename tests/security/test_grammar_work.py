"""Tests that no text blocks the program: the parser's steps grow with its length, whatever its content.

The grammar's steps are counted, not timed. The steps of regular expressions cannot be counted, but one that
repeats within a repeat does not end at these lengths: a process is stopped that does not come to its end.
"""

from __future__ import annotations

import contextlib
import resource
import subprocess
import sys
from pathlib import Path
from typing import Any

import pytest
from lark.parsers.lalr_interactive_parser import InteractiveParser

from bot.chat.dialogue.registry import all_commands
from bot.chat.grammar import parser
from bot.chat.grammar.lexer import LONGEST_MESSAGE, MOST_PIECES, Noun, Vocabulary, cut
from bot.chat.i18n.numbers import AmbiguousNumberError, NotANumberError

_ROOT = Path(__file__).parents[2]
_PIECES = (
    "1 ", "1/2 ", "1,", "1.1.", "½", "half a ", "a couple of ", "x", "x 1 ", "1 x ", "- ", "-1", "((",
    "oz ", "fl oz ", "imperial fluid ounce ", "lime ", "lime lime mist ", "of ", "of the ", "and ",
    "to ", "with ", "2026-11-24 ", "2026-", "12:", "#1", "#1.", "\n", " \n ", "\t", "% ", "mouldy ",
    "ml ml ", "a.", "a-", "a'", "é", "ʼ", "/", "@1 ", "= 1 ", "=", ", ", "; ", "lime, ",
    "1 lime mouldy, ", "12 ml lime oil\n", "not ", "½ oz lime mist of lime and ",
)  # fmt: skip
# Per text: readings tried, and copies of the parser made for them.
_STEPS_A_PIECE = 12


def _vocabulary() -> Vocabulary:
    """Long names with a common beginning: the worst case for finding the right one."""
    known = Vocabulary("en")
    for number in range(40):
        known.add(Noun("INGREDIENT", str(number), "lime " * (number % 8 + 1) + f"mist {number}"))
        known.add(Noun("FORMULA", str(number), "lime " * (number % 8 + 1) + "oil"))
    return known


class _Steps:
    """Counts the parser's actions."""

    def __init__(self, monkeypatch: pytest.MonkeyPatch) -> None:
        self.count = 0
        for name in ("feed_token", "copy"):
            monkeypatch.setattr(InteractiveParser, name, self._counted(getattr(InteractiveParser, name)))

    def _counted(self, does: Any) -> Any:
        def counted(*arguments: Any, **options: Any) -> Any:
            self.count += 1
            return does(*arguments, **options)

        return counted


def _read(rule: str, text: str, vocabulary: Vocabulary) -> None:
    with contextlib.suppress(parser.PhraseError, AmbiguousNumberError, NotANumberError):
        parser.read(rule, text, vocabulary)


@pytest.mark.parametrize(
    "rule", ["scale_cmd", "waste_cmd", "new_cmd", "price_cmd", "batch_cmd", "cost_cmd", "bar_cmd"]
)
def test_the_steps_of_the_grammar_grow_with_the_pieces(rule: str, monkeypatch: pytest.MonkeyPatch) -> None:
    vocabulary = _vocabulary()
    parser.warm_up()
    steps = _Steps(monkeypatch)
    for piece in _PIECES:
        for length in (400, LONGEST_MESSAGE):
            text = (piece * (length // len(piece)))[:length]
            steps.count = 0
            _read(rule, text, vocabulary)
            pieces = min(len(cut(text)), MOST_PIECES + 1)
            # `accepts`, used for the error message, tries every terminal once at the end.
            assert steps.count <= _STEPS_A_PIECE * pieces + 400, (piece, length, steps.count)


def test_a_message_longer_than_telegrams_is_not_read_at_all(monkeypatch: pytest.MonkeyPatch) -> None:
    steps = _Steps(monkeypatch)
    for command in all_commands().values():
        with pytest.raises(parser.TooLongError):
            parser.read(command.rule, "lime " * 200_000, Vocabulary("en"))
    assert steps.count == 0


_CODE = """
import sys
from datetime import UTC, datetime
from storage import migrate
from storage.store import Store
from tests.house import Hands, House
from tests.security.test_grammar_work import _PIECES, _lines
store = Store("sqlite:///" + sys.argv[1])
migrate.upgrade(store)
house = House(store, Hands(datetime(2026, 11, 25, 18, tzinfo=UTC)))
ana = house.open_bar()
ana.says("new formula Lime mist\\nlime oil 12 ml\\nneutral spirit 96 % 62 ml\\nkind aroma mist")
for line in _lines():
    assert ana.says(line), line
print("done")
"""
_PROCESSOR_SECONDS = 600  # a hundred times the usual number


def _lines() -> list[str]:
    """Every piece as a message of the maximum length, alone and after a command's word."""
    lines = []
    for number, piece in enumerate(_PIECES):
        whole = (piece * LONGEST_MESSAGE)[:LONGEST_MESSAGE]
        word = ("scale ", "waste ", "new formula ", "help ", "bar ", "/start ")[number % 6]
        lines.append(whole if number % 3 == 0 else word + whole)
    # Long runs that a regular expression could scan again and again.
    for sign in ("1", " ", "a", "a.", ".", "-", "'", "\u00a0", "1'", "1 ", "x ", "\n", "/a", "_", "@"):
        lines += [sign * 2000 + "!" + sign * 2000, "price 1" + sign * 4000 + "/"]
    return [line[:LONGEST_MESSAGE] for line in lines if line.strip()]


@pytest.mark.long
def test_no_message_takes_long(tmp_path: Path) -> None:
    def limited() -> None:
        resource.setrlimit(resource.RLIMIT_CPU, (_PROCESSOR_SECONDS, _PROCESSOR_SECONDS))

    done = subprocess.run(
        [sys.executable, "-c", _CODE, str(tmp_path / "bar.sqlite")],
        cwd=_ROOT,
        capture_output=True,
        text=True,
        check=False,
        preexec_fn=limited,
    )
    assert (done.returncode, done.stdout) == (0, "done\n"), done.stderr[-2000:]
