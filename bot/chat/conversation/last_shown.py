"""Keep the last line of each person in each chat that only showed something, for 'what does that cost?'."""

from __future__ import annotations

from collections import OrderedDict
from threading import Lock

from bot.chat.dialogue.turn import Turn
from bot.chat.intent.intent import Said
from bot.chat.intent.recognition import said_in
from bot.chat.reply.message import Message

_MOST = 4096  # persons in chats


class LastShown:
    """The lines, in memory only, because a read writes nothing; after a restart 'it' means nothing shown."""

    def __init__(self) -> None:
        self._lines: OrderedDict[tuple[str, str], str] = OrderedDict()
        self._lock = Lock()

    def of(self, message: Message) -> str:
        """Return the line answered last to the author in this chat, '' if something was logged since."""
        return self._lines.get(_key(message), "")

    def keep(self, turn: Turn) -> None:
        """Keep the line of a turn if it logged nothing; an entry ends what was shown."""
        if not isinstance(said_in(turn.line), Said):
            return
        logged = turn.presence.bar is not None and turn.context.entry is not None
        with self._lock:
            self._lines.pop(_key(turn.message), None)
            if not logged:
                self._lines[_key(turn.message)] = turn.line
            while len(self._lines) > _MOST:
                self._lines.popitem(last=False)


def _key(message: Message) -> tuple[str, str]:
    return message.chat_key, message.sender.outside_id
