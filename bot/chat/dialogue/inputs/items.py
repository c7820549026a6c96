"""Quantities of what the bar buys: by volume, by weight, or in pieces."""

from __future__ import annotations

from fractions import Fraction

from bot.chat.dialogue.inputs.shared_slots import is_liquid
from bot.chat.dialogue.turn import Say, Turn
from bot.chat.grammar.syntax import Amount
from bot.chat.i18n.language import _
from bot.chat.reply.message import reply
from bot.trade.formulas.kinds import INGREDIENT_PROPERTIES, IngredientKind
from bot.trade.formulas.measures import Quantity
from bot.work.formulas.ingredients import IngredientView


def item_quantity(turn: Turn, item: IngredientView, value: Amount | Fraction) -> Quantity:
    """Return an amount, or a number of pieces, of an item. Raises Say, which asks for a missing unit."""
    liquid = False if item.kind is IngredientKind.FRUIT else is_liquid(item)
    if isinstance(value, Amount):
        return turn.quantity(value, liquid)
    if item.kind is not IngredientKind.FRUIT and liquid is not None and _measured(item):
        raise Say(reply(_("In which unit? Such as: {name} 500 ml, or 2 kg").format(name=item.name)))
    return Quantity(value, "each")


def _measured(item: IngredientView) -> bool:
    """Whether a bare number is ambiguous: liquids and powders are not counted by the piece."""
    return item.kind is not IngredientKind.OTHER and INGREDIENT_PROPERTIES[item.kind].is_liquid is not None
