"""Tests that nothing tells the key of a running blind trial.

Two bars say the same; only which letter is the formula differs. What then differs in an answer would tell.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Sequence

import pytest

from bot.chat.reply.message import Reply
from bot.work.people import people
from bot.work.trials import trials
from tests.house import CHANNEL, House, Person, lines, text

_BOOK = (
    "new formula Orange mist\norange oil 12 ml\npropylene glycol 22 ml\nneutral spirit 96 % 62 ml\n"
    "kind aroma mist\nreplaces orange\nsprays 2-3",
    "price orange oil 100 ml 30",
    "price propylene glycol 1 l 20",
    "price neutral spirit 1 l 25",
    "price almond oil 100 ml 9",
    "price lime juice 1 l 8",
    "stock orange oil 500 ml",
)
# Other ingredients, strength, cost, allergens and shelf life than the formula's.
_VARIANT = (
    "trial orange mist: without propylene glycol, neutral spirit 50 ml, almond oil 1 ml, lime juice 15 ml"
)
_BEFORE = ("trials 1", "trial orange mist: almond oil 2 ml", "trials", "trials 1", "undo", "trials 1")
_OF_A_BOTTLE = (
    *("batch {0}", "label {0}", "cancel", "strength batch {0}", "why hazy {0}"),
    *(
        "lot {0} almond oil X9",
        "lot {0} propylene glycol X9",
        "lot {0}",
        "cancel",
        "which batches used lot X9",
    ),
    *("strained {0} 40 ml", "undo", "batch {0} add 5 ml spirit", "undo", "check {0} hazy", "photos {0}"),
    *(
        "filtered {0}, lost 2 ml",
        "bottled {0} 2 x 20 ml, lost 2 ml",
        "spilt {0} 2 ml",
        "waste 1 ml batch {0}",
    ),
    *("open {0}", "batch {0}", "taste #1 {1} 5 4 3 2", "promote #1 {1}", "discard {0} 10 ml, bad", "undo"),
)
_AFTER = (
    *("cost orange mist to 100 ml", "formula orange mist more", "batches all", "week more", "again"),
    *("log", "batches", "today", "week", "month", "owner", "stock", "stock almond oil", "plan", "shopping"),
    *("clear orange mist", "clear orange mist more", "dose orange mist in 90 ml", "allergens orange mist"),
    *(
        "formula orange mist",
        "trials 1",
        "trials",
        "export",
        "export me",
        "promote A",
        "trial close 1",
        "undo",
    ),
)


def _shown(replies: Sequence[Reply]) -> list[str]:
    """Return all that a reply shows or sends; seals in files may differ, they are not read at a glance."""
    found = []
    for one in replies:
        found += lines(one, phone=False) + [button.line for row in one.buttons for button in row]
        for file in one.files:
            if file.name.endswith((".json", ".csv")):
                found += re.sub(r'"sealed": "[^"]*"', "", file.content.decode()).splitlines()
    # Numbers of questions are random, and keys of messages differ.
    return [re.sub(r"^= \d+ |private \w+:\d+", "", line) for line in found]


def _first_letter(house: House) -> int:
    with house.store.reading() as unit:
        context = people.find(unit, CHANNEL, "ana", "private ana", True).context(
            unit, house.clock.now(), "test"
        )
        return trials.get(context, 1).by_code("A").number


def _bar(build: Callable[[], House], first: int) -> House:
    """Return a bar with a blind trial where A is this variant."""
    for tries in range(40):
        house = build()
        ana = house.open_bar(said=_BOOK)
        for _number in range(tries):  # another message, another order of the letters
            ana.says("help")
        ana.says(_VARIANT)
        ana.taps("50 ml")
        ana.taps("Blind")
        if _first_letter(house) == first:
            return house
    raise AssertionError("the letters never fall this way")


@pytest.fixture
def bars(another_house: Callable[[], House]) -> list[Person]:
    """The owners of two bars, alike but for the key."""
    return [_bar(another_house, first).person("Ana") for first in (trials.BASE, trials.BASE + 1)]


def test_no_answer_depends_on_the_key(bars: list[Person]) -> None:
    said = [*_BEFORE, "trial made 1", "log", "batches", "batch 1", "batch 2", "turn"]
    for number, code in ((1, "A"), (2, "B")):
        said += [line.format(number, code) for line in _OF_A_BOTTLE]
    said += ["turn", *_AFTER[:-2], "turn long", *_AFTER[:2]]
    for line in said:
        if line.startswith("turn"):
            hours = 2000 if line == "turn long" else 30
            for ana in bars:
                ana.house.clock.turn(hours=hours)
            first, second = (_shown([one.reply for one in ana.house.reminders()]) for ana in bars)
        else:
            first, second = (_shown(ana.says(line)) for ana in bars)
        assert first == second, line
    # The end tells, so the bars do differ.
    first, second = (_shown(ana.says("trial close 1")) for ana in bars)
    assert first != second


def test_an_end_that_was_undone_is_told_to_the_tasters(bars: list[Person]) -> None:
    for ana in bars:
        assert "anybody may have seen" not in text(ana.says("trials 1"))
        ana.says("trial close 1")
        ana.taps("Undo")
        assert "It was over once, so anybody may have seen the letters." in text(ana.says("trials 1"))


@pytest.mark.parametrize("given_out", ["trial made 1", "taste A 3 3 3 3", "trial key 1"])
def test_no_variant_comes_or_goes_once_the_letters_are_given_out(house: House, given_out: str) -> None:
    ana = house.open_bar(said=_BOOK)
    ana.says(_VARIANT)
    ana.taps("50 ml")
    ana.taps("Blind")
    ana.says("trial orange mist: almond oil 2 ml")
    entry = re.search(r"^#(\d+).*added a variant", text(ana.says("log")), re.MULTILINE)
    assert entry is not None
    assert "Another variant" in str(ana.says("trials 1")[0].buttons)
    ana.says(given_out)
    title = text(ana.says("trials 1")).splitlines()[0]
    for line in ("trial orange mist: almond oil 3 ml", f"undo {entry[1]}"):
        said = text(ana.says(line))
        assert said.startswith("Trial 1 is blind and its letters are given out."), line
    (shown,) = ana.says("trials 1")
    assert shown.first_line == title
    assert "Another variant" not in str(shown.buttons)


def test_letters_are_dealt_anew_when_a_variant_goes_before(house: House) -> None:
    ana = house.open_bar(said=_BOOK)
    ana.says(_VARIANT)
    ana.taps("50 ml")
    ana.taps("Blind")
    for _number in range(6):  # each time another letter may be the last one
        ana.says("trial orange mist: almond oil 2 ml")
        ana.says("undo")
        assert text(ana.says("trials 1")).splitlines()[0] == "Trial 1, Orange mist: A, B"


def test_no_edit_brings_a_variant_once_the_letters_are_given_out(house: House) -> None:
    ana = house.open_bar(said=_BOOK)
    ana.says(_VARIANT)
    ana.taps("50 ml")
    ana.taps("Blind")
    ana.says("trial orange mist: almond oil 2 ml")
    ana.taps("Log the batches")
    title = text(ana.says("trials 1")).splitlines()[0]
    said = text(ana.edits("trial orange mist: almond oil 3 ml", number=2))
    assert "letters are given out" in said
    assert text(ana.says("trials 1")).splitlines()[0] == title


def _of_two(house: House) -> tuple[Person, Person]:
    """Return two members of a bar with a blind trial that neither has tasted."""
    ana = house.open_bar(said=_BOOK)
    ben = house.joins("Ben")
    ana.says(_VARIANT)
    ana.taps("50 ml")
    ana.taps("Blind")
    return ana, ben


def test_who_looked_gives_no_scores_until_it_ends(house: House) -> None:
    ana, ben = _of_two(house)
    assert "you can't score it until it ends" in text(ben.says("trial key 1"))
    refused = "You can't score trial 1 until it ends: you have seen its letters."
    for line in ("taste", "taste A", "taste A 3 3 3 3", "taste #1 B"):
        assert text(ben.says(line)) == refused, line
        assert "[A]" not in str(ben.says(line))
    ben.says("cancel")
    assert "Taste" not in str(ben.says("trials 1")[0].buttons)
    assert "A is scored" in text(ana.says("taste A 3 3 3 3"))
    assert "1 has tasted. You see the scores when it ends." in text(ben.says("trials 1"))
    ana.says("taste B 3 3 3 3")
    ana.says("trial key 1")
    ana.taps("Show me")
    assert ana.says("taste A 5 5 5 5")[0].first_line == f"{refused[:-1]}, and so have Ben."


def test_an_opened_key_cannot_be_undone(house: House) -> None:
    _ana, ben = _of_two(house)
    ben.says("trial key 1")
    entry = re.search(r"^#(\d+).*opened the key", text(ben.says("log")), re.MULTILINE)
    assert entry is not None
    for line in (f"undo {entry[1]}", "undo", "put back"):
        ben.says(line)
        assert "you have seen its letters" in text(ben.says("taste A 3 3 3 3")), line


def test_a_taster_is_asked_before_looking_and_then_does_not_count(house: House) -> None:
    ana, ben = _of_two(house)
    for person, score in ((ana, 3), (ben, 5)):
        for code in "AB":
            person.says(f"taste {code} {score} {score} {score} {score}")
    (asked,) = ben.says("trial key 1")
    assert asked.first_line == "If you look up the letters of trial 1, your scores don't count."
    ben.taps("Cancel")
    assert "opened the key" not in text(ana.says("log"))
    assert re.search(r"aroma +4 ±1.4 +4 ±1.4", text(ana.says("trials 1")))
    ben.says("trial key 1")
    assert "is the formula as in the book" in text(ben.taps("Show me"))
    assert "is the formula as in the book" in text(ben.says("trial key 1"))  # asked once is enough
    shown = text(ana.says("trials 1"))
    assert "Looked up the letters, so not counted: Ben" in shown
    assert re.search(r"aroma +3 +3$", shown, re.MULTILINE)
    assert "Mean and spread of 1 taster." in shown
    ended = text(ana.says("trial close 1"))
    assert "not counted: Ben" in ended
    assert re.search(r"aroma +3 +3$", ended, re.MULTILINE)


def test_no_scores_are_shown_where_every_taster_looked(house: House) -> None:
    ana, _ben = _of_two(house)
    ana.says("taste A 3 3 3 3")
    ana.says("trial key 1")
    ana.taps("Show me")
    ana.says("trials 1")
    ana.taps("End it")
    ended = text(ana.says("trials 1"))
    assert "Looked up the letters, so not counted: Ana" in ended
    assert "aroma" not in ended
    assert "Nobody has tasted" not in ended


def test_who_ended_it_once_has_seen_the_letters_too(house: House) -> None:
    ana, ben = _of_two(house)
    ana.says("taste A 3 3 3 3")
    ana.says("trial close 1")
    ana.says("undo")
    assert "you have seen its letters" in text(ana.says("taste B 3 3 3 3"))
    assert "1 has tasted" in text(ana.says("trials 1"))
    assert "B is scored" in text(ben.says("taste B 3 3 3 3"))
    assert "not counted" not in text(ana.says("trial close 1"))  # she scored before she saw them


def test_the_key_is_not_told_in_a_group(house: House) -> None:
    ana = house.open_bar(said=_BOOK)
    ana.says("/start", "Team")
    ana.says(_VARIANT)
    ana.taps("50 ml")
    ana.taps("Blind")
    said = text(ana.says("/trial_key 1", "Team"))
    assert "private chat" in said
    assert "as in the book" not in said
    assert "opened the key" not in text(ana.says("log"))
