"""Translate ingredient names to English, so that one set of rules reads every language.

The result is a suggestion that a person confirms: no rule of the trade rests on it alone.
"""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache, cached_property, lru_cache
from importlib import import_module
from pkgutil import iter_modules
from typing import Final

from bot.trade.formulas import ingredient_names

_HEADS: Final = (
    "oil|juice|syrup|milk|cream|butter|flour|liqueur|vinegar|puree|peel|rind|zest|leaf|flower|seed"
    "|acid|sugar|water|wine"
)


@dataclass(frozen=True)
class IngredientNames:
    """How one language names ingredients, in plain form (small letters, no accents).

    `words` are put into English, also with the plural's `ending`; `of` stands between a thing and what
    it is made of. `false_friends` mean something else in English: they count where the bar's language
    is this one, and where what is around them says so (`surely`).
    """

    language: str
    words: Mapping[str, str]
    ending: str
    of: str
    false_friends: Mapping[str, str]
    surely: str

    @cached_property
    def _words(self) -> re.Pattern[str]:
        longest_first = sorted(self.words, key=lambda words: (-len(words), words))
        return re.compile(rf"\b({'|'.join(map(re.escape, longest_first))})((?:{self.ending})?)\b")

    @cached_property
    def _of(self) -> re.Pattern[str]:
        return re.compile(rf"\b({_HEADS})s? {self.of}(.+)$")

    @cached_property
    def _surely(self) -> re.Pattern[str]:
        return re.compile(rf"\b(?:{self.surely})\b")

    @cached_property
    def _friends(self) -> re.Pattern[str]:
        return re.compile(rf"\b(?:{'|'.join(self.false_friends)})")

    def in_english(self, plain: str, spoken: bool) -> str:
        """Return a plain name with its known words in English: 'aceite de lima' becomes 'lime oil'."""
        read = (
            self._befriended(plain)
            if spoken
            else self._surely.sub(lambda one: self._befriended(one[0]), plain)
        )
        read = self._words.sub(lambda found: self.words[found[1]], read)
        if read == plain:
            return plain
        for _nested in range(3):
            found = self._of.search(read)
            if found is None:
                break
            read = f"{read[: found.start()]}{found[2]} {found[1]}"
        return read

    def _befriended(self, plain: str) -> str:
        return self._friends.sub(lambda found: self.false_friends[found[0]], plain)


@cache
def _languages() -> tuple[IngredientNames, ...]:
    names = [one.name for one in iter_modules(ingredient_names.__path__)]
    modules = [import_module(f"{ingredient_names.__name__}.{name}") for name in names]
    return tuple(module.NAMES for module in modules if hasattr(module, "NAMES"))


def plain_name(name: str) -> str:
    """Return `name` in lower case, without accents and with single spaces, for looking up words in it."""
    bare = "".join(c for c in unicodedata.normalize("NFKD", name) if not unicodedata.combining(c))
    return " ".join(bare.casefold().split())


@lru_cache(maxsize=4096)
def read_name(name: str, language: str = "") -> str:
    """Return `name` in plain form and, as far as known, in the English words that the rules use.

    `language` is the bar's: of a word with another meaning in English, the meaning there is taken.
    """
    plain = plain_name(name)
    for names in _languages():
        plain = names.in_english(plain, names.language == language)
    return plain


# Words that name one fruit here and another there, in plain form: 'limon' is the lime in Mexico.
_OPEN: Final[dict[str, tuple[str, ...]]] = {
    "limon": ("lemon", "lime"),
    "lima": ("lime", "sweet lime"),
    "pomelo": ("grapefruit", "pomelo"),
}
_IS_OPEN: Final = re.compile(r"\b(limon(?!(?:es)? (?:verde|persa|amarillo))|lima|pomelo)(?:e?s)?\b")
_ABBREVIATIONS: Final[dict[str, str]] = {
    "pg": "propylene glycol",
    "vg": "glycerol",
    "glycerin": "glycerol",
    "glycerine": "glycerol",
    "vegetable glycerin": "glycerol",
    "vegetable glycerine": "glycerol",
    "mct": "medium chain triglycerides",
    "mct oil": "medium chain triglycerides",
    "gns": "neutral spirit",
    "neutral grain spirit": "neutral spirit",
}


@lru_cache(maxsize=4096)
def meanings(name: str) -> frozenset[str]:
    """Return the English plain names of the things that a name may mean: one, or several for an open word."""
    plain = plain_name(name)
    found = _IS_OPEN.search(plain)
    if found is None:
        read = read_name(plain).replace("limon amarillo", "lemon").replace("lemon amarillo", "lemon")
        return frozenset({_ABBREVIATIONS.get(read, read)})
    before, after = plain[: found.start()], plain[found.end() :]
    return frozenset(read_name(f"{before}{one}{after}") for one in _OPEN[found[1]])
