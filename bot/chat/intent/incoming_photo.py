"""Find the batch of a photo with little or no caption."""

from __future__ import annotations

import re

from bot.chat.reply.message import Message

_CHECK = re.compile(r"^(?:@\d{1,12} )?check (\d{1,9})\b")


def check_line(message: Message) -> str:
    """Return the check that a photo records: its caption, with the batch of the question it replies to.

    A reply to a message with buttons such as 'check 12 clear' is about batch 12.
    """
    text, number = message.text.strip(), batch_asked_about(message)
    return text if number is None else f"{number} {text}".strip()


def batch_asked_about(message: Message) -> int | None:
    """Return the batch of the question that a message replies to: its buttons are checks of it."""
    found = next(filter(None, map(_CHECK.match, message.answers)), None)
    return None if found is None else int(found[1])
