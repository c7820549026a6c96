"""Word log entries: in the log, and after an undo."""

from __future__ import annotations

from bot.chat.dialogue.log_words import LogWords, photos_mark
from bot.chat.dialogue.registry import all_log_words
from bot.chat.dialogue.turn import Turn
from bot.chat.features.people.team import shown_name
from bot.chat.i18n.language import _
from bot.chat.reply.message import Button, Reply, reply
from bot.work.log import chain, history
from bot.work.log.chain import Change, State
from bot.work.log.history import LogLine


class _Values(dict[str, object]):
    """Placeholders for a sentence; a value missing in an old entry is shown as a dash."""

    def __missing__(self, key: str) -> str:
        return "–"


def entry_words(line: LogLine, units: str) -> str:
    """Return one entry as a sentence."""
    words = all_log_words().get(line.kind)
    if words is None:
        return line.kind
    text = _(words.done).format_map(_values(line, units, words))
    if line.details.get("photo"):
        text += " " + photos_mark(len(line.details["photo"].split()))
    return _("put back: {what}").format(what=text) if line.what == chain.PUT_BACK else text


def _values(line: LogLine, units: str, words: LogWords) -> _Values:
    name = line.name or line.details.get("name")
    number = "–" if line.follows is None else line.follows[0]
    values = _Values(line.details, number=number, **words.values(line, units))
    if name:
        values["name"] = shown_name(str(name))
    return values


def thing_words(turn: Turn, found: State) -> str:
    """Return what a chain says or said as a thing: '7 oranges, mouldy'."""
    words, units = all_log_words()[found.what], turn.context.bar.units
    return _(words.thing).format_map(_values(history.said_by(turn.context, found), units, words))


def change_reply(turn: Turn, change: Change) -> Reply:
    """Say what was undone or put back, and what is in force now."""
    after = change.after
    said = _("Put back: {thing}") if after.stands else _("Undone: {thing}")
    label = _("Undo") if after.stands else _("Put it back")
    can = after.stands or after.kind.put_back is not None
    now = all_log_words()[after.what].now
    return reply(
        said.format(thing=thing_words(turn, change.before)),
        *([] if now is None else now(turn, after)),
        buttons=((Button(label, f"undo {change.entry}"),),) if can else (),
    )
