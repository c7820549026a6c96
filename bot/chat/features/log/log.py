"""The command log: entries with their authors, undos and corrections."""

from __future__ import annotations

from dataclasses import dataclass

from bot.chat.dialogue.arguments import Arguments
from bot.chat.dialogue.command import Command
from bot.chat.dialogue.inputs.shared_slots import NUMBER_SLOT
from bot.chat.dialogue.turn import Turn
from bot.chat.features.log.entries import entry_words
from bot.chat.features.people.team import shown_name
from bot.chat.i18n.language import _, show_moment
from bot.chat.reply.message import Button, Reply, Text, reply
from bot.trade.words import N_
from bot.work.log import chain, history
from bot.work.log.history import LogLine

# Kinds whose words say already which entry they follow.
_NAMES_IT = frozenset({chain.UNDO, chain.PUT_BACK, chain.REASON})


def _marked(line: LogLine, units: str) -> str:
    text = _("#{number} {when}, {who}: {what}").format(
        number=line.number, when=show_moment(line.at), who=shown_name(line.by), what=entry_words(line, units)
    )
    if line.follows is not None and line.what not in _NAMES_IT:
        text += " " + _("(instead of #{number})").format(number=line.follows[0])
    if line.followed is not None and line.what != chain.UNDO:
        number, what = line.followed
        mark = _("(undone by #{number})") if what == chain.UNDO else _("(now #{number})")
        text += " " + mark.format(number=number)
    return text


@dataclass(frozen=True, kw_only=True)
class LogArguments(Arguments):
    """An entry; the page shows older ones, or the newest without it."""

    number: int | None = None


def _log(turn: Turn, arguments: LogArguments) -> Reply:
    before = arguments.number
    found = history.page(turn.context, before)
    if not found.lines:
        return reply(_("Nothing is logged before that."), buttons=((Button(_("Newest"), "log"),),))
    units = turn.context.bar.units
    first = _("Log of {bar}, newest first").format(bar=turn.context.bar.name)
    if before is not None:
        first = _("Log of {bar}, before #{number}").format(bar=turn.context.bar.name, number=before)
    undoable = [one for one in found.lines if one.undoable][:3]
    rows = [
        tuple(Button(_("Undo #{number}").format(number=one.number), f"undo {one.number}") for one in undoable)
    ]
    move = [Button(_("Older"), f"log {found.older}")] if found.older is not None else []
    if before is not None:
        move.append(Button(_("Newest"), "log"))
    rows.append(tuple(move))
    return Reply(
        (Text(first, strong=True), Text("\n".join(_marked(one, units) for one in found.lines))),
        tuple(row for row in rows if row),
        edits=turn.message.tapped is not None and before is not None,
    )


COMMANDS = (
    Command(
        "log",
        N_("who did what, and what was undone"),
        _log,
        words=("history", "audit", "who did what"),
        examples=(N_("log"), N_("log 120")),
        slots=(NUMBER_SLOT,),
        menu=72,
    ),
)
