"""Find the commands that a question such as 'how do I waste' is about."""

from __future__ import annotations

from collections import Counter
from functools import cache
from math import log

from bot.chat.dialogue.command import Command
from bot.chat.dialogue.registry import all_commands, words_of
from bot.chat.features.help.subjects import subject_of
from bot.chat.grammar.lexer import stems_of
from bot.chat.i18n.language import _, tongue
from bot.chat.i18n.languages import understood

_MOST_WORDS = 20
# Weights of a word that begins the command alone, and with others, compared with a word of its summary.
_ALONE, _WITH_OTHERS = 3, 2
_CLOSE = 0.6  # of the best score: a command below this is not offered beside the best
_MOST = 4


def commands_about(asked: str) -> list[Command]:
    """Return the commands that a text is about, the likeliest first; at most four."""
    language = tongue().language
    weights = _index(language, tongue().locale)
    spread = Counter(stem for counted in weights.values() for stem in counted)
    fillers = _fillers(language)
    said = {one for one in stems_of(asked, language)[:_MOST_WORDS] if one in spread and one not in fillers}
    scores = {
        name: sum(counted.get(stem, 0) * log(1 + len(weights) / spread[stem]) for stem in said)
        for name, counted in weights.items()
    }
    best = max(scores.values(), default=0.0)
    ranked = sorted(scores, key=lambda name: (-scores[name], not all_commands()[name].menu, name))
    near = [name for name in ranked if scores[name] and scores[name] >= best * _CLOSE]
    return [all_commands()[name] for name in near[:_MOST]]


@cache
def _fillers(language: str) -> frozenset[str]:
    return frozenset(
        stem for one in understood(language) for word in one.fillers for stem in stems_of(word, language)
    )


@cache
def _index(language: str, _locale: str) -> dict[str, dict[str, int]]:
    """Return the stems of each command's words, summary, examples and subject, with their weights."""
    index = {}
    for command in all_commands().values():
        weights: dict[str, int] = {}
        for text in (command.summary, *command.examples, subject_of(command)):
            weights |= dict.fromkeys((*stems_of(_(text), language), *stems_of(text, language)), 1)
        for words in sorted(words_of(command, language), key=len, reverse=True):
            stems = stems_of(words, language)
            weights |= dict.fromkeys(stems, _ALONE if len(stems) == 1 else _WITH_OTHERS)
        index[command.name] = weights
    return index
