"""Cases of something: how many, and how much is in one, by the bar's prices or by asking."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction
from typing import Any

from bot.chat.dialogue.inputs.items import item_quantity
from bot.chat.dialogue.inputs.shared_slots import is_liquid
from bot.chat.dialogue.slots import Given, Question, Slot, plain
from bot.chat.dialogue.turn import Say, Turn
from bot.chat.grammar.syntax import Amount
from bot.chat.i18n.language import _
from bot.chat.i18n.plurals import counted_name, pieces, singular
from bot.chat.reply.message import Reply, Text, reply
from bot.chat.reply.units import show_quantity
from bot.trade.formulas.kinds import IngredientKind
from bot.trade.formulas.measures import Quantity
from bot.work.formulas.ingredients import IngredientView
from bot.work.money import prices

CASES = Slot("cases", plain(Fraction))


def content_slot(item_slot: Slot[Any]) -> Slot[Quantity]:
    """Return the slot for what one case of an item holds, which is asked where no price says it."""

    def ask(turn: Turn, given: Given) -> Question:
        # The pack is called by the word that was typed: '2 trays' holds some in each tray.
        pack = singular(given.words.get(CASES.name, "").rpartition(" ")[2])
        return Question(_how_much(given[item_slot], pack), hint=_("80, or 5 kg"))

    def accept(turn: Turn, given: Given, value: Amount | Fraction) -> Quantity:
        return item_quantity(turn, given[item_slot], value)

    def wanted(turn: Turn, given: Given) -> bool:
        return (
            CASES in given
            and item_slot in given
            and prices.case_of(turn.context, given[item_slot].id) is None
        )

    return Slot("content", accept, ask, wanted, rule="content_answer_slot")


def _how_much(item: IngredientView, pack: str = "") -> str:
    if is_liquid(item):
        return _("How much is in one? Such as: 70 cl, or 1 kg")
    name = counted_name(item.name, Fraction(2)) if item.kind is IngredientKind.FRUIT else item.name
    asks = _("How much is in each {pack} of {name}? Such as: 80, or 5 kg")
    return asks.format(pack=pack or _("case"), name=name)


def content_of(turn: Turn, item: IngredientView, said: Quantity | None) -> Quantity:
    """Return what one case holds: as said, else as in the bar's prices. Raises Say where neither tells."""
    found = said or prices.case_of(turn.context, item.id)
    if found is None:
        raise Say(reply(_how_much(item)))
    return found


def in_cases(turn: Turn, item: IngredientView, cases: Fraction, said: Quantity | None) -> Quantity:
    """Return the amount in some cases of an item. Raises Say."""
    content = content_of(turn, item, said)
    return Quantity(content.number * cases, content.unit)


def noting_case(turn: Turn, answer: Reply, item: IngredientView, said: Quantity | None) -> Reply:
    """Say what a case was taken to hold where nobody said it."""
    if said is not None:
        return answer
    content = content_of(turn, item, None)
    held = pieces(item.name, content.number) if content.unit == "each" else show_quantity(content)
    note = Text(_("A case is {amount}.").format(amount=held))
    return replace(answer, blocks=(answer.blocks[0], note, *answer.blocks[1:]))
