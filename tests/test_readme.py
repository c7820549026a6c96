"""The README shows what the program does."""

from __future__ import annotations

from tests.transcript import held, in_readme


async def test_the_night_in_the_readme_is_what_the_program_says_today() -> None:
    assert await held() == in_readme(), "renew it: python -m tests.transcript --write"
