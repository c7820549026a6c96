"""Tests of help by subject: it lists every command, and finds what one types."""

from __future__ import annotations

import pytest

from bot.chat.dialogue.registry import all_commands
from bot.chat.features.help import search, subjects
from bot.chat.i18n.language import Tongue, _, speaking
from tests.house import House, Person, lines, text


def _all_pages(person: Person) -> str:
    said = []
    for row in person.says("help all")[0].buttons:
        for button in row:
            shown = person.says(button.line)[0]
            said.append(text([shown]))
            while shown.buttons[0][0].label in {"More", "Más"}:
                shown = person.says(shown.buttons[0][0].line)[0]
                assert len(lines(shown)) <= 20
                said.append(text([shown]))
    return "\n".join(said)


@pytest.mark.parametrize("language", ["English", "Spanish"])
def test_help_lists_every_registered_command(house: House, language: str) -> None:
    ana = house.open_bar()
    ana.says(f"language {language}")
    shown = " ".join(_all_pages(ana).split())
    with speaking(Tongue("es", "es_ES") if language == "Spanish" else Tongue("en", "en_IE")):
        missing = [
            one.name
            for one in all_commands().values()
            if f"{subjects.typed(one)}: {_(one.summary)}" not in shown
        ]
    assert missing == []


def test_each_command_has_one_subject_and_no_subject_is_empty() -> None:
    listed = [one.name for subject in subjects.SUBJECTS for one in subjects.commands_of(subject)]
    assert sorted(listed) == sorted(all_commands())
    assert all(subjects.commands_of(subject) for subject in subjects.SUBJECTS)
    packages = {one.run.__module__.split(".")[3] for one in all_commands().values()}
    assert packages == {name for names in subjects.SUBJECTS.values() for name in names}


@pytest.mark.parametrize(
    ("asked", "command"),
    [
        ("how do I waste", "waste"),
        ("labels", "label"),
        ("how do I print a label", "label"),
        ("what is a lot", "lot"),
        ("allergies", "allergens"),
        ("how do I join a bar", "join"),
        ("delete my bar", "delete bar"),
        ("weighing a sprayer", "weigh"),
        ("shopping list", "shopping"),
        ("undo", "undo"),
    ],
)
def test_help_finds_what_one_types(asked: str, command: str) -> None:
    assert search.commands_about(asked)[0].name == command


def test_help_finds_it_in_spanish() -> None:
    with speaking(Tongue("es", "es_ES")):
        assert search.commands_about("cómo anoto la merma")[0].name == "waste"
        assert search.commands_about("etiquetas")[0].name == "label"


def test_help_on_nothing_known_is_the_general_help(house: House) -> None:
    ana = house.open_bar()
    assert text(ana.says("help me")) == text(ana.says("help"))
    assert text(ana.says("help xyzzy")) == text(ana.says("help"))


def test_help_on_a_question_offers_what_is_near(house: House) -> None:
    said = house.open_bar().says("help how do I waste")[0]
    assert said.first_line.startswith("/waste: ")
    assert "Waste and fruit" in [button.label for row in said.buttons for button in row]
