"""The languages spoken here. Each is a package beside this module that describes itself by one Language.

Nothing else lists the languages: a package with a `LANGUAGE` is one.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from fractions import Fraction
from functools import cache
from importlib import import_module
from pkgutil import iter_modules
from typing import Final

from bot.chat import i18n

ENGLISH: Final = "en"
"""The language of the code's own texts: it is understood in every other one too."""


@dataclass(frozen=True, slots=True, eq=False)
class Language:
    """What one language brings. Only the first three are needed; its texts are messages.po in its package.

    `keywords` are the words behind each terminal of the grammar, `units` those for a unit, given by an
    English word for it. `other_words` are further ways to say a text of the catalogue. `halves` stand
    after a number ("and a half"), `range_words` between two ("to"). `plural` and `singular` turn a
    bar's own names, whatever is spoken those with `letters` of this language only; `half` says half of
    one. `stemmer` is Snowball's name for the language; without one, names are found by
    their singular.
    """

    tag: str  # ISO 639-1
    name: str  # its own name for itself
    locale: str  # whose signs are used as long as it is not known where a person is
    locales: Mapping[str, str] = field(default_factory=dict)  # by jurisdiction, instead of by time zone
    zones: Mapping[str, tuple[str, ...]] = field(default_factory=dict)  # offered first to phones of a tag
    stemmer: str = ""
    plural: Callable[[str], str] = str
    singular: Callable[[str], str] = str
    letters: str = ""
    half: Callable[[str], str] | None = None
    keywords: Mapping[str, str] = field(default_factory=dict)
    units: Mapping[str, str] = field(default_factory=dict)
    number_words: Mapping[str, Fraction] = field(default_factory=dict)
    halves: tuple[str, ...] = ()
    range_words: tuple[str, ...] = ()
    articles: frozenset[str] = frozenset()
    thanks: frozenset[str] = frozenset()  # said out of politeness: asks for nothing
    sold_out: str = ""  # before the name of what has run out, behind the bar
    other_words: Mapping[str, tuple[str, ...]] = field(default_factory=dict)
    # Headings of the columns in people's own tables, by meaning, between commas; and words that name a table.
    columns: Mapping[str, str] = field(default_factory=dict)
    tables: Mapping[str, str] = field(default_factory=dict)
    totals: frozenset[str] = frozenset()


def counting(words: str) -> dict[str, Fraction]:
    """Return the numbers of words that count from one."""
    return {word: Fraction(number) for number, word in enumerate(words.split(), start=1)}


@cache
def languages() -> Mapping[str, Language]:
    """Return every language by its tag, English first."""
    packages = [one.name for one in iter_modules(i18n.__path__) if one.ispkg]
    found: list[Language] = [import_module(f"{i18n.__name__}.{name}").LANGUAGE for name in packages]
    return {one.tag: one for one in sorted(found, key=lambda one: (one.tag != ENGLISH, one.tag))}


def understood(tag: str) -> tuple[Language, ...]:
    """Return the languages whose words are read where one is spoken: its own before English."""
    english = languages()[ENGLISH]
    own = languages().get(tag, english)
    return (own,) if own is english else (own, english)
