"""Choose an item of the stock and say how much of it there is: for deliveries and counts."""

from __future__ import annotations

from fractions import Fraction

from bot.chat.dialogue.inputs.fruit import new_fruit
from bot.chat.dialogue.inputs.items import item_quantity
from bot.chat.dialogue.inputs.names import known_ingredient, words_of
from bot.chat.dialogue.inputs.naming import what_is
from bot.chat.dialogue.slots import DIGIT, Given, Question, Slot, columns
from bot.chat.dialogue.turn import Turn
from bot.chat.grammar.syntax import Amount, Named
from bot.chat.i18n.language import _
from bot.chat.i18n.plurals import counted_name, singular
from bot.trade.formulas.kinds import IngredientKind, guess_kind
from bot.trade.formulas.measures import Quantity
from bot.work.formulas import ingredients
from bot.work.formulas.ingredients import IngredientView


def ask_item(turn: Turn, given: Given) -> Question:
    """Ask what came in, fruit first."""
    known = ingredients.all_of(turn.context)
    order = sorted(known, key=lambda one: (one.kind is not IngredientKind.FRUIT, one.name))
    return Question(
        _("What came in?"),
        columns([(one.name, f"#{one.id}") for one in order[:12]], 2),
        hint=_("2 cases oranges 80 each 34.00"),
    )


def accept_item(turn: Turn, given: Given, value: Named) -> IngredientView:
    """Turn a name into an item that the bar buys; a common fruit name creates a new one.

    Raises Say, which asks what another new name means.
    """
    known, typed = known_ingredient(turn, value), words_of(value)
    if known is not None:
        return known
    if guess_kind(singular(typed)) is IngredientKind.FRUIT:
        return new_fruit(turn, typed)
    raise what_is(turn, typed, fruit=False)


def accept_amount(turn: Turn, given: Given, value: Amount | Fraction) -> Quantity:
    """Turn an amount, or a number of pieces, into a quantity of the item; ask for a missing unit."""
    return item_quantity(turn, given[ITEM_SLOT], value)


def ask_amount(turn: Turn, given: Given) -> Question:
    """Ask how much of the item there is, with numbers to tap for fruit."""
    item = given[ITEM_SLOT]
    if item.kind is not IngredientKind.FRUIT:
        return Question(_("How much of {name}?").format(name=item.name), hint=_("24, or 1.2 kg"))
    choices = columns([(str(n), str(n)) for n in (0, 6, 12, 24, 40, 80)], 3)
    return Question(
        _("How many {name}?").format(name=counted_name(item.name, Fraction(2))),
        (*choices, ((_("Other number"), DIGIT),)),
        hint=_("24, or 1.2 kg"),
    )


ITEM_SLOT = Slot("item", accept_item, ask_item)
