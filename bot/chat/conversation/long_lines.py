"""Lines behind buttons that no button can carry: kept in the database, with their numbers on the buttons."""

from __future__ import annotations

from dataclasses import replace

from bot.chat.dialogue.slots import ANSWER
from bot.chat.dialogue.turn import Turn, presence_of
from bot.chat.intent.intent import KEPT
from bot.chat.reply.message import BUTTON_BYTES, Button, Reply
from bot.work.people import people


def kept_long_lines(turn: Turn, replies: list[Reply]) -> list[Reply]:
    """Keep lines that no button can carry in the database, and put their numbers behind the buttons."""
    if not too_long(replies):
        return replies
    presence = turn.presence
    room_id, person_id = presence.room_id or 0, presence.person_id or 0
    now = presence_of(turn.unit, turn.message).question
    state = dict(now.state) if now is not None else {}
    lines: list[str] = []
    for one in replies:
        lines += [
            button.line for row in one.buttons for button in row if len(button.line.encode()) > BUTTON_BYTES
        ]
    nonce = people.keep_question(turn.unit, room_id, person_id, {**state, "lines": lines}, turn.clock.now())
    old = None if now is None else now.nonce

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


def too_long(replies: list[Reply]) -> bool:
    """Whether a button has a line that it cannot carry."""
    return any(
        len(button.line.encode()) > BUTTON_BYTES for one in replies for row in one.buttons for button in row
    )
