"""Stage 3: run the intent, with reads only or in a transaction."""

from __future__ import annotations

from dataclasses import dataclass, replace

from bot.chat.conversation import corrections
from bot.chat.conversation.folding import folded
from bot.chat.dialogue import filling, state
from bot.chat.dialogue.error_messages import REFUSALS
from bot.chat.dialogue.registry import all_commands, command_at_start
from bot.chat.dialogue.rights import barred
from bot.chat.dialogue.slots import Given
from bot.chat.dialogue.turn import Say, Turn
from bot.chat.features.log.changes import finish
from bot.chat.grammar import parser
from bot.chat.i18n.language import _, tongue
from bot.chat.i18n.setting_names import ALL, PAGES
from bot.chat.intent import intent as intents
from bot.chat.intent.fallbacks import not_understood, worded_refusal
from bot.chat.intent.offering import offer, read_as
from bot.chat.intent.recognition import said_in
from bot.chat.reply.message import Reply, Text, reply
from bot.chat.reply.units import show_ml, unit_name
from bot.work.errors import TakesTimeError, TooLateError
from bot.work.people import wordings
from bot.work.people.people import Presence
from storage.unit import ReadOnlyError, Unit

# These change the bar or the language, so unfinished answers no longer fit.
_ENDS_DIALOGUES = frozenset({"cancel", "start", "join", "bars", "language", "leave"})
_ENDS_DIALOGUES |= {"forget me", "forget me where i left", "delete bar", "restore bar"}


@dataclass(frozen=True)
class Execution:
    """The replies to an intent; None if reads were not enough, `slow` if they take time.

    `asks_again` means that the dialogue in progress stays, and its question follows the answer.
    """

    replies: list[Reply] | None
    slow: bool = False
    asks_again: bool = False


def execute_reading(turn: Turn, intent: intents.Intent) -> Execution:
    """Run an intent with reads only; a hurried run starts no long work."""
    if intent.writes or (turn.pending is not None and isinstance(intent, intents.Said | intents.Read)):
        return Execution(None)
    if turn.hurried and not intent.quick:
        return Execution(None, slow=True)
    try:
        return Execution(_run(turn, intent))
    except TakesTimeError:
        return Execution(None, slow=True)
    except ReadOnlyError:
        return Execution(None)  # a question must be stored
    except REFUSALS as error:
        turn.offering = True
        return Execution(worded_refusal(error, turn))


def execute_writing(turn: Turn, intent: intents.Intent) -> Execution:
    """Run an intent; a refused one changes nothing and returns only its answer."""
    stays = _dialogue_stays(turn, intent)
    try:
        with turn.unit.attempt():
            replies = _run(turn, intent)
            return Execution(_noting_dropped(turn, intent, replies), asks_again=stays)
    except REFUSALS as error:
        if turn.finishing or isinstance(error, filling.OutdatedError):  # nothing is left to ask
            state.drop(turn.unit, turn.presence)
        turn.offering = True
        after = turn.afresh(intent.line)
        said = worded_refusal(error, after)
        if isinstance(intent, intents.Correction):
            said = corrections.refused(said, intent.earlier, isinstance(error, TooLateError))
        return Execution(said, asks_again=stays)


def _noting_dropped(turn: Turn, intent: intents.Intent, replies: list[Reply]) -> list[Reply]:
    """Say which unfinished line was dropped for a command that wrote something else or asked anew."""
    dialogue = None if turn.pending is None else turn.pending.dialogue
    if dialogue is None or not replies or not isinstance(intent, intents.Said) or not intent.writes:
        return replies
    if intent.command.name in _ENDS_DIALOGUES or state.is_still_asked(turn.unit, turn.presence):
        return replies
    command = all_commands()[dialogue.command]
    if intent.command is command and (
        not dialogue.words or filling.said_at_once(turn, command, dialogue, intent.rest.strip()) is not None
    ):
        return replies  # it is the whole answer
    note = filling.dropped(command, dialogue)
    return [replace(replies[0], blocks=(*replies[0].blocks, note)), *replies[1:]]


def still_holds(unit: Unit, presence: Presence, intent: intents.Intent) -> bool:
    """Whether an intent found by reading can run unchanged in a later transaction."""
    if isinstance(intent, intents.Correction | intents.Amendment):
        return False  # another message may have changed the entry that it corrects
    return not isinstance(intent, intents.Answer) or state.is_still_asked(unit, presence)


def _dialogue_stays(turn: Turn, intent: intents.Intent) -> bool:
    """Whether the dialogue in progress stays while another message is answered; otherwise it is dropped.

    The same command said again replaces it. So does any command if little is lost: before the first answer,
    or if the dialogue's command only reads.
    """
    if isinstance(intent, intents.Read):
        if not intent.aside and turn.pending is not None and turn.pending.dialogue is not None:
            state.drop(turn.unit, turn.presence)
        return intent.aside
    if not isinstance(intent, intents.Said) or turn.pending is None:
        return False
    dialogue = turn.pending.dialogue
    if intent.aside and dialogue is not None:
        return True
    stays = dialogue is not None and bool(dialogue.words) and all_commands()[dialogue.command].writes
    if stays and dialogue is not None and intent.writes:
        # Dropping an incomplete line loses nothing; dropping later answers would.
        stays = dialogue.answered and dialogue.command != intent.command.name
    if stays and intent.command.name not in _ENDS_DIALOGUES:
        return True
    state.drop(turn.unit, turn.presence)
    return False


def _run(turn: Turn, intent: intents.Intent) -> list[Reply]:
    """Return the replies to an intent.

    Raises ReadOnlyError if a question must be stored, and one of REFUSALS.
    """
    if isinstance(intent, intents.Correction):
        again = turn.without_question()
        edit = corrections.begin(again, intent.earlier, intent.instead)
        replies = _run(again, intent.instead)
        if isinstance(intent.instead, intents.Read) and intent.instead.readings.is_to_confirm:
            raise Say(replies[0])
        return finish(again, edit, replies)
    turn.line = intent.line
    replies = _noting_assumptions(turn, _answers(turn, intent))
    answered = said_in(turn.line)
    if isinstance(answered, intents.Said) and not answered.writes:
        replies = folded(replies, turn.line, isinstance(intent, intents.Said) and intent.rest_only)
    return [_without_forbidden(turn, one) for one in replies]


def _answers(turn: Turn, intent: intents.Intent) -> list[Reply]:
    match intent:
        case intents.Said():
            return as_list(_said(turn, intent))
        case intents.Several():
            return _one_by_one(turn, intent)
        case intents.Answer() | intents.Amendment():
            return as_list(_answered(turn, intent))
        case intents.Ignored():
            return []
        case intents.OutOfDate():
            return [_out_of_date(intent.asked)]
        case intents.Read():
            return _read_free(turn, intent)
        case intents.NotUnderstood():
            return as_list(not_understood(turn))
        case _:
            raise TypeError(type(intent).__name__)


def _read_free(turn: Turn, intent: intents.Read) -> list[Reply]:
    """Run the reading of a free line that only shows something; offer any other."""
    readings = intent.readings
    first = readings.first
    if first is None or first.command is None or not (readings.confirmed or (readings.sure and first.runs)):
        turn.offering = True
        return [offer(turn, readings)]
    turn.line = first.line
    try:
        replies = as_list(_said(turn, intents.Said(first.command, first.rest)))
    except REFUSALS as error:
        replies = worded_refusal(error, turn)
    return [read_as(first, replies[0]), *replies[1:]] if replies else []


def _out_of_date(asked: str = "") -> Reply:
    if asked:
        return reply(_("That is {name}’s question.").format(name=asked), toast=True)
    return reply(_("That button is old."), toast=True)


def _said(turn: Turn, intent: intents.Said) -> Reply | list[Reply]:
    refused = barred(turn, intent.command)
    if refused is not None:
        return refused
    if corrections.stays(turn, corrections.marks(intent)[0]):
        return []
    replies = filling.start(turn, intent.command, read(turn, intent))
    if intent.confirms is not None and turn.unit.writes:
        wish, shape = intent.confirms
        wordings.learn(turn.context, tongue().language, shape, wish)
    return replies


def read(turn: Turn, intent: intents.Said) -> Given:
    """Parse the words after a command's word into slots."""
    phrase = parser.read(intent.command.rule, intent.rest.strip(), turn.vocabulary)
    return Given.of(phrase)


def _answered(turn: Turn, intent: intents.Answer | intents.Amendment) -> Reply | list[Reply]:
    dialogue = None if turn.pending is None else turn.pending.dialogue
    if dialogue is None:
        return _out_of_date()
    command = all_commands()[dialogue.command]
    refused = barred(turn, command)
    if refused is not None:
        return refused
    if isinstance(intent, intents.Amendment):
        return filling.amend(turn, command, intent.was, intent.text)
    return filling.resume(turn, command, intent.text, intent.tapped)


def _one_by_one(turn: Turn, intent: intents.Several) -> list[Reply]:
    """Answer a message with a command on every line: all of them, or none."""
    replies: list[Reply] = []
    for number, (one, mark) in enumerate(zip(intent.commands, corrections.marks(intent), strict=True), 1):
        turn.line = one.line
        if corrections.stays(turn, mark):
            continue
        try:
            replies += as_list(_whole(turn, one))
        except REFUSALS as error:
            raise Say(_refused_line(number, one.line, worded_refusal(error, turn)[0])) from error
    return replies


def _whole(turn: Turn, intent: intents.Said) -> Reply | list[Reply]:
    """Run one of several commands, which must be complete."""
    refused = barred(turn, intent.command)
    if refused is not None:
        raise Say(refused)
    given = read(turn, intent)
    if filling.missing(turn, intent.command, filling.accepted(turn, intent.command, given)) is not None:
        raise Say(reply(_("Something is missing there. In several lines, each has to be complete.")))
    return filling.start(turn, intent.command, given)


def _refused_line(number: int, line: str, why: Reply) -> Reply:
    """Name the line that stopped the message. Its buttons would run that line alone, so they are left out."""
    first = _("Line {number}, “{line}”, stops here, and nothing of the message was logged.")
    said = first.format(number=number, line=line[:60])
    blocks = tuple(replace(one, strong=False) if isinstance(one, Text) else one for one in why.blocks)
    return Reply((Text(said, strong=True), *blocks))


def _noting_assumptions(turn: Turn, replies: list[Reply]) -> list[Reply]:
    """Say which fruit is new, and what a house measure that the bar has not set was taken to hold."""
    if not (turn.assumed or turn.new_names) or not replies or replies[-1].choosing:
        return replies
    notes = [Text(_("New here: {names}.").format(names=", ".join(turn.new_names)))] if turn.new_names else []
    notes += [
        Text(
            _("A {name} is taken as {size}, common practice. Yours: bar {name} {size}").format(
                name=unit_name(name), size=show_ml(turn.context.bar.house.ml(name))
            )
        )
        for name in sorted(turn.assumed)
    ]
    last = replies[-1]
    return [*replies[:-1], replace(last, blocks=(*last.blocks, *notes))]


def _without_forbidden(turn: Turn, answer: Reply) -> Reply:
    """Leave out the buttons for managers in replies to a plain member."""
    if turn.presence.role is None or turn.presence.role.manages:
        return answer
    rows = (tuple(one for one in row if not _takes_a_manager(one.line)) for row in answer.buttons)
    return replace(answer, buttons=tuple(row for row in rows if row))


def _takes_a_manager(line: str) -> bool:
    found = command_at_start(line)
    if found is None:
        return False
    command, rest = found
    page = command.name == "bar" and rest.strip() in {ALL, *PAGES}  # shows settings and changes none
    return command.manages or (command.manages_words and bool(rest.strip()) and not page)


def as_list(answer: Reply | list[Reply]) -> list[Reply]:
    """Return one answer or several as a list."""
    return answer if isinstance(answer, list) else [answer]
