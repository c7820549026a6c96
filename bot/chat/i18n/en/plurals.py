"""Endings of English nouns, for the names of fruit and bottles.

DEVELOPERS.md, Decisions, says why this is not the library inflect.
"""

from __future__ import annotations

import re
from collections.abc import Callable
from typing import Final

_ES_AFTER: Final = ("s", "x", "z", "ch", "sh")
_VOWELS: Final = "aeiou"
_UNLIKE_THE_REST: Final = {
    **{one: one + "es" for one in ("mango", "tomato", "potato", "citrus", "hibiscus")},
    **{one: one + "s" for one in ("yuzu", "kiwi", "sudachi", "calamansi", "chilli", "chili")},
    **{one: one for one in ("cassis", "molasses")},
    "leaf": "leaves",
    "half": "halves",
    "loaf": "loaves",
    "knife": "knives",
}
_SINGULARS: Final = {many: one for one, many in _UNLIKE_THE_REST.items()}
_AFTER_THE_NOUN: Final = re.compile(r" of | \(|, ")


def plural(name: str) -> str:
    """Return the plural of a name: 'bay leaves', 'bunches of mint'."""
    return _with_noun(name, _plural)


def singular(name: str) -> str:
    """Return a name in the singular if its ending marks a plural."""
    return _with_noun(name, _singular)


def half(name: str) -> str:
    """Return half of a thing: 'half a lemon', 'half an orange'."""
    return f"half {'an' if name[:1].casefold() in _VOWELS else 'a'} {name}"


def _with_noun(name: str, change: Callable[[str], str]) -> str:
    found = _AFTER_THE_NOUN.search(name)
    noun, rest = (name, "") if found is None else (name[: found.start()], name[found.start() :])
    *first, last = noun.split() or [""]
    return " ".join([*first, change(last)]) + rest


def _plural(word: str) -> str:
    low = word.casefold()
    if low in _UNLIKE_THE_REST:
        return word[:1] + _UNLIKE_THE_REST[low][1:]
    if _singular(word) != word:
        return word  # 'Grapes': the bar's own spelling
    if low.endswith("y") and len(word) > 1 and low[-2] not in _VOWELS:
        return word[:-1] + "ies"
    return word + ("es" if low.endswith(_ES_AFTER) else "s")


def _singular(word: str) -> str:
    low = word.casefold()
    if low in _SINGULARS:
        return word[:1] + _SINGULARS[low][1:]
    if low.endswith("ies") and len(word) > 4:
        return word[:-3] + "y"
    if low.endswith(("ches", "shes", "sses", "xes")):
        return word[:-2]
    return word[:-1] if low.endswith("s") and not low.endswith(("ss", "us", "is")) else word
