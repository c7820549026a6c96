"""Check permissions, and word the refusals."""

from __future__ import annotations

from bot.chat.dialogue.command import Command
from bot.chat.dialogue.turn import Turn
from bot.chat.i18n.language import _
from bot.chat.reply.message import Button, Reply, reply
from bot.work.people import people


def stranger(turn: Turn) -> Reply:
    """Answer a person without a bar: only the ways to open or join one."""
    if not turn.message.place.private:
        return reply(
            _("This chat belongs to no bar that you are in."),
            _("Ask a manager for a joining code, or write to me in a private chat."),
        )
    others = people.bars_of(turn.unit, turn.presence) if turn.presence.person_id is not None else []
    if others:
        return reply(
            _("You stand in no bar now. Choose one of yours."),
            buttons=tuple((Button(one.name, f"bars {one.id}"),) for one in others),
        )
    return reply(
        _("You are not in a bar yet."),
        _("Open your own, or join one with the code a manager gives you: join CODE"),
        buttons=((Button(_("Open a bar"), "start"), Button(_("Join with a code"), "join")),),
    )


def private_only(turn: Turn) -> Reply:
    """Say that this is only for a private chat."""
    link = [] if turn.deep_link is None else [turn.deep_link("start")]
    return reply(_("Not here: write that to me in our private chat."), *link)


def barred(turn: Turn, command: Command) -> Reply | None:
    """Return the refusal of a command for this person here, or None if it is allowed."""
    if command.private_only and not turn.message.place.private:
        return private_only(turn)
    if command.anyone:
        return None
    if turn.presence.bar is None:
        return stranger(turn)
    if command.manages and not turn.context.role.manages:
        return reply(_("Only a manager can do that. Ask one to do it, or to make you a manager."))
    return None
