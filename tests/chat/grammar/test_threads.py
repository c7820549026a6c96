"""Tests of parsing in several threads at once: a stemmer stores its current word."""

from __future__ import annotations

from concurrent.futures import ThreadPoolExecutor

from bot.chat.grammar.lexer import stem

_WORDS = [
    f"{start}{end}" for start in ("orang", "limett", "grapefruitskin", "bak") for end in ("es", "ing", "ed")
]


def test_threads_do_not_mix_their_words() -> None:
    expected = [stem.__wrapped__(word, "en") for word in _WORDS]

    def many(_number: int) -> bool:
        return all([stem.__wrapped__(word, "en") for word in _WORDS] == expected for _time in range(300))

    with ThreadPoolExecutor(8) as pool:
        assert all(pool.map(many, range(8)))
