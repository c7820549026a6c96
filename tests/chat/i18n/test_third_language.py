"""Tests that a third language is one package: its words, endings and texts work without other changes."""

from __future__ import annotations

import shutil
import sys
from collections.abc import Iterator
from fractions import Fraction
from pathlib import Path

import pytest
from babel.messages.pofile import read_po

from bot.channels.rendering import plain_lines
from bot.chat import i18n
from bot.chat.dialogue import registry
from bot.chat.dialogue.registry import all_commands, slash_word
from bot.chat.i18n import locale_choice
from bot.chat.i18n.language import Tongue, read_number, read_range, speaking
from bot.chat.i18n.languages import languages
from bot.chat.i18n.plurals import counted_name, singular
from tests import catalogues
from tests.house import House, Person, text

_SOURCE = Path(__file__).parent / "third_language" / "eo"


@pytest.fixture
def database() -> str:
    """The words do not depend on the database."""
    return "sqlite"


@pytest.fixture
def _esperanto(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Iterator[None]:
    """Put the package beside the languages of the bot, as a contributor would."""
    package = tmp_path / "eo"
    shutil.copytree(_SOURCE, package)
    with (package / "messages.po").open("rb") as file:
        (package / "messages.mo").write_bytes(catalogues.compiled(read_po(file, locale="eo")))
    monkeypatch.setattr(i18n, "__path__", [*i18n.__path__, str(tmp_path)])
    _start_anew()
    yield
    sys.modules.pop(f"{i18n.__name__}.eo")
    monkeypatch.undo()
    _start_anew()


def _start_anew() -> None:
    """Clear the cached languages and their words, as in a new process."""
    for known in (languages, registry._beginnings, registry._longest_beginning):
        known.cache_clear()


@pytest.fixture
def zam(house: House, _esperanto: None) -> Person:
    """A member of a bar whose language is Esperanto."""
    zam = house.open_bar("Zam")
    zam.says("price oranĝo 0.60 each, 5 garnishes each")
    (reply,) = zam.says("language Esperanto")
    assert reply.language == "eo"
    assert reply.first_line == "Mi parolas Esperanton kun vi de nun."
    return zam


def test_a_command_little_words_and_endings_work_in_a_conversation(zam: Person) -> None:
    (reply,) = zam.says("forĵetu tri oranĝojn ŝima")
    assert reply.first_line.startswith("Notita: 3 oranĝoj, ŝima"), reply.first_line
    # Without accents, with another word for the reason, a unit and the word between two lines.
    (reply,) = zam.says("forjetis du dekduojn oranĝoj putra kaj unu kilogramo oranĝoj")
    assert [line.split()[:3] for line in plain_lines(reply)[1:3]] == [
        ["24", "oranĝoj", "ŝima"],
        ["1", "kg", "oranĝoj"],
    ]
    assert "forĵetaĵo: 24 oranĝoj, ŝima" in text(zam.says("log"))
    assert "140 drinks" in text(zam.says("trinkaĵoj 140 hieraŭ"))
    assert zam.says("Dankon!")[0].first_line == "Ne dankinde."


def test_english_is_understood_in_it(zam: Person) -> None:
    assert zam.says("waste 6 oranĝoj mouldy")[0].first_line.startswith("Notita: 6 oranĝoj, ŝima")
    assert zam.says("drinks 140 yesterday")[0].language == "eo"
    assert zam.says("lingvo English")[0].language == "en"
    # The command is found in any language, so there is a way back.
    assert zam.says("lingvo Esperanto")[0].language == "eo"


@pytest.mark.usefixtures("_esperanto")
def test_it_is_listed_offered_and_shown() -> None:
    assert list(languages()) == ["en", "eo", "es"]
    assert locale_choice.spoken("eo-001") == "eo"
    assert locale_choice.language_named("esperanto") == "eo"
    with speaking(Tongue("eo", "eo")):
        assert slash_word(all_commands()["waste"]) == "forjetu"
        assert slash_word(all_commands()["week"]) == "week"
        assert counted_name("limo", Fraction(2)) == "limoj"
        assert singular("limojn") == "limo"
        assert read_number("du kaj duono") == Fraction(5, 2)
        assert read_range("du ĝis tri") == (Fraction(2), Fraction(3))


def test_without_the_package_nothing_of_it_is_left() -> None:
    assert list(languages()) == ["en", "es"]
    assert locale_choice.spoken("eo") == ""
