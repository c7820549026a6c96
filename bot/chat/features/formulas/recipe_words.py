"""Read what people leave out of a recipe: a unit, the colon after the name."""

from __future__ import annotations

import re
from collections.abc import Iterable
from itertools import pairwise

from bot.chat.dialogue.turn import Say, Turn
from bot.chat.grammar.recipe_text import is_amount
from bot.chat.grammar.syntax import IngredientLine
from bot.chat.i18n.keywords import stands_for
from bot.chat.i18n.language import _, tongue
from bot.chat.reply.message import Button, reply
from bot.trade.formulas.unit_words import AmbiguousUnit, look_up

# What may begin an amount: a number with a word after it, not a strength such as '96 % spirit'.
_NUMBER_AND_WORD = re.compile(r"[\s,]+(?=\d+(?:[.,/]\d+)?\s*([^\W\d]+)\b)")


def stop_at_amounts(turn: Turn, value: str) -> None:
    """Raise Say, with the line to tap, where a name goes on into amounts: 'lime mist 10 ml lime oil'."""
    if is_amount(value):
        raise Say(reply(_("“{name}” is an amount. What is the formula called?").format(name=value[:40])))
    begins = [found.end() for found in _NUMBER_AND_WORD.finditer(value) if look_up(found[1])]
    if not begins:
        return
    name, *amounts = (value[at:end].strip(" ,:") for at, end in pairwise((0, *begins, len(value))))
    recipe = f"{name}: {', '.join(amounts)}"
    raise Say(
        reply(
            _("Is “{name}” the name, and the rest what goes in?").format(name=name[:40]),
            _("Tap it, or write: name, colon, then the ingredients with commas."),
            buttons=((Button(recipe, f"new {recipe}"),),),
        )
    )


def usual_unit(turn: Turn, parts: Iterable[object]) -> str | AmbiguousUnit:
    """Return the unit of liquids written without one: that of the other lines, else the bar's."""
    for part in parts:
        if isinstance(part, IngredientLine) and part.amount.unit in {"ml", "cl", "l"}:
            return part.amount.unit
    return "ml" if turn.context.bar.units == "metric" else look_up("oz") or "ml"


def without_joining_word(name: str) -> str:
    """Return a name without the word that led to its strength: 'alcohol de' 96 %."""
    words = name.split()
    joins = words and any(stands_for(words[-1].casefold(), one, tongue().language) for one in ("OF", "AT"))
    return " ".join(words[:-1]) if joins and len(words) > 1 else name
