"""Find the intent of what is typed while a question is in progress: its answer, or something beside it."""

from __future__ import annotations

from dataclasses import replace

from bot.chat.dialogue import filling
from bot.chat.dialogue.command import Command
from bot.chat.dialogue.registry import all_commands
from bot.chat.dialogue.slots import BACK, CANCEL
from bot.chat.dialogue.state import DialogueState
from bot.chat.dialogue.turn import Turn
from bot.chat.grammar.recipe_text import has_list, is_list
from bot.chat.i18n.language import _
from bot.chat.intent.free_words import RECIPE_AMOUNTS, new_formula, readings, taken_or_free
from bot.chat.intent.guessing import LOGGING, as_recipe, as_waste, without_word
from bot.chat.intent.intent import Amendment, Answer, Intent, Read, Said
from bot.chat.intent.sentences import as_sentence, is_certain
from bot.chat.intent.thread import as_amendment, as_thread
from bot.chat.intent.whole import (
    asks_for_name,
    counts_itself,
    is_recipe,
    knows_all,
    means_other,
    reads_as_answer,
    reads_whole,
)

_SENTENCE = 3  # words: fewer may be any new name
_LIKELY = 0.3  # a line that does not answer the question in progress is read from this probability on


def while_asked(turn: Turn, dialogue: DialogueState, text: str, spoken: tuple[Command, str] | None) -> Intent:
    """Return the intent of a typed text while a question is in progress."""
    if text.casefold() in {"back", _("Back").casefold()}:
        return Answer(BACK, tapped=True)
    if spoken is not None and _takes_back(spoken, turn):
        if dialogue.noted:
            return Said(*spoken, aside=is_kept(dialogue))
        return Answer(BACK if dialogue.order or dialogue.typed else CANCEL, tapped=True)
    if spoken is not None:
        other = spoken[0].name != dialogue.command
        # Any words answer a question for a note, but stopping must always be possible.
        stops = spoken[0].name == "cancel" and not spoken[1].strip()
        taken = reads_whole(spoken, turn) or is_recipe(*spoken)
        answers = reads_as_answer(dialogue, text, turn)
        if answers and asks_for_name(dialogue):
            answers = not knows_all(turn, *spoken)
        if stops or (taken and not answers):
            meant = taken_or_free(turn, text, *spoken)
            if isinstance(meant, Read) and not stops:
                return replace(meant, aside=is_kept(dialogue))
            return Said(*spoken, aside=other and spoken[0].name in LOGGING)
    if spoken is None and (amended := as_amendment(turn, dialogue, text)) is not None:
        return Amendment(*amended)
    fruit = None if spoken is not None else _waste_aside(turn, dialogue, text)
    return fruit or _free_aside(turn, dialogue, text) or Answer(text)


def _free_aside(turn: Turn, dialogue: DialogueState, text: str) -> Intent | None:
    """Return a clear free line that does not answer the question in progress."""
    command = all_commands()[dialogue.command]
    alone = turn.message.place.private and turn.presence.bar is not None and turn.message.corrects is None
    if not alone:
        return None
    if dialogue.asking == "lines" and is_list(text):
        return None  # the question says which line it cannot read
    if filling.takes(turn, command, dialogue, text):
        return _other_than_answer(turn, dialogue, command, text)
    beside = as_thread(turn, text) or _sentence(turn, text)
    if beside is not None:
        return _aside(turn, dialogue, *beside)
    if has_list(text, RECIPE_AMOUNTS) and as_recipe(turn, text) is not None:
        return replace(new_formula(turn, text), aside=is_kept(dialogue))
    found = readings(turn, text)
    first = found.first
    if first is None or first.command in {None, command} or first.probability < max(_LIKELY, found.no_wish):
        return None
    return Read(found, aside=is_kept(dialogue))


def _sentence(turn: Turn, text: str) -> tuple[Command, str] | None:
    """Return the command of a whole sentence that may be done at once."""
    found = as_sentence(turn, text, None)
    return found if found is not None and is_certain(turn, *found) else None


def _other_than_answer(turn: Turn, dialogue: DialogueState, command: Command, text: str) -> Intent | None:
    """Return a free line that the question takes only because it takes any words: 'take it off the list'."""
    if reads_as_answer(dialogue, text, turn) and not asks_for_name(dialogue):
        return None
    sentence = _sentence(turn, text)
    if sentence is not None:
        return _aside(turn, dialogue, *sentence)
    shown = without_word(turn, text)
    if shown is not None and shown[0] is not command and knows_all(turn, *shown):
        return _aside(turn, dialogue, *shown)
    if len(text.split()) < _SENTENCE or any(map(str.isdigit, text)) or asks_for_name(dialogue):
        return None
    found = readings(turn, text)
    return Read(found, aside=is_kept(dialogue)) if means_other(command, found) else None


def is_kept(dialogue: DialogueState) -> bool:
    """Whether a dialogue is kept while another line is answered: it is not if nothing is lost with it."""
    return bool(dialogue.words) and all_commands()[dialogue.command].writes


def _waste_aside(turn: Turn, dialogue: DialogueState, text: str) -> Intent | None:
    """Return counted fruit as waste if it does not answer the question in progress."""
    command, waste = all_commands()[dialogue.command], all_commands()["waste"]
    if counts_itself(command, text, turn) and (
        command is not waste or filling.said_at_once(turn, command, dialogue, text) is not None
    ):
        return None  # a longer answer to the same question
    # Some settings accept any words, but nobody sets one to a number of fruit.
    if command.name != "bar" and reads_as_answer(dialogue, text, turn):
        return None
    found = as_waste(turn, text)
    return None if found is None else _aside(turn, dialogue, *found)


def _aside(turn: Turn, dialogue: DialogueState, command: Command, rest: str) -> Said:
    turn.line = f"{command.name} {rest}"
    return Said(command, rest, aside=is_kept(dialogue))


def _takes_back(spoken: tuple[Command, str], turn: Turn) -> bool:
    """Whether a text is 'undo' without a number."""
    command, rest = spoken
    return command.name == "undo" and not any(map(str.isdigit, rest)) and reads_whole(spoken, turn)
