"""Esperanto: enough words to log waste, and its texts in messages.po."""

from __future__ import annotations

from bot.chat.i18n.languages import Language, counting

LANGUAGE = Language(
    tag="eo",
    name="Esperanto",
    locale="eo",
    plural=lambda name: f"{name}j",
    singular=lambda name: name.removesuffix("n").removesuffix("j"),
    keywords={"TO": "al", "AND": "kaj", "EACH": "po", "YESTERDAY": "hieraŭ", "TODAY": "hodiaŭ"},
    units={"kg": "kilogramo, kilogramoj", "dozen": "dekduo, dekduoj, dekduojn"},
    number_words=counting("unu du tri kvar kvin ses"),
    halves=("kaj duono",),
    range_words=("ĝis",),
    articles=frozenset({"la"}),
    thanks=frozenset({"dankon"}),
    other_words={"mouldy": ("putra", "ŝima")},
)
