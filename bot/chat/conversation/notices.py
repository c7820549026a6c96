"""Answers to what has no words: voice, stickers, places, an anonymous admin, being added to a group."""

from __future__ import annotations

from dataclasses import replace

from bot.chat.dialogue.turn import presence_of
from bot.chat.i18n.language import _, speaking
from bot.chat.i18n.locale_choice import tongue_of
from bot.chat.reply.message import Message, Reply, reply
from bot.trade.words import N_
from bot.work.context import Clock
from storage.store import Store

ADDED, ANONYMOUS = "added", "anonymous"
_UNREAD = {
    "voice": N_("I can't listen to messages. Please type it."),
    "sticker": N_("Nice one. I only read text, photos and files, so please type it."),
    "video": N_("I can't watch videos. Please type it, or send a photo."),
    "location": N_("I can't read a place on a map. To set your city, type: bar city"),
    "contact": N_("I can't read contacts. To add a colleague, type: team invite"),
    "poll": N_("I can't take part in polls. Please type it."),
    "picture file": N_("I can't keep a picture sent as a file. Please send it as a photo."),
}


def noticed(store: Store, clock: Clock, message: Message) -> list[Reply]:
    """Return the answer to a message without words. It reads only who wrote where."""
    with store.reading() as unit:
        presence = presence_of(unit, message)
    if not presence.language and presence.bar is None:
        presence = replace(presence, language=message.sender.language)  # a new person, or a group
    with speaking(tongue_of(presence, clock.now())):
        return [_worded(message.notice)]


def _worded(notice: str) -> Reply:
    if notice == ANONYMOUS:
        return reply(
            _("I can't see who you are: you write as the group."),
            _("Everything I log has a name. Please turn off “Remain anonymous”, or write to me privately."),
        )
    if notice == ADDED:
        return reply(
            _("Hello. I help your bar with amounts, batches and waste."),
            _("To make this chat your bar's own, send /start here."),
            _("Here, start with a slash or answer one of my messages: I read nothing else."),
        )
    return reply(_(_UNREAD[notice]))
