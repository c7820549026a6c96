"""What a message is taken for: a tap, a command with or without slash, or an answer to a question."""

from __future__ import annotations

import re
from dataclasses import dataclass

from bot.chat.dialogue import questions
from bot.chat.dialogue.command import Command
from bot.chat.dialogue.registry import all_commands, command_at_start, in_any_language
from bot.chat.dialogue.slots import ANSWER, BACK, Slot
from bot.chat.dialogue.turn import Say, Turn
from bot.chat.grammar import parser
from bot.chat.grammar.parser import PhraseError
from bot.chat.grammar.syntax import names_unknown
from bot.chat.i18n.language import _
from bot.chat.i18n.numbers import AmbiguousNumberError, NotANumberError
from bot.chat.intent.guessing import as_asked, as_setting, as_waste, is_article
from bot.chat.intent.incoming_photo import check_line
from bot.trade.errors import TradeError
from bot.work.errors import WorkError
from bot.work.people import people

HOME = re.compile(r"^@(\d{1,12}) ", re.ASCII)  # a tap that is meant for this bar: '@3 check 12 clear'
KEPT = "~"  # a tap whose line was too long for a button and is kept: '~ 41 2'
OUT_OF_DATE = f"{KEPT} - -"
_COMMAND = re.compile(r"^/([^\W\d]+)(?:@([A-Za-z0-9_]+))?\s?")


@dataclass(frozen=True)
class Plan:
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


def meant(turn: Turn) -> Plan:
    """Return what a message is taken for."""
    if turn.message.document is not None:
        return Plan(all_commands()["import"])
    return _said(turn)


def _said(turn: Turn) -> Plan:
    text = turn.message.text.strip()
    question = turn.presence.question
    if turn.message.tapped is not None:
        if _is_of_another_bar(turn):
            return Plan(stale=True)
        text = turn.line = HOME.sub("", text)
        found = _tap(text, question)
        if found is not None:
            return found
        if text.startswith(f"{KEPT} "):
            text = _kept_line(text, question)
            turn.line = text
            if not text:
                return Plan(stale=True)
    slashed = _slashed(text)
    several = _several(text) if turn.message.tapped is None and question is None else ()
    if slashed is not None or several:
        return Plan(several=several) if several else slashed or Plan()
    spoken = command_at_start(text)
    if question is not None and "command" in question.state and turn.message.tapped is None:
        return _while_asked(turn, question, text, spoken)
    if turn.message.tapped is None:
        return _typed(turn, text, spoken)
    return Plan(*spoken) if spoken is not None else Plan()


def _tap(text: str, question: people.PendingQuestion | None) -> Plan | None:
    if not text.startswith(f"{ANSWER} "):
        return None
    _sign, nonce, answer = [*text.split(" ", 2), "", ""][:3]
    if question is None or nonce != str(question.nonce) or "command" not in question.state:
        return Plan(stale=True)
    return Plan(answer=answer, tapped=True)


def _is_of_another_bar(turn: Turn) -> bool:
    """Whether the tapped message came before the person changed bars: its lines meant the bar before."""
    since, number = turn.presence.since, turn.message.number
    if since is None or number is None or number >= since:
        return False
    return not turn.message.text.startswith("bars ")


def _kept_line(text: str, question: people.PendingQuestion | None) -> str:
    _sign, nonce, index = [*text.split(" ", 2), "", ""][:3]
    if question is None or nonce != str(question.nonce) or not index.isdecimal():
        return ""
    lines = question.state.get("lines", [])
    return str(lines[int(index)]) if int(index) < len(lines) else ""


def _typed(turn: Turn, text: str, spoken: tuple[Command, str] | None) -> Plan:
    """Return what a typed text means where no question is in progress."""
    of_a_batch = spoken is None or spoken[0].name == "batch"  # 'batch 12 clear', or only '12 clear'
    if turn.message.photo is not None and of_a_batch and (check := _photo_of(turn)) is not None:
        return check
    if spoken is None:
        spoken = as_asked(turn, text) or as_waste(turn, text) or _after_an_article(text)
        return Plan(*spoken) if spoken is not None else Plan()
    command, rest = as_setting(turn, *spoken) or spoken
    if rest.rstrip().endswith("?") and not _reads_whole((command, rest), turn):
        rest = rest.rstrip(" ?")
    return Plan(command, rest)


def _after_an_article(text: str) -> tuple[Command, str] | None:
    """Read 'la semana pasada' or 'the batches' as if said without the little word."""
    first, _space, rest = text.lstrip("¿¡ ").partition(" ")
    return command_at_start(rest) if is_article(first) else None


def _photo_of(turn: Turn) -> Plan | None:
    """Take a photo whose caption is no command for a check of a batch, if it reads as one."""
    line = check_line(turn.message)
    check = all_commands()["check"]
    return Plan(check, line) if _reads_whole((check, line), turn) else None


def _slashed(text: str) -> Plan | None:
    """Return what a text with a slash before it means; None without one."""
    slash = _COMMAND.match(text)
    if slash is None:
        return None
    # As if said without the slash, so that '/forget me' and '/new_formula' are found as well.
    words = f"{slash[1].replace('_', ' ')} {text[slash.end() :]}"
    named = command_at_start(words) or in_any_language(words)
    return Plan(*named) if named is not None else Plan()


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


def _while_asked(
    turn: Turn, question: people.PendingQuestion, text: str, spoken: tuple[Command, str] | None
) -> Plan:
    """Return what a typed text is taken for while a question is in progress."""
    if text.casefold() in {"back", _("Back").casefold()}:
        return Plan(answer=BACK, tapped=True)
    if spoken is not None and _takes_back(spoken, question, turn):
        return Plan(answer=BACK, tapped=True)
    if spoken is not None:
        # Any words are an answer where a name or a note is asked for; to stop must always be possible.
        stops = spoken[0].name == "cancel" and not spoken[1].strip()
        if stops or (_reads_whole(spoken, turn) and not _reads_as_answer(question, text, turn)):
            return Plan(*spoken)
    return Plan(answer=text)


def _takes_back(spoken: tuple[Command, str], question: people.PendingQuestion, turn: Turn) -> bool:
    """Whether 'undo' means the answer just given: what was logged before is not what one has in mind."""
    command, rest = spoken
    numbered = any(sign.isdigit() for sign in rest)
    return (
        command.name == "undo"
        and not numbered
        and bool(question.state["order"])
        and _reads_whole(spoken, turn)
    )


def _reads_whole(spoken: tuple[Command, str], turn: Turn) -> bool:
    command, rest = spoken
    try:
        parser.read(command.rule, rest.strip(), turn.vocabulary)
    except (PhraseError, AmbiguousNumberError, NotANumberError):
        return False
    return True


def _reads_as_answer(question: people.PendingQuestion, text: str, turn: Turn) -> bool:
    command = all_commands()[question.state["command"]]
    slot = next(slot for slot in command.slots if slot.name == question.state["asking"])
    try:
        filled = parser.read(slot.reads_by, text, turn.vocabulary).slots.values()
    except (PhraseError, AmbiguousNumberError, NotANumberError):
        return False
    # A name nobody knows yet: the word of a command is then meant as that.
    if any(names_unknown(one.value) for one in filled):
        return False
    words = next((one.value for one in filled if isinstance(one.value, str)), None)
    return words is None or _is_taken(turn, command, slot, question, words)


def _is_taken(turn: Turn, command: Command, slot: Slot, question: people.PendingQuestion, words: str) -> bool:
    """Whether a question to which any words can be said takes these: 'week' is no bottle and no city."""
    try:
        slot.accept(turn, questions.evaluate(turn, command, question.state), words)
    except (Say, WorkError, TradeError, PhraseError, AmbiguousNumberError, NotANumberError):
        return False
    return True
