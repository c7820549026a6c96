"""Help with a few example lines, adapted to the bar's own names."""

from __future__ import annotations

from fractions import Fraction

from bot.chat.dialogue.command import Command
from bot.chat.dialogue.examples import example_of, first_formula, usual_fruit
from bot.chat.dialogue.registry import all_commands, command_at_start, slash_word
from bot.chat.dialogue.turn import Turn
from bot.chat.i18n.language import _
from bot.chat.i18n.plurals import counted_name
from bot.chat.reply.message import Button, Reply, reply
from bot.trade.words import N_
from bot.work.formulas import scaling
from bot.work.formulas.formulas import FormulaView

_ALL = N_("all")
_PIECES = 6


def general_help(turn: Turn) -> Reply:
    """Return the first lines to type, in about five lines."""
    if turn.presence.bar is None:
        return reply(
            _("I keep a bar's own preparations: amounts, cost, batches, reminders and fruit waste."),
            _("Open a bar with start, or join one with: join CODE"),
            buttons=((Button(_("Open a bar"), "start"), Button(_("Join with a code"), "join")),),
        )
    view = first_formula(turn)
    return reply(
        _("Say what you want to do, with or without the slash:"),
        "\n".join((*_lines(turn, view), _("help waste: more on one thing. help all: everything."))),
        buttons=(
            (Button(_("Log waste"), "waste"), _make_button(view)),
            (Button(_("Everything"), "help all"), Button(_("Handling cautions"), "cautions")),
        ),
    )


def _make_button(view: FormulaView | None) -> Button:
    return Button(_("Add a formula"), "new formula") if view is None else Button(_("Scale"), "scale")


def _lines(turn: Turn, view: FormulaView | None) -> list[str]:
    reason = _(turn.context.bar.settings.reasons[0])
    pieces = counted_name(usual_fruit(turn), Fraction(_PIECES))
    lines = [
        _("waste {count} {fruit} {reason}").format(count=_PIECES, fruit=pieces, reason=reason),
    ]
    if view is None:
        lines.append(_("new formula: write down the first thing you make"))
        lines.append(_("price {fruit} 0.60 each, 5 garnishes each").format(fruit=pieces))
    else:
        size = _size(turn, view)
        lines.append(_("scale {formula} to {size}").format(formula=view.name, size=size))
        lines.append(_("batch {formula} to {size}").format(formula=view.name, size=size))
        lines.append(_("cost {formula}").format(formula=view.name))
    lines.append(_("week: what was thrown out and what it cost"))
    return lines


def _size(turn: Turn, view: FormulaView) -> str:
    if turn.context.bar.units == "metric":
        return "8 x 50 ml" if scaling.is_sprayed(view) else "500 ml"
    return "8 x 2 oz" if scaling.is_sprayed(view) else "16 oz"


def everything(turn: Turn) -> Reply:
    """Return every command of the menu with its purpose."""
    menu = sorted((one for one in all_commands().values() if one.menu), key=lambda one: one.menu)
    return reply(
        _("All I can do, with or without the slash:"),
        "\n".join(f"/{slash_word(one)}: {_(one.summary)}" for one in menu),
        _("More on one of them: help scale"),
    )


def help_with(turn: Turn, asked: str) -> Reply | None:
    """Return the help on one command, or None if there is none of that name."""
    if asked.casefold() in {_ALL, _(_ALL)}:
        return everything(turn)
    found = command_at_start(asked.lstrip("/"))
    if found is None:
        return None
    command = found[0]
    return reply(
        f"/{slash_word(command)}: {_(command.summary)}",
        *(example_of(turn, _(example)) for example in command.examples),
        buttons=_ways(command),
    )


def _ways(command: Command) -> tuple[tuple[Button, ...], ...]:
    if command.name == "help":
        return ()
    steps = (Button(_("Step by step"), command.name),) if command.slots else ()
    return ((*steps, Button(_("Everything"), "help all")),)
