"""Fill a command's slots from one message, or by one question at a time.

The state holds the words of each filled slot and their parsed values, so that it survives a restart and
nothing is parsed twice. A finished dialogue is therefore the one-line command, spread over several messages.
"""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import AbstractContextManager, contextmanager, nullcontext
from dataclasses import replace

from bot.chat.dialogue import state
from bot.chat.dialogue.command import Command
from bot.chat.dialogue.error_messages import REFUSALS, worded, worded_phrase_error
from bot.chat.dialogue.inputs.settling import settle
from bot.chat.dialogue.questions import ask, ask_again, choice_named
from bot.chat.dialogue.registry import words_of
from bot.chat.dialogue.slots import BACK, CANCEL, DIGIT, ENTER, ERASE, AnySlot, Given
from bot.chat.dialogue.state import KEPT_BY_BACK, PHOTO, DialogueState
from bot.chat.dialogue.turn import Say, Turn
from bot.chat.grammar import parser
from bot.chat.grammar.lexer import Noun
from bot.chat.i18n.keywords import stands_for
from bot.chat.i18n.language import _, ngettext, show_number, speaking, tongue
from bot.chat.i18n.languages import ENGLISH
from bot.chat.i18n.locale_choice import bar_tongue, spoken
from bot.chat.reply.message import Reply, Text
from bot.trade.errors import TradeError
from bot.work.errors import WorkError

_DIGITS = frozenset("0123456789")
_LONGEST_TYPED = 6


class OutdatedError(Say):
    """An earlier answer holds no more, as when somebody discarded the batch it names: the dialogue ends."""


# -- start ----------------------------------------------------------------------------------


def start(turn: Turn, command: Command, given: Given) -> Reply | list[Reply]:
    """Run the command if every required slot is filled; otherwise ask for the first empty one."""
    if (photo := _photo_for(turn, command)) is not None:
        given.values[PHOTO] = given.words[PHOTO] = photo
    known = accepted(turn, command, given)
    slot = missing(turn, command, known)
    if slot is None:
        with in_tongue_of_message(turn):
            return command.answer(turn, known)
    known.guided = True
    order = [name for name in known.words if name not in KEPT_BY_BACK]
    dialogue = DialogueState(command.name, "", dict(given.words), dict(given.values), order)
    return ask(turn, dialogue, known, slot)


def in_tongue_of_message(turn: Turn) -> AbstractContextManager[object]:
    """Use the bar's language if the answer replaces a message to the whole group."""
    bar = turn.presence.bar
    if not turn.message.shared or bar is None:
        return nullcontext()
    return speaking(bar_tongue(bar, spoken(bar.language) or ENGLISH, turn.clock.now()))


def _photo_for(turn: Turn, command: Command) -> str | None:
    """Return the message's photo if the command keeps one."""
    keeps = any(slot.name == PHOTO for slot in command.slots)
    return turn.message.photo if keeps else None


def _photos(photo: str) -> str:
    count = len(photo.split())
    said = ngettext("The photo is kept.", "All {count} photos are kept.", count)
    return said.format(count=show_number(count, 0))


def accepted(turn: Turn, command: Command, given: Given) -> Given:
    """Return the slots with accepted values. Raises Say.

    A value after a gap may depend on the missing one, as a price on its ingredient. It is accepted once the
    gap is filled; until then only its words are kept.
    """
    known = Given({}, given.words, given.guided, given.lines)
    for slot in command.slots:
        if slot.name not in given.values and not given.lines and slot.is_asked(turn, known):
            only = None if slot.only is None else slot.only(turn)
            if only is not None:
                given.words[slot.name], given.values[slot.name] = only
        if slot.name in given.values:
            known.values[slot.name] = slot.accept(turn, known, given.values[slot.name])
        elif not given.lines and slot.is_asked(turn, known):
            break  # later slots may depend on this one, and are accepted once it is filled
    return known


def missing(turn: Turn, command: Command, given: Given) -> AnySlot | None:
    """Return the first required slot that is empty, or None."""
    if given.lines:
        return None  # the command refuses incomplete lines itself
    for slot in command.slots:
        if slot not in given and slot.is_asked(turn, given):
            return slot
    return None


def evaluate(turn: Turn, command: Command, dialogue: DialogueState) -> Given:
    """Return the filled slots with accepted values. Only new words are parsed."""
    given = Given({}, {}, guided=True)
    for slot in command.slots:
        words = dialogue.words.get(slot.name)
        if words is None:
            if slot.is_asked(turn, given):
                break  # as in accepted
            continue
        if slot.name not in dialogue.values:
            dialogue.values[slot.name] = _read(turn, slot, words)
        given.words[slot.name] = words
        given.values[slot.name] = slot.accept(turn, given, dialogue.values[slot.name])
    return given


def earlier(turn: Turn, command: Command, dialogue: DialogueState) -> Given:
    """Return the earlier answers with accepted values. Raises OutdatedError."""
    with _ending_if_refused(command, dialogue):
        return evaluate(turn, command, dialogue)


@contextmanager
def _ending_if_refused(command: Command, dialogue: DialogueState) -> Iterator[None]:
    """Turn a refusal into OutdatedError, which ends the dialogue."""
    try:
        yield
    except REFUSALS as error:
        said = worded(error)
        if said is None:
            raise
        # Its buttons would answer a question that is over.
        raise OutdatedError(Reply((*said.blocks, dropped(command, dialogue)))) from error


def dropped(command: Command, dialogue: DialogueState) -> Text:
    """Say which unfinished line is dropped."""
    words = [one for slot, one in dialogue.words.items() if slot != PHOTO]
    said = " ".join([words_of(command, tongue().language)[0], *words])
    return Text(_("Unfinished and dropped: {line}").format(line=" ".join(said.split())))


def _read(turn: Turn, slot: AnySlot, words: str) -> object:
    return next(iter(parser.read(slot.reads_by, words, turn.vocabulary).slots.values())).value


# -- next step ------------------------------------------------------------------------------


def resume(turn: Turn, command: Command, answer: str, tapped: bool) -> Reply | list[Reply]:
    """Continue the question in progress with `answer`, typed or tapped."""
    dialogue = _in_progress(turn)
    slot = _asked(command, dialogue)
    if (photo := _photo_for(turn, command)) is not None:
        dialogue.words[PHOTO] = dialogue.values[PHOTO] = photo
        if not answer.strip():
            return ask(turn, dialogue, earlier(turn, command, dialogue), slot, _photos(photo))
    if tapped:
        moved = _move(turn, command, dialogue, slot, answer)
        if moved is not None:
            return moved
        if answer == ENTER and dialogue.typed:
            answer = dialogue.typed
    dialogue.typed = None
    return _take_answer(turn, command, dialogue, slot, answer)


def _in_progress(turn: Turn) -> DialogueState:
    if turn.pending is None or turn.pending.dialogue is None:
        raise ValueError("no question is in progress")
    return turn.pending.dialogue.copy()


def _asked(command: Command, dialogue: DialogueState) -> AnySlot:
    return next(slot for slot in command.slots if slot.name == dialogue.asking)


def _take_answer(
    turn: Turn, command: Command, dialogue: DialogueState, slot: AnySlot, answer: str
) -> Reply | list[Reply]:
    """Parse a typed answer and continue, or ask again with the error."""
    if slot.many and slot.name in dialogue.words and _says_done(answer):
        dialogue.finished.add(slot.name)
        return _go_on(turn, command, dialogue)
    answer = settle(turn, answer)
    given = earlier(turn, command, dialogue)
    value: object = None
    try:
        value = _read(turn, slot, answer)
        turn.line = answer
        slot.accept(turn, given, value)
    except parser.PhraseError as error:
        meant = choice_named(slot.question(turn, given), answer)
        if meant is not None and meant != answer:
            moved = _move(turn, command, dialogue, slot, meant)
            return _take_answer(turn, command, dialogue, slot, meant) if moved is None else moved
        whole = _start_at_once(turn, command, dialogue, answer)
        return whole or ask(turn, dialogue, given, slot, worded_phrase_error(error))
    except (Say, WorkError, TradeError) as error:
        # A refused name may be more than the name: 'Lime mist: lime oil 10 ml'.
        more = len(dialogue.words) + 2
        if isinstance(value, str) and (whole := _start_at_once(turn, command, dialogue, answer, more)):
            return whole
        said = worded(error)
        if said is None:
            raise
        return ask_again(turn, dialogue, given, slot, said)
    dialogue.answered, dialogue.noted = True, False
    if slot.many:
        dialogue.add_line(slot.name, answer, value)
        given = evaluate(turn, command, dialogue)
        if not slot.full(turn, given):
            return ask(turn, dialogue, given, slot)
        dialogue.finished.add(slot.name)
        return _go_on(turn, command, dialogue)
    dialogue.fill(slot.name, answer, value)
    return _go_on(turn, command, dialogue)


def _start_at_once(
    turn: Turn, command: Command, dialogue: DialogueState, answer: str, least: int = 0
) -> Reply | list[Reply] | None:
    """Start again with an answer that says at once all that was said, in at least so many slots."""
    whole = said_at_once(turn, command, dialogue, answer)
    if whole is None or len(whole.values) < least:
        return None
    state.drop(turn.unit, turn.presence)
    return start(turn, command, whole)


def takes(turn: Turn, command: Command, dialogue: DialogueState, answer: str) -> bool:
    """Whether the question in progress can take a typed answer, also if it may refuse the value."""
    slot = _asked(command, dialogue)
    if slot.many and slot.name in dialogue.words and _says_done(answer):
        return True
    if parser.try_read(slot.reads_by, settle(turn, answer), turn.vocabulary) is not None:
        return True
    try:
        named = choice_named(slot.question(turn, evaluate(turn, command, dialogue)), answer)
    except REFUSALS:
        return False  # it cannot be asked any more
    return named is not None or said_at_once(turn, command, dialogue, answer) is not None


def _says_done(answer: str) -> bool:
    """Whether an answer only ends a list: 'done', "that's it"."""
    plain = answer.strip(" .!").casefold()
    return plain == _("Done").casefold() or stands_for(plain, "DONE", tongue().language)


def said_at_once(turn: Turn, command: Command, dialogue: DialogueState, answer: str) -> Given | None:
    """Return the slots of an answer with more than the question asked: '3 lemons mouldy' for which fruit.

    It must repeat all earlier answers, because they would be lost, and of the same things; otherwise None.
    """
    phrase = command.phrase(turn, answer)
    if phrase is None:
        return None
    needed = {dialogue.asking, *dialogue.words} - {PHOTO}
    said = [{one.slot: one.value for one in line.filled} for line in phrase.lines]
    said = said or [{name: one.value for name, one in phrase.slots.items()}]
    if not all(needed <= one.keys() and _of_the_same(dialogue, one) for one in said):
        return None
    turn.line = f"{command.name} {answer}"
    given = Given.of(phrase)
    if PHOTO in dialogue.words:
        given.values[PHOTO] = given.words[PHOTO] = dialogue.words[PHOTO]
    return given


def _of_the_same(dialogue: DialogueState, said: dict[str, object]) -> bool:
    """Whether an answer names the same things, and the same words, as the earlier answers."""
    for slot, value in dialogue.values.items():
        other = said.get(slot, value)
        if isinstance(value, str) and str(other).casefold() != value.casefold():
            return False
        if isinstance(value, Noun) and not (isinstance(other, Noun) and other.id == value.id):
            return False
    return True


def _go_on(turn: Turn, command: Command, dialogue: DialogueState) -> Reply | list[Reply]:
    given = evaluate(turn, command, dialogue)
    for slot in command.slots:
        open_list = slot.many and slot in given and slot.name not in dialogue.finished
        if (slot not in given and slot.is_asked(turn, given)) or open_list:
            return ask(turn, dialogue, given, slot)
    state.drop(turn.unit, turn.presence)
    turn.finishing = True
    if not command.writes:
        turn.line = _whole_line(turn, command, given) or turn.line
    answer = command.answer(turn, given)
    if turn.message.tapped is None:
        return answer
    # The last tap of a dialogue replaces the question with the answer.
    if isinstance(answer, Reply):
        return replace(answer, edits=True)
    return [replace(answer[0], edits=True), *answer[1:]]


def _whole_line(turn: Turn, command: Command, given: Given) -> str:
    """Return the line that says all answers at once, '' if the grammar takes no such line."""
    words = {slot: one for slot, one in given.words.items() if slot != PHOTO}
    phrase = command.phrase(turn, " ".join(words.values()))
    if phrase is None or phrase.slots.keys() != words.keys():
        return ""
    return " ".join([command.name, *words.values()])


# -- back, and asking again -------------------------------------------------------------------


def again(turn: Turn, command: Command) -> Reply:
    """Ask the question in progress again, in a new message. Raises OutdatedError."""
    dialogue = _in_progress(turn)
    with _ending_if_refused(command, dialogue):
        given = evaluate(turn, command, dialogue)
        return replace(ask(turn, dialogue, given, _asked(command, dialogue)), edits=False)


def amend(turn: Turn, command: Command, was: str, answer: str) -> Reply | list[Reply]:
    """Replace an earlier answer by other words, and continue.

    If the words cannot be parsed, the answer stays, and the current question returns with the error.
    """
    before = _in_progress(turn)
    before.typed = None
    name = before.slot_answered_with(was)
    if name is None:
        raise ValueError("that was no answer")
    dialogue = before.copy()
    lines = before.words[name].split("\n")
    lines[lines.index(was)] = answer
    dialogue.reword(name, "\n".join(lines))
    try:
        evaluate(turn, command, dialogue)
    except REFUSALS:
        stays = _("I cannot take “{answer}” there: “{before}” stays.")
        wrong = stays.format(answer=answer[:40], before=was[:40])
        return ask(turn, before, earlier(turn, command, before), _asked(command, before), wrong)
    return _go_on(turn, command, dialogue)


def _move(
    turn: Turn, command: Command, dialogue: DialogueState, slot: AnySlot, answer: str
) -> Reply | list[Reply] | None:
    """Handle Cancel, Back and the digits; None for an ordinary answer."""
    if answer == CANCEL:
        return cancelled(turn)
    if answer == BACK:
        return _step_back(turn, command, dialogue, slot)
    typed = dialogue.typed or ""
    digit = answer[len(DIGIT) :] if answer.startswith(DIGIT) else None
    if digit == "":
        dialogue.typed = ""
    elif digit is not None and digit in _DIGITS:
        dialogue.typed = (typed + digit)[:_LONGEST_TYPED].lstrip("0") or "0"
    elif answer == ERASE:
        dialogue.typed = typed[:-1]
    else:
        return None
    return ask(turn, dialogue, earlier(turn, command, dialogue), slot)


def _step_back(turn: Turn, command: Command, dialogue: DialogueState, slot: AnySlot) -> Reply | list[Reply]:
    """Undo the last input: the pad of digits, the last of many lines, or the previous answer."""
    if dialogue.typed is not None:
        dialogue.typed = None
        return ask(turn, dialogue, earlier(turn, command, dialogue), slot)
    if slot.many and slot.name in dialogue.words:
        rest = dialogue.words[slot.name].rpartition("\n")[0]
        if rest:
            dialogue.reword(slot.name, rest)
        else:
            dialogue.empty(slot.name)
    elif dialogue.order:
        dialogue.empty(dialogue.order[-1])
    dialogue.finished.clear()
    with _ending_if_refused(command, dialogue):
        return _go_on(turn, command, dialogue)


def cancelled(turn: Turn) -> Reply:
    """Drop the question in progress, with a confirmation."""
    state.drop(turn.unit, turn.presence)
    return Reply(
        (Text(_("Cancelled. Nothing was logged."), strong=True),), edits=turn.message.tapped is not None
    )
