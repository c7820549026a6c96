"""Tests of the reader's quality on a part of the held-out lines, and on open data."""

from __future__ import annotations

import pytest

from tests.examples import in_long_part
from tests.understanding import clinc, measure
from tests.understanding.phrasebooks import LANGUAGES, held_out, training

_EVERY = 8 if in_long_part() else 16  # a part of the lines, so that it takes seconds


@pytest.mark.parametrize("language", LANGUAGES)
def test_most_lines_are_understood_and_none_is_written_by_a_guess(language: str) -> None:
    lines = [one for one in held_out(language) if not one.later]
    result = measure.measure(language, lines[::_EVERY])
    found = measure.figures(result.of_wishes())
    assert found.first >= 0.87, found
    assert found.three >= 0.93, found
    assert found.wrong_read <= 0.02, found
    assert found.wrong_write == 0, found
    talk = result.of("none")
    assert not any(outcome.wrote for _phrase, outcome in talk)


@pytest.mark.parametrize("language", LANGUAGES)
@pytest.mark.long
def test_lines_of_the_newest_wishes_are_offered_and_none_is_written_by_a_guess(language: str) -> None:
    lines = [one for one in held_out(language) if one.later]
    found = measure.figures(measure.measure(language, lines[:: _EVERY // 2]).of_wishes())
    assert found.first >= 0.7, found
    assert found.three >= 0.8, found
    assert found.wrong_write == 0, found


@pytest.mark.parametrize("language", LANGUAGES)
def test_held_out_lines_are_in_no_phrasebook(language: str) -> None:
    known = {phrase.text.casefold() for phrase in training(language)}
    assert [one.text for one in held_out(language) if one.text.casefold() in known] == []


@pytest.mark.long
def test_the_same_features_and_trainer_do_well_on_open_data() -> None:
    judged = clinc.judge(clinc.sample())
    assert judged.first >= 0.95
    assert judged.three >= 0.98
    assert judged.refused >= 0.5
