"""Tests of every story, line by line, on every database."""

from __future__ import annotations

import zlib
from pathlib import Path

import pytest

from tests.buttons import problems
from tests.examples import in_long_part
from tests.house import House
from tests.stories.play import FOLDER, Player, read, write

_STORIES = sorted(FOLDER.glob("*.story"))


def _one_in_three(path: Path) -> bool:
    return zlib.crc32(path.stem.encode()) % 3 == 0


def _is_short(path: Path) -> bool:
    """Whether the short part plays a story: of those in Spanish it plays a third."""
    return not path.stem.startswith("es_") or _one_in_three(path)


_PLAYED = [
    pytest.param(path, id=path.stem, marks=[] if _is_short(path) else [pytest.mark.long]) for path in _STORIES
]


@pytest.mark.parametrize("path", _PLAYED)
def test_story(path: Path, house: House, database: str, request: pytest.FixtureRequest) -> None:
    steps, rest = read(path)
    update = request.config.getoption("--update-stories")
    if update and database != "sqlite":
        pytest.skip("stories are written from one database")
    # The buttons do the same on both databases; tapping them all takes most of a story's time, so the short
    # part taps those of a third of the stories.
    tapped = database == "sqlite" and (in_long_part() or _one_in_three(path))
    player = Player(house, problems if tapped else None)
    try:
        for step in steps:
            told = player.play(step)
            if update:
                step.expected = told
            assert told == step.expected, f"{path.name}: {step.text}"
    finally:
        if update:
            write(path, steps, rest)
    assert not player.problems


def test_there_are_stories_and_each_says_something() -> None:
    assert _STORIES
    for path in _STORIES:
        steps, rest = read(path)
        assert any(step.expected for step in steps), path.name
        assert not any(line.startswith(" ") for line in rest), f"{path.name} ends in an answer without a step"


def test_writing_a_story_down_changes_nothing_but_the_answers(tmp_path: Path) -> None:
    for path in _STORIES:
        copy = tmp_path / path.name
        write(copy, *read(path))
        assert copy.read_text("utf-8") == path.read_text("utf-8")
