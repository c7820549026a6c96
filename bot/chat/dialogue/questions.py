"""Ask a question: its words, its buttons, and the row with the state of the dialogue."""

from __future__ import annotations

from dataclasses import replace

from bot.chat.dialogue import state
from bot.chat.dialogue.examples import example_of
from bot.chat.dialogue.slots import ANSWER, BACK, CANCEL, DIGIT, DONE, ENTER, ERASE, AnySlot, Given, Question
from bot.chat.dialogue.state import DialogueState
from bot.chat.dialogue.turn import Turn
from bot.chat.i18n.language import _
from bot.chat.reply.message import Block, Button, Reply, Text
from storage.unit import ReadOnlyError


def ask(turn: Turn, dialogue: DialogueState, given: Given, slot: AnySlot, wrong: str = "") -> Reply:
    """Ask the question for one slot, and store the state of the dialogue.

    Raises ReadOnlyError in a read-only transaction.
    """
    if not turn.unit.writes:
        raise ReadOnlyError
    question = slot.question(turn, given)
    dialogue.asking = slot.name
    nonce = state.keep(turn.unit, turn.presence, turn.clock.now(), dialogue)
    typed = dialogue.typed or ""
    rows = _rows(nonce, question, dialogue)
    last = [Button(_("Cancel"), f"{ANSWER} {nonce} {CANCEL}")]
    if dialogue.order:
        last.insert(0, Button(_("Back"), f"{ANSWER} {nonce} {BACK}"))
    if slot.many and slot.name in dialogue.words:
        last.insert(0, Button(_("Done"), f"{ANSWER} {nonce} {DONE}"))
    text = f"{question.text} {typed}_" if typed else question.text
    blocks: list[Block] = [Text(wrong)] if wrong else []
    blocks.append(Text(text, strong=True))
    blocks.extend(question.blocks)
    return Reply(
        tuple(blocks),
        (*rows, tuple(last)),
        ask=example_of(turn, question.hint) or question.text,
        edits=turn.message.tapped is not None and not turn.message.shared,
        choosing=True,
    )


def _rows(nonce: int, question: Question, dialogue: DialogueState) -> list[tuple[Button, ...]]:
    if question.pad or dialogue.typed is not None:
        return _pad(nonce, dialogue.typed or "")
    return [
        tuple(Button(label, f"{ANSWER} {nonce} {answer}") for label, answer in row)
        for row in question.choices
    ]


def _pad(nonce: int, typed: str) -> list[tuple[Button, ...]]:
    def digit(sign: str) -> Button:
        return Button(sign, f"{ANSWER} {nonce} {DIGIT}{sign}")

    rows = [tuple(digit(sign) for sign in row) for row in ("123", "456", "789")]
    erase = Button(_("Erase"), f"{ANSWER} {nonce} {ERASE}")
    enter = Button(_("OK"), f"{ANSWER} {nonce} {ENTER}")
    return [*rows, (erase, digit("0"), enter)] if typed else [*rows, (digit("0"),)]


def ask_again(turn: Turn, dialogue: DialogueState, given: Given, slot: AnySlot, said: Reply) -> Reply:
    """Ask the question again, with the error above and any suggested fixes as answers."""
    again = ask(turn, dialogue, given, slot, said.first_line)
    shown = {one.label for row in again.buttons for one in row}
    offered = [one for row in said.buttons for one in row if one.label not in shown]
    if not offered:
        return again
    nonce = again.buttons[-1][-1].line.split()[1]
    mended = tuple((Button(one.label, f"{ANSWER} {nonce} {one.line}"),) for one in offered)
    return replace(again, buttons=(*mended, *again.buttons))


def choice_named(question: Question, typed: str) -> str | None:
    """Return the answer behind the button with the typed label, or None."""
    plain = typed.strip().casefold()
    return next(
        (answer for row in question.choices for label, answer in row if label.casefold() == plain), None
    )
