"""Tests of buttons: a tap sends a line as the person who taps, in that chat, with their own rights.

A client can send any line. So nothing depends on the origin of a line: an answer matches only that person's
question in that chat with its number, a line that names its bar works only for members of that bar, and one
that names a version means that version.
"""

from __future__ import annotations

from hypothesis import HealthCheck, given
from hypothesis import strategies as st

from bot.chat.reply.message import Reply
from tests.channels.telegram.conftest import MIST, Telephone
from tests.examples import examples
from tests.house import House, Person, first_lines, text
from tests.security import two_bars

STALE = "That button is old."


def _lines(replies: list[Reply]) -> list[str]:
    return [button.line for one in replies for row in one.buttons for button in row]


def _logged(house: House, person: Person) -> int:
    return text(person.says("log")).count("#")


# -- the person, the chat, the question ---------------------------------------------------------


async def test_another_member_cannot_answer_in_the_group_what_one_was_asked(telephone: Telephone) -> None:
    ana = await telephone.opened_bar()
    ben = telephone.server.person("Ben")
    await ben.says(next(one for one in (await ana.says("invite")).text.splitlines() if "join " in one))
    group = telephone.server.group("Back bar", [ana, ben])
    await ana.says("/start@peel_ledger_test_bot", chat=group)
    asked = await ana.says("/waste@peel_ledger_test_bot", chat=group)
    pressed = await ben.taps(asked.labels[0], message=asked.last, chat=group)
    assert pressed.toast == "That is Ana’s question."
    assert "waste" not in (await ana.says("log")).text
    # And the question still waits for the right person.
    assert "How many" in (await ana.taps(asked.labels[0], message=asked.last, chat=group)).text


def test_an_answer_fits_its_own_chat_only(house: House) -> None:
    ana = house.open_bar()
    ana.says("/start", "Team")
    line = next(one for one in _lines(ana.says("/waste", "Team")) if one.startswith("= "))
    assert first_lines(ana.taps_line(line)) == [STALE]
    ana.says("waste")  # now a question of the same kind waits in the private chat too
    assert first_lines(ana.taps_line(line)) == [STALE]


def test_an_answer_fits_its_own_question_only(house: House) -> None:
    ana = house.open_bar()
    first = next(one for one in _lines(ana.says("waste")) if one.startswith("= "))
    ana.says("orange")
    assert first_lines(ana.taps_line(first)) == [STALE]
    ana.says("cancel")
    assert first_lines(ana.taps_line(first)) == [STALE]
    ana.says("waste")
    assert first_lines(ana.taps_line(first)) == [STALE]


def test_a_stale_button_says_so_in_one_sentence_and_changes_nothing(house: House) -> None:
    ana = house.open_bar()
    before = _logged(house, ana)
    for line in ("= 1 6", "= 1 ok", "~ 1 0", "@7 week", "@99999999999 undo"):
        (said,) = ana.taps_line(line)
        assert [one for one in text([said]).splitlines() if one] == [STALE], line
    assert _logged(house, ana) == before


# -- the version ----------------------------------------------------------------------------------


def test_a_button_logs_the_version_that_it_showed_and_says_when_that_is_old(house: House) -> None:
    ana = house.open_bar(said=[MIST])
    line = next(one for one in _lines(ana.says("scale grapefruit mist to 400 ml")) if one.startswith("batch"))
    assert "By version" not in text(ana.taps_line(line))
    ana.says("change grapefruit mist: grapefruit oil 14 ml")
    assert "By version 1; the formula has changed since and is at 2." in text(ana.taps_line(line))
    assert "version 1" in text(ana.says("batch 2"))
    assert "By version" not in text(ana.says("batch grapefruit mist to 400 ml"))


def test_undo_takes_back_what_it_stood_under_and_only_once(house: House) -> None:
    ana = house.open_bar()
    line = next(one for one in _lines(ana.says("waste 3 limes mouldy")) if one.startswith("undo"))
    ana.says("waste 5 lemons mouldy")
    assert "Undone: " in text(ana.taps_line(line))
    assert "You undid that" in text(ana.taps_line(line))
    week = text(ana.says("week"))
    assert "lemon" in week
    assert "lime" not in week


# -- rights ---------------------------------------------------------------------------------------

_OF_MANAGERS = (
    "team remove 1",
    "team member 1",
    "team owner 2 yes",
    "team forget 1 yes",
    "invite",
    "invite manager",
    "bar name Mine",
    "bar closing hour 04:00",
    "archive #1",
    "change #1: grapefruit oil 14 ml",
    "rename #1 to Mine",
    "export",
    "import #1",
    "undo 1",
    "delete bar The Copper Gull",
    "restore bar",
)


def test_a_forged_line_of_a_manager_is_refused_to_a_member(house: House) -> None:
    house.open_bar(said=[MIST])
    ben = house.joins("Ben")
    house.clock.turn(minutes=5)
    before = two_bars.rows_of(house.store, 1)
    for line in _OF_MANAGERS:
        (said,) = ben.taps_line(line)
        assert said.first_line.startswith(("Only a manager", "Only the owner", "Only its owner")), line
    assert two_bars.changed(before, two_bars.rows_of(house.store, 1)) == []


# -- arbitrary lines ------------------------------------------------------------------------------

_SIGNS = st.sampled_from(["=", "~", "@", "@1", "@2", "#1", "undo", "team", "batch", "²", "٣", "-1", "x", "0"])
_FORGED = st.one_of(
    st.lists(_SIGNS, min_size=1, max_size=4).map(" ".join),
    st.text(min_size=1, max_size=64),
    st.tuples(st.sampled_from("=~"), st.integers(-2, 10**20), st.text(max_size=20)).map(
        lambda parts: f"{parts[0]} {parts[1]} {parts[2]}"
    ),
)


@examples(30, HealthCheck.function_scoped_fixture)
@given(line=_FORGED, near=st.sampled_from(["= {} ", "~ {} ", ""]))
def test_whatever_stands_behind_a_button_it_is_answered_and_stays_in_the_bar(
    house: House, line: str, near: str
) -> None:
    """Even with the number of the open question."""
    if "Bea" not in house.persons:
        house.open_bar("Bea", "The Salt Stair").says(MIST)
        house.open_bar("Ana").says(MIST)
        house.before = two_bars.rows_of(house.store, 1)  # type: ignore[attr-defined]
    ana = house.person("Ana")
    asked = _lines(ana.says("waste"))
    number = next((one.split()[1] for one in asked if one.startswith("= ")), "1")
    replies = ana.taps_line(near.format(number) + line)
    assert replies
    assert all(one.first_line.strip() for one in replies)
    assert two_bars.changed(house.before, two_bars.rows_of(house.store, 1)) == []  # type: ignore[attr-defined]
