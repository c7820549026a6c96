"""Endings of Spanish nouns and their adjectives, for the names of fruit."""

from __future__ import annotations

from collections.abc import Callable
from typing import Final

_VOWELS: Final = "aeiouáéíóú"
_PLAIN: Final = dict(zip("áéíóú", "aeiou", strict=True))
_SINGULARS: Final = (
    *(("ones", "ón"), ("anes", "án"), ("ines", "ín"), ("unes", "ún"), ("ces", "z"), ("ores", "or")),
    *(("ales", "al"), ("eles", "el")),
)
# Words after these keep their number: 'pieles de naranja'.
_AFTER_THE_NOUN: Final = frozenset({"de", "del", "con", "sin", "en", "para", "a", "al", "y"})


def plural(name: str) -> str:
    """Return the plural of a name: 'naranjas sanguinas', 'pieles de limón'."""
    return _with_noun(name, _plural)


def singular(name: str) -> str:
    """Return a name in the singular if its endings mark a plural."""
    return _with_noun(name, _singular)


def half(name: str) -> str:
    """Return half of a thing: 'medio limón', 'media naranja sanguina'."""
    noun = name.split(None, 1)[0] if name else ""
    return f"{'media' if noun.casefold().endswith('a') else 'medio'} {name}"


def _with_noun(name: str, change: Callable[[str], str]) -> str:
    words = name.split()
    end = next((at for at, word in enumerate(words) if word.casefold() in _AFTER_THE_NOUN), len(words))
    # A capital within a name begins another name: 'limones Meyer'.
    changed = [change(word) if at == 0 or word[0].islower() else word for at, word in enumerate(words[:end])]
    return " ".join([*changed, *words[end:]])


def _plural(word: str) -> str:
    low = word.casefold()
    if low.endswith("z"):
        return word[:-1] + "ces"
    if low.endswith("s"):
        return word
    if low[-1:] in _VOWELS:
        return word + "s"
    # The stress keeps its place and loses its accent: limón, limones.
    last = low[-2:-1]
    return (word[:-2] + _PLAIN[last] + word[-1] if last in _PLAIN else word) + "es"


def _singular(word: str) -> str:
    low = word.casefold()
    for many, one in _SINGULARS:
        if low.endswith(many) and len(low) > len(many) + 1:
            return word[: -len(many)] + one
    # Also 'limóns', with the English ending.
    return word[:-1] if low.endswith("s") and (low[-2:-1] in _VOWELS or low[-3:-2] in _PLAIN) else word
