"""Find the batch of a photo with little or no caption."""

from __future__ import annotations

import re

from bot.chat.reply.message import Message

_CHECK = re.compile(r"^(?:@\d{1,12} )?check (\d{1,9})\b")


def check_line(message: Message) -> str:
    """Return the check that a photo records: its caption, with the batch of the question it replies to.

    A reply to a message with buttons such as 'check 12 clear' is about batch 12.
    """
    text = message.text.strip()
    for line in message.answers:
        found = _CHECK.match(line)
        if found is not None:
            return f"{found[1]} {text}".strip()
    return text
