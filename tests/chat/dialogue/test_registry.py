"""Tests of the words that begin commands."""

from __future__ import annotations

import pytest

from bot.chat.dialogue.registry import all_commands, command_at_start, words_of
from bot.chat.i18n.language import Tongue, speaking


@pytest.mark.parametrize("language", ["en", "es"])
def test_the_usual_word_of_a_command_is_one_that_people_say(language: str) -> None:
    assert not [one.name for one in all_commands().values() if "_" in words_of(one, language)[0]]


def test_a_command_is_found_by_its_words_and_by_its_name() -> None:
    with speaking(Tongue("en", "en_GB")):
        found = [
            command_at_start(text) for text in ("handling cautions", "can_make", "can make", "fruit par")
        ]
    assert [one and (one[0].name, one[1]) for one in found] == [
        ("cautions", ""),
        ("can_make", ""),
        ("can_make", ""),
        ("fruit_par", ""),
    ]
