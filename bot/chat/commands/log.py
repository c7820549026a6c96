"""The log: who did what, what was taken back and what was corrected."""

from __future__ import annotations

from bot.chat.commands.team import ROLE_WORDS, shown_name
from bot.chat.commands.waste import piece_words
from bot.chat.language import _, show_moment
from bot.chat.message import Button, Reply, Text, reply
from bot.chat.settings_words import SETTINGS
from bot.chat.talk import Command, Given, Talk
from bot.trade.words import N_
from bot.work import history
from bot.work.desk import Role
from bot.work.history import LogLine
from bot.work.waste import WasteView

_WHAT = {
    "waste": N_("waste, {lines}"),
    "waste reason": N_("gave a reason, {lines}"),
    "price": N_("price of {name}"),
    "batch": N_("made batch {batch}, {name}"),
    "check": N_("checked batch {batch}"),
    "open batch": N_("opened batch {batch}"),
    "use up": N_("batch {batch} used up"),
    "discard": N_("discarded batch {batch}"),
    "lot": N_("noted a lot for batch {batch}"),
    "formula": N_("wrote down {name}"),
    "change formula": N_("changed {name}"),
    "rename formula": N_("renamed {before} to {name}"),
    "archive formula": N_("put {name} away"),
    "restore formula": N_("brought {name} back"),
    "strength": N_("strength of {name}"),
    "density": N_("density of {name}"),
    "food grade": N_("food grade of {name}"),
    "ingredient kind": N_("kind of {name}"),
    "settings": N_("settings: {settings}"),
    "invite": N_("made a joining code"),
    "remove member": N_("took {name} out of the bar"),
    "leave": N_("left the bar"),
    "role": N_("made {name} {role}"),
    "owner": N_("made {name} the owner"),
    "forget": N_("forgot a member's name"),
    "team chat": N_("made a group the bar's own chat"),
    "delete bar": N_("set the bar to be deleted"),
    "keep bar": N_("kept the bar after all"),
    "undo": N_("took back #{undo_of}"),
    "buy stock": N_("bought {name}"),
    "count stock": N_("counted {name}"),
    "par": N_("set the par of {name}"),
    "peeled": N_("peeled {name}"),
    "juiced": N_("juiced {name}"),
    "peeled in batch": N_("put peeled {name} into batch {batch}"),
    "opened": N_("opened {name}"),
    "import": N_("took in {file}"),
}


class _Values(dict[str, object]):
    """Values for a wording; what an old entry lacks is shown as a dash."""

    def __missing__(self, key: str) -> str:
        return "–"


def entry_words(line: LogLine, units: str) -> str:
    """Say what one entry was."""
    values = _Values(
        {key: value for key, value in line.details.items() if isinstance(value, str | int | float)}
    )
    if line.name:
        values["name"] = line.name
    if "name" in values:
        values["name"] = shown_name(str(values["name"]))
    if line.what in {"role", "invite"} and "role" in values:
        values["role"] = _(ROLE_WORDS[Role(str(values["role"]))])
    if line.what == "settings":
        keys = [_(SETTINGS[key][0]) if key in SETTINGS else key for key in line.details.get("after", {})]
        values["settings"] = ", ".join(keys)
    values["undo_of"] = line.undo_of or "–"
    values["lines"] = ", ".join(_wasted(one, units) for one in line.wasted)
    text = _(_WHAT[line.what]).format_map(values) if line.what in _WHAT else _(line.what)
    return text + " " + _("[photo]") if line.details.get("photo") else text


def _wasted(one: WasteView, units: str) -> str:
    reason = f" {_(one.reason)}" if one.reason else ""
    return f"{piece_words(one, units)}{reason}"


def _marked(line: LogLine, units: str) -> str:
    text = _("#{number} {when}, {who}: {what}").format(
        number=line.number, when=show_moment(line.at), who=shown_name(line.by), what=entry_words(line, units)
    )
    if line.corrects is not None:
        text += " " + _("(in place of #{number})").format(number=line.corrects)
    if line.undone_by is not None:
        text += " " + _("(taken back by #{number})").format(number=line.undone_by)
    return text


def _log(talk: Talk, given: Given) -> Reply:
    before = int(given.rest[0]) if given.rest else None  # type: ignore[call-overload]
    found = history.page(talk.desk, before)
    if not found.lines:
        return reply(_("Nothing is logged before that."), buttons=((Button(_("Newest"), "log"),),))
    units = talk.desk.bar.units
    first = _("Log of {bar}, newest first").format(bar=talk.desk.bar.name)
    if before is not None:
        first = _("Log of {bar}, before #{number}").format(bar=talk.desk.bar.name, number=before)
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
        edits=talk.message.tapped is not None and before is not None,
    )


COMMANDS = (
    Command(
        "log",
        N_("who did what, and what was taken back"),
        _log,
        words=("history", "audit", "who did what"),
        examples=(N_("log"), N_("log 120")),
        menu=72,
    ),
)
