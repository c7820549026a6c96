"""Stage 1: find the author, the place and the bar of a message."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, replace
from datetime import datetime

from bot.chat.dialogue.turn import Turn, presence_of
from bot.chat.grammar.vocabulary import is_at_hand, vocabulary_for
from bot.chat.i18n.language import Tongue
from bot.chat.i18n.locale_choice import tongue_of
from bot.chat.intent.recognition import HOME, OUT_OF_DATE
from bot.chat.reply.message import Message, harmless
from bot.work.context import Clock
from bot.work.inbox import inbox
from bot.work.people import people
from bot.work.people.people import Presence
from storage.store import Store
from storage.unit import Unit


@dataclass(frozen=True)
class Arrival:
    """A person in a chat and their current bar there, as read by one transaction."""

    message: Message
    presence: Presence

    def tongue(self, now: datetime) -> Tongue:
        """Return the language and locale of the answer."""
        return tongue_of(self.presence, now)

    def is_ready(self, unit: Unit) -> bool:
        """Whether the words of the bar are at hand."""
        return is_at_hand(unit, self.presence.bar, tongue_of(self.presence))

    def turn(self, unit: Unit, clock: Clock, deep_link: Callable[[str], str] | None = None) -> Turn:
        """Return the context in which commands answer the message."""
        vocabulary = vocabulary_for(unit, self.presence.bar, tongue_of(self.presence).language)
        presence = replace(self.presence, number=self.message.number)
        return Turn(unit, self.message, presence, vocabulary, clock, self.message.text, deep_link)


def look_up(unit: Unit, message: Message) -> Arrival | None:
    """Return the author, or None for a new or unreachable person, who must be stored first.

    An edit stores nobody: the original message did.
    """
    presence = presence_of(unit, message)
    if message.corrects is None and not (presence.known and presence.reachable):
        return None
    return Arrival(message, presence)


def meet(unit: Unit, message: Message) -> Arrival:
    """Return the author; a new person or chat is stored."""
    if message.corrects is not None:
        return Arrival(message, presence_of(unit, message))
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
    return Arrival(message, presence)


def hold_bar(unit: Unit, arrival: Arrival) -> None:
    """Serialise a bar's writers: data read by each must still be valid when it writes."""
    if arrival.presence.bar is not None:
        unit.bar(arrival.presence.bar.id).hold()


def was_logged(unit: Unit, arrival: Arrival) -> bool:
    """Whether the message has logged something in its bar before."""
    bar = arrival.presence.bar
    return bar is not None and inbox.was_logged(unit.bar(bar.id), arrival.message.key)


def go_to_bar_of_tap(store: Store, message: Message) -> tuple[Message, str]:
    """Change to the bar whose number precedes a tapped line, so that the line cannot act in another.

    Returns the message without the number, and the bar's name if the person was elsewhere.
    """
    found = HOME.match(message.text) if message.tapped is not None else None
    if found is None:
        return message, ""
    bar_id, plain = int(found[1]), replace(message, text=message.text[found.end() :], number=None)
    plain = replace(plain, shared=not message.place.private)
    with store.reading() as unit:
        presence = presence_of(unit, message)
    if presence.bar is not None and presence.bar.id == bar_id:
        return plain, ""
    if presence.bar is None and not message.place.private:
        return plain, ""  # a stranger in the group gets the usual answer for strangers
    if not message.place.private or presence.person_id is None:
        return replace(message, text=OUT_OF_DATE), ""
    with store.writing() as unit:
        there = people.switch(unit, replace(presence, number=message.number), bar_id)
    if there is None or there.bar is None:
        return replace(message, text=OUT_OF_DATE), ""
    return plain, there.bar.name


def storable(message: Message) -> Message:
    """Return the message with all texts in storable and printable form."""
    document = message.document
    return replace(
        message,
        text=harmless(message.text),
        was=None if message.was is None else harmless(message.was),
        sender=replace(message.sender, name=harmless(message.sender.name) or message.sender.outside_id),
        place=replace(message.place, title=harmless(message.place.title)),
        document=None if document is None else replace(document, name=harmless(document.name)),
    )
