"""The bar whose names the lines use: the demo bar, with formulas named in the language of the lines."""

from __future__ import annotations

import tempfile
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

from bot.chat.conversation import arrival
from bot.chat.dialogue.turn import Turn
from bot.chat.grammar.lexer import Noun, Vocabulary
from bot.chat.i18n.language import speaking
from bot.chat.reply.message import Message
from storage.unit import Unit
from tests.demo_bar import demo_bar
from tests.house import Person

SAID_IN: dict[str, tuple[str, ...]] = {
    "en": (),
    "es": (
        "language Spanish",
        "bar language Spanish",
        "rename Grapefruit mist to Bruma de toronja",
        "rename Orange mist to Bruma de naranja",
        "rename House syrup to Jarabe de la casa",
        "rename Lime-strength orange to Naranja ácida",
        "rename Cardamom tincture to Tintura de cardamomo",
    ),
}

# The drinks on the list.
_SERVED = {
    "en": ("serve negroni: 2 orange mist, 90 ml", "serve paloma: 2 grapefruit mist, 180 ml"),
    "es": ("serve negroni: 2 Bruma de naranja, 90 ml", "serve paloma: 2 Bruma de toronja, 180 ml"),
}

# Formulas and things of other bars, so that the ranker does not learn the names of one.
_OTHER_NAMES = {
    "en": (
        "Lemon mist, Lime cordial, Ginger syrup, Bergamot mist, Mandarin mist, Lime mist, Simple syrup",
        "orange oil, lemon oil, bergamot oil, pg, sugar, citric, malic, orange juice, cardamom pods",
    ),
    "es": (
        "Bruma de limón, Aroma de toronja, Aroma de naranja, Niebla de naranja, Aroma de pomelo, "
        "Bruma de pomelo, Aroma de limón, Sirope de la casa, Jarabe de jengibre, Cordial de lima, "
        "Cordial de limón, Jarabe simple, Bruma de bergamota, Niebla de pomelo, Spray de naranja, "
        "Sirope de jengibre, Almíbar de la casa",
        "aceite de toronja, aceite de naranja, aceite de limón, aceite de pomelo, propilenglicol, "
        "glicerina, alcohol neutro, alcohol, agua, azúcar, ácido cítrico, ácido málico, "
        "jugo de naranja, zumo de naranja, cardamomo, naranja, limón, lima, toronja, pomelo",
    ),
}


@contextmanager
def bar_speaking(language: str) -> Iterator[Person]:
    """Yield the owner of the demo bar, who speaks a language."""
    with tempfile.TemporaryDirectory() as folder, demo_bar(Path(folder)) as robin:
        for line in (*SAID_IN[language], *_SERVED[language]):
            robin.says(line)
        yield robin


@contextmanager
def turn_of(unit: Unit, robin: Person, message: Message) -> Iterator[Turn]:
    """Yield the turn of a message, in the language of its author."""
    arrived = arrival.meet(unit, message)
    clock = robin.house.clock
    with speaking(arrived.tongue(clock.now())):
        yield arrived.turn(unit, clock)


def with_other_names(vocabulary: Vocabulary, language: str) -> Vocabulary:
    """Return a bar's vocabulary with names that other bars use."""
    wide = Vocabulary(language)
    for noun in vocabulary.nouns:
        wide.nouns.append(noun)
    wide.phrases = {first: list(those) for first, those in vocabulary.phrases.items()}
    for kind, names in zip(("FORMULA", "INGREDIENT"), _OTHER_NAMES[language], strict=True):
        for number, name in enumerate(names.split(", ")):
            wide.add(Noun(kind, f"other {number}", name))
    wide.add(Noun("PERSON", "sam", "Sam"))
    return wide
