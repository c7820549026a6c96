"""Stage 2: find the intent of a message: a tap, a command with or without slash, an answer, an edit."""

from __future__ import annotations

import re
from dataclasses import replace
from datetime import timedelta

from bot.chat.dialogue.command import Command
from bot.chat.dialogue.inputs.settling import INSTEAD
from bot.chat.dialogue.registry import all_commands, command_at_start, in_any_language
from bot.chat.dialogue.rights import barred
from bot.chat.dialogue.slots import ANSWER
from bot.chat.dialogue.state import kept_line
from bot.chat.dialogue.turn import Turn
from bot.chat.i18n.keywords import stands_for
from bot.chat.i18n.language import tongue
from bot.chat.intent.free_words import free, readings, taken_or_free, to_confirm
from bot.chat.intent.guessing import another_command, without_word
from bot.chat.intent.incoming_photo import check_line
from bot.chat.intent.intent import (
    REST,
    Amendment,
    Answer,
    Correction,
    Ignored,
    Intent,
    NotUnderstood,
    OutOfDate,
    Read,
    Said,
    Several,
)
from bot.chat.intent.parts import WITH_LINES, parts_of
from bot.chat.intent.reading.reader import Reading, Readings, reading_of, shape_of
from bot.chat.intent.sentences import as_sentence, is_certain, said_first
from bot.chat.intent.thread import OF_LAST, as_other_note, as_thread
from bot.chat.intent.while_asked import is_kept, while_asked
from bot.chat.intent.whole import means_other, reads_as_answer, reads_whole
from bot.chat.intent.without_command import AGREED
from bot.work.log import edits, thread
from bot.work.log.chain import UNDO_HOURS
from bot.work.people import people

HOME = re.compile(r"^@(\d{1,12}) ", re.ASCII)  # a tap for this bar: '@3 check 12 clear'
_INSTEAD = re.compile(rf"^{INSTEAD} (\d{{1,12}}(?:,\d{{1,12}})*) ", re.ASCII)
KEPT = "~"  # a tap whose line is too long for a button and stored: '~ 41 2'
_NUMBER = re.compile(r"\d{1,12}", re.ASCII)
OUT_OF_DATE = f"{KEPT} - -"
_AS = re.compile(r"as ([a-z_ ]+): (.+)", re.DOTALL)
_END = re.compile(r"(?<=[^\W\d_])\s?[.!]$")  # dictation ends each line with a full stop
_COMMAND = re.compile(r"^/([^\W\d]+)(?:@([A-Za-z0-9_]+))?\s?")


def intent_of(turn: Turn) -> Intent:
    """Return the intent of a message."""
    found = _said(turn) if turn.message.corrects is None else _edited(turn, turn.message.corrects)
    return replace(found, line=turn.line)


def _edited(turn: Turn, key: str) -> Intent:
    """Return the intent of an edited message: the new words replace the effect of the old ones."""
    message = turn.message
    if turn.presence.bar is None or (message.was is not None and message.was.strip() == message.text.strip()):
        return Ignored()
    alone = turn.without_question()
    late = turn.clock.now() - message.sent_at > timedelta(hours=UNDO_HOURS)
    earlier = edits.logged_by(turn.context, key)
    if earlier.any:
        return Correction(earlier, replace(_said(alone), line=alone.line))
    if message.was is not None and _is_answer(turn, message.was.strip()):
        return Amendment(message.was.strip(), message.text.strip())
    if late or isinstance(_said(alone), NotUnderstood | Several | OutOfDate):
        return Ignored()
    return _said(turn)  # a corrected command that was not understood before


def _is_answer(turn: Turn, words: str) -> bool:
    """Whether these words answered a question of the dialogue in progress, and may still change."""
    dialogue = None if turn.pending is None else turn.pending.dialogue
    if dialogue is None or dialogue.slot_answered_with(words) is None:
        return False
    return barred(turn, all_commands()[dialogue.command]) is None


def _said(turn: Turn) -> Intent:
    if turn.message.document is not None:
        return Said(all_commands()["import"])
    if turn.message.tapped is None:
        return _typed(turn)
    return OutOfDate() if _is_of_another_bar(turn) else _tapped(turn, turn.message.text)


def _tapped(turn: Turn, text: str) -> Intent:
    text = turn.line = HOME.sub("", text.strip())
    if text.startswith(f"{ANSWER} "):
        return _tapped_answer(turn, text)
    if text.startswith(f"{KEPT} "):
        text = turn.line = kept_line(text, turn.pending)
        if not text:
            return OutOfDate()
        if text.startswith(f"{ANSWER} "):  # the row that keeps it is the question's own
            _sign, _nonce, answer = text.split(" ", 2)
            asked = turn.pending is not None and turn.pending.dialogue is not None
            return Answer(answer, tapped=True) if asked else OutOfDate()
    instead = _INSTEAD.match(text)
    if instead is not None:
        return _instead(turn, list(map(int, instead[1].split(","))), text[instead.end() :])
    if text.startswith(REST):
        return _rest(turn, text.removeprefix(REST))
    return _confirmed(turn, text) or said_in(text)


def _confirmed(turn: Turn, text: str) -> Intent | None:
    """Return a free line as read: 'as waste: bunged 3 limes'. Running it confirms the wording."""
    said = None if turn.presence.bar is None else _AS.match(text)
    if said is None:
        return None
    reading = reading_of(turn, said[1], said[2])
    if reading is None or reading.command is None:
        return OutOfDate()
    turn.line = reading.line
    return Said(reading.command, reading.rest, confirms=(reading.wish, shape_of(turn, said[2])))


def _rest(turn: Turn, line: str) -> Intent:
    """Return the intent of a tap on [More] below a folded answer to a line."""
    turn.line = line
    said = said_in(line)
    return replace(said, rest_only=True) if isinstance(said, Said) and not said.writes else OutOfDate()


def _instead(turn: Turn, numbers: list[int], line: str) -> Intent:
    """Return the intent of a tap that logs a line in the place of entries."""
    spoken = command_at_start(line)
    found = None if turn.presence.bar is None else edits.of_entries(turn.context, numbers)
    if spoken is None or found is None:
        return OutOfDate()
    turn.line = line
    return Correction(found, Said(*spoken, line=line))


def _typed(turn: Turn) -> Intent:
    text = _END.sub("", turn.message.text.strip())
    confirmed = _confirmed(turn, text)
    if confirmed is not None:
        return confirmed
    several = _several(text) if turn.pending is None else ()
    if several:
        return Several(several)
    slashed = _slashed(text)
    if slashed is not None:
        return slashed
    parts = _parts(turn, text)
    if parts is not None:
        return parts
    spoken = command_at_start(text)
    if turn.pending is not None and turn.pending.dialogue is not None:
        return while_asked(turn, turn.pending.dialogue, text, spoken)
    if turn.presence.bar is not None and stands_for(text, "YES", tongue().language):
        if len(turn.offered) == 1:
            return _tapped(turn, turn.offered[0])
        return Read(Readings((Reading(AGREED, 1.0),), sure=True))
    return _without_dialogue(turn, text, spoken)


def said_in(line: str) -> Intent:
    """Return the intent of a line that begins with a command's word, with or without a slash."""
    return _slashed(line) or _said_or_not(command_at_start(line))


def _said_or_not(spoken: tuple[Command, str] | None) -> Intent:
    return NotUnderstood() if spoken is None else Said(*spoken)


def _tapped_answer(turn: Turn, text: str) -> Intent:
    _sign, nonce, answer = [*text.split(" ", 2), "", ""][:3]
    pending = turn.pending
    if pending is None or nonce != str(pending.nonce) or pending.dialogue is None:
        asked = people.asked_instead(turn.unit, turn.presence, int(nonce)) if _NUMBER.fullmatch(nonce) else ""
        return OutOfDate(asked)
    return Answer(answer, tapped=True)


def _is_of_another_bar(turn: Turn) -> bool:
    """Whether the tapped message is older than the person's change of bars: its lines mean the old bar."""
    since, number = turn.presence.since, turn.message.number
    older = since is not None and number is not None and number < since
    return older and not turn.message.text.startswith("bars ")


def _without_dialogue(turn: Turn, text: str, spoken: tuple[Command, str] | None) -> Intent:
    """Return the intent of a typed text when no question is in progress."""
    of_a_batch = spoken is None or spoken[0].name == "batch"  # 'batch 12 clear', or only '12 clear'
    if turn.message.photo is not None and of_a_batch and (check := _photo_of(turn)) is not None:
        return check
    if (asked := said_first(turn, text, bare=spoken is None)) is not None:
        turn.line = f"{asked[0].name} {asked[1]}"
        return Said(*asked)
    sentence = as_sentence(turn, text, None if spoken is None else spoken[0])
    if sentence is not None and not is_certain(turn, *sentence):
        return to_confirm(*sentence)
    meant = (
        as_thread(turn, text)
        or sentence
        or (without_word(turn, text) if spoken is None else another_command(turn, *spoken))
    )
    if meant is not None:
        if (other := _other_than_last(turn, text, meant[0])) is not None:
            return other
        turn.line = f"{meant[0].name} {meant[1]}"
        spoken = meant
    if spoken is None:
        return free(turn, text)
    command, rest = spoken
    if rest.rstrip().endswith("?") and not reads_whole((command, rest), turn):
        rest = rest.rstrip(" ?")
    return taken_or_free(turn, text, command, rest)


def _other_than_last(turn: Turn, text: str, command: Command) -> Intent | None:
    """Return a free line that hardly means the last thing, although it is worded like that."""
    if command.name not in OF_LAST or thread.tonight(turn.context, turn.message.chat_key):
        return None
    found = readings(turn, text)
    return Read(found) if means_other(command, found) else None


def _photo_of(turn: Turn) -> Intent | None:
    """Return a photo whose caption is no command as a check of a batch, if it parses as one."""
    line = check_line(turn.message)
    check = all_commands()["check"]
    return Said(check, line) if reads_whole((check, line), turn) else None


def _slashed(text: str) -> Intent | None:
    """Return the intent of a text with a leading slash; None without one."""
    slash = _COMMAND.match(text)
    if slash is None:
        return None
    # Parse the text without the slash, so that '/forget me' and '/new_formula' are also found.
    words = f"{slash[1].replace('_', ' ')} {text[slash.end() :]}"
    named = command_at_start(words) or in_any_language(words)
    return _said_or_not(named)


_MOST_LINES = 10


def _several(text: str) -> tuple[Said, ...]:
    """Return the commands of a message with a command's word on every line, if there are at least two."""
    lines = [line.strip() for line in text.splitlines() if line.strip()]
    if not 2 <= len(lines) <= _MOST_LINES:
        return ()
    found = [(line, command_at_start(line.removeprefix("/"))) for line in lines]
    if found[0][1] is None or found[0][1][0].name in WITH_LINES:
        return ()
    spoken = [Said(*one, line=line) for line, one in found if one is not None]
    return tuple(spoken) if len(spoken) == len(lines) else ()


def _parts(turn: Turn, text: str) -> Read | None:
    """Return the parts of a message that says several things and does not answer a question in progress."""
    if turn.presence.bar is None or as_other_note(turn, text) is not None:
        return None
    dialogue = None if turn.pending is None else turn.pending.dialogue
    if dialogue is not None and (command_at_start(text) is None or reads_as_answer(dialogue, text, turn)):
        return None
    found = parts_of(turn, text)
    return None if found is None else Read(found, aside=dialogue is not None and is_kept(dialogue))
