"""Checks of every reply: its buttons do something, and it fits a message.

Each button is tapped in a transaction that is rolled back, so that a story can continue unchanged.
"""

from __future__ import annotations

from bot.channels.rendering import plain_lines
from bot.chat.conversation.arrival import Arrival
from bot.chat.conversation.execution import as_list, read
from bot.chat.conversation.folding import height
from bot.chat.dialogue import filling
from bot.chat.dialogue.on_copy import Preparation
from bot.chat.dialogue.registry import all_commands
from bot.chat.dialogue.rights import barred
from bot.chat.dialogue.slots import BACK, CANCEL, DIGIT, DONE, ENTER, ERASE
from bot.chat.dialogue.state import pending_of
from bot.chat.dialogue.turn import Say, Turn, presence_of
from bot.chat.i18n.language import speaking
from bot.chat.i18n.locale_choice import tongue_of
from bot.chat.intent.intent import Answer, Correction, Intent, OutOfDate, Said
from bot.chat.intent.recognition import intent_of
from bot.chat.reply.message import BUTTON_BYTES, Button, Message, Reply
from tests.house import CHANNEL, House, Person

LONGEST_MESSAGE = 4096
MOST_LINES = 30


class _NotKeptError(Exception):
    """Leave the transaction and roll it back."""


def problems(house: House, person: Person, room: str | None, reply: Reply) -> list[str]:
    """Return the problems of this reply, as shown to this person in this chat."""
    found = []
    if len("\n".join(plain_lines(reply))) > LONGEST_MESSAGE:
        found.append(f"“{reply.first_line}” is too long for one message")
    if sum(map(height, reply.blocks)) > MOST_LINES:
        found.append(f"“{reply.first_line}” is too long for a phone")
    for row in reply.buttons:
        for button in row:
            where = f"[{button.label}] of “{reply.first_line}”"
            if len(button.line.encode()) > BUTTON_BYTES:
                found.append(f"{where} has too long a line: {button.line}")
            why = dead(house, person, room, button)
            if why or not button.label.strip():
                found.append(f"{where} is dead: {button.line}: {why}")
    return found


def dead(house: House, person: Person, room: str | None, button: Button) -> str:
    """Return why a tap on this button would lead nowhere, or '' if it leads somewhere."""
    message = Message(
        CHANNEL,
        person.sender,
        house.room(room, person).place,
        button.line,
        key="trial",
        sent_at=house.clock.now(),
        tapped="trial",
    )
    talking = house.conversation
    why = ""
    try:
        with house.store.writing() as unit:
            presence = presence_of(unit, message)
            with speaking(tongue_of(presence)):
                turn = Arrival(message, presence).turn(unit, house.clock, talking.deep_link)
                why = _tried(turn, intent_of(turn))
            raise _NotKeptError
    except _NotKeptError:
        return why


def _tried(turn: Turn, intent: Intent) -> str:
    if isinstance(intent, OutOfDate):
        return "out of date"
    if isinstance(intent, Correction):
        intent = intent.instead
    if not isinstance(intent, Said | Answer):
        return "no command"
    if isinstance(intent, Said) and barred(turn, intent.command) is not None:
        return "this person may not"
    try:
        if isinstance(intent, Answer):
            replies = as_list(_answered(turn, intent.text))
        else:
            replies = as_list(filling.start(turn, intent.command, read(turn, intent)))
    except Say as say:
        # A refusal that offers a next step, or says what the bar lacks, is an answer.
        replies = [say.answer]
    except Preparation:
        return ""  # the pipeline prepares it on a copy of the bar, and answers then
    except Exception as error:
        return repr(error)
    return "" if replies and replies[0].blocks else "says nothing"


def _answered(turn: Turn, answer: str) -> Reply | list[Reply]:
    before = None if turn.pending is None else turn.pending.dialogue
    assert before is not None
    command = all_commands()[before.command]
    replies = filling.resume(turn, command, answer, True)
    now = pending_of(presence_of(turn.unit, turn.message).question)
    again = now is not None and now.dialogue is not None and now.dialogue.asking == before.asking
    moves = {BACK, CANCEL, DONE, ERASE, ENTER}
    is_move = answer in moves or answer.startswith(DIGIT)
    if again and not is_move and not before.typed:
        slot = next(one for one in command.slots if one.name == before.asking)
        if not slot.many:
            raise AssertionError(f"the answer was not taken: {replies}")
    return replies
