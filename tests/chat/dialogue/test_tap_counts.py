"""Tests of the number of taps for the two nightly tasks, from the card of /start."""

from __future__ import annotations

import pytest

from bot.chat.i18n.language import Tongue, _, speaking
from tests.house import House, Person, first_lines

MIST = "new formula Mist\ngrapefruit oil 12 ml\nneutral spirit 96 % 62 ml\nkind aroma mist"
MOST_FOR_WASTE, MOST_FOR_A_BATCH = 4, 4


def _opened(house: House, language: str) -> Person:
    ana = house.open_bar(said=[MIST])
    ana.says(f"language {language}")
    ana.says("start")
    return ana


def _tap_all(person: Person, labels: list[str]) -> tuple[str, int]:
    """Tap the labels in order; return the last answer and the number of taps."""
    replies = []
    for number, label in enumerate(labels):
        replies = person.taps(label)
        assert replies[0].edits or number == 0, label
        assert replies[0].choosing == (number + 1 < len(labels)), label
    return first_lines(replies)[0], len(labels)


@pytest.mark.parametrize("language", ["en", "es"])
def test_waste_takes_at_most_four_taps(house: House, language: str) -> None:
    ana = _opened(house, language)
    with speaking(Tongue(language, f"{language}_{'GB' if language == 'en' else 'ES'}")):
        labels = [_("Log waste"), _("lime"), "6", _("mouldy")]
    said, taps = _tap_all(ana, labels)
    assert taps <= MOST_FOR_WASTE
    assert "6" in said
    assert labels[-1] in said


@pytest.mark.parametrize("language", ["en", "es"])
def test_a_batch_from_a_formula_takes_at_most_four_taps(house: House, language: str) -> None:
    ana = _opened(house, language)
    with speaking(Tongue(language, f"{language}_{'GB' if language == 'en' else 'ES'}")):
        labels = [_("Batches"), _("Make a batch"), "8 x 50 ml"]
    ana.taps(labels[0])
    said, taps = _tap_all(ana, labels[1:])
    assert taps + 1 <= MOST_FOR_A_BATCH
    assert said.split(":")[0].endswith(" 1")
    assert "Mist" in said


@pytest.mark.parametrize("language", ["en", "es"])
def test_a_batch_from_the_amounts_on_the_screen_takes_one_tap_more(house: House, language: str) -> None:
    ana = _opened(house, language)
    with speaking(Tongue(language, f"{language}_{'GB' if language == 'en' else 'ES'}")):
        labels = [_("Scale"), "8 x 50 ml", _("Log this batch")]
    taps = 0
    for label in labels:
        replies = ana.taps(label)
        taps += 1
    assert taps <= MOST_FOR_A_BATCH
    assert "Mist" in replies[0].first_line
    assert " 1" in replies[0].first_line


@pytest.mark.parametrize("language", ["en", "es"])
def test_a_check_by_the_reminder_takes_one_tap(house: House, language: str) -> None:
    ana = _opened(house, language)
    ana.says("batch Mist to 8 x 50 ml")
    house.clock.turn(hours=26)
    assert any(one.due.kind == "rested" for one in house.reminders())
    with speaking(Tongue(language, f"{language}_{'GB' if language == 'en' else 'ES'}")):
        clear = _("Clear")
    assert clear.casefold() in ana.taps(clear)[0].first_line.casefold()
