"""Overheads of one formula beside its ingredients, where they differ from the bar's settings."""

from __future__ import annotations

from dataclasses import dataclass

from bot.chat.dialogue.arguments import Arguments
from bot.chat.dialogue.command import Command, Wish
from bot.chat.dialogue.inputs.money import ends_of, money_range
from bot.chat.dialogue.inputs.shared_slots import FORMULA_SLOT, undo_button
from bot.chat.dialogue.slots import Slot, plain, said
from bot.chat.dialogue.turn import Say, Turn
from bot.chat.grammar.syntax import Span
from bot.chat.i18n.language import _
from bot.chat.reply.message import Button, Grid, Reply, Text, reply
from bot.chat.reply.units import show_range
from bot.trade.words import N_
from bot.work.errors import NotAllowedError
from bot.work.formulas import overheads
from bot.work.formulas.formulas import FormulaView

# Slot: its field, its word, and the largest accepted value.
_SLOTS = {
    "minutes": ("batch_minutes", N_("a batch"), 1440),
    "bottle_price": ("bottle_price", N_("a bottle"), 10_000),
    "label_price": ("label_price", N_("a label"), 10_000),
}


@dataclass(frozen=True, kw_only=True)
class MakingArguments(Arguments):
    """A formula and its overheads; `nothing` restores the bar's settings."""

    formula: FormulaView
    minutes: Span | None = None
    bottle_price: Span | None = None
    label_price: Span | None = None
    nothing: bool = False


def _making(turn: Turn, arguments: MakingArguments) -> Reply:
    view = arguments.formula
    spans = {
        "minutes": arguments.minutes,
        "bottle_price": arguments.bottle_price,
        "label_price": arguments.label_price,
    }
    changes = {name: span for name, span in spans.items() if span is not None}
    if not changes and not arguments.nothing:
        return _shown(turn, view)
    if not turn.context.role.manages:
        raise NotAllowedError("manager")
    overheads.change(
        turn.context, view.id, {_SLOTS[name][0]: _text(name, span) for name, span in changes.items()}
    )
    again = _shown(turn, view)
    return Reply(again.blocks, ((undo_button(turn),), *again.buttons))


def _text(name: str, span: Span) -> str:
    """Write a number or range as stored in a setting."""
    most = _SLOTS[name][2]
    if not 0 <= span.low <= span.high <= most:
        raise Say(reply(_("A number from {least} to {most}, please.").format(least=0, most=most)))
    return str(span.low) if span.low == span.high else f"{span.low} {span.high}"


def _shown(turn: Turn, view: FormulaView) -> Reply:
    settings = turn.context.bar.settings
    own = overheads.own(settings, view.id)
    rows = []
    for field, word, _most in _SLOTS.values():
        ends = ends_of(overheads.said(settings, view.id, field))
        if ends is None:
            value = _("not set")
        else:
            minutes = _("{minutes} min").format(minutes=show_range(*ends))
            value = minutes if field == "batch_minutes" else money_range(ends)
        rows.append((_(word) + (" *" if field in own else ""), value))
    lines = [_("As the bar's settings say. Its own: making {name} 15-20 min, bottle 1.20")]
    if own:
        lines = [_("* its own. As the bar has it again: making {name} none")]
    first = _("Making {name}, beside ingredients").format(name=view.name)
    more = Button(_("Fresh against spray"), f"cost #{view.id}.{view.version} more")
    return Reply(
        (Text(first, strong=True), Grid(tuple(rows)), *(Text(line.format(name=view.name)) for line in lines)),
        ((more,),),
    )


COMMANDS = (
    Command(
        "making",
        N_("minutes, bottle and label of one formula, where they are its own"),
        _making,
        words=("making of", "labour", "labour of"),
        examples=(N_("making grapefruit mist 15-20 min, bottle 1.20"),),
        slots=(FORMULA_SLOT, *(Slot(name, plain(Span)) for name in _SLOTS), Slot("nothing", said)),
        writes=True,
        wishes=(Wish("making", ("{formula?} {minutes}", "{formula?}")),),
    ),
)
