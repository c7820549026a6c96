"""Tests that the catalogues hold every text, complete and in every language."""

from __future__ import annotations

import ast
import re
from collections.abc import Iterator
from fractions import Fraction
from pathlib import Path

import pytest
from babel import Locale

from bot.chat.dialogue.registry import all_commands, all_log_words
from bot.chat.i18n import catalogue_strings
from bot.chat.i18n.language import Tongue, _, ngettext, speaking
from bot.trade.formulas.kinds import IngredientKind, Preparation
from bot.trade.formulas.measures import Dimension
from bot.trade.safety.limits import LimitUnit
from bot.work.context import DEFAULT_REASONS
from bot.work.log.kinds import KINDS
from tests import catalogues

_BOT = Path(catalogue_strings.__file__).parents[2]
# Errors whose first argument names a thing or a quantity, and whose last is a unit.
_NAMING = {"NotThereError", "BadValueError", "AlreadyThereError", "OutOfRangeError"}


def test_the_template_holds_just_what_the_code_says() -> None:
    assert catalogues.stale() == [], "run: python -m tests.catalogues --update"


@pytest.mark.parametrize("language", catalogues.LANGUAGES)
def test_nothing_is_untranslated_unsure_or_unlike_its_original(language: str) -> None:
    assert catalogues.wrong(language) == []


def test_spanish_is_there() -> None:
    assert "es" in catalogues.LANGUAGES


def test_a_wrong_translation_is_found() -> None:
    texts = catalogues.catalogue("es")
    message = next(one for one in texts if one.id == "Welcome to {bar}.")
    for said, expected in (
        ("Hola", "other placeholders"),
        ("Hola {bra}.", "other placeholders"),
        ("Hola {bar}. ", "other spaces"),
        ("", "untranslated"),
    ):
        message.string = said
        (found,) = catalogues._wrong_in(message, texts.num_plurals)
        assert found.startswith(expected)


@pytest.mark.parametrize("language", catalogues.LANGUAGES)
def test_plural_forms_are_those_of_cldr(language: str) -> None:
    rule = Locale.parse(language).plural_form
    texts = catalogues.catalogue(language)
    for number in (0, 1, 2, 5, 11, 21, 100, 1001):
        # CLDR uses 'many' for millions in Spanish, and no text here counts millions.
        one = rule(number) == "one"
        with speaking(Tongue(language)):
            said = ngettext("{count} day", "{count} days", number)
        day = next(message for message in texts if message.id == ("{count} day", "{count} days"))
        assert said == catalogues.forms(day)[0 if one else 1], number


def _named() -> Iterator[str]:
    """Yield every name and unit in the errors, which the chat words."""
    for path in _BOT.rglob("*.py"):
        for node in ast.walk(ast.parse(path.read_text("utf-8"))):
            if not isinstance(node, ast.Call) or not isinstance(node.func, ast.Name):
                continue
            if node.func.id not in _NAMING or not node.args:
                continue
            ends = [node.args[0], node.args[-1]] if node.func.id == "OutOfRangeError" else node.args[:1]
            for end in ends:
                if isinstance(end, ast.Constant) and isinstance(end.value, str) and end.value:
                    yield end.value.replace("mL", "ml")


def test_words_that_come_as_data_are_in_the_catalogues() -> None:
    known = {one if isinstance(one, str) else one[0] for one in catalogues.ids(catalogues.template())}
    data = [*Preparation, *IngredientKind, *Dimension, *LimitUnit, *DEFAULT_REASONS]
    words = {str(one) for one in data} | set(_named())
    assert sorted(words - known) == []


def _logged() -> Iterator[str]:
    """Yield every name that the log may use for an entry."""
    for path in (_BOT / "work").rglob("*.py"):
        for node in ast.walk(ast.parse(path.read_text("utf-8"))):
            if not isinstance(node, ast.Call) or not isinstance(node.func, ast.Attribute):
                continue
            first = node.args[0] if node.args else None
            if node.func.attr == "log" and isinstance(first, ast.Constant) and isinstance(first.value, str):
                yield first.value


def test_every_entry_of_the_log_has_words() -> None:
    logged = set(_logged())
    assert len(logged) > 20
    assert sorted(logged - set(all_log_words())) == []
    for words in all_log_words().values():
        assert bool(words.thing) == (words.what in KINDS), words.what


def test_summaries_of_commands_fit_the_menu_in_every_language() -> None:
    for language in catalogues.LANGUAGES:
        with speaking(Tongue(language)):
            for command in all_commands().values():
                said = _(command.summary)
                assert not command.menu or 3 <= len(said) <= 60, (command.name, said)
                assert not said.endswith("."), (command.name, said)


def test_numbers_in_words_agree_with_their_nouns() -> None:
    with speaking(Tongue("es", "es_ES")):
        for number, wanted in ((1, "1 día"), (2, "2 días"), (Fraction(3), "3 días")):
            said = ngettext("{count} day", "{count} days", int(number)).format(count=number)
            assert said == wanted


def test_no_text_speaks_by_pictures_or_shouts() -> None:
    # A screen reader reads out a pictograph's name, but not a colour.
    picture = re.compile("[\U0001f000-\U0001faff\u2600-\u27bf\u2b00-\u2bff\ufe0f]")
    for language in catalogues.LANGUAGES:
        for message in catalogues.catalogue(language):
            for text in (*catalogues.originals(message), *catalogues.forms(message)):
                assert not picture.search(text), text
                if message.id:
                    assert "!" not in text, text
                    assert "¡" not in text, text
