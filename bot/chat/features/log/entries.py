"""Word log entries: in the log, and after an undo."""

from __future__ import annotations

from bot.chat.dialogue.registry import all_log_words
from bot.chat.dialogue.turn import Turn
from bot.chat.features.people.team import shown_name
from bot.chat.i18n.language import _
from bot.chat.reply.message import Reply, reply
from bot.work.log import history
from bot.work.log.history import LogLine
from bot.work.log.undo import TakenBack


class _Values(dict[str, object]):
    """Placeholders for a sentence; a value missing in an old entry is shown as a dash."""

    def __missing__(self, key: str) -> str:
        return "–"


def entry_words(line: LogLine, units: str) -> str:
    """Return one entry as a sentence."""
    words = all_log_words().get(line.what)
    if words is None:
        return line.what
    name = line.name or line.details.get("name")
    values = _Values(line.details, undo_of=line.undo_of or "–", **words.values(line, units))
    if name:
        values["name"] = shown_name(str(name))
    text = _(words.done).format_map(values)
    return text + " " + _("[photo]") if line.details.get("photo") else text


def undo_reply(turn: Turn, taken: TakenBack) -> Reply:
    """Describe the undone entry and the current state."""
    words = all_log_words()[taken.what]
    if words.lines is not None:
        lines = words.lines(turn, taken)
    else:
        entry = history.line(turn.context, taken.entry)
        lines = [_("It was: {what}").format(what=entry_words(entry, turn.context.bar.units))]
    return reply(_(words.undone).format(**taken.details), *lines, _("The log keeps both entries."))
