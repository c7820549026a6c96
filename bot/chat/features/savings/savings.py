"""Since when a garnish is sprayed instead of cut."""

from __future__ import annotations

from datetime import date, timedelta

from bot.chat.dialogue.command import Command
from bot.chat.dialogue.fruit_input import accept_fruit
from bot.chat.dialogue.shared_slots import never, undo_button
from bot.chat.dialogue.slots import Question, Slot, columns
from bot.chat.dialogue.turn import Given, Say, Turn
from bot.chat.grammar.syntax import Day
from bot.chat.i18n.language import _, show_full_day
from bot.chat.reply.message import Button, Grid, Reply, Text, reply
from bot.trade.days import business_day
from bot.trade.formulas.kinds import IngredientKind
from bot.trade.words import N_
from bot.work.errors import NotAllowedError
from bot.work.formulas import ingredients
from bot.work.savings import savings


def _ask_fruit(turn: Turn, given: Given) -> Question:
    own = ingredients.all_of(turn.context, IngredientKind.FRUIT)
    return Question(_("Which fruit's garnish?"), columns([(one.name, f"#{one.id}") for one in own[:8]], 2))


def _ask_day(turn: Turn, given: Given) -> Question:
    return Question(_("Sprayed since which day? Such as 2026-10-20"), hint="2026-10-20")


def _accept_day(turn: Turn, given: Given, value: Day) -> date:
    bar = turn.context.bar
    today = business_day(turn.context.now, bar.zone, bar.closing_minute)
    if value.date is None:
        return today - timedelta(days=int(value.days_ago))
    try:
        day = date.fromisoformat(value.date)
    except ValueError:
        raise Say(reply(_("There is no day {day}.").format(day=value.date))) from None
    if day > today:
        raise Say(reply(_("{day} is yet to come.").format(day=show_full_day(day))))
    return day


def _spraying(turn: Turn, given: Given) -> Reply:
    if "fruit" in given and ("day" in given or "nothing" in given):
        if not turn.context.role.manages:
            raise NotAllowedError("manager")
        found = savings.set_since(turn.context, given["fruit"].id, given.get("day"))
        name = given["fruit"].name
        if found is None:
            return reply(
                _("{name}: not sprayed, so there is no before and after.").format(name=name),
                buttons=((undo_button(turn),),),
            )
        return reply(
            _("{name}: sprayed since {day}.").format(name=name, day=show_full_day(found.day)),
            _("/week sets its waste against the twelve weeks before."),
            buttons=((undo_button(turn), Button(_("Week"), "week")),),
        )
    known = savings.starts(turn.context)
    if "fruit" in given:
        known = [one for one in known if one.fruit.id == given["fruit"].id]
    if not known:
        return reply(
            _("No garnish is sprayed yet, as far as I know."),
            _("The first batch of a formula that replaces it counts."),
            _("Or say it: spraying orange since 2026-10-20"),
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
        N_("since when a garnish is sprayed, for before and after"),
        _spraying,
        examples=(N_("spraying orange since 2026-10-20"),),
        slots=(
            Slot("fruit", _ask_fruit, never, accept_fruit),
            Slot("day", _ask_day, never, _accept_day),
            Slot("nothing", _ask_day, never),
        ),
        writes=True,
    ),
)
