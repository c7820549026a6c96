"""Corrections by an edited message: undo the entries of the first wording, and log the new ones."""

from __future__ import annotations

from dataclasses import replace

from bot.chat.dialogue.turn import Say, Turn
from bot.chat.i18n.language import _
from bot.chat.reply.message import Button, Reply, Text, reply
from bot.work.log import corrections
from bot.work.log.corrections import Earlier


def begin(turn: Turn, earlier: Earlier) -> None:
    """Undo the entries of the message, so that its new wording can be logged.

    Raises Say if every entry is already undone or none can be corrected.
    """
    if not earlier.standing:
        if earlier.undone:
            raise Say(reply(_("What that message logged was taken back before. Write it anew to log it.")))
        raise Say(reply(_("Editing cannot change that. The log stays as it was.")))
    corrections.take_back(turn.context, earlier)


def finish(turn: Turn, earlier: Earlier, replies: list[Reply]) -> list[Reply]:
    """Confirm the replacement of the earlier entry. Raises Say if the new words logged nothing."""
    if not corrections.has_logged(turn.context):
        raise Say(reply(_("The new words log nothing.")))
    first = min(earlier.standing)
    note = Text(_("Corrected: this stands in place of entry #{number}.").format(number=first))
    return [replace(replies[0], blocks=(*replies[0].blocks, note)), *replies[1:]]


def refused(said: list[Reply], earlier: Earlier, late: bool) -> list[Reply]:
    """Say that the log is unchanged, and why, with an undo button for recent entries."""
    if not earlier.standing or late:
        return said
    stays = Text(_("So the log stays as it was."))
    undo = Button(_("Take it back"), f"undo {max(earlier.standing)}")
    first = replace(said[0], blocks=(*said[0].blocks, stays), edits=False)
    return [first.with_buttons((undo,)), *said[1:]]
