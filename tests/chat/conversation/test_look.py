"""Tests that a look answers only quick, read-only messages, and that the answer continues from it."""

from __future__ import annotations

from typing import Any

import pytest

from bot.chat.conversation.conversation import PassResult
from bot.chat.conversation.settlement import AlreadyDoneError
from bot.chat.dialogue.registry import all_commands
from bot.chat.reply.message import Document, Message, Reply
from bot.work.liquids import clearing
from storage.memory import Memory
from tests.house import CHANNEL, House, text

_MIST = (
    "new formula Demo mist\ngrapefruit oil 12 ml\npropylene glycol 22 ml\n"
    "neutral spirit 96 % 62 ml\nkind aroma mist"
)


def _message(house: House, said: str, who: str = "Ana", **more: Any) -> Message:
    person = house.person(who)
    place = house.room(None, person).place
    key = house.next_key(house.room(None, person))
    return Message(CHANNEL, person.sender, place, said, key, house.clock.now(), **more)


def _look(house: House, said: str, who: str = "Ana", **more: Any) -> PassResult | None:
    return house.conversation.look(_message(house, said, who, **more))


@pytest.fixture
def mist(house: House, monkeypatch: pytest.MonkeyPatch) -> House:
    """A bar with a formula that contains oil and has no cached model results."""
    house.open_bar()
    house.person("Ana").says(_MIST)
    monkeypatch.setattr(clearing, "_states", Memory(100))
    return house


def _answered(looked: PassResult | None) -> list[Reply] | None:
    assert looked is not None
    return looked.replies


def test_a_quick_read_is_answered_as_it_is_otherwise(mist: House) -> None:
    said = mist.conversation.answer(_message(mist, "scale demo mist to 8 x 50 ml"))
    assert _answered(_look(mist, "scale demo mist to 8 x 50 ml")) == said
    assert _answered(_look(mist, "formulas")) == mist.conversation.answer(_message(mist, "formulas"))


def test_what_the_models_have_not_reckoned_is_left_to_whoever_may_wait(mist: House) -> None:
    looked = _look(mist, "scale demo mist to 8 x 50 ml")
    assert looked is not None
    assert (looked.replies, looked.slow) == (None, True)
    message = _message(mist, "scale demo mist to 8 x 50 ml")
    (said,) = mist.conversation.answer(message, looked=looked)
    assert said.first_line == "Demo mist: 8 x 50 ml"


def test_a_command_that_may_take_long_is_not_begun(mist: House) -> None:
    for said in ("clear demo mist", "export", "week"):
        looked = _look(mist, said)
        assert looked is not None, said
        assert (looked.replies, looked.slow) == (None, True), said


def test_nothing_is_written_by_a_look_and_the_change_is_made_once(mist: House) -> None:
    message = _message(mist, "waste 6 oranges mouldy")
    looked = mist.conversation.look(message)
    assert _answered(looked) is None
    assert "no waste" in mist.person("Ana").says("week")[0].first_line.casefold()
    kept: list[str] = []

    def receipt(_unit: object, replies: str) -> bool:
        kept.append(replies)
        return len(kept) == 1

    (said,) = mist.conversation.answer(message, receipt, looked)
    assert said.first_line == "Logged: 6 oranges, mouldy."
    again = _message(mist, "waste 5 oranges mouldy")
    with pytest.raises(AlreadyDoneError):
        mist.conversation.answer(again, receipt, mist.conversation.look(again))
    assert "6 oranges" in text(mist.person("Ana").says("log"))
    assert "5 oranges" not in text(mist.person("Ana").says("log"))


def test_a_question_is_asked_and_answered_by_those_that_may_write(mist: House) -> None:
    assert _answered(_look(mist, "scale")) is None  # it asks how much, and a question must be stored
    mist.person("Ana").says("scale")
    assert _answered(_look(mist, "#1")) is None


@pytest.mark.parametrize(
    ("said", "more"),
    [
        ("scale demo mist to " + "8 x 50 ml " * 30, {}),
        ("@1 scale demo mist to 400 ml", {"tapped": "1"}),
        ("scale demo mist to 400 ml", {"corrects": "1:1"}),
        ("", {"document": Document("book.json", b"{}")}),
    ],
)
def test_what_is_left_alone(mist: House, said: str, more: dict[str, Any]) -> None:
    assert _look(mist, said, **more) is None


def test_a_stranger_is_met_first(mist: House) -> None:
    assert _look(mist, "formulas", who="Ben") is None


def test_no_quick_command_writes() -> None:
    quick = [one for one in all_commands().values() if one.quick]
    assert {one.name for one in quick} >= {"scale", "cost", "formulas"}
    assert not [one.name for one in quick if one.writes]
