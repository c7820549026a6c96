"""The command par: the minimum of each ingredient on hand; the bot reports a lower stock."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from bot.chat.dialogue.arguments import Arguments
from bot.chat.dialogue.command import Command, Wish
from bot.chat.dialogue.inputs.shared_slots import ask_item, undo_button
from bot.chat.dialogue.log_words import LogWords
from bot.chat.dialogue.slots import Given, Question, Slot, said
from bot.chat.dialogue.turn import Turn
from bot.chat.features.stock.on_hand import accept_item, amount_words, on_hand_line, quantity_of
from bot.chat.grammar.syntax import Amount
from bot.chat.i18n.language import _
from bot.chat.reply.message import Button, Grid, Reply, Text, reply
from bot.trade.formulas.measures import Quantity
from bot.trade.words import N_
from bot.work.formulas.formulas import in_base
from bot.work.formulas.ingredients import IngredientView
from bot.work.stock import on_hand as stock
from bot.work.stock import pars


def _ask_par(turn: Turn, given: Given) -> Question:
    item = given[_ITEM]
    return Question(
        _("Below how much {name} should I remind you?").format(name=item.name),
        (((_("never"), "none"),),),
        hint=_("1 l"),
    )


def _accept_par(turn: Turn, given: Given, value: Amount | Fraction | str) -> Quantity | None:
    return None if isinstance(value, str) else quantity_of(turn, given[_ITEM], value)


@dataclass(frozen=True, kw_only=True)
class ParArguments(Arguments):
    """An ingredient and its par, None to remove it; no ingredient to show all pars."""

    item: IngredientView | None = None
    par: Quantity | None = None
    setting_par: bool = False


def _par(turn: Turn, arguments: ParArguments) -> Reply:
    item, quantity = arguments.item, arguments.par
    if item is None:
        return _pars(turn)
    pars.set_par(turn.context, item.id, quantity)
    if quantity is None:
        return reply(
            _("{name} has no par: I will not remind you.").format(name=item.name),
            buttons=((undo_button(turn), Button(_("All stock"), "stock")),),
        )
    there = stock.on_hand(turn.context, [item.id]).get(item.id)
    first = _("{name}: I remind you below {par}.").format(
        name=item.name, par=amount_words(turn, *in_base(turn.context.bar, quantity))
    )
    if there is None:
        lines = [_("It was never counted, so count it once: stock {name} 1.4 l").format(name=item.name)]
    elif there.par is None:
        lines = [_("It is counted in another unit and I don't know its density, so I can't compare.")]
    else:
        lines = [on_hand_line(turn, there), *([_("That is below it already.")] if there.low else [])]
    return reply(first, *lines, buttons=((undo_button(turn), Button(_("All stock"), "stock")),))


def _pars(turn: Turn) -> Reply:
    known = pars.listed(turn.context)
    if not known:
        return reply(
            _("No ingredient has a par yet."),
            _("Set one and I'll tell you once when there is less: par neutral spirit 1 l"),
            buttons=((Button(_("Set a par"), "par set"),),),
        )
    rows = tuple((view.name, amount_words(turn, amount, kind)) for view, amount, kind in known)
    return Reply(
        (Text(_("I remind you below:"), strong=True), Grid(rows)),
        ((Button(_("Set a par"), "par set"), Button(_("All stock"), "stock")),),
    )


_SETTING_PAR = Slot("setting_par", said)
_ITEM = Slot("item", accept_item, ask_item, lambda turn, given: _SETTING_PAR in given)

COMMANDS = (
    Command(
        "par",
        N_("the least you want on hand; I'll tell you once"),
        _par,
        words=("pars",),
        examples=(N_("par neutral spirit 1 l"), N_("par neutral spirit none")),
        slots=(
            _SETTING_PAR,
            _ITEM,
            Slot("par", _accept_par, _ask_par, lambda turn, given: _ITEM in given),
        ),
        writes=True,
        manages=True,
        wishes=(
            Wish("par", ("{item} {quantity}",)),
            Wish("par", ("{item?}",), shows=True),
        ),
    ),
)

LOG_WORDS = (LogWords("par", N_("set the par of {name}"), N_("par of {name}")),)
