"""Deep links: a joining code, or the symbol on a bottle's label."""

from __future__ import annotations

import re
from dataclasses import replace

from bot.chat.dialogue.rights import private_only
from bot.chat.dialogue.slots import Given, Question
from bot.chat.dialogue.turn import Turn
from bot.chat.features.batches.batch_card import card
from bot.chat.i18n.language import _, speaking
from bot.chat.i18n.locale_choice import tongue_of
from bot.chat.reply.message import Button, Reply, Text, reply
from bot.work.batches import batches
from bot.work.errors import BadValueError, NotThereError
from bot.work.people import invites, people

_SCANNED = re.compile(r"^b_(\d{1,12})_(\d{1,12})$", re.ASCII)


def main_buttons() -> tuple[tuple[Button, ...], ...]:
    """Return the buttons for the nightly work."""
    return (
        (Button(_("Log waste"), "waste"), Button(_("Batches"), "batches")),
        (Button(_("Scale"), "scale"), Button(_("Cost"), "cost"), Button(_("Week"), "week")),
        (Button(_("Help"), "help"),),
    )


# -- joining ----------------------------------------------------------------------------


def ask_code(turn: Turn, given: Given) -> Question:
    """Ask for a joining code."""
    return Question(_("What is the joining code? A manager of the bar makes one with /team."), hint=_("Code"))


def join(turn: Turn, said: str) -> Reply:
    """Admit a person by a code, in a private chat only: everyone in a group could read it."""
    if not turn.message.place.private:
        return private_only(turn)
    code = said.removeprefix("join_").replace("_", "-")
    name = turn.message.sender.name
    try:
        bar = invites.join(turn.unit, turn.presence, code, name, True, turn.clock.now())
    except BadValueError:
        return reply(
            _("That joining code does not work: it may have been used, or its time may be over."),
            _("Ask a manager for a new one."),
        )
    return reply(
        _("Welcome to {bar}.").format(bar=bar.name),
        _("You can scale, make batches and log waste here."),
        buttons=main_buttons(),
    )


# -- scanned labels -----------------------------------------------------------------------


def is_scan(code: str) -> bool:
    """Whether a start code comes from a label."""
    return code.startswith("b_")


def scan(turn: Turn, code: str) -> Reply:
    """Show the batch of a scanned label to a member of its bar; other people get no information."""
    found = _SCANNED.match(code)
    presence = None if found is None else _presence_in(turn, int(found[1]))
    nothing = reply(_("I can show that label's batch only to members of its bar."))
    if found is None or presence is None or presence.bar is None:
        return nothing
    with speaking(tongue_of(presence, turn.clock.now())):
        there = replace(turn, presence=presence)
        try:
            shown = card(there, batches.get(there.context, int(found[2])))
        except NotThereError:
            return reply(_("There is no batch {number} here any more.").format(number=found[2]))
        if turn.presence.bar is None or turn.presence.bar.id != presence.bar.id:
            moved = Text(_("You are now at {bar}.").format(bar=presence.bar.name))
            return replace(shown, blocks=(*shown.blocks, moved))
        return shown


def _presence_in(turn: Turn, bar_id: int) -> people.Presence | None:
    """Return the person's presence in this bar, whatever their current bar; None for non-members."""
    bar = turn.presence.bar
    if bar is not None and bar.id == bar_id:
        return turn.presence
    if not turn.message.place.private:
        return None
    return people.switch(turn.unit, turn.presence, bar_id)
