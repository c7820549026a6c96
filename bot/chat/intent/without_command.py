"""Answers to wishes that no command serves: what exists instead."""

from __future__ import annotations

from collections.abc import Callable
from typing import Final

from bot.chat.dialogue.turn import Turn
from bot.chat.i18n.language import _
from bot.chat.reply.message import Button, Reply, reply


def _thanks(turn: Turn) -> Reply:
    return reply(_("You are welcome."))


def _remind(turn: Turn) -> Reply:
    return reply(
        _("I can't set your own reminders yet."),
        _("I write by myself when a batch has rested, is near its last day, or stock runs low."),
        buttons=((Button(_("Batches"), "batches"), Button(_("Hours and reminders"), "bar hours")),),
    )


def _today(turn: Turn) -> Reply:
    return reply(
        _("These show what is due:"),
        buttons=(
            (Button(_("Batches"), "batches"), Button(_("What to make next"), "plan")),
            (Button(_("Shopping list"), "shopping"), Button(_("Peeled fruit"), "peeled")),
        ),
    )


WITHOUT_COMMAND: Final[dict[str, Callable[[Turn], Reply]]] = {
    "thanks": _thanks,
    "remind": _remind,
    "today": _today,
}
