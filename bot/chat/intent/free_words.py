"""Find the intent of words that no question asked for: a command that they name, or a free line."""

from __future__ import annotations

from dataclasses import replace

from bot.chat.dialogue.command import Command
from bot.chat.dialogue.registry import all_commands
from bot.chat.dialogue.turn import Turn
from bot.chat.grammar.recipe_text import has_list
from bot.chat.i18n.languages import languages
from bot.chat.intent.guessing import as_more_drinks, as_recipe, said_whole, sold_out
from bot.chat.intent.intent import Ignored, Intent, NotUnderstood, Read, Said
from bot.chat.intent.reading.reader import Reading, Readings, read_free
from bot.chat.intent.thread import as_other_note
from bot.chat.intent.whole import knows_all, means_other, reads_whole, stands

RECIPE_AMOUNTS = 2  # a name and amounts of two things are a recipe, unless it is surely something else


def taken_or_free(turn: Turn, text: str, command: Command, rest: str) -> Intent:
    """Return the command if the grammar takes the text whole, or if nothing else is clearly meant."""
    said = Said(command, rest)
    if turn.presence.bar is None:
        return said
    logs = command.writes and not any(wish.shows for wish in command.wishes)
    if logs and rest and text.rstrip().endswith("?") and reads_whole((command, rest), turn):
        return to_confirm(command, rest)  # a question
    if knows_all(turn, command, rest):
        return said
    found = readings(turn, text)
    new = all_commands()["new"]
    if command.name == "formula" and has_list(rest) and not means_other(new, found):
        return new_formula(turn, rest)
    if stands(turn, command, rest, found):
        return said
    agreed = found.first is not None and found.first.command is command and not found.parts
    return Read(replace(found, sure=found.sure or agreed))


def to_confirm(command: Command, rest: str) -> Read:
    """Return a line that is offered, and done at a tap."""
    return Read(Readings((Reading(command.name, 1.0, command, rest),), sure=True))


def new_formula(turn: Turn, rest: str) -> Read | Said:
    """Return 'recipe Lime mist: lime oil 10 ml' as a new formula, to tap."""
    command = all_commands()["new"]
    if not reads_whole((command, rest), turn):
        return Said(command, rest)  # the answer names the line that it cannot read
    return to_confirm(command, rest)


def free(turn: Turn, text: str) -> Intent:
    """Return what a text means that begins with no command's word."""
    if turn.presence.bar is None or not text or sold_out(turn, text):
        return NotUnderstood()
    if any(text.casefold().strip(" .!¡") in one.thanks for one in languages().values()):
        return Read(Readings((Reading("thanks", 1.0),), sure=True))
    more = as_more_drinks(turn, text) if turn.message.place.private else None
    if more is not None:
        return to_confirm(*more)
    note = as_other_note(turn, text)
    if note is not None:
        return to_confirm(all_commands()["correct"], note)
    recipe = as_recipe(turn, text)
    found = readings(turn, text)
    plainly = recipe is not None and (
        (has_list(text, RECIPE_AMOUNTS) and not found.sure) or not means_other(recipe, found)
    )
    if recipe is not None and turn.message.place.private and plainly:
        return to_confirm(recipe, text)
    if not turn.message.place.private and not found.sure:
        return Ignored()  # colleagues who talk
    return Read(found)


def readings(turn: Turn, text: str) -> Readings:
    """Return the readings of a free line, behind those whose phrase it is whole."""
    return read_free(turn, text).preferring(said_whole(turn, text))
