"""Corrections by an edited message: log the new words in the place of the old ones."""

from __future__ import annotations

from dataclasses import replace

from bot.chat.dialogue.inputs.settling import in_place
from bot.chat.dialogue.turn import Say, Turn
from bot.chat.i18n.language import _, show_time
from bot.chat.intent.intent import Intent, Several
from bot.chat.reply.message import Button, Reply, Text, reply
from bot.work.log.edits import Earlier, Edit, marks_of


def begin(turn: Turn, earlier: Earlier, instead: Intent) -> Edit:
    """Undo what the message logged before and its new words do not say any more.

    Raises Say where nothing of it stands or where it is no such thing.
    """
    if not earlier.standing:
        if earlier.undone is None:
            raise Say(reply(_("Editing can't change that. Nothing changed.")))
        undone = earlier.undone.last
        raise Say(
            reply(
                _("What that message logged was undone at {time}.").format(time=show_time(undone.at)),
                _("Send it as a new message to log it."),
                buttons=((Button(_("Put it back"), f"undo {undone.id}"),),),
            )
        )
    return Edit(turn.context, earlier, marks(instead))


def marks(intent: Intent) -> list[str]:
    """Return the marks of the lines of a message that are commands of their own."""
    if isinstance(intent, Several):
        return marks_of([one.line for one in intent.commands])
    return marks_of([intent.line])


def stays(turn: Turn, mark: str) -> bool:
    """Whether a line of an edited message is as it was, so that what it logged stays.

    From here on the mark is kept with what is logged.
    """
    if turn.presence.bar is None:
        return False
    turn.context.said = mark
    return turn.context.replaced is not None and mark in turn.context.replaced.kept


def refused(said: list[Reply], earlier: Earlier, late: bool) -> list[Reply]:
    """Say that nothing changed, and why; what is not too late to undo is one tap away.

    What the other buttons log stands in the place of the old entries.
    """
    if not earlier.standing or late:
        return said
    undo = Button(_("Undo"), f"undo {earlier.standing[-1].last.id}")
    first = in_place(said[0], earlier.standing)
    first = replace(first, blocks=(*first.blocks, Text(_("Nothing changed."))), edits=False)
    return [first.with_buttons((undo,)), *said[1:]]
