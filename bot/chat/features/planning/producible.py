"""The command for the formulas that the stock on hand can make."""

from __future__ import annotations

from bot.chat.dialogue.arguments import Arguments
from bot.chat.dialogue.command import Command
from bot.chat.dialogue.turn import Turn
from bot.chat.i18n.language import _, ngettext, show_number
from bot.chat.reply.message import Block, Button, Grid, Reply, Text, reply
from bot.chat.reply.units import show_ml
from bot.trade.words import N_
from bot.work.planning import producible
from bot.work.planning.producible import CanMake

_MOST_FORMULAS = 8


def _can_make(turn: Turn, arguments: Arguments) -> Reply:
    known = producible.can_make(turn.context)
    possible = [one for one in known if one.factor > 0]
    if not known or not any(one.limiting or one.factor for one in known):
        return reply(
            _("Nothing that a formula needs is counted yet."),
            _("Count what is there: stock neutral spirit 1.4 l"),
            buttons=((Button(_("Count something"), "stock count"),),),
        )
    units = turn.context.bar.units
    if not possible:
        first = _("You can't make anything from what is counted.")
    else:
        first = ngettext(
            "You can make {count} formula now", "You can make {count} formulas now", len(possible)
        ).format(count=len(possible))
    rows = tuple((one.name, _how_much(one, units)) for one in possible[:_MOST_FORMULAS])
    blocks: list[Block] = [Text(first, strong=True), *([Grid(rows)] if rows else [])]
    why = [_why(one) for one in [*possible[:4], *(one for one in known if not one.factor and one.limiting)]]
    blocks += [Text("\n".join(why))] if why else []
    unsure = sorted({name for one in possible for name in one.not_counted})
    if unsure:
        blocks.append(
            Text(_("Never counted, so I assume you have it: {names}").format(names=", ".join(unsure[:6])))
        )
    buttons = tuple((Button(one.name, _scaled(one)),) for one in possible[:3])
    return Reply(tuple(blocks), (*buttons, (Button(_("All stock"), "stock"),)))


def _how_much(one: CanMake, units: str) -> str:
    if one.finished_ml:
        return show_ml(one.finished_ml, units)
    return _("{factor} times").format(factor=show_number(one.factor, 1))


def _why(one: CanMake) -> str:
    if not one.factor:
        return _("{formula}: no {name} left").format(formula=one.name, name=one.limiting)
    return _("{formula}: first to run out is {name}").format(formula=one.name, name=one.limiting)


def _scaled(one: CanMake) -> str:
    """Return the line that scales a formula to the stock, rounded down."""
    if one.finished_ml and one.finished_ml >= 1:
        return f"scale #{one.formula_id}.{one.version} to {int(one.finished_ml)} ml"
    return f"scale #{one.formula_id}.{one.version}"


COMMANDS = (
    Command(
        "can_make",
        N_("what you can make with what you have"),
        _can_make,
        words=(
            "what can i make",
            "what can we make",
            "can i make",
            "can make",
        ),
        menu=54,
    ),
)
