"""The pipeline from a message to its replies: arrival, intent, execution, settlement."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from bot.chat.conversation import arrival, execution, settlement
from bot.chat.conversation.arrival import Arrival
from bot.chat.conversation.settlement import Receipt
from bot.chat.i18n.language import speaking
from bot.chat.intent.intent import HOME, Intent, intent_of
from bot.chat.reply.message import Message, Reply
from bot.work.context import Clock
from storage.store import Store

_LONGEST_GLANCE = 200  # characters: reading more than that takes longer than a moment


@dataclass(frozen=True)
class PassResult:
    """The result of one pass: who writes, what is meant, and the replies.

    `replies` is None where reading alone was not enough. `slow` says that it may well be enough, but
    takes its time.
    """

    arrival: Arrival
    intent: Intent
    replies: list[Reply] | None
    slow: bool = False


class Conversation:
    """Answers messages, whatever channel they came by.

    A message passes the stages once with reads only, and once more with writes where that is not enough.
    """

    def __init__(self, store: Store, clock: Clock, deep_link: Callable[[str], str] | None = None) -> None:
        self.store = store
        self.clock = clock
        self.deep_link = deep_link

    def look(self, message: Message) -> PassResult | None:
        """Answer a message where that takes a moment and changes nothing.

        For a caller that must not be held up. `answer` continues from what is returned; None leaves
        everything to it.
        """
        long = len(message.text) > _LONGEST_GLANCE
        if long or message.corrects is not None or message.document is not None:
            return None
        if message.tapped is not None and HOME.match(message.text):
            return None
        return self._pass_reading(arrival.storable(message), hurried=True)

    def answer(
        self, message: Message, receipt: Receipt | None = None, looked: PassResult | None = None
    ) -> list[Reply]:
        """Return the replies to a message, everything it changed already on disk.

        `receipt` is called in the transaction that changes things; `looked` is the result of `look`.
        Raises AlreadyDoneError when the receipt says that the message was worked before.
        """
        message, moved_to = arrival.go_to_bar_of_tap(self.store, arrival.storable(message))
        seen = self._pass_reading(message) if looked is None or looked.slow else looked
        if seen is not None and seen.replies is not None:
            return settlement.noting_move(seen.replies, moved_to)
        return settlement.noting_move(self._pass_writing(message, receipt, seen), moved_to)

    def _pass_reading(self, message: Message, hurried: bool = False) -> PassResult | None:
        """Take a message through the stages with reads only; None for somebody new or thought lost."""
        with self.store.reading() as unit:
            arrived = arrival.look_up(unit, message)
            if arrived is None:
                return None
            with speaking(arrived.tongue(self.clock.now())):
                turn = arrived.turn(unit, self.clock, self.deep_link)
                turn.hurried = hurried
                intent = intent_of(turn)
                done = execution.execute_reading(turn, intent)
                replies = settlement.settled_unkept(done.replies)
                return PassResult(arrived, intent, replies, done.slow)

    def _pass_writing(
        self, message: Message, receipt: Receipt | None, seen: PassResult | None
    ) -> list[Reply]:
        """Take a message through the stages in one transaction that keeps what it changes."""
        with self.store.writing() as unit:
            known = seen is not None and execution.still_holds(unit, seen.arrival.presence, seen.intent)
            arrived = seen.arrival if seen is not None and known else arrival.meet(unit, message)
            arrival.hold_bar(unit, arrived)
            with speaking(arrived.tongue(self.clock.now())):
                turn = arrived.turn(unit, self.clock, self.deep_link)
                intent = seen.intent if seen is not None and known else intent_of(turn)
                done = execution.execute_writing(turn, intent)
                return settlement.settle(turn, done, receipt)
