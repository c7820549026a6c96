"""Help with a few example lines, adapted to the bar's own names."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction

from bot.chat.dialogue.command import Command
from bot.chat.dialogue.examples import example_of, first_formula, usual_fruit
from bot.chat.dialogue.registry import command_at_start
from bot.chat.dialogue.slots import columns
from bot.chat.dialogue.turn import Turn
from bot.chat.features.help import search, subjects
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
        "\n".join((*_lines(turn, view), _("More on anything: help labels, help how do I waste"))),
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


def help_with(turn: Turn, asked: str) -> Reply | None:
    """Return the help on a subject, a command or a question; None if no command is about it."""
    if asked.casefold() in {_ALL, _(_ALL)}:
        return subjects.everything()
    command = _command_named(asked)
    if command is not None:
        return _help_on(turn, command, [])
    subject = subjects.subject_named(asked)
    if subject is not None:
        return subjects.subject_page(*subject)
    found = search.commands_about(asked)
    return _help_on(turn, found[0], found[1:]) if found else None


def _command_named(asked: str) -> Command | None:
    found = command_at_start(asked.lstrip("/"))
    return found[0] if found is not None and not found[1].strip() else None


def _help_on(turn: Turn, command: Command, near: Sequence[Command]) -> Reply:
    others = [(subjects.typed(one), f"help {one.name}") for one in near]
    return reply(
        f"{subjects.typed(command)}: {_(command.summary)}",
        *(example_of(turn, _(example)) for example in command.examples),
        buttons=(*(tuple(Button(*one) for one in row) for row in columns(others, 3)), *_ways(command)),
    )


def _ways(command: Command) -> tuple[tuple[Button, ...], ...]:
    if command.name == "help":
        return ()
    steps = (Button(_("Step by step"), command.name),) if command.slots else ()
    subject = subjects.subject_of(command)
    return ((*steps, Button(_(subject), subjects.line_of(subject))), (Button(_("Everything"), "help all"),))
