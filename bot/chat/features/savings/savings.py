"""The command for the day from which a garnish is sprayed instead of cut."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date

from bot.chat.dialogue.arguments import Arguments
from bot.chat.dialogue.command import Command, Wish
from bot.chat.dialogue.examples import example_of, first_formula
from bot.chat.dialogue.inputs.day import accept_past_day
from bot.chat.dialogue.inputs.fruit import accept_fruit
from bot.chat.dialogue.inputs.shared_slots import undo_button
from bot.chat.dialogue.slots import Slot, said
from bot.chat.dialogue.turn import Turn
from bot.chat.i18n.language import _, show_full_day
from bot.chat.reply.message import Button, Grid, Reply, Text, reply
from bot.trade.words import N_
from bot.work.errors import NotAllowedError
from bot.work.formulas.ingredients import IngredientView
from bot.work.savings import savings


@dataclass(frozen=True, kw_only=True)
class SprayingArguments(Arguments):
    """A fruit and the first day of spraying its garnish; `nothing` means that it is not sprayed."""

    fruit: IngredientView | None = None
    day: date | None = None
    nothing: bool = False


def _spraying(turn: Turn, arguments: SprayingArguments) -> Reply:
    fruit, day = arguments.fruit, arguments.day
    if fruit is not None and (day is not None or arguments.nothing):
        if not turn.context.role.manages:
            raise NotAllowedError("manager")
        found = savings.set_since(turn.context, fruit.id, day)
        name = fruit.name
        if found is None:
            return reply(
                _("{name}: not sprayed, so there is no before and after.").format(name=name),
                buttons=((undo_button(turn),),),
            )
        return reply(
            _("{name}: sprayed since {day}.").format(name=name, day=show_full_day(found.day)),
            _("/week compares its waste with the twelve weeks before."),
            buttons=((undo_button(turn), Button(_("Week"), "week")),),
        )
    known = savings.starts(turn.context)
    if fruit is not None:
        known = [one for one in known if one.fruit.id == fruit.id]
    if not known:
        return reply(
            _("No garnish is sprayed yet, as far as I know."),
            _("The first batch of a formula that replaces it counts."),
            example_of(turn, _("Or say it: spraying orange since 2026-10-20"), first_formula(turn)),
        )
    rows = [
        (one.fruit.name, show_full_day(one.day), _("as said") if one.said else _("first opened"))
        for one in known
    ]
    return Reply(
        (
            Text(_("Sprayed instead of cut, since"), strong=True),
            Grid(tuple(rows)),
            Text(_("Another day: spraying {name} since 2026-10-20").format(name=known[0].fruit.name)),
        )
    )


COMMANDS = (
    Command(
        "spraying",
        N_("when you started spraying a garnish, to compare"),
        _spraying,
        examples=(N_("spraying orange since 2026-10-20"),),
        slots=(
            Slot("fruit", accept_fruit),
            Slot("day", accept_past_day),
            Slot("nothing", said),
        ),
        writes=True,
        wishes=(
            Wish("spraying", ("{fruit} SINCE {day}",)),
            Wish("spraying", ("{fruit?}",), shows=True),
        ),
    ),
)
