"""Word the readings of a free line: the first one, and buttons for the readings that are not sure."""

from __future__ import annotations

import re
from dataclasses import replace

from bot.chat.dialogue.examples import example_of
from bot.chat.dialogue.registry import all_commands, command_at_start
from bot.chat.dialogue.rights import barred
from bot.chat.dialogue.turn import Turn
from bot.chat.grammar.syntax import Stock
from bot.chat.i18n.keywords import keyword_table
from bot.chat.i18n.language import _, tongue
from bot.chat.i18n.languages import understood
from bot.chat.intent.reading.reader import Reading, Readings, reading_of
from bot.chat.intent.thread import OF_LAST
from bot.chat.intent.without_command import WITHOUT_COMMAND
from bot.chat.reply.layout import LABEL_LENGTH, shortened
from bot.chat.reply.message import Button, Reply, Text, reply
from bot.work.log import thread

_TWO = 2
_FRACTION = "."
_OF_A_BATCH = frozenset({"bottled", "spilt", "strained", "filtered", "used"})
_PAUSE = re.compile(r"[,;]")


def read_as(reading: Reading, answer: Reply) -> Reply:
    """Put the line that was read before an answer."""
    first = Text(_("Read as: {line}").format(line=reading.label))
    return replace(answer, blocks=(first, *answer.blocks))


def offer(turn: Turn, readings: Readings) -> Reply:
    """Return the readings as buttons; nothing is done before a tap."""
    first = readings.first
    if readings.parts:
        return _each_part(turn, readings)
    if first is not None and readings.sure and first.wish in WITHOUT_COMMAND:
        return WITHOUT_COMMAND[first.wish](turn)
    if first is not None and (unknown := _unknown_batch(turn, first)):
        batches = Button(_("Batches"), "batches")
        return reply(_("I know no batch of “{name}”.").format(name=unknown), buttons=((batches,),))
    if first is not None and readings.sure and first.complete and not _is_bare(turn, first):
        row = (replace(_button(turn, first, readings), label=first.label),)
        amounts = _amounts_instead(turn, first)
        if amounts is not None:
            said = _("Do you want to count it, or see what it is enough for?")
            return reply(said, buttons=(row, (Button(amounts.label, amounts.line),)))
        return reply(
            _("Read as: {line}").format(line=first.label),
            _("Nothing is logged yet. Tap if that is right."),
            buttons=(row,),
        )
    rows = tuple((_button(turn, one, readings),) for one in readings.likeliest if _is_offered(turn, one))
    said = _("I'm not sure what you want. One of these?")
    if first is None or readings.no_wish > first.probability:
        said = _("That sounded like talk, so I did nothing. Or did you want one of these?")
    return reply(said, _example(turn), buttons=rows)


def _each_part(turn: Turn, readings: Readings) -> Reply:
    """Return a button for each part of a line that says several things, and name the parts left out."""
    offered = [one for one in readings.likeliest if _is_offered(turn, one)]
    others = [one for one in readings.likeliest if one not in offered]
    honest = [WITHOUT_COMMAND[one.wish](turn).first_line for one in others if one.command is None]
    left_out = [*readings.left_out, *(one.label for one in others if one.command is not None)]
    notes = [_("I left out “{part}”: say it by itself.").format(part=shortened(one)) for one in left_out]
    rows = tuple((Button(shortened(_label(one)), one.line),) for one in offered)
    first = _("Those are several things. Tap each one:")
    if len(readings.likeliest) + len(readings.left_out) == _TWO:
        first = _("Those are two things. Tap each one:")
    return reply(first, *honest, *notes, buttons=rows)


def _unknown_batch(turn: Turn, first: Reading) -> str:
    """Return the words that a command's line leaves out where its batch stands: 'bottled shrub 2 x 50 ml'."""
    spoken = command_at_start(turn.message.text)
    if spoken is None or spoken[0] is not first.command or spoken[0].name not in _OF_A_BATCH:
        return ""
    phrase = spoken[0].phrase(turn, first.rest)
    if phrase is None or "batch" in phrase.slots:
        return ""
    language = tongue().language
    known = {*understood(language)[0].fillers, *first.rest.casefold().split()}
    words = [word for word in spoken[1].split() if word.isalpha() and word.casefold() not in known]
    return " ".join(words) if any(word.casefold() not in keyword_table(language) for word in words) else ""


def _is_bare(turn: Turn, reading: Reading) -> bool:
    """Whether a line that writes has only a number of a text without a command's word: 'waste 0.5'."""
    writes = reading.command is not None and reading.command.writes
    number = bool(reading.rest) and not any(map(str.isalpha, reading.rest))
    return writes and number and command_at_start(turn.message.text) is None and _FRACTION in reading.rest


def _amounts_instead(turn: Turn, first: Reading) -> Reading | None:
    """Return the amounts that a counted ingredient is enough for: 'I have 10 ml oil' may ask for them."""
    if first.command is None or first.command.name not in {"count", "stock"} or turn.message.corrects:
        return None
    found = reading_of(turn, "scale", turn.message.text)
    phrase = None if found is None or found.command is None else found.command.phrase(turn, found.rest)
    with_it = phrase is not None and any(isinstance(one.value, Stock) for one in phrase.filled)
    return found if with_it else None


def _is_offered(turn: Turn, reading: Reading) -> bool:
    """Whether a button can do it: changing or repeating the last thing takes one, and all of the words."""
    if reading.command is None or barred(turn, reading.command) is not None or _is_bare(turn, reading):
        return False
    if reading.command.name not in OF_LAST:
        return True
    return reading.complete and bool(thread.tonight(turn.context, turn.message.chat_key))


def _button(turn: Turn, reading: Reading, readings: Readings) -> Button:
    """Return the button for a reading; its tap confirms the wording if that was no question, talk or edit."""
    text = " ".join(turn.message.text.split())
    learns = reading.reads_text and not text.endswith("?") and readings.no_wish < reading.probability
    learns = learns and turn.message.corrects is None
    return Button(_label(reading), f"as {reading.wish}: {text}" if learns else reading.line)


def _label(reading: Reading) -> str:
    """Return the line of a reading; what its command does if there is nothing but the command's word."""
    if reading.rest or reading.command is None:
        return reading.label
    summary = _(reading.command.summary)
    if len(summary) > LABEL_LENGTH:
        summary = _PAUSE.split(summary)[0]
    return shortened(summary[:1].upper() + summary[1:])


def _example(turn: Turn) -> str:
    example = _(all_commands()["waste"].examples[0])
    return _("For example: {example}").format(example=example_of(turn, example))
