"""Resolve typed names to the things of this bar."""

from __future__ import annotations

from bot.chat.dialogue.turn import Say, Turn
from bot.chat.grammar.syntax import Filled, Hash, Named, Unknown, names_unknown
from bot.chat.i18n.keywords import stands_for
from bot.chat.i18n.language import _, tongue
from bot.chat.reply.message import reply
from bot.trade.formulas.kinds import guess_kind
from bot.work.formulas import ingredients
from bot.work.formulas.ingredients import IngredientView
from bot.work.people.places import folded

LONGEST_NAME = 80  # letters


def short_name(text: str) -> str:
    """Return a name for a bar or formula with single spaces. Raises Say if it is empty or too long."""
    clean = " ".join(text.split())
    if not 0 < len(clean) <= LONGEST_NAME:
        raise Say(reply(_("A name of 1 to 80 letters, please.")))
    return clean


def bar_words(name: str) -> list[str]:
    """Return the words of a bar's name without case, accents and articles."""
    language = tongue().language
    return [word for word in folded(name).split() if not stands_for(word, "ARTICLE", language)]


def known_ingredient(turn: Turn, value: Named) -> IngredientView | None:
    """Return the named ingredient, or None if the bar has none of that name."""
    if isinstance(value, Unknown):
        known = turn.vocabulary.named(value.text, "INGREDIENT")
        return None if known is None else ingredients.get(turn.context, int(known.id))
    return ingredients.get(turn.context, int(turn.noun(value, "INGREDIENT", _("ingredient")).id))


def named_ingredient(turn: Turn, value: Named) -> IngredientView:
    """Return the named ingredient. Raises Say, with near names, if the bar has none of that name."""
    known = known_ingredient(turn, value)
    if known is None:
        raise Say(turn.not_known(Unknown(words_of(value)), "INGREDIENT", _("ingredient")))
    return known


def is_known(said: Filled) -> bool:
    """Whether a filled slot names only what the bar knows, or an ordinary fruit that may be new to it."""
    if isinstance(said.value, Unknown) and said.slot in {"fruit", "item"}:
        return guess_kind(said.value.text) is not None
    return not names_unknown(said.value)


def words_of(value: Named) -> str:
    """Return the words of a typed name."""
    return (
        f"#{value.id}"
        if isinstance(value, Hash)
        else value.text
        if isinstance(value, Unknown)
        else value.name
    )


def spelt_alike(one: str, other: str) -> bool:
    """Whether two names differ by so few letters that one may be a typing mistake."""
    from rapidfuzz.distance import OSA  # noqa: PLC0415 - only for unknown names

    return OSA.distance(one.casefold(), other.casefold()) <= max(1, len(other) // 5)
