"""Read what refers to the last thing: 'that was 5 not 6', 'and 3 limes', 'same again', 'its clear'."""

from __future__ import annotations

from bot.chat.dialogue.command import Command
from bot.chat.dialogue.inputs.names import is_known
from bot.chat.dialogue.registry import all_commands
from bot.chat.dialogue.state import DialogueState
from bot.chat.dialogue.turn import Turn
from bot.chat.grammar import parser
from bot.chat.grammar.lexer import Noun
from bot.chat.grammar.moments import Moment, split_moment
from bot.chat.grammar.syntax import Filled, names_unknown
from bot.chat.i18n.keywords import keyword_for
from bot.chat.intent.incoming_photo import batch_asked_about
from bot.chat.intent.reading.shown import shown_for_other, shown_for_share
from bot.work.fruit.waste import logged_in
from bot.work.log import thread
from bot.work.reminders import own

OF_LAST = frozenset({"correct", "again"})  # the commands that mean the last thing
# What a correction may consist of: the words of these commands.
_CORRECTED = (
    "waste_cmd",
    "count_cmd",
    "price_cmd",
    "drinks_cmd",
    "clarity_slot",
    "target_slot",
    "waste_amount_slot",
    "share_slot",
)


def as_thread(turn: Turn, text: str) -> tuple[Command, str] | None:
    """Return the command for words about the last thing, or None.

    These are `correct`, `again`, and `check` for the batch that a reminder asked about.
    """
    text = text.strip(" .!¡")
    if turn.presence.bar is None or not text:
        return None
    shown = shown_for_share(turn, text) or shown_for_other(turn, text)
    return shown or _correction(turn, text) or _repetition(turn, text) or _look(turn, text)


def _correction(turn: Turn, text: str) -> tuple[Command, str] | None:
    share = _read(turn, "share_of_it_said", text)
    if share is not None:
        return all_commands()["correct"], share["share"].text
    reason = _reason(turn, text)
    if reason:
        return all_commands()["correct"], reason
    said = _read(turn, "corrected_said", text)
    if said is None or as_other_note(turn, text) is not None:
        return None
    rather, wrongly = said["rather"].text.rstrip(" ,"), said["wrongly"].text if "wrongly" in said else ""
    if (other := _as_other_time(turn, rather)) is not None:
        return other
    if not _corrects(turn, rather) or (wrongly and not _corrects(turn, wrongly)):
        return None
    return all_commands()["correct"], f"{rather} {keyword_for('NOT')} {wrongly}" if wrongly else rather


def _reason(turn: Turn, text: str) -> str:
    """Return 'the lemons were dried out' as the reason of the last waste of lemons here tonight, else ''."""
    said = _read(turn, "reason_said", text)
    fruit = None if said is None else said["fruit"].value
    if said is None or not isinstance(fruit, Noun):
        return ""
    for one in thread.tonight(turn.context, turn.message.chat_key):
        wasted = logged_in(turn.context, one.details) if one.what == "waste" else []
        if any(str(each.ingredient.id) == fruit.id for each in wasted):
            return f"#{one.last.id} {said['fruit'].text} {said['reason'].text}"
    return ""


def _as_other_time(turn: Turn, text: str) -> tuple[Command, str] | None:
    """Return 'sorry, 11pm' after a reminder as its new time, on the day it had unless another one is said."""
    last = thread.tonight(turn.context, turn.message.chat_key)[:1]
    if not last or last[0].what not in {"remind", "change reminder"}:
        return None
    moment, rest = split_moment(text, turn.vocabulary)
    if rest or moment.is_empty:
        return None
    number = last[0].details["reminder"]
    if moment == Moment(minute=moment.minute, part=moment.part, sure=moment.sure):
        planned = own.get(turn.context, number)
        day = "" if planned.days else turn.context.bar.day_of(planned.due).isoformat()
        text = f"{day} {text}"
    return all_commands()["change reminder"], f"{number} {text}"


def as_other_note(turn: Turn, text: str) -> str | None:
    """Return the words that 'sorry, buy straws' may put in the place of the note just left."""
    last = thread.tonight(turn.context, turn.message.chat_key)[:1]
    said = _read(turn, "corrected_said", text.strip(" .!¡")) if last and last[0].what == "note" else None
    return None if said is None or "wrongly" in said else said["rather"].text


def as_amendment(turn: Turn, dialogue: DialogueState, text: str) -> tuple[str, str] | None:
    """Return the answer that 'sorry, lemons' replaces, the latest that it fits, and the new words."""
    said = _read(turn, "corrected_said", text.strip(" .!¡"))
    if said is None:
        return None
    words = said["rather"].text
    slots = {slot.name: slot for slot in all_commands()[dialogue.command].slots}
    for name in reversed(dialogue.order):
        found = _read(turn, slots[name].reads_by, words)
        if found and not any(names_unknown(one.value) for one in found.values()):
            return dialogue.words[name], words
    return None


def _corrects(turn: Turn, text: str) -> bool:
    """Whether some words can be a part of an entry, with known names only."""
    read = (_read(turn, rule, text) for rule in _CORRECTED)
    return any(found and all(map(is_known, found.values())) for found in read)


def _repetition(turn: Turn, text: str) -> tuple[Command, str] | None:
    if _read(turn, "repeated_said", text) is not None:
        return all_commands()["again"], ""
    said = _read(turn, "added_said", text)
    if said is None or not _corrects(turn, said["further"].text):
        return None
    return all_commands()["again"], said["further"].text


def _look(turn: Turn, text: str) -> tuple[Command, str] | None:
    """Return a look at a batch, 'its clear', as its check.

    The batch is that of the reminder to which it replies, else of the last reminder of tonight. If there were
    several, the check asks which one.
    """
    said = _read(turn, "looks_said", text)
    if said is None:
        return None
    check, clarity = all_commands()["check"], said["clarity"].text
    number = batch_asked_about(turn.message)
    if number is not None:
        return check, f"{number} {clarity}"
    asked = thread.asked_about(turn.context)
    if len(asked) == 1:
        return check, f"{asked[0]} {clarity}"
    if not asked and (last := _last_look(turn)) is not None:
        return check, f"{last} {clarity}"
    is_only_the_word = clarity.casefold() == text.casefold()
    return None if is_only_the_word and not asked else (check, clarity)


def _last_look(turn: Turn) -> int | None:
    """Return the batch that the person looked at last, if nothing else was logged here since."""
    found = thread.tonight(turn.context, turn.message.chat_key)[:1]
    return found[0].details["batch"] if found and found[0].what == "check" else None


def _read(turn: Turn, rule: str, text: str) -> dict[str, Filled] | None:
    phrase = parser.try_read(rule, text, turn.vocabulary)
    return None if phrase is None else {one.slot: one for one in phrase.filled}
