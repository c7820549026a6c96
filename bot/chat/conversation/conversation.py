"""From a message to replies: finds the person's bar, the question or command meant, and runs it."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, replace
from datetime import timedelta

from bot.chat.conversation import edits
from bot.chat.conversation.dispatch import REFUSALS, MustWriteError, as_list, barred, run
from bot.chat.conversation.long_lines import kept_long_lines, too_long
from bot.chat.dialogue import questions
from bot.chat.dialogue.registry import all_commands
from bot.chat.dialogue.turn import Turn, presence_of
from bot.chat.grammar.vocabulary import vocabulary_for
from bot.chat.i18n.language import _, speaking
from bot.chat.i18n.locale_choice import tongue_of
from bot.chat.intent.fallbacks import worded_refusal
from bot.chat.intent.intent import HOME, OUT_OF_DATE, Plan, meant
from bot.chat.reply.message import Message, Reply, Text, harmless, replies_to_json
from bot.work.context import Clock
from bot.work.errors import TakesTimeError, TooLateError
from bot.work.log import corrections
from bot.work.log.undo import UNDO_HOURS
from bot.work.people import people
from storage.store import Store
from storage.unit import ReadOnlyError, Unit

_LONGEST_GLANCE = 200  # characters: reading more than that takes longer than a moment
# They change where one stands or how one is understood: what was half said before fits no longer.
_ENDS_QUESTIONS = frozenset({"cancel", "start", "join", "bars", "language", "leave"})
_ENDS_QUESTIONS |= {"forget me", "delete bar", "restore bar"}

# Marks the update done within the transaction that did the work; False: it was done before.
Receipt = Callable[[Unit, str], bool]


class AlreadyDoneError(Exception):
    """This update was worked before; nothing may change twice."""


@dataclass(frozen=True)
class Looked:
    """What a look at a message showed: who speaks where, what is meant, the replies if reading was enough.

    `slow` is set where it may well be enough but takes its time.
    """

    presence: people.Presence
    plan: Plan
    replies: list[Reply] | None = None
    slow: bool = False


class Conversation:
    """Answers messages, whatever channel they came by."""

    def __init__(
        self,
        store: Store,
        clock: Clock,
        bot_name: str = "",
        deep_link: Callable[[str], str] | None = None,
    ) -> None:
        self.store = store
        self.clock = clock
        self.bot_name = bot_name
        self.deep_link = deep_link

    def look(self, message: Message) -> Looked | None:
        """Find out what is meant, and answer it where that takes a moment and changes nothing.

        For a caller that must not be held up. What it cannot answer `answer` goes on with; None leaves
        everything to `answer`.
        """
        long = len(message.text) > _LONGEST_GLANCE
        if long or message.corrects is not None or message.document is not None:
            return None
        if message.tapped is not None and HOME.match(message.text):
            return None
        return self._look(_storable(message), hurried=True)

    def answer(
        self, message: Message, receipt: Receipt | None = None, looked: Looked | None = None
    ) -> list[Reply]:
        """Return the replies to a message, everything it changed already on disk.

        `receipt` is called in the transaction that changes things. `looked` is what a look has shown.
        Raises AlreadyDoneError when the receipt says that the message was worked before.
        """
        message = _storable(message)
        if message.corrects is not None:
            return self._correct(message, message.corrects, receipt)
        message, moved = self._at_its_bar(message)
        replies = self._answered(message, receipt, looked)
        if not moved or not replies:
            return replies
        note = Text(_("You are now at {bar}.").format(bar=moved))
        return [replace(replies[0], blocks=(*replies[0].blocks, note)), *replies[1:]]

    def _answered(
        self, message: Message, receipt: Receipt | None, looked: Looked | None = None
    ) -> list[Reply]:
        if looked is None or looked.slow:
            looked = self._look(message)
        if looked is not None and looked.replies is not None:
            return looked.replies
        return self._answer_writing(
            message, receipt, None if looked is None else (looked.presence, looked.plan)
        )

    def _look(self, message: Message, hurried: bool = False) -> Looked | None:
        """Answer by reading alone where that is enough; None for somebody new or thought lost."""
        with self.store.reading() as unit:
            presence = presence_of(unit, message)
            if not presence.known or not presence.reachable:
                return None
            with speaking(tongue_of(presence, self.clock.now())):
                turn = self._turn(unit, message, presence)
                turn.hurried = hurried
                plan = meant(turn)
                replies, slow = None, False
                if not plan.writes and not (presence.question and plan.command):
                    slow = hurried and not plan.quick
                    try:
                        replies = None if slow else self._guarded(turn, plan)
                    except TakesTimeError:
                        slow = True
                    if replies is not None and too_long(replies):
                        replies = None
                return Looked(presence, replace(plan, line=turn.line), replies, slow)

    def _answer_writing(
        self, message: Message, receipt: Receipt | None, seen: tuple[people.Presence, Plan] | None
    ) -> list[Reply]:
        """Do the same where things may change; a refused command leaves nothing behind but its answer."""
        try:
            with self.store.writing() as unit:
                turn, plan = self._seated(unit, message, seen)
                with speaking(tongue_of(turn.presence, self.clock.now())):
                    kept = self._keeps_question(turn, plan)
                    replies = run(turn, plan)
                    return self._settled(turn, [*replies, *self._asked_again(turn, kept)], receipt)
        except REFUSALS as error:
            refusal = error
        with self.store.writing() as unit:
            turn, plan = self._seated(unit, message, seen)
            with speaking(tongue_of(turn.presence, self.clock.now())):
                kept = self._keeps_question(turn, plan)
                said = worded_refusal(refusal, turn)
                return self._settled(turn, [*said, *self._asked_again(turn, kept)], receipt)

    def _at_its_bar(self, message: Message) -> tuple[Message, str]:
        """Go to the bar whose number stands before a tapped line, so that it cannot act in another.

        Returns the message without the number, and the bar's name if the person stood elsewhere.
        """
        found = HOME.match(message.text) if message.tapped is not None else None
        if found is None:
            return message, ""
        bar_id, plain = int(found[1]), replace(message, text=message.text[found.end() :], number=None)
        with self.store.reading() as unit:
            presence = presence_of(unit, message)
        if presence.bar is not None and presence.bar.id == bar_id:
            return plain, ""
        if presence.bar is None and not message.place.private:
            return plain, ""  # a stranger in the group: told so, like with anything else
        if not message.place.private or presence.person_id is None:
            return replace(message, text=OUT_OF_DATE), ""
        with self.store.writing() as unit:
            there = people.switch(unit, replace(presence, number=message.number), bar_id)
        if there is None or there.bar is None:
            return replace(message, text=OUT_OF_DATE), ""
        return plain, there.bar.name

    def _correct(self, message: Message, key: str, receipt: Receipt | None) -> list[Reply]:
        """Answer an edited message: log its new words in place of what the old ones logged."""
        if message.was is not None and message.was.strip() == message.text.strip():
            return []
        try:
            with self.store.writing() as unit:
                found = presence_of(unit, message)
                presence = replace(found, question=None)
                if presence.bar is None:
                    return []
                _hold(unit, presence)
                with speaking(tongue_of(presence, self.clock.now())):
                    turn = self._turn(unit, message, presence)
                    earlier = corrections.logged_by(turn.context, key)
                    if earlier.any:
                        edits.begin(turn, earlier)
                        replies = edits.finish(turn, earlier, run(turn, meant(turn)))
                        return self._settled(turn, replies, receipt)
                    amended = self._amend(self._turn(unit, message, found))
                    if amended is not None:
                        return self._settled(turn, amended, receipt)
                    if meant(turn).command is None or self._is_late(message):
                        return []
        except REFUSALS as error:
            refusal = error
        else:
            return self._answered(message, receipt)  # a command mended, that meant nothing before
        with self.store.writing() as unit, speaking(tongue_of(presence, self.clock.now())):
            turn = self._turn(unit, message, presence)
            turn.line = message.text
            late = isinstance(refusal, TooLateError)
            said = edits.refused(worded_refusal(refusal, turn), earlier, late)
            return self._settled(turn, said, receipt)

    @staticmethod
    def _amend(turn: Turn) -> list[Reply] | None:
        """Follow the edit of an answer that the question in progress was given; None if it is none."""
        question, was = turn.presence.question, turn.message.was
        if question is None or "command" not in question.state or was is None:
            return None
        command = all_commands()[question.state["command"]]
        if barred(turn, command) is not None:
            return None
        amended = questions.amend(turn, command, was.strip(), turn.message.text.strip())
        return None if amended is None else as_list(amended)

    def _is_late(self, message: Message) -> bool:
        """Whether a message was written too long ago for an edit to be followed."""
        return self.clock.now() - message.sent_at > timedelta(hours=UNDO_HOURS)

    def _seated(
        self, unit: Unit, message: Message, seen: tuple[people.Presence, Plan] | None
    ) -> tuple[Turn, Plan]:
        """Return the talk within this transaction; whoever is new is written down first."""
        if seen is not None:
            presence, plan = seen
            if plan.answer is None or self._still_asked(unit, presence):
                _hold(unit, presence)
                with speaking(tongue_of(presence, self.clock.now())):
                    turn = self._turn(unit, message, presence)
                turn.line = plan.line
                return turn, plan
        sender, place = message.sender, message.place
        presence = people.meet(
            unit,
            message.channel,
            sender.outside_id,
            sender.name,
            sender.language,
            place.outside_id,
            place.private,
            place.title,
        )
        _hold(unit, presence)
        with speaking(tongue_of(presence, self.clock.now())):
            turn = self._turn(unit, message, presence)
            return turn, meant(turn)

    @staticmethod
    def _still_asked(unit: Unit, presence: people.Presence) -> bool:
        """Whether the question that was read is still the one in progress: no answer counts twice."""
        if presence.question is None or presence.room_id is None or presence.person_id is None:
            return False
        now = people.asked_now(unit, presence.room_id, presence.person_id)
        return now == presence.question.nonce

    @staticmethod
    def _keeps_question(turn: Turn, plan: Plan) -> bool:
        """Whether the question in progress stays: nothing half said is lost to another thing in between.

        The same command said anew takes its place, and any does where little is lost: while nothing has
        been answered yet, or where the question belongs to something that is only read.
        """
        presence = turn.presence
        if plan.command is None or presence.question is None:
            return False
        state = presence.question.state
        lost = state.get("slots") and all_commands()[state["command"]].writes
        if plan.writes:
            # Of a line that only left something out nothing is lost; what was answered since would be.
            lost = lost and state.get("answered") and state["command"] != plan.command.name
        if lost and plan.command.name not in _ENDS_QUESTIONS:
            return True
        people.drop_question(turn.unit, presence.room_id or 0, presence.person_id or 0)
        return False

    def _asked_again(self, turn: Turn, kept: bool) -> list[Reply]:
        """Put the question that stays once more below the answer, unless the command asked one of its own."""
        question = turn.presence.question
        if not kept or question is None or not self._still_asked(turn.unit, turn.presence):
            return []
        return [questions.again(turn, all_commands()[question.state["command"]])]

    def _settled(self, turn: Turn, replies: list[Reply], receipt: Receipt | None) -> list[Reply]:
        kept = kept_long_lines(turn, replies)
        if receipt is not None and not receipt(turn.unit, replies_to_json(kept)):
            raise AlreadyDoneError
        return kept

    def _guarded(self, turn: Turn, plan: Plan) -> list[Reply] | None:
        """Run a plan that only reads; None when it turns out that something must be written."""
        try:
            return run(turn, plan, reading_only=True)
        except (MustWriteError, ReadOnlyError):
            return None
        except REFUSALS as error:
            return worded_refusal(error, turn)

    def _turn(self, unit: Unit, message: Message, presence: people.Presence) -> Turn:
        language = tongue_of(presence).language
        vocabulary = vocabulary_for(unit, presence.bar, language)
        presence = replace(presence, number=message.number)
        return Turn(unit, message, presence, vocabulary, self.clock, message.text, self.deep_link)


def _hold(unit: Unit, presence: people.Presence) -> None:
    """Let one bar's writers go one by one: what each reads must still be so when it writes."""
    if presence.bar is not None:
        unit.bar(presence.bar.id).hold()


def _storable(message: Message) -> Message:
    """Return the message with every text in it as it can be kept and shown."""
    document = message.document
    return replace(
        message,
        text=harmless(message.text),
        was=None if message.was is None else harmless(message.was),
        sender=replace(message.sender, name=harmless(message.sender.name) or message.sender.outside_id),
        place=replace(message.place, title=harmless(message.place.title)),
        document=None if document is None else replace(document, name=harmless(document.name)),
    )
