"""Asking for what is missing, one question at a time, so that it survives a restart.

What is known so far is kept as the very words that filled each slot. A finished
dialogue is therefore just the one-line command, spelt over several messages.
"""

from __future__ import annotations

from dataclasses import replace
from typing import Any

from bot.chat.dialogue.command import Command
from bot.chat.dialogue.error_messages import worded_phrase_error
from bot.chat.dialogue.slots import ANSWER, BACK, CANCEL, DIGIT, DONE, ENTER, ERASE, PHOTO, Question, Slot
from bot.chat.dialogue.turn import Given, Say, Turn
from bot.chat.grammar import parser
from bot.chat.i18n.keywords import stands_for
from bot.chat.i18n.language import _, tongue
from bot.chat.i18n.numbers import AmbiguousNumberError, NotANumberError
from bot.chat.reply.message import Block, Button, Reply, Text
from bot.work.people import people

_DIGITS = frozenset("0123456789")
_LONGEST_TYPED = 6


def start(turn: Turn, command: Command, given: Given) -> Reply | list[Reply]:
    """Run the command if all it needs is known; else ask for the first thing missing."""
    _take_photo(turn, command, given.values, given.texts)
    known = accepted(turn, command, given)
    missing = _missing(turn, command, known)
    if missing is None:
        return command.run(turn, known)
    known.guided = True
    order = [name for name in known.texts if name != PHOTO]
    state = {"command": command.name, "slots": known.texts, "order": order}
    return ask(turn, command, state, known, missing)


def _take_photo(turn: Turn, command: Command, *into: dict[str, Any]) -> bool:
    """Fill the photo's slot with the message's photo, where the command keeps one."""
    photo = turn.message.photo
    if photo is None or all(slot.name != PHOTO for slot in command.slots):
        return False
    for values in into:
        values[PHOTO] = photo
    return True


def accepted(turn: Turn, command: Command, given: Given) -> Given:
    """Return what was given, each value as its slot accepts it. Raises Say.

    What comes after a gap may hang on what is missing there, as a price on its ingredient: it is
    looked at when the gap is filled, and until then only its words are kept.
    """
    known = Given({}, given.texts, given.guided, given.lines, given.rest)
    known.values = dict(given.values)
    for slot in command.slots:
        if slot.name in given.values:
            known.values[slot.name] = slot.accept(turn, known, given.values[slot.name])
        elif not given.lines and slot.wanted(turn, known):
            break  # what comes after it may lean on it, and is read once it is known
    return known


def _missing(turn: Turn, command: Command, given: Given) -> Slot | None:
    if given.lines:
        return None  # several lines at once are each complete, or refused by the command
    for slot in command.slots:
        if slot.name not in given.values and slot.wanted(turn, given):
            return slot
    return None


def ask(
    turn: Turn, command: Command, state: dict[str, Any], given: Given, slot: Slot, wrong: str = ""
) -> Reply:
    """Put the question for one slot, and write down where the dialogue stands."""
    question = slot.ask(turn, given)
    state = {**state, "asking": slot.name}
    presence = turn.presence
    if presence.room_id is None or presence.person_id is None:
        raise ValueError("meet the person before asking")
    nonce = people.keep_question(turn.unit, presence.room_id, presence.person_id, state, turn.clock.now())
    typed = state.get("typed", "")
    if question.pad or "typed" in state:
        rows = _pad(nonce, typed)
    else:
        rows = [
            tuple(Button(label, f"{ANSWER} {nonce} {answer}") for label, answer in row)
            for row in question.choices
        ]
    last = [Button(_("Cancel"), f"{ANSWER} {nonce} {CANCEL}")]
    if state["order"]:
        last.insert(0, Button(_("Back"), f"{ANSWER} {nonce} {BACK}"))
    if slot.many and slot.name in state["slots"]:
        last.insert(0, Button(_("Done"), f"{ANSWER} {nonce} {DONE}"))
    rows.append(tuple(last))
    text = f"{question.text} {typed}_" if typed else question.text
    blocks: list[Block] = [Text(wrong)] if wrong else []
    blocks.append(Text(text, strong=True))
    blocks.extend(question.blocks)
    return Reply(
        tuple(blocks),
        tuple(rows),
        ask=question.hint or question.text,
        edits=turn.message.tapped is not None,
        choosing=True,
    )


def _pad(nonce: int, typed: str) -> list[tuple[Button, ...]]:
    def digit(sign: str) -> Button:
        return Button(sign, f"{ANSWER} {nonce} {DIGIT}{sign}")

    rows = [tuple(digit(sign) for sign in row) for row in ("123", "456", "789")]
    erase = Button(_("Erase"), f"{ANSWER} {nonce} {ERASE}")
    enter = Button(_("OK"), f"{ANSWER} {nonce} {ENTER}")
    return [*rows, (erase, digit("0"), enter)] if typed else [*rows, (digit("0"),)]


def resume(turn: Turn, command: Command, answer: str, tapped: bool) -> Reply | list[Reply]:
    """Go on with the question in progress, `answer` being what was said or tapped."""
    question = turn.presence.question
    if question is None:
        raise ValueError("no question is in progress")
    state = dict(question.state)
    state["slots"] = dict(state["slots"])
    state["order"] = list(state["order"])
    slot = next(slot for slot in command.slots if slot.name == state["asking"])
    if _take_photo(turn, command, state["slots"]) and not answer.strip():
        return ask(turn, command, state, evaluate(turn, command, state), slot, _("The photo is kept."))
    if tapped:
        moved = _move(turn, command, state, slot, answer)
        if moved is not None:
            return moved
        if answer == ENTER and state.get("typed"):
            answer = state["typed"]
    state.pop("typed", None)
    return _take_answer(turn, command, state, slot, answer)


def _take_answer(
    turn: Turn, command: Command, state: dict[str, Any], slot: Slot, answer: str
) -> Reply | list[Reply]:
    """Read an answer in words and go on, or ask again with what was wrong."""
    if slot.many and slot.name in state["slots"] and _says_done(answer):
        return _go_on(turn, command, state, finished=slot.name)
    before = state["slots"].get(slot.name, "")
    given = evaluate(turn, command, state)
    try:
        filled = parser.read(slot.reads_by, answer, turn.vocabulary)
        value = next(iter(filled.slots.values())).value
        turn.line = answer
        slot.accept(turn, given, value)
    except parser.PhraseError as error:
        meant = _choice_named(slot.ask(turn, given), answer)
        if meant is not None and meant != answer:
            moved = _move(turn, command, state, slot, meant)
            return _take_answer(turn, command, state, slot, meant) if moved is None else moved
        whole = _said_at_once(turn, command, state, answer)
        if whole is not None:
            _end(turn)
            return start(turn, command, whole)
        wrong = worded_phrase_error(error, answer)
        return ask(turn, command, state, given, slot, wrong)
    except Say as say:
        return _ask_again(turn, command, state, given, slot, say.answer)
    state["slots"][slot.name] = f"{before}\n{answer}" if slot.many and before else answer
    state["answered"] = True
    if slot.name not in state["order"]:
        state["order"].append(slot.name)
    if slot.many:
        return ask(turn, command, state, evaluate(turn, command, state), slot)
    return _go_on(turn, command, state)


def _says_done(answer: str) -> bool:
    """Whether an answer only says that a list is complete: 'done', "that's it"."""
    plain = answer.strip(" .!").casefold()
    return plain == _("Done").casefold() or stands_for(plain, "DONE", tongue().language)


def _said_at_once(turn: Turn, command: Command, state: dict[str, Any], answer: str) -> Given | None:
    """Return what was given where an answer says more than was asked: '3 lemons mouldy' to which fruit.

    It has to say again all that was answered before, or that would be lost; else None.
    """
    try:
        phrase = parser.read(command.rule, answer, turn.vocabulary)
    except (parser.PhraseError, AmbiguousNumberError, NotANumberError):
        return None
    needed = {state["asking"], *state["slots"]} - {PHOTO}
    said = [{one.slot for one in line.filled} for line in phrase.lines] or [set(phrase.slots)]
    if not all(needed <= one for one in said):
        return None
    turn.line = f"{command.name} {answer}"
    given = Given.of(phrase.slots, phrase.lines, phrase.rest)
    if PHOTO in state["slots"]:
        given.values[PHOTO] = given.texts[PHOTO] = state["slots"][PHOTO]
    return given


def again(turn: Turn, command: Command) -> Reply:
    """Put the question in progress once more, as a message of its own."""
    question = turn.presence.question
    if question is None:
        raise ValueError("no question is in progress")
    slot = next(slot for slot in command.slots if slot.name == question.state["asking"])
    given = evaluate(turn, command, question.state)
    return replace(ask(turn, command, question.state, given, slot), edits=False)


def _choice_named(question: Question, typed: str) -> str | None:
    """Return the answer behind the button whose words somebody typed, or None."""
    plain = typed.strip().casefold()
    return next(
        (answer for row in question.choices for label, answer in row if label.casefold() == plain), None
    )


def amend(turn: Turn, command: Command, was: str, answer: str) -> Reply | list[Reply] | None:
    """Put other words in the place of an answer given before, and go on; None if it was no answer.

    What does not read leaves the answer as it was: the question in progress comes again and says so.
    """
    question = turn.presence.question
    if question is None:
        raise ValueError("no question is in progress")
    state = {**question.state, "slots": dict(question.state["slots"]), "order": list(question.state["order"])}
    state.pop("typed", None)
    before = dict(state["slots"])
    name = next((one for one in reversed(state["order"]) if was in before[one].split("\n")), None)
    if name is None:
        return None
    lines = before[name].split("\n")
    lines[lines.index(was)] = answer
    state["slots"][name] = "\n".join(lines)
    try:
        evaluate(turn, command, state)
    except (parser.PhraseError, AmbiguousNumberError, NotANumberError, Say):
        state["slots"] = before
        asked = next(slot for slot in command.slots if slot.name == state["asking"])
        stays = _("I cannot take “{answer}” there: “{before}” stays.")
        wrong = stays.format(answer=answer[:40], before=was[:40])
        return ask(turn, command, state, evaluate(turn, command, state), asked, wrong)
    return _go_on(turn, command, state)


def _ask_again(
    turn: Turn, command: Command, state: dict[str, Any], given: Given, slot: Slot, said: Reply
) -> Reply:
    """Put the question once more, with what was wrong above and any offered mending as answers."""
    again = ask(turn, command, state, given, slot, said.first_line)
    shown = {one.label for row in again.buttons for one in row}
    offered = [one for row in said.buttons for one in row if one.label not in shown]
    if not offered:
        return again
    nonce = again.buttons[-1][-1].line.split()[1]
    mended = tuple((Button(one.label, f"{ANSWER} {nonce} {one.line}"),) for one in offered)
    return replace(again, buttons=(*mended, *again.buttons))


def _move(
    turn: Turn, command: Command, state: dict[str, Any], slot: Slot, answer: str
) -> Reply | list[Reply] | None:
    """Do what Cancel, Back and the digits ask; None for an ordinary answer."""
    if answer == CANCEL:
        return cancelled(turn)
    if answer == BACK:
        return _step_back(turn, command, state, slot)
    typed = state.get("typed", "")
    digit = answer[len(DIGIT) :] if answer.startswith(DIGIT) else None
    if digit == "":
        state["typed"] = ""
    elif digit is not None and digit in _DIGITS:
        state["typed"] = (typed + digit)[:_LONGEST_TYPED].lstrip("0") or "0"
    elif answer == ERASE:
        state["typed"] = typed[:-1]
    else:
        return None
    return ask(turn, command, state, evaluate(turn, command, state), slot)


def _step_back(turn: Turn, command: Command, state: dict[str, Any], slot: Slot) -> Reply | list[Reply]:
    """Take back the last thing said: the pad of digits, the last of many lines, or the answer before."""
    if "typed" in state:
        state.pop("typed")
        return ask(turn, command, state, evaluate(turn, command, state), slot)
    if slot.many and slot.name in state["slots"]:
        rest = state["slots"][slot.name].rpartition("\n")[0]
        state["slots"].pop(slot.name)
        if rest:
            state["slots"][slot.name] = rest
        elif slot.name in state["order"]:
            state["order"].remove(slot.name)
    elif state["order"]:
        state["slots"].pop(state["order"].pop(), None)
    state.pop("finished", None)
    return _go_on(turn, command, state)


def cancelled(turn: Turn) -> Reply:
    """Forget the question in progress and say so."""
    _end(turn)
    return Reply(
        (Text(_("Cancelled. Nothing was logged."), strong=True),), edits=turn.message.tapped is not None
    )


def _end(turn: Turn) -> None:
    """Forget the question in progress: it is answered, or no longer asked."""
    presence = turn.presence
    if presence.room_id is not None and presence.person_id is not None:
        people.drop_question(turn.unit, presence.room_id, presence.person_id)


def evaluate(turn: Turn, command: Command, state: dict[str, Any]) -> Given:
    """Return what the words kept so far mean."""
    given = Given({}, {}, guided=True)
    for slot in command.slots:
        text = state["slots"].get(slot.name)
        if text is None:
            if slot.wanted(turn, given):
                break  # as in accepted
            continue
        phrase = parser.read(slot.reads_by, text, turn.vocabulary)
        given.texts[slot.name] = text
        given.values[slot.name] = slot.accept(turn, given, next(iter(phrase.slots.values())).value)
    return given


def _go_on(
    turn: Turn, command: Command, state: dict[str, Any], finished: str | None = None
) -> Reply | list[Reply]:
    given = evaluate(turn, command, state)
    done = {*state.get("finished", ()), *([finished] if finished else ())}
    state["finished"] = sorted(done)
    for slot in command.slots:
        open_list = slot.many and slot.name in given and slot.name not in done
        if (slot.name not in given and slot.wanted(turn, given)) or open_list:
            return ask(turn, command, state, given, slot)
    _end(turn)
    answer = command.run(turn, given)
    if turn.message.tapped is None:
        return answer
    # The last tap of a dialogue turns the question itself into the answer.
    if isinstance(answer, Reply):
        return replace(answer, edits=True)
    return [replace(answer[0], edits=True), *answer[1:]]
