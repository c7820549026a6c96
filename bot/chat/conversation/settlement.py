"""Stage 4: complete the replies, store long lines of buttons, and mark the message as processed."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

from bot.chat.conversation.execution import Execution
from bot.chat.dialogue import filling, state
from bot.chat.dialogue.registry import all_commands
from bot.chat.dialogue.slots import ANSWER
from bot.chat.dialogue.turn import Turn, presence_of
from bot.chat.i18n.language import _
from bot.chat.intent.recognition import KEPT
from bot.chat.reply.message import BUTTON_BYTES, Button, Reply, Text, replies_to_json
from bot.work.log import thread
from storage.unit import Unit

# Marks the update as done in the transaction of the changes; False if it was done before.
Receipt = Callable[[Unit, str], bool]


class AlreadyDoneError(Exception):
    """This update was processed before; nothing may change twice."""


def settle(turn: Turn, done: Execution, receipt: Receipt | None) -> list[Reply]:
    """Return the replies in sendable form, and mark the message as processed by the receipt.

    Raises AlreadyDoneError if it was processed before.
    """
    replies = [*(done.replies or []), *_asked_again(turn, done)]
    if _too_long(replies):
        replies = _keeping_long_lines(turn, replies)
    if receipt is not None and not receipt(turn.unit, replies_to_json(replies)):
        raise AlreadyDoneError
    return replies


def note_repeated(unit: Unit, receipt: Receipt) -> None:
    """Mark a message as processed that was logged under another number.

    Raises AlreadyDoneError if it was logged under this one.
    """
    if not receipt(unit, replies_to_json([])):
        raise AlreadyDoneError


def settled_unkept(replies: list[Reply] | None) -> list[Reply] | None:
    """Return replies that need no stored rows; None if a button's line must be stored."""
    return None if replies is None or _too_long(replies) else replies


def noting_move(replies: list[Reply], moved_to: str) -> list[Reply]:
    """Add to the first reply that a tap moved the person to another of their bars."""
    if not moved_to or not replies:
        return replies
    note = Text(_("You are now at {bar}.").format(bar=moved_to))
    return [replace(replies[0], blocks=(*replies[0].blocks, note)), *replies[1:]]


def _asked_again(turn: Turn, done: Execution) -> list[Reply]:
    """Repeat the open question below the answer, unless the command asked its own."""
    dialogue = None if turn.pending is None else turn.pending.dialogue
    if not done.asks_again or dialogue is None or not state.is_still_asked(turn.unit, turn.presence):
        return []
    command = all_commands()[dialogue.command]
    if turn.presence.bar is None and not command.anyone:
        return []  # removed from the bar while the question was open
    if turn.presence.bar is not None and turn.context.entry is not None:
        dialogue.noted = not thread.ends_with_undo(turn.context, turn.message.chat_key)
    try:
        return [filling.again(turn, command)]
    except filling.OutdatedError as error:
        state.drop(turn.unit, turn.presence)
        return [error.answer]


def _keeping_long_lines(turn: Turn, replies: list[Reply]) -> list[Reply]:
    """Store lines too long for a button in the database, and put their numbers behind the buttons."""
    now = state.pending_of(presence_of(turn.unit, turn.message).question)
    lines = [
        button.line
        for one in replies
        for row in one.buttons
        for button in row
        if len(button.line.encode()) > BUTTON_BYTES
    ]
    dialogue, old = (None, None) if now is None else (now.dialogue, now.nonce)
    nonce = state.keep(turn.unit, turn.presence, turn.clock.now(), dialogue, tuple(lines))

    def kept(button: Button) -> Button:
        if len(button.line.encode()) > BUTTON_BYTES:
            line = f"{KEPT} {nonce} {lines.index(button.line)}"
        elif old is not None and button.line.startswith(f"{ANSWER} {old} "):
            line = button.line.replace(f" {old} ", f" {nonce} ", 1)
        else:
            return button
        return Button(button.label, line)

    return [
        replace(one, buttons=tuple(tuple(kept(button) for button in row) for row in one.buttons))
        for one in replies
    ]


def _too_long(replies: list[Reply]) -> bool:
    """Whether a button's line is too long for it."""
    return any(
        len(button.line.encode()) > BUTTON_BYTES for one in replies for row in one.buttons for button in row
    )
