"""The wordings that a bar has confirmed: the page of them, and the command that forgets one."""

from __future__ import annotations

import re
from dataclasses import dataclass

from bot.chat.dialogue.arguments import Arguments
from bot.chat.dialogue.command import Command
from bot.chat.dialogue.inputs.shared_slots import NUMBER_SLOT
from bot.chat.dialogue.registry import all_commands, words_of
from bot.chat.dialogue.turn import Turn
from bot.chat.i18n.language import _, tongue
from bot.chat.reply.message import Button, Reply, reply
from bot.trade.words import N_
from bot.work.people import wordings
from bot.work.people.wordings import WordingView

PAGE = "wordings"
_MOST = 8
_KIND = re.compile(r"<(\w+)>")
_KINDS = {
    "number": N_("number"),
    "unit": N_("unit"),
    "fruit": N_("fruit"),
    "formula": N_("formula"),
    "ingredient": N_("ingredient"),
    "person": N_("person"),
    "reason": N_("reason"),
    "day": N_("day"),
    "week": N_("week"),
    "month": N_("month"),
    "time": N_("time"),
    "money": N_("money"),
}


def wordings_page(turn: Turn) -> Reply:
    """Return the newest wordings, each with a button that forgets it."""
    known = wordings.known(turn.context)
    if not known:
        return reply(
            _("No wordings confirmed yet."),
            _("When you tap a line I read from your own words, I remember how you said it."),
        )
    newest = known[-_MOST:][::-1]
    return reply(
        _("Wordings this bar has confirmed: {count}").format(count=len(known)),
        "\n".join(_line(one) for one in newest),
        buttons=tuple((_forget_button(one),) for one in newest),
    )


def _forget_button(one: WordingView) -> Button:
    return Button(_("Forget {number}").format(number=one.id), f"forget wording {one.id}")


def _line(one: WordingView) -> str:
    said = _KIND.sub(lambda found: f"({_(_KINDS.get(found[1], found[1]))})", one.shape)
    command = all_commands().get(one.wish)
    meaning = one.wish if command is None else words_of(command, tongue().language)[0]
    return _("{number}. “{said}”: {meaning}").format(number=one.id, said=said, meaning=meaning)


@dataclass(frozen=True, kw_only=True)
class ForgetArguments(Arguments):
    """The number of a wording, None for the page of them."""

    number: int | None = None


def _forget(turn: Turn, arguments: ForgetArguments) -> Reply:
    if arguments.number is None:
        return wordings_page(turn)
    gone = wordings.forget(turn.context, arguments.number)
    return reply(
        _("Forgotten: {wording}").format(wording=_line(gone)),
        buttons=((Button(_("Wordings"), f"bar {PAGE}"),),),
    )


COMMANDS = (
    Command(
        "forget wording",
        N_("forget a wording that this bar has confirmed"),
        _forget,
        slots=(NUMBER_SLOT,),
        writes=True,
    ),
)
