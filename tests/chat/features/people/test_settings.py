"""Tests that a page shows every setting and that taps alone change it, in each language."""

from __future__ import annotations

import pytest

from bot.chat.i18n.language import Tongue, _, speaking
from bot.chat.i18n.setting_names import PAGES, SETTINGS
from bot.chat.reply.message import Button, Reply
from tests.house import House, Person, text


def _buttons(reply: Reply) -> list[Button]:
    """Return the buttons without the last row, which leads to other pages."""
    return [button for row in reply.buttons[:-1] for button in row]


def _change(ana: Person, card: Reply, name: str) -> Reply:
    """Change the setting of this name by taps, to the last value offered; return its new text."""
    at_once = [one for one in _buttons(card) if one.label.startswith(f"{name}: ")]
    ask = [one for one in _buttons(card) if one.label == name]
    if not ask:
        return ana.taps_line(at_once[0].line)[0]
    asked = ana.taps_line(ask[0].line)[0]
    assert asked.edits
    values = [one for one in _buttons(asked) if not one.line.endswith(" +")]
    return ana.taps_line(values[-1].line)[0]


@pytest.mark.parametrize("language", ["en", "es"])
def test_every_setting_but_the_name_is_changed_by_at_most_three_taps(house: House, language: str) -> None:
    ana = house.open_bar()
    ana.says(f"language {language}")
    for page in PAGES.values():
        with speaking(Tongue(language)):
            title = _(page.title)
            names = [_(SETTINGS[key][0]) for key in page.settings if key != "name"]
        ana.says("bar")
        card = ana.taps(title)[0]  # the first tap; the others are a setting and its value
        assert card.edits
        for name in names:
            card = _change(ana, card, name)
            assert card.edits, name
            assert not card.choosing, name
            assert card.first_line.casefold().startswith(f"{name}: ".casefold())
    settings = " ".join(text([one for page in PAGES for one in ana.says(f"bar {page}")]).split())
    for key in ("currency", "open_weeks", "dash", "quiet"):
        with speaking(Tongue(language)):
            assert _(SETTINGS[key][0]) in settings


def test_a_toggle_turns_back_and_undo_takes_back_one_change(house: House) -> None:
    ana = house.open_bar()
    ana.says("bar close reminder 01:15")
    assert "close reminder: off" in text(ana.taps_line("bar hours close reminder off"))
    assert "close reminder: 01:15" in text(ana.taps("close reminder: on"))
    ana.taps_line("bar house pictures dark")
    ana.taps("Undo")
    assert "pictures: light" in text(ana.says("bar house"))
    assert "close reminder: 01:15" in text(ana.says("bar"))


def test_a_member_sees_the_settings_and_no_button_to_change_them(house: House) -> None:
    house.open_bar()
    ben = house.joins("Ben")
    assert "closing hour: " in text(ben.says("bar"))
    (shown,) = ben.taps("Hours and reminders")
    assert "discard warning: " in text([shown])
    assert [button.label for row in shown.buttons for button in row] == ["All settings"]
    assert "Only a manager" in text(ben.says("bar hours pictures dark"))


def test_a_number_is_typed_on_the_pad_of_digits(house: House) -> None:
    ana = house.open_bar()
    ana.says("bar")
    for label in ("Money and work", "drinks a week", "Another number", "4", "0", "0", "OK"):
        shown = ana.taps(label)[0]
    assert shown.first_line == "Drinks a week: 400"


def test_the_log_names_the_setting_that_was_changed(house: House) -> None:
    ana = house.open_bar()
    for line, name in (("bar missing fruit 5 times", "missing fruit"), ("bar dash 1 ml", "dash")):
        ana.says(line)
        assert f"settings: {name}" in " ".join(text(ana.says("log")).split())
