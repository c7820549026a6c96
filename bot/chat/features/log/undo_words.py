"""What was taken back, in words."""

from __future__ import annotations

from bot.chat.dialogue.turn import Turn
from bot.chat.features.log.entries import entry_words
from bot.chat.features.people.setting_pages import setting_line, shown
from bot.chat.i18n.language import _, ngettext, show_number
from bot.chat.i18n.setting_names import settings_changed
from bot.chat.reply.message import Reply, reply
from bot.trade.words import N_
from bot.work.log import history
from bot.work.log.undo import TakenBack

_WORDS = {
    "waste": N_("The waste is taken back."),
    "waste reason": N_("The reason is taken back."),
    "price": N_("The price is taken back: the one before is in force again."),
    "batch": N_("Batch {batch} is taken back, as if never made."),
    "check": N_("The check of batch {batch} is taken back."),
    "open batch": N_("Batch {batch} is not open any more."),
    "use up": N_("Batch {batch} is not used up any more."),
    "discard": N_("Batch {batch} is not discarded any more."),
    "lot": N_("The lot noted for batch {batch} is taken back."),
    "formula": N_("{name} is put away again."),
    "change formula": N_("{name} is as it was before the change, as a new version."),
    "rename formula": N_("{before} has its old name back."),
    "archive formula": N_("{name} is back in the book."),
    "restore formula": N_("{name} is put away again."),
    "strength": N_("{name} has the strength it had before."),
    "opened": N_("{name}: what was noted of its bottle before is in force again."),
    "sprayer": N_("Sprayer {name} is put away again."),
    "weighing": N_("The weighing of {name} is taken back."),
    "use sprayer": N_("{name} is reckoned by the sprayer it had before."),
    "retire sprayer": N_("Sprayer {name} is back."),
    "food grade": N_("The word on {name}'s food grade is taken back."),
    "density": N_("{name} has the density it had before."),
    "buy stock": N_("What was bought of {name} is taken back, and its price with it."),
    "count stock": N_("The count of {name} is taken back."),
    "peeled": N_("The peeled {name} is taken back."),
    "juiced": N_("The juice of {name} is taken back."),
    "peeled in batch": N_("The peeled {name} is not in batch {batch} any more."),
    "drinks": N_("The count of {count} drinks is taken back."),
    "trial": N_("Trial {trial} is taken back, as if never begun."),
    "trial variant": N_("The variant is out of trial {trial} again."),
    "trial batches": N_("The small batches of trial {trial} are taken back."),
    "taste": N_("Your score of {code} is taken back."),
    "close trial": N_("Trial {trial} goes on."),
    "promote": N_("{name} is as it was before the trial, as a new version, and the trial goes on."),
    "par": N_("{name} has the par it had before."),
    "import": N_("The import of {file} is taken back."),
    "settings": N_("The setting is as it was before."),
}


def worded_undo(turn: Turn, taken: TakenBack) -> Reply:
    """Say what was taken back, and what is in force again."""
    values = {key: value for key, value in taken.details.items() if isinstance(value, str | int)}
    lines = _in_force(turn, taken) if taken.what == "settings" else _was(turn, taken)
    return reply(_(_WORDS[taken.what]).format(**values), *lines, _("The log keeps both entries."))


def _in_force(turn: Turn, taken: TakenBack) -> list[str]:
    """Say what the settings are now that their change is taken back."""
    now = shown(turn.context.bar)
    keys = settings_changed(taken.details["before"], taken.details["after"])
    return [setting_line(key, now, first=True) for key in keys]


def _was(turn: Turn, taken: TakenBack) -> list[str]:
    """Say what the entry was; of an import how much went with it, and what stays since it was used."""
    if taken.what != "import":
        entry = history.line(turn.context, taken.entry)
        return [_("It was: {what}").format(what=entry_words(entry, turn.context.bar.units))]
    count = int(taken.details["count"])
    lines = [
        ngettext("It had brought {count} row.", "It had brought {count} rows.", count).format(
            count=show_number(count, 0)
        )
    ]
    if taken.details.get("kept"):
        lines.append(_("These stay, being in use since: {names}").format(names=taken.details["kept"]))
    return lines
