"""Tests that the README and the guide show what the program does."""

from __future__ import annotations

import pytest

from tests.transcript import STORIES, held, shown


@pytest.mark.parametrize("name", STORIES)
async def test_a_conversation_shown_is_what_the_program_says_today(name: str) -> None:
    assert await held(name) == shown(name), "renew it: python -m tests.transcript --write"
