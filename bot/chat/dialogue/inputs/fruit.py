"""Parse the name of a fruit, known to the bar or new."""

from __future__ import annotations

from bot.chat.dialogue.examples import usual_fruit
from bot.chat.dialogue.inputs.names import known_ingredient, words_of
from bot.chat.dialogue.slots import Given
from bot.chat.dialogue.turn import Say, Turn
from bot.chat.grammar.syntax import Named
from bot.chat.i18n.keywords import stands_for
from bot.chat.i18n.language import _, tongue
from bot.chat.i18n.plurals import singular
from bot.chat.reply.message import Button, reply
from bot.trade.formulas.kinds import IngredientKind, guess_kind
from bot.work.formulas import ingredients
from bot.work.formulas.ingredients import IngredientView


def accept_fruit(turn: Turn, given: Given, value: Named) -> IngredientView:
    """Turn a name into a fruit of the bar; a common fruit name creates a new one."""
    known = known_ingredient(turn, value)
    return _new_fruit(turn, words_of(value)) if known is None else known


def _new_fruit(turn: Turn, text: str) -> IngredientView:
    name = singular(text)
    if name.casefold() in {"fruit", _("fruit")}:
        raise Say(reply(_("Which fruit? Such as: {fruit}").format(fruit=usual_fruit(turn))))
    _stop_at_packs(text)
    if guess_kind(name) is IngredientKind.FRUIT or turn.line.casefold().startswith("waste new "):
        return ingredients.add(turn.context, name, IngredientKind.FRUIT)
    near = turn.near(text, "INGREDIENT")
    fresh = Button(
        _("New: {name}").format(name=name), "waste new " + (turn.line.split(None, 1) or [text])[-1]
    )
    buttons = [(Button(one, turn.line_with(text, one)),) for one in near]
    raise Say(
        reply(
            _("I know no fruit called “{name}”.").format(name=text),
            *([_("Did you mean:")] if near else []),
            buttons=(*buttons, (fresh,)),
        )
    )


def _stop_at_packs(text: str) -> None:
    """Refuse 'case oranges': the content of a case varies with each delivery."""
    language = tongue().language
    first, *rest = text.split()
    if not rest or not stands_for(first, "PACKS", language):
        return
    fruit = " ".join(rest[1:] if stands_for(rest[0], "OF", language) else rest)
    asks = _("How much is in it? Write pieces or weight: 40 {fruit}, or 12 kg {fruit}.")
    raise Say(reply(asks.format(fruit=fruit)))
