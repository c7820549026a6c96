"""Keep what each person was last shown and offered in each chat, for 'what does that cost?' and 'yes'."""

from __future__ import annotations

from collections import OrderedDict
from collections.abc import Sequence
from dataclasses import dataclass
from datetime import datetime, timedelta
from threading import Lock

from bot.chat.dialogue.inputs.naming import cancel_button
from bot.chat.dialogue.inputs.settling import SURE, settle_line
from bot.chat.dialogue.turn import Turn
from bot.chat.intent.intent import Said
from bot.chat.intent.recognition import said_in
from bot.chat.reply.message import Message, Reply

_MOST = 4096  # persons in chats
_OFFERED_FOR = timedelta(minutes=10)


@dataclass(frozen=True, slots=True)
class _Last:
    """The last line that only showed something, and the lines offered by the last answer."""

    shown: str = ""
    offered: tuple[str, ...] = ()
    waits: bool = False
    at: datetime | None = None


class LastShown:
    """The lines, in memory only, because a read writes nothing; after a restart 'it' means nothing shown."""

    def __init__(self) -> None:
        self._lines: OrderedDict[tuple[str, str], _Last] = OrderedDict()
        self._lock = Lock()

    def remind(self, turn: Turn) -> None:
        """Tell a turn the line answered last to its author in this chat, and what was offered just now."""
        last = self._lines.get(_key(turn.message), _Last())
        turn.shown = last.shown
        if last.at is not None and turn.clock.now() - last.at <= _OFFERED_FOR:
            turn.offered, turn.waits = last.offered, last.waits

    def keep(self, turn: Turn, replies: Sequence[Reply]) -> None:
        """Keep the line of a turn if it logged nothing, and what it offers; an entry ends what was shown."""
        logged = turn.presence.bar is not None and turn.context.entry is not None
        shown = turn.line if isinstance(said_in(turn.line), Said) else turn.shown
        offered = _offered(replies[-1]) if turn.offering and replies else ()
        waits = len(offered) == 1 or (bool(offered) and cancel_button() in replies[-1].buttons[-1])
        with self._lock:
            self._lines.pop(_key(turn.message), None)
            self._lines[_key(turn.message)] = _Last("" if logged else shown, offered, waits, turn.clock.now())
            while len(self._lines) > _MOST:
                self._lines.popitem(last=False)


def _offered(answer: Reply) -> tuple[str, ...]:
    """Return the lines that an answer offers; none where it offers an undo."""
    lines = [button.line for row in answer.buttons for button in row if button.line != cancel_button().line]
    sure = [line for line in lines if line.startswith(settle_line(SURE, ""))]
    return () if any(line.startswith("undo ") for line in lines) else tuple(sure or lines)


def _key(message: Message) -> tuple[str, str]:
    return message.chat_key, message.sender.outside_id
