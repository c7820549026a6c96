"""Tests of the dialogue state: typed, parsed once, and readable from rows of older versions."""

from __future__ import annotations

from datetime import time
from fractions import Fraction

import pytest
from sqlalchemy import select

from bot.chat.dialogue.registry import all_commands
from bot.chat.dialogue.state import Pending, pending_of
from bot.chat.grammar import parser
from bot.chat.grammar.encoding import NotEncodedError, decode, encode
from bot.chat.grammar.lexer import Vocabulary
from bot.chat.grammar.parser import Phrase
from bot.work.people.people import PendingQuestion
from storage.tables import Question
from tests.house import House, first_lines

_LINES = ("grapefruit oil 12 ml", "propylene glycol 22 ml", "neutral spirit 96 % 62 ml")


@pytest.fixture
def read(monkeypatch: pytest.MonkeyPatch) -> list[str]:
    """Return the list of texts that the grammar parses from now on."""
    texts: list[str] = []
    real = parser.read

    def recorded(rule: str, text: str, vocabulary: Vocabulary) -> Phrase:
        texts.append(text)
        return real(rule, text, vocabulary)

    monkeypatch.setattr(parser, "read", recorded)
    return texts


def _pending(house: House) -> Pending:
    with house.store.reading() as unit:
        row = unit.session.scalars(select(Question)).one()
        pending = pending_of(PendingQuestion(row.nonce, row.state))
    assert pending is not None
    return pending


def test_an_answer_reads_only_its_own_words(house: House, read: list[str]) -> None:
    ana = house.open_bar()
    ana.says("new formula")
    answers = ["Demo mist", *_LINES, "done"]
    for answer in answers:
        read.clear()
        replies = ana.says(answer)
        assert all(words in answer for words in read), answer
    for answer in ("aroma mist", "2 weeks", "6 months"):
        assert replies[-1].choosing
        read.clear()
        replies = ana.says(answer)
        assert all(words in answer for words in read), answer


def test_taps_read_only_what_they_say(house: House, read: list[str]) -> None:
    ana = house.open_bar()
    ana.says("waste")
    for label in ("orange", "6"):
        read.clear()
        ana.taps(label)
        assert len(read) == 1, label
    read.clear()
    assert first_lines(ana.taps("mouldy")) == ["Logged: 6 oranges, mouldy."]
    assert len(read) == 1


def test_a_row_of_an_older_version_is_read_and_its_words_once(house: House, read: list[str]) -> None:
    ana = house.open_bar()
    ana.says("waste")
    ana.taps("orange")
    with house.store.writing() as unit:
        row = unit.session.scalars(select(Question)).one()
        assert row.state.keys() == {"command", "asking", "slots", "values", "order", "answered"}
        row.state = {name: kept for name, kept in row.state.items() if name != "values"}
    read.clear()
    ana.taps("6")
    assert sorted(read) == ["6", _pending(house).dialogue.words["fruit"]]  # type: ignore[union-attr]
    read.clear()
    assert first_lines(ana.taps("mouldy")) == ["Logged: 6 oranges, mouldy."]
    assert len(read) == 1


def test_an_older_row_of_a_list_and_of_a_pad_is_understood() -> None:
    state = {"command": "new formula", "asking": "lines", "slots": {"name": "Mist"}, "order": ["name"]}
    pending = pending_of(PendingQuestion(7, {**state, "typed": "", "finished": ["lines"], "lines": ["a b"]}))
    assert pending is not None
    assert pending.dialogue is not None
    assert (pending.nonce, pending.lines) == (7, ("a b",))
    assert (pending.dialogue.typed, pending.dialogue.finished) == ("", {"lines"})
    assert (pending.dialogue.answered, pending.dialogue.values) == (False, {})
    only_lines = pending_of(PendingQuestion(8, {"lines": ["a b"]}))
    assert only_lines == Pending(8, None, ("a b",))


def test_a_value_that_this_version_does_not_know_is_read_again() -> None:
    values = {"fruit": {"of": "Gone", "name": "orange"}, "waste_amount": {"of": "Fraction", "value": "6"}}
    state = {"command": "waste", "asking": "reason", "slots": {}, "order": [], "values": values}
    pending = pending_of(PendingQuestion(1, state))
    assert pending is not None
    assert pending.dialogue is not None
    assert pending.dialogue.values == {"waste_amount": Fraction(6)}
    with pytest.raises(NotEncodedError):
        decode({"of": "Amount"})


def test_whatever_the_grammar_reads_can_be_kept() -> None:
    assert decode(encode((time(5, 30), None, True, Fraction(1, 3)))) == (
        time(5, 30),
        None,
        True,
        Fraction(1, 3),
    )
    vocabulary = Vocabulary("en")
    kept = 0
    for command in all_commands().values():
        for example in command.examples:
            words = example.removeprefix(command.name).strip()
            try:
                phrase = parser.read(command.rule, words, vocabulary)
            except parser.PhraseError:
                continue
            for filled in (*phrase.slots.values(), *(one for line in phrase.lines for one in line.filled)):
                assert decode(encode(filled.value)) == filled.value, (example, filled.slot)
                kept += 1
    assert kept > 50
