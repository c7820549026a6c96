"""Parse the name of a fruit, known to the bar or new."""

from __future__ import annotations

from bot.chat.dialogue.examples import usual_fruit
from bot.chat.dialogue.inputs.names import known_ingredient, words_of
from bot.chat.dialogue.inputs.naming import is_open, nearest, what_is
from bot.chat.dialogue.slots import Given
from bot.chat.dialogue.turn import Say, Turn
from bot.chat.grammar.syntax import Named
from bot.chat.i18n.keywords import stands_for
from bot.chat.i18n.language import _, tongue
from bot.chat.i18n.plurals import singular
from bot.chat.reply.message import reply
from bot.trade.formulas.kinds import IngredientKind, guess_kind, is_fruit_name
from bot.work.formulas import ingredients
from bot.work.formulas.ingredients import IngredientView


def accept_fruit(turn: Turn, given: Given, value: Named) -> IngredientView:
    """Turn a name into a fruit of the bar; one that is new to it is asked for with its nearest names."""
    known = known_ingredient(turn, value)
    return new_fruit(turn, words_of(value)) if known is None else known


def new_fruit(turn: Turn, text: str) -> IngredientView:
    """Return a fruit that is new to the bar: its ordinary name alone says so, any other is asked."""
    name = singular(text)
    if name.casefold() in {"fruit", _("fruit")}:
        raise Say(reply(_("Which fruit? Such as: {fruit}").format(fruit=usual_fruit(turn))))
    stop_at_packs(text)
    made = ingredients.by_name(turn.context, name)
    if made is not None and made in ingredients.all_of(turn.context, IngredientKind.FRUIT):
        return made  # made by an earlier answer to a question, or by somebody else at the same moment
    if not is_fruit_name(name) or nearest(turn, text, fruit=True) or is_open(turn, text):
        raise what_is(turn, text, fruit=True)
    turn.new_names.append(name)
    return ingredients.add(turn.context, name, IngredientKind.FRUIT)


def stop_at_packs(text: str) -> None:
    """Refuse 'case oranges': the content of a case varies with each delivery."""
    language = tongue().language
    first, *rest = text.split()
    if not rest or not stands_for(first, "PACKS", language):
        return
    thing = " ".join(rest[1:] if stands_for(rest[0], "OF", language) else rest)
    if guess_kind(thing) in {None, IngredientKind.FRUIT}:
        asks = _("How much is in it? Write pieces or weight: 40 {fruit}, or 1.2 kg {fruit}.")
        raise Say(reply(asks.format(fruit=thing)))
    raise ask_volume(thing)


def ask_volume(name: str) -> Say:
    """Return the question how much of a liquid is meant, where no volume or weight was said."""
    return Say(reply(_("How much is it? Write the volume: 300 ml {name}.").format(name=name)))
