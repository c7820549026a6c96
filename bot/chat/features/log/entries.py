"""An entry of the log in words."""

from __future__ import annotations

from bot.chat.features.fruit.waste import piece_words
from bot.chat.features.money.prices import pack_words
from bot.chat.features.people.team import ROLE_WORDS, shown_name
from bot.chat.i18n.language import _
from bot.chat.i18n.setting_names import SETTINGS, settings_changed
from bot.trade.words import N_
from bot.work.context import Role
from bot.work.fruit.waste import WasteView
from bot.work.log.history import LogLine

WHAT = {
    "waste": N_("waste, {lines}"),
    "waste reason": N_("gave a reason, {lines}"),
    "price": N_("price of {name}, {price}"),
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
    "drinks": N_("counted {count} drinks"),
    "sprayer": N_("named sprayer {name}"),
    "weighing": N_("weighed sprayer {name}"),
    "use sprayer": N_("chose the sprayer of {name}"),
    "retire sprayer": N_("put sprayer {name} away"),
    "trial": N_("began trial {trial}, {name}"),
    "trial variant": N_("added a variant to trial {trial}"),
    "trial batches": N_("made the small batches of trial {trial}"),
    "trial key": N_("opened the key of trial {trial}"),
    "taste": N_("scored {code}"),
    "close trial": N_("closed trial {trial}"),
    "promote": N_("promoted a variant of {name}"),
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
        keys = settings_changed(line.details.get("before", {}), line.details.get("after", {}))
        values["settings"] = ", ".join(_(SETTINGS[key][0]) for key in keys)
    if line.price is not None:
        values["price"] = pack_words(line.price)
    values["undo_of"] = line.undo_of or "–"
    values["lines"] = ", ".join(_wasted(one, units) for one in line.wasted)
    text = _(WHAT[line.what]).format_map(values) if line.what in WHAT else _(line.what)
    return text + " " + _("[photo]") if line.details.get("photo") else text


def _wasted(one: WasteView, units: str) -> str:
    reason = f" {_(one.reason)}" if one.reason else ""
    return f"{piece_words(one, units)}{reason}"
