"""Find the languages of the bot. Each is a package beside this module with one `LANGUAGE`.

Nothing else lists the languages.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, field
from fractions import Fraction
from functools import cache
from importlib import import_module
from pkgutil import iter_modules
from typing import Final

from bot.chat import i18n

ENGLISH: Final = "en"
"""The language of the texts in the code. It is understood beside every other one."""


@dataclass(frozen=True, slots=True, eq=False)
class Language:
    """The definition of one language. Only the first three fields are required; texts are in its messages.po.

    `keywords` are the words for each terminal of the grammar; `units` those for a unit, by an English word
    for it. `regional` replaces words of the texts in a country, by its ISO 3166 code, where they differ from
    the catalogue's ("mouldy" is "moldy" in the US). `other_words` are more ways to say a text of the
    catalogue. `halves` follow a number ("and a half"), `range_words` separate two ("to"). `plural` and
    `singular` inflect a bar's own names, in any current language those with `letters` of this language only;
    `half` returns half of a thing. `stemmer` is Snowball's name for the language; without one, names are
    found by their singular.
    """

    tag: str  # ISO 639-1
    name: str  # the language's own name for itself
    locale: str  # for numbers, money and days until the person's place is known
    locales: Mapping[str, str] = field(default_factory=dict)  # by jurisdiction, instead of by time zone
    regional: Mapping[str, Mapping[str, str]] = field(default_factory=dict)
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
    fillers: frozenset[str] = frozenset()  # words of a question that do not say what it is about
    thanks: frozenset[str] = frozenset()  # polite words that ask for nothing
    called: frozenset[str] = frozenset()  # what other speakers call the language, without accents
    currencies: frozenset[str] = frozenset()  # words after an amount of money, without accents
    bottle_sizes: Mapping[str, int] = field(default_factory=dict)  # "fifties": bottles of so many ml
    sold_out: str = ""  # in bar slang, before the name of a thing that has run out
    other_words: Mapping[str, tuple[str, ...]] = field(default_factory=dict)
    # Column headings of people's own tables, by meaning, comma-separated; and words that name a table.
    columns: Mapping[str, str] = field(default_factory=dict)
    tables: Mapping[str, str] = field(default_factory=dict)
    totals: frozenset[str] = frozenset()
    # Words that mean much the same, by a name for the group; without accents (see intent/reading/ranker.py).
    concepts: Mapping[str, str] = field(default_factory=dict)


def counting(words: str) -> dict[str, Fraction]:
    """Return the numbers of the words that count from one."""
    return {word: Fraction(number) for number, word in enumerate(words.split(), start=1)}


def spelled(
    small: str, tens: str, within: Sequence[str], hundreds: Mapping[str, int], after: Sequence[str]
) -> dict[str, Fraction]:
    """Return the numbers below a thousand in words.

    `small` are the words that count from one, `tens` the round tens above them. `within` stands between a ten
    and a one, `after` between a hundred and the rest.
    """
    found = counting(small)
    ones = list(found.items())[:9]
    first = (len(found) + 1) // 10
    for number, ten in enumerate(tens.split(), start=first):
        found[ten] = Fraction(number * 10)
        found |= {f"{ten}{between}{one}": number * 10 + more for between in within for one, more in ones}
    rest = list(found.items())
    for word, hundred in hundreds.items():
        found[word] = Fraction(hundred)
        found |= {f"{word}{between}{low}": hundred + more for between in after for low, more in rest}
    return found


@cache
def languages() -> Mapping[str, Language]:
    """Return every language by its tag, English first."""
    packages = [one.name for one in iter_modules(i18n.__path__) if one.ispkg]
    found: list[Language] = [import_module(f"{i18n.__name__}.{name}").LANGUAGE for name in packages]
    return {one.tag: one for one in sorted(found, key=lambda one: (one.tag != ENGLISH, one.tag))}


def understood(tag: str) -> tuple[Language, ...]:
    """Return the languages read along with a current one: the language itself before English."""
    english = languages()[ENGLISH]
    own = languages().get(tag, english)
    return (own,) if own is english else (own, english)
