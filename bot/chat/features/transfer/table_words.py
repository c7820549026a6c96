"""Column headings of people's own tables, in every language of the bot."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from typing import TypeVar

from babel.dates import get_month_names

from bot.chat.dialogue.turn import Turn
from bot.chat.i18n.keywords import own_units
from bot.chat.i18n.language import tongue
from bot.chat.i18n.languages import Language, languages, understood
from bot.work.transfer.foreign.reading import KINDS, MEANINGS, Words
from bot.work.transfer.foreign.values import Months, fold

_Key = TypeVar("_Key")


def words_of(turn: Turn) -> Words:
    """Return the headings, months and units of every language, and the bar's own names."""
    every = tuple(languages().values())  # a supplier may write in another language than the bar
    named = _named(turn)
    return Words(
        meanings=_by_word(every, lambda one: one.columns, MEANINGS),
        kinds=_by_word(every, lambda one: one.tables, KINDS),
        totals=frozenset().union(*(one.totals for one in every)),
        months=Months(
            {
                fold(name): number
                for one in reversed(every)
                for number, name in get_month_names("wide", locale=one.tag).items()
            }
        ),
        units=own_units(tongue().language),
        named=lambda text: named(text) or text,
        known=lambda text: named(text) is not None,
    )


_TEMPLATES = {
    "waste": ("day", "item", "amount", "reason", "cost"),
    "deliveries": ("day", "item", "amount", "unit", "cost"),
    "prices": ("item", "pack", "unit", "cost"),
    "counts": ("day", "item", "amount", "unit"),
}


def empty_tables() -> list[tuple[str, list[str]]]:
    """Return the name of each kind of table and its headings, in the current language."""
    spoken = next(one for one in understood(tongue().language) if one.columns)

    def first(words: str) -> str:
        return words.partition(",")[0]

    return [
        (first(spoken.tables[kind]), [first(spoken.columns[one]) for one in meanings])
        for kind, meanings in _TEMPLATES.items()
    ]


def _by_word(
    every: tuple[Language, ...], table: Callable[[Language], Mapping[str, str]], keys: tuple[_Key, ...]
) -> dict[str, _Key]:
    return {
        word.strip(): key
        for one in reversed(every)
        for key in keys
        for word in table(one).get(str(key), "").split(",")
        if word.strip()
    }


def _named(turn: Turn) -> Callable[[str], str | None]:
    """Return a finder of the bar's own name for an item: the whole text, or its words before a comma."""

    def name(text: str) -> str | None:
        for part in (text, text.partition(",")[0], text.partition("(")[0]):
            noun = turn.vocabulary.named(part.strip(), "INGREDIENT")
            if noun is not None:
                return noun.name
        return None

    return name
