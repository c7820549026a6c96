"""The command language: the language of a person's replies."""

from __future__ import annotations

from dataclasses import dataclass, replace

from bot.chat.dialogue.arguments import Arguments
from bot.chat.dialogue.command import Command, Wish
from bot.chat.dialogue.slots import Given, Question, Slot, columns
from bot.chat.dialogue.turn import Say, Turn
from bot.chat.features.people.deep_links import main_buttons
from bot.chat.i18n.language import _, speaking, tongue
from bot.chat.i18n.languages import languages
from bot.chat.i18n.locale_choice import language_named
from bot.chat.reply.message import Reply, reply
from bot.trade.words import N_
from bot.work.people import people


def _ask(turn: Turn, given: Given) -> Question:
    names = [one.name for one in languages().values()]
    return Question(
        _("Which language? Now: {language}").format(language=languages()[tongue().language].name),
        columns([(name, name) for name in names], 2),
        hint=", ".join(names),
    )


def read_language(text: str) -> str:
    """Return the language named by a text; list the languages if it names none."""
    found = language_named(text)
    if not found:
        names = ", ".join(one.name for one in languages().values())
        raise Say(reply(_("I speak: {languages}").format(languages=names)))
    return found


def _accept(turn: Turn, given: Given, value: str) -> str:
    return read_language(value)


@dataclass(frozen=True, kw_only=True)
class LanguageArguments(Arguments):
    """A language, by its tag."""

    free: str


def _language(turn: Turn, arguments: LanguageArguments) -> Reply:
    language = arguments.free
    people.speak(turn.unit, turn.presence, language)
    now = tongue()
    with speaking(replace(now, language=language)):
        return reply(
            _("I speak English with you from now on."),
            _("For the whole bar's chats: bar language English"),
            buttons=main_buttons() if turn.presence.bar is not None else (),
        )


COMMANDS = (
    Command(
        "language",
        N_("the language I speak with you"),
        _language,
        words=("speak",),
        # A person who cannot read the current language still finds their own.
        in_every_language=True,
        slots=(Slot("free", _accept, _ask),),
        writes=True,
        anyone=True,
        menu=74,
        examples=(N_("language English"),),
        wishes=(Wish("language", ("{language?}",)),),
    ),
)
