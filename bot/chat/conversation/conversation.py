"""The pipeline from a message to its replies: arrival, intent, execution, settlement."""

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import dataclass

from bot.chat.conversation import arrival, execution, settlement
from bot.chat.conversation.arrival import Arrival
from bot.chat.conversation.last_shown import LastShown
from bot.chat.conversation.notices import noticed
from bot.chat.conversation.settlement import Receipt
from bot.chat.dialogue.on_copy import MOST_TRIES, Preparation, Prepared
from bot.chat.i18n.language import speaking
from bot.chat.intent.intent import Intent
from bot.chat.intent.recognition import HOME, intent_of
from bot.chat.reply.message import Message, Reply
from bot.work.context import Clock
from storage.store import Store

_LONG = re.compile(r"\s*(?:@\d+ )?/?(?:import|export)\b", re.IGNORECASE)
_LONGEST_GLANCE = 200  # characters: parsing longer texts takes too long for a quick look


@dataclass(frozen=True)
class PassResult:
    """The result of one pass: the author, the intent, and the replies.

    `replies` is None if a read-only pass was not enough. `slow` means that reads may suffice but take time.
    """

    arrival: Arrival
    intent: Intent
    replies: list[Reply] | None
    slow: bool = False


class Conversation:
    """Answers messages from any channel.

    A message passes the stages once with reads only, and a second time with writes if necessary.
    """

    def __init__(self, store: Store, clock: Clock, deep_link: Callable[[str], str] | None = None) -> None:
        self.store = store
        self.clock = clock
        self.deep_link = deep_link
        self._shown = LastShown()

    @staticmethod
    def takes_long(message: Message) -> bool:
        """Whether a message may need seconds, so that it must not keep others from a worker."""
        return message.document is not None or _LONG.match(message.text) is not None

    def look(self, message: Message) -> PassResult | None:
        """Answer a message if that is quick and changes nothing.

        For a caller that must not wait. `answer` continues from the result; after None it does all the work.
        """
        long = len(message.text) > _LONGEST_GLANCE
        if long or message.corrects is not None or message.document is not None or message.notice:
            return None
        if message.tapped is not None and HOME.match(message.text):
            return None
        return self._pass_reading(arrival.storable(message), hurried=True)

    def answer(
        self, message: Message, receipt: Receipt | None = None, looked: PassResult | None = None
    ) -> list[Reply]:
        """Return the replies to a message after committing all its changes.

        `receipt` is called in the transaction of the changes; `looked` is the result of `look`. Raises
        AlreadyDoneError if the receipt reports an earlier run of the message.
        """
        if message.notice:
            return noticed(self.store, self.clock, arrival.storable(message))
        message, moved_to = arrival.go_to_bar_of_tap(self.store, arrival.storable(message))
        seen = self._pass_reading(message) if looked is None or looked.slow else looked
        if seen is not None and seen.replies is not None:
            return settlement.noting_move(seen.replies, moved_to)
        return settlement.noting_move(self._prepared_and_written(message, receipt, seen), moved_to)

    def _prepared_and_written(
        self, message: Message, receipt: Receipt | None, seen: PassResult | None
    ) -> list[Reply]:
        """Run the writing pass; work that takes long is done between two of them."""
        prepared: Prepared | None = None
        for tried in range(MOST_TRIES + 1):
            try:
                return self._pass_writing(message, receipt, seen, prepared, alone=tried == MOST_TRIES)
            except Preparation as wanted:
                again = wanted
            finally:
                if prepared is not None:
                    prepared.close()
            prepared = again.work(self.store)
        raise AssertionError("the last try needs no preparation")

    def _pass_reading(self, message: Message, hurried: bool = False) -> PassResult | None:
        """Run the stages with reads only; None for a new or unreachable person."""
        with self.store.reading() as unit:
            arrived = arrival.look_up(unit, message)
            if arrived is None or (hurried and not arrived.is_ready(unit)):
                return None
            with speaking(arrived.tongue(self.clock.now())):
                turn = arrived.turn(unit, self.clock, self.deep_link)
                turn.hurried = hurried
                self._shown.remind(turn)
                intent = intent_of(turn)
                done = execution.execute_reading(turn, intent)
                replies = settlement.settled_unkept(done.replies)
                if replies is not None:
                    self._shown.keep(turn, replies)
                return PassResult(arrived, intent, replies, done.slow)

    def _pass_writing(
        self,
        message: Message,
        receipt: Receipt | None,
        seen: PassResult | None,
        prepared: Prepared | None = None,
        alone: bool = False,
    ) -> list[Reply]:
        """Run the stages in one transaction, and commit the changes."""
        with self.store.writing() as unit:
            known = seen is not None and execution.still_holds(unit, seen.arrival.presence, seen.intent)
            arrived = seen.arrival if seen is not None and known else arrival.meet(unit, message)
            arrival.hold_bar(unit, arrived)
            if receipt is not None and arrival.was_logged(unit, arrived):
                settlement.note_repeated(unit, receipt)
                return []
            with speaking(arrived.tongue(self.clock.now())):
                turn = arrived.turn(unit, self.clock, self.deep_link)
                turn.prepared, turn.alone = prepared, alone
                self._shown.remind(turn)
                intent = seen.intent if seen is not None and known else intent_of(turn)
                done = execution.execute_writing(turn, intent)
                replies = settlement.settle(turn, done, receipt)
                self._shown.keep(turn, replies)
                return replies
