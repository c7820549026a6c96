"""Help by subject: pages that list every registered command, a few at a time."""

from __future__ import annotations

from bot.chat.dialogue.command import Command
from bot.chat.dialogue.registry import all_commands, slash_word, words_of
from bot.chat.dialogue.slots import columns
from bot.chat.i18n.language import _, tongue
from bot.chat.reply.layout import height
from bot.chat.reply.message import Button, Reply, reply
from bot.trade.words import N_

# The packages of the features by subject. A package without one is listed under the last.
SUBJECTS: dict[str, tuple[str, ...]] = {
    N_("Waste and fruit"): ("fruit",),
    N_("Formulas"): ("formulas", "design"),
    N_("Batches and labels"): ("batches", "labels"),
    N_("Strength and clearing"): ("liquids",),
    N_("Sprays and drinks"): ("spray", "menu"),
    N_("Money"): ("money", "savings"),
    N_("Stock and plan"): ("stock", "planning", "events"),
    N_("Trials"): ("trials",),
    N_("Safety"): ("safety",),
    N_("Team and settings"): ("people",),
    N_("Log and files"): ("log", "reminders", "transfer", "help"),
}
_PAGE_LINES = 12
_FEATURES = "bot.chat.features."


def everything() -> Reply:
    """Return the subjects, one button each."""
    choices = [(_(subject), line_of(subject)) for subject in SUBJECTS]
    return reply(
        _("All I can do, by subject. Tap one."),
        _("Or say what you want: help labels, help how do I waste"),
        buttons=tuple(tuple(Button(*one) for one in row) for row in columns(choices, 2)),
    )


def line_of(subject: str, page: int = 1) -> str:
    """Return the line of a page, in one word: several words are read as a wish."""
    return f"help {SUBJECTS[subject][0]}:{page}"


def subject_of(command: Command) -> str:
    """Return the subject of a command, by the package of its feature."""
    package = command.run.__module__.removeprefix(_FEATURES).partition(".")[0]
    last = list(SUBJECTS)[-1]
    return next((subject for subject, packages in SUBJECTS.items() if package in packages), last)


def subject_named(asked: str) -> tuple[str, int] | None:
    """Return the subject and the page named by a text: 'money', 'fruit:2'; or None."""
    said, _colon, page = asked.casefold().partition(":")
    for subject, packages in SUBJECTS.items():
        if said in {subject.casefold(), _(subject).casefold(), *packages}:
            return subject, int(page) if page.isdecimal() and len(page) < 3 else 1
    return None


def subject_page(subject: str, page: int) -> Reply:
    """Return one page of the commands of a subject, with a button for the next."""
    pages = _pages([_line(one) for one in commands_of(subject)])
    at = min(max(page, 1), len(pages))
    more = (Button(_("More"), line_of(subject, at + 1)),) if at < len(pages) else ()
    return reply(
        _(subject),
        "\n".join(pages[at - 1]),
        _("More on one of them: help {word}").format(word=typed(commands_of(subject)[0]).lstrip("/")),
        buttons=((*more, Button(_("Everything"), "help all")),),
    )


def commands_of(subject: str) -> list[Command]:
    """Return the commands of a subject, those of the menu first."""
    found = [one for one in all_commands().values() if subject_of(one) == subject]
    return sorted(found, key=lambda one: (not one.menu, one.menu))


def _line(command: Command) -> str:
    return f"{typed(command)}: {_(command.summary)}"


def typed(command: Command) -> str:
    """Return the words to type for a command, with a slash for those of the menu."""
    if command.menu:
        return f"/{slash_word(command)}"
    first = words_of(command, tongue().language)[0]
    as_shown = all(one.startswith(command.name) for one in command.examples)
    return first if first != command.name or as_shown else command.words[0]


def _pages(lines: list[str]) -> list[list[str]]:
    pages: list[list[str]] = [[]]
    room = _PAGE_LINES
    for line in lines:
        tall = height(line)
        if tall > room and pages[-1]:
            pages.append([])
            room = _PAGE_LINES
        pages[-1].append(line)
        room -= tall
    return pages
