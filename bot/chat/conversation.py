"""From a message to replies: finds the person's bar, the question or command meant, and runs it."""

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import dataclass, replace
from datetime import timedelta

from bot.chat import asking, correcting, reading
from bot.chat.arriving import private_only
from bot.chat.commands import all_commands, command_at_start, in_any_language
from bot.chat.guessing import as_asked, as_setting, as_waste
from bot.chat.language import _, speaking
from bot.chat.lost import not_understood, stranger, worded_refusal
from bot.chat.message import BUTTON_BYTES, Button, Message, Reply, Text, harmless, replies_to_json, reply
from bot.chat.numbers import AmbiguousNumberError, NotANumberError
from bot.chat.picturing import check_line
from bot.chat.reading import PhraseError
from bot.chat.talk import Command, Given, Say, Talk
from bot.chat.tongues import tongue_of
from bot.chat.units import show_ml, unit_name
from bot.chat.values import Unknown
from bot.chat.vocabulary import vocabulary_for
from bot.trade.errors import TradeError
from bot.work import corrections, people
from bot.work.desk import Clock
from bot.work.errors import TakesTimeError, TooLateError, WorkError
from bot.work.undo import UNDO_HOURS
from storage.store import Store
from storage.unit import ReadOnlyError, Unit

_HOME = re.compile(r"^@(\d{1,12}) ", re.ASCII)  # a tap that is meant for this bar: '@3 check 12 clear'
_OUT_OF_DATE = "~ - -"
_LONGEST_GLANCE = 200  # characters: reading more than that takes longer than a moment
KEPT = "~"  # a tap whose line was too long for a button and is kept: '~ 41 2'
_COMMAND = re.compile(r"^/([^\W\d]+)(?:@([A-Za-z0-9_]+))?\s?")

# Marks the update done within the transaction that did the work; False: it was done before.
Receipt = Callable[[Unit, str], bool]


# What a person can mend: answered in words, and nothing that was begun stays.
_REFUSALS = (Say, WorkError, TradeError, PhraseError, AmbiguousNumberError, NotANumberError)


class AlreadyDoneError(Exception):
    """This update was worked before; nothing may change twice."""


@dataclass(frozen=True)
class _Plan:
    """What a message is taken for: a command with what follows it, or an answer to a question."""

    command: Command | None = None
    rest: str = ""
    answer: str | None = None
    tapped: bool = False
    stale: bool = False
    line: str = ""
    several: tuple[tuple[Command, str, str], ...] = ()  # command, what follows its word, and the whole line

    @property
    def writes(self) -> bool:
        """Whether a transaction that can change things is needed."""
        if any(command.writes for command, _rest, _line in self.several):
            return True
        return self.answer is not None or (self.command is not None and self.command.writes)

    @property
    def quick(self) -> bool:
        """Whether it is answered in a moment."""
        return self.stale or (self.command is not None and self.command.quick)


@dataclass(frozen=True)
class Looked:
    """What a look at a message showed: who speaks where, what is meant, the replies if reading was enough.

    `slow` is set where it may well be enough but takes its time.
    """

    presence: people.Presence
    plan: _Plan
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
        if message.tapped is not None and _HOME.match(message.text):
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
            presence = self._find(unit, message)
            if not presence.known or not presence.reachable:
                return None
            with speaking(tongue_of(presence, self.clock.now())):
                talk = self._talk(unit, message, presence)
                talk.hurried = hurried
                plan = self._plan(talk)
                replies, slow = None, False
                if not plan.writes and not (presence.question and plan.command):
                    slow = hurried and not plan.quick
                    try:
                        replies = None if slow else self._guarded(talk, plan)
                    except TakesTimeError:
                        slow = True
                    if replies is not None and _too_long(replies):
                        replies = None
                return Looked(presence, replace(plan, line=talk.line), replies, slow)

    def _answer_writing(
        self, message: Message, receipt: Receipt | None, seen: tuple[people.Presence, _Plan] | None
    ) -> list[Reply]:
        """Do the same where things may change; a refused command leaves nothing behind but its answer."""
        try:
            with self.store.writing() as unit:
                talk, plan = self._seated(unit, message, seen)
                with speaking(tongue_of(talk.presence, self.clock.now())):
                    self._end_question(talk, plan)
                    replies = self._run(talk, plan)
                    return self._settled(talk, replies, receipt)
        except _REFUSALS as error:
            refusal = error
        with self.store.writing() as unit:
            talk, plan = self._seated(unit, message, seen)
            with speaking(tongue_of(talk.presence, self.clock.now())):
                self._end_question(talk, plan)
                return self._settled(talk, worded_refusal(refusal, talk), receipt)

    def _at_its_bar(self, message: Message) -> tuple[Message, str]:
        """Go to the bar whose number stands before a tapped line, so that it cannot act in another.

        Returns the message without the number, and the bar's name if the person stood elsewhere.
        """
        found = _HOME.match(message.text) if message.tapped is not None else None
        if found is None:
            return message, ""
        bar_id, plain = int(found[1]), replace(message, text=message.text[found.end() :], number=None)
        with self.store.reading() as unit:
            presence = self._find(unit, message)
        if presence.bar is not None and presence.bar.id == bar_id:
            return plain, ""
        if presence.bar is None and not message.place.private:
            return plain, ""  # a stranger in the group: told so, like with anything else
        if not message.place.private or presence.person_id is None:
            return replace(message, text=_OUT_OF_DATE), ""
        with self.store.writing() as unit:
            there = people.switch(unit, replace(presence, number=message.number), bar_id)
        if there is None or there.bar is None:
            return replace(message, text=_OUT_OF_DATE), ""
        return plain, there.bar.name

    def _correct(self, message: Message, key: str, receipt: Receipt | None) -> list[Reply]:
        """Answer an edited message: log its new words in place of what the old ones logged."""
        if message.was is not None and message.was.strip() == message.text.strip():
            return []
        try:
            with self.store.writing() as unit:
                found = self._find(unit, message)
                presence = replace(found, question=None)
                if presence.bar is None:
                    return []
                _hold(unit, presence)
                with speaking(tongue_of(presence, self.clock.now())):
                    talk = self._talk(unit, message, presence)
                    earlier = corrections.logged_by(talk.desk, key)
                    if earlier.any:
                        correcting.begin(talk, earlier)
                        replies = correcting.finish(talk, earlier, self._run(talk, self._plan(talk)))
                        return self._settled(talk, replies, receipt)
                    amended = self._amend(self._talk(unit, message, found))
                    if amended is not None:
                        return self._settled(talk, amended, receipt)
                    if self._plan(talk).command is None or self._is_late(message):
                        return []
        except _REFUSALS as error:
            refusal = error
        else:
            return self._answered(message, receipt)  # a command mended, that meant nothing before
        with self.store.writing() as unit, speaking(tongue_of(presence, self.clock.now())):
            talk = self._talk(unit, message, presence)
            talk.line = message.text
            late = isinstance(refusal, TooLateError)
            said = correcting.refused(worded_refusal(refusal, talk), earlier, late)
            return self._settled(talk, said, receipt)

    @staticmethod
    def _amend(talk: Talk) -> list[Reply] | None:
        """Follow the edit of an answer that the question in progress was given; None if it is none."""
        question, was = talk.presence.question, talk.message.was
        if question is None or "command" not in question.state or was is None:
            return None
        command = all_commands()[question.state["command"]]
        if _refusal(talk, command) is not None:
            return None
        amended = asking.amend(talk, command, was.strip(), talk.message.text.strip())
        return None if amended is None else _as_list(amended)

    def _is_late(self, message: Message) -> bool:
        """Whether a message was written too long ago for an edit to be followed."""
        return self.clock.now() - message.sent_at > timedelta(hours=UNDO_HOURS)

    def _seated(
        self, unit: Unit, message: Message, seen: tuple[people.Presence, _Plan] | None
    ) -> tuple[Talk, _Plan]:
        """Return the talk within this transaction; whoever is new is written down first."""
        if seen is not None:
            presence, plan = seen
            if plan.answer is None or self._still_asked(unit, presence):
                _hold(unit, presence)
                with speaking(tongue_of(presence, self.clock.now())):
                    talk = self._talk(unit, message, presence)
                talk.line = plan.line
                return talk, plan
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
            talk = self._talk(unit, message, presence)
            return talk, self._plan(talk)

    @staticmethod
    def _still_asked(unit: Unit, presence: people.Presence) -> bool:
        """Whether the question that was read is still the one in progress: no answer counts twice."""
        if presence.question is None or presence.room_id is None or presence.person_id is None:
            return False
        now = people.asked_now(unit, presence.room_id, presence.person_id)
        return now == presence.question.nonce

    @staticmethod
    def _end_question(talk: Talk, plan: _Plan) -> None:
        """A new command ends the question in progress."""
        presence = talk.presence
        if plan.command is not None and presence.question is not None:
            people.drop_question(talk.unit, presence.room_id or 0, presence.person_id or 0)

    def _settled(self, talk: Talk, replies: list[Reply], receipt: Receipt | None) -> list[Reply]:
        kept = self._keep_long_lines(talk, replies)
        if receipt is not None and not receipt(talk.unit, replies_to_json(kept)):
            raise AlreadyDoneError
        return kept

    def _guarded(self, talk: Talk, plan: _Plan) -> list[Reply] | None:
        """Run a plan that only reads; None when it turns out that something must be written."""
        try:
            return self._run(talk, plan, reading_only=True)
        except (_MustWriteError, ReadOnlyError):
            return None
        except _REFUSALS as error:
            return worded_refusal(error, talk)

    def _find(self, unit: Unit, message: Message) -> people.Presence:
        place = message.place
        return people.find(unit, message.channel, message.sender.outside_id, place.outside_id, place.private)

    def _talk(self, unit: Unit, message: Message, presence: people.Presence) -> Talk:
        language = tongue_of(presence).language
        vocabulary = vocabulary_for(unit, presence.bar, language)
        presence = replace(presence, number=message.number)
        return Talk(unit, message, presence, vocabulary, self.clock, message.text, self.deep_link)

    # -- what is meant -------------------------------------------------------------------

    def _plan(self, talk: Talk) -> _Plan:
        if talk.message.document is not None:
            return _Plan(all_commands()["import"])
        return self._meant(talk)

    def _meant(self, talk: Talk) -> _Plan:
        text = talk.message.text.strip()
        question = talk.presence.question
        if talk.message.tapped is not None:
            if _is_of_another_bar(talk):
                return _Plan(stale=True)
            text = talk.line = _HOME.sub("", text)
            found = _tap(text, question)
            if found is not None:
                return found
            if text.startswith(f"{KEPT} "):
                text = _kept_line(text, question)
                talk.line = text
                if not text:
                    return _Plan(stale=True)
        slashed = _slashed(text)
        several = _several(text) if talk.message.tapped is None and question is None else ()
        if slashed is not None or several:
            return _Plan(several=several) if several else slashed or _Plan()
        spoken = command_at_start(text)
        if question is not None and "command" in question.state and talk.message.tapped is None:
            return _while_asked(talk, question, text, spoken)
        if talk.message.tapped is None:
            return _typed(talk, text, spoken)
        return _Plan(*spoken) if spoken is not None else _Plan()

    def _run(self, talk: Talk, plan: _Plan, reading_only: bool = False) -> list[Reply]:
        replies = _noting_assumptions(talk, self._done(talk, plan, reading_only))
        return [_without_forbidden(talk, one) for one in replies]

    def _done(self, talk: Talk, plan: _Plan, reading_only: bool) -> list[Reply]:
        if plan.stale:
            return [reply(_("This button is out of date."), _("Ask again and use the new buttons."))]
        if plan.answer is not None:
            return _as_list(self._resume(talk, plan))
        if plan.several:
            return self._one_by_one(talk, plan)
        command = plan.command
        if command is None:
            return _as_list(not_understood(talk))
        refused = _refusal(talk, command)
        if refused is not None:
            return [refused]
        phrase = reading.read(command.rule, plan.rest.strip(), talk.vocabulary)
        given = Given.of(phrase.slots, phrase.lines, phrase.rest)
        if reading_only and _would_ask(talk, command, given):
            raise _MustWriteError
        return _as_list(asking.start(talk, command, given))

    @staticmethod
    def _one_by_one(talk: Talk, plan: _Plan) -> list[Reply]:
        """Answer a message whose every line is a command of its own: all of them, or none."""
        replies: list[Reply] = []
        for number, (command, rest, line) in enumerate(plan.several, 1):
            talk.line = line
            try:
                replies += _as_list(_whole(talk, command, rest))
            except _REFUSALS as error:
                raise Say(_refused_line(number, line, worded_refusal(error, talk)[0])) from error
        return replies

    def _resume(self, talk: Talk, plan: _Plan) -> Reply | list[Reply]:
        question = talk.presence.question
        if question is None or plan.answer is None:
            return reply(_("This button is out of date."), _("Ask again and use the new buttons."))
        command = all_commands()[question.state["command"]]
        refused = _refusal(talk, command)
        if refused is not None:
            return refused
        return asking.resume(talk, command, plan.answer, plan.tapped)

    # -- long lines behind buttons ---------------------------------------------------------

    def _keep_long_lines(self, talk: Talk, replies: list[Reply]) -> list[Reply]:
        """Keep lines that no button can carry in the database, and put their numbers behind the buttons."""
        if not _too_long(replies):
            return replies
        presence = talk.presence
        room_id, person_id = presence.room_id or 0, presence.person_id or 0
        now = people.find(
            talk.unit,
            talk.message.channel,
            talk.message.sender.outside_id,
            talk.message.place.outside_id,
            talk.message.place.private,
        ).question
        state = dict(now.state) if now is not None else {}
        lines: list[str] = []
        for one in replies:
            lines += [
                button.line
                for row in one.buttons
                for button in row
                if len(button.line.encode()) > BUTTON_BYTES
            ]
        nonce = people.keep_question(
            talk.unit, room_id, person_id, {**state, "lines": lines}, self.clock.now()
        )
        old = None if now is None else now.nonce

        def kept(button: Button) -> Button:
            if len(button.line.encode()) > BUTTON_BYTES:
                line = f"{KEPT} {nonce} {lines.index(button.line)}"
            elif old is not None and button.line.startswith(f"{asking.ANSWER} {old} "):
                line = button.line.replace(f" {old} ", f" {nonce} ", 1)
            else:
                return button
            return Button(button.label, line)

        return [
            replace(one, buttons=tuple(tuple(kept(button) for button in row) for row in one.buttons))
            for one in replies
        ]


def _hold(unit: Unit, presence: people.Presence) -> None:
    """Let one bar's writers go one by one: what each reads must still be so when it writes."""
    if presence.bar is not None:
        unit.bar(presence.bar.id).hold()


class _MustWriteError(Exception):
    """A command that only reads has to ask something, and a question is written down."""


def _would_ask(talk: Talk, command: Command, given: Given) -> bool:
    return any(slot.name not in given and slot.wanted(talk, given) for slot in command.slots)


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


def _tap(text: str, question: people.PendingQuestion | None) -> _Plan | None:
    if not text.startswith(f"{asking.ANSWER} "):
        return None
    _sign, nonce, answer = [*text.split(" ", 2), "", ""][:3]
    if question is None or nonce != str(question.nonce) or "command" not in question.state:
        return _Plan(stale=True)
    return _Plan(answer=answer, tapped=True)


def _is_of_another_bar(talk: Talk) -> bool:
    """Whether the tapped message came before the person changed bars: its lines meant the bar before."""
    since, number = talk.presence.since, talk.message.number
    if since is None or number is None or number >= since:
        return False
    return not talk.message.text.startswith("bars ")


def _kept_line(text: str, question: people.PendingQuestion | None) -> str:
    _sign, nonce, index = [*text.split(" ", 2), "", ""][:3]
    if question is None or nonce != str(question.nonce) or not index.isdecimal():
        return ""
    lines = question.state.get("lines", [])
    return str(lines[int(index)]) if int(index) < len(lines) else ""


def _typed(talk: Talk, text: str, spoken: tuple[Command, str] | None) -> _Plan:
    """Return what a typed text means where no question is in progress."""
    of_a_batch = spoken is None or spoken[0].name == "batch"  # 'batch 12 clear', or only '12 clear'
    if talk.message.photo is not None and of_a_batch and (check := _photo_of(talk)) is not None:
        return check
    if spoken is None:
        spoken = as_waste(talk, text) or as_asked(talk, text)
        return _Plan(*spoken) if spoken is not None else _Plan()
    command, rest = as_setting(talk, *spoken) or spoken
    if rest.rstrip().endswith("?") and not _reads_whole((command, rest), talk):
        rest = rest.rstrip(" ?")
    return _Plan(command, rest)


def _photo_of(talk: Talk) -> _Plan | None:
    """Take a photo whose caption is no command for a check of a batch, if it reads as one."""
    line = check_line(talk.message)
    check = all_commands()["check"]
    return _Plan(check, line) if _reads_whole((check, line), talk) else None


def _slashed(text: str) -> _Plan | None:
    """Return what a text with a slash before it means; None without one."""
    slash = _COMMAND.match(text)
    if slash is None:
        return None
    # As if said without the slash, so that '/forget me' and '/new_formula' are found as well.
    words = f"{slash[1].replace('_', ' ')} {text[slash.end() :]}"
    named = command_at_start(words) or in_any_language(words)
    return _Plan(*named) if named is not None else _Plan()


_MOST_LINES = 10
# What follows these may be lines of its own, which are no commands even where they begin like one.
_WITH_LINES = frozenset({"new", "change", "trial", "trial add"})


def _several(text: str) -> tuple[tuple[Command, str, str], ...]:
    """Return the commands of a message whose every line begins with a command's word, if there are two."""
    lines = [line.strip() for line in text.splitlines() if line.strip()]
    if not 2 <= len(lines) <= _MOST_LINES:
        return ()
    found = [(line, command_at_start(line.removeprefix("/"))) for line in lines]
    if found[0][1] is None or found[0][1][0].name in _WITH_LINES:
        return ()
    spoken = [(one[0], one[1], line) for line, one in found if one is not None]
    return tuple(spoken) if len(spoken) == len(lines) else ()


def _whole(talk: Talk, command: Command, rest: str) -> Reply | list[Reply]:
    """Run one of several commands, which has to say all that it needs."""
    refused = _refusal(talk, command)
    if refused is not None:
        raise Say(refused)
    phrase = reading.read(command.rule, rest.strip(), talk.vocabulary)
    given = Given.of(phrase.slots, phrase.lines, phrase.rest)
    if not phrase.lines and _would_ask(talk, command, asking.accepted(talk, command, given)):
        raise Say(reply(_("Something is missing there. In several lines, each has to be complete.")))
    return asking.start(talk, command, given)


def _refused_line(number: int, line: str, why: Reply) -> Reply:
    """Say which line stopped the message. Its buttons would do that line alone, so they are left out."""
    first = _("Line {number}, “{line}”, stops here, and nothing of the message was logged.")
    said = first.format(number=number, line=line[:60])
    blocks = tuple(replace(one, strong=False) if isinstance(one, Text) else one for one in why.blocks)
    return Reply((Text(said, strong=True), *blocks))


def _while_asked(
    talk: Talk, question: people.PendingQuestion, text: str, spoken: tuple[Command, str] | None
) -> _Plan:
    """Return what a typed text is taken for while a question is in progress."""
    if text.casefold() in {"back", _("Back").casefold()}:
        return _Plan(answer=asking.BACK, tapped=True)
    if spoken is not None:
        # Any words are an answer where a name or a note is asked for; to stop must always be possible.
        stops = spoken[0].name == "cancel" and not spoken[1].strip()
        if stops or (_reads_whole(spoken, talk) and not _reads_as_answer(question, text, talk)):
            return _Plan(*spoken)
    return _Plan(answer=text)


def _reads_whole(spoken: tuple[Command, str], talk: Talk) -> bool:
    command, rest = spoken
    try:
        reading.read(command.rule, rest.strip(), talk.vocabulary)
    except (PhraseError, AmbiguousNumberError, NotANumberError):
        return False
    return True


def _reads_as_answer(question: people.PendingQuestion, text: str, talk: Talk) -> bool:
    command = all_commands()[question.state["command"]]
    slot = next(slot for slot in command.slots if slot.name == question.state["asking"])
    try:
        filled = reading.read(slot.reads_by, text, talk.vocabulary).slots.values()
    except (PhraseError, AmbiguousNumberError, NotANumberError):
        return False
    # A name nobody knows yet: the word of a command is then meant as that.
    return not any(isinstance(one.value, Unknown) for one in filled)


def _refusal(talk: Talk, command: Command) -> Reply | None:
    if command.private_only and not talk.message.place.private:
        return private_only(talk)
    if command.anyone:
        return None
    if talk.presence.bar is None:
        return stranger(talk)
    if command.manages and not talk.desk.role.manages:
        return reply(_("Only a manager can do that. Ask one to do it, or to make you a manager."))
    return None


def _noting_assumptions(talk: Talk, replies: list[Reply]) -> list[Reply]:
    """Say what a house measure was taken to hold, where the bar has not set it."""
    if not talk.assumed or not replies or replies[-1].choosing:
        return replies
    notes = [
        Text(
            _("A {name} is taken as {size}, common practice. Yours: bar {name} {size}").format(
                name=unit_name(name), size=show_ml(talk.desk.bar.house.ml(name))
            )
        )
        for name in sorted(talk.assumed)
    ]
    last = replies[-1]
    return [*replies[:-1], replace(last, blocks=(*last.blocks, *notes))]


def _without_forbidden(talk: Talk, answer: Reply) -> Reply:
    """Leave out the buttons that would only be refused: those of a manager, shown to a plain member."""
    if talk.presence.role is None or talk.presence.role.manages:
        return answer
    rows = (tuple(one for one in row if not _takes_a_manager(one.line)) for row in answer.buttons)
    return replace(answer, buttons=tuple(row for row in rows if row))


def _takes_a_manager(line: str) -> bool:
    found = command_at_start(line)
    if found is None:
        return False
    command, rest = found
    return command.manages or (command.manages_words and bool(rest.strip()))


def _too_long(replies: list[Reply]) -> bool:
    return any(
        len(button.line.encode()) > BUTTON_BYTES for one in replies for row in one.buttons for button in row
    )


def _as_list(answer: Reply | list[Reply]) -> list[Reply]:
    return answer if isinstance(answer, list) else [answer]
