"""Allergens suggested by words in an ingredient's name, by the list that the bar follows.

This module sees names only: it suggests lines for a person with the packaging to confirm. An empty answer
means only that no word matched.
"""

from __future__ import annotations

import re
from collections.abc import Iterable
from dataclasses import dataclass
from datetime import date
from enum import StrEnum

from bot.trade.formulas.ingredient_names.reading import read_name
from bot.trade.formulas.kinds import IngredientKind, guess_kind
from bot.trade.safety.jurisdiction import Jurisdiction
from bot.trade.sources import PRACTICE, HowKnown, Source
from bot.trade.words import N_


class Allergen(StrEnum):
    """A substance that a guest may react to, under the name used on labels."""

    WHEAT = N_("wheat")
    OTHER_GLUTEN = N_("barley, rye or oats (gluten)")
    CRUSTACEANS = N_("crustaceans")
    EGGS = N_("eggs")
    FISH = N_("fish")
    PEANUTS = N_("peanuts")
    SOYBEANS = N_("soybeans")
    MILK = N_("milk")
    TREE_NUTS = N_("tree nuts")
    PINE_NUTS = N_("pine nuts")
    CELERY = N_("celery")
    MUSTARD = N_("mustard")
    SESAME = N_("sesame")
    SULPHITES = N_("sulphites")
    LUPIN = N_("lupin")
    MOLLUSCS = N_("molluscs")
    COCONUT = N_("coconut")
    CHESTNUT = N_("chestnut")
    CITRUS = N_("citrus")


class Standing(StrEnum):
    """Whether the list that a bar follows includes an allergen."""

    LISTED = "listed"
    LISTED_APART = "listed apart"
    WORTH_SAYING = "worth saying"


_SEEN = date(2026, 11, 25)

EU_SOURCE = Source(
    N_("Regulation (EU) No 1169/2011, Annex II, as reprinted"), HowKnown.READ_SECOND_HAND, _SEEN
)
UK_SOURCE = Source(
    N_(
        "Annex II of Regulation (EU) No 1169/2011, kept by the Food Information Regulations 2014, "
        "as described"
    ),
    HowKnown.READ_SECOND_HAND,
    _SEEN,
)
US_SOURCE = Source(
    N_("FDA: the FASTER Act, sesame is the ninth major food allergen (page of the nine)"),
    HowKnown.READ,
    _SEEN,
)
US_NUTS_SOURCE = Source(
    N_("FDA, Questions and Answers Regarding Food Allergens, edition 5, 6 January 2025, as reported"),
    HowKnown.READ_SECOND_HAND,
    _SEEN,
)
US_SULPHITES_SOURCE = Source(N_("21 CFR 101.100(a)(4): sulfites from 10 ppm"), HowKnown.MEMORY)

_EU_ANNEX = frozenset({
    Allergen.WHEAT, Allergen.OTHER_GLUTEN, Allergen.CRUSTACEANS, Allergen.EGGS, Allergen.FISH,
    Allergen.PEANUTS, Allergen.SOYBEANS, Allergen.MILK, Allergen.TREE_NUTS, Allergen.CELERY,
    Allergen.MUSTARD, Allergen.SESAME, Allergen.SULPHITES, Allergen.LUPIN, Allergen.MOLLUSCS,
})  # fmt: skip
_US_NINE = frozenset({
    Allergen.MILK, Allergen.EGGS, Allergen.FISH, Allergen.CRUSTACEANS, Allergen.TREE_NUTS,
    Allergen.PINE_NUTS, Allergen.PEANUTS, Allergen.WHEAT, Allergen.SOYBEANS, Allergen.SESAME,
})  # fmt: skip

_LISTS: dict[Jurisdiction, tuple[frozenset[Allergen], Source]] = {
    Jurisdiction.EU: (_EU_ANNEX, EU_SOURCE),
    Jurisdiction.UK: (_EU_ANNEX, UK_SOURCE),
    Jurisdiction.US: (_US_NINE, US_SOURCE),
}

_COCONUT_NOTE = N_(
    "Coconut is not among the nuts of the European list, and the United States took it off its tree nut "
    "list in January 2025; some guests react to it all the same."
)
_SULPHITE_NOTE = N_("Counts from 10 mg per kg or per litre of the finished drink: read the packaging.")
_ORGEAT_NOTE = N_("Orgeat is usually almond, sometimes another nut: read the packaging.")
_OFTEN_ALMOND_NOTE = N_("Often made with almond or another nut, not always: read the packaging.")


@dataclass(frozen=True, slots=True)
class _Trigger:
    """Words that indicate an allergen; `spared` are phrases that contain the word but not the substance."""

    allergen: Allergen
    words: re.Pattern[str]
    spared: re.Pattern[str] | None = None
    certain: bool = True
    note: str = ""


def _words(*alternatives: str) -> re.Pattern[str]:
    return re.compile(r"\b(?:" + "|".join(alternatives) + r")\b")


_PLANT_MILK = r"(?:coconut|almond|cashew|hazelnut|oat|soya?|soybean|rice|hemp|pea|nut) (?:milk|cream|butter)"

_TRIGGERS: tuple[_Trigger, ...] = (
    _Trigger(
        Allergen.MILK,
        _words("milk|cream|butter|ghee|whey|yogh?urt|kefir|cheese|mascarpone|casein|lactose|dairy|eggnog"),
        _words(
            _PLANT_MILK,
            "(?:cocoa|peanut|shea) butter|cream of (?:tartar|coconut)|cream sodas?|milk thistle|non-?dairy",
            "dairy[- ]free",
        ),
    ),
    _Trigger(
        Allergen.EGGS, _words("eggs?|eggnog|albumen|advocaat|meringue"), _words("egg ?plants?|egg[- ]free"),
    ),
    _Trigger(
        Allergen.TREE_NUTS,
        _words(
            "almonds?|hazelnuts?|filberts?|walnuts?|cashews?|pecans?|brazil nuts?|pistachios?|macadamias?",
            "noisettes?|noyaux?|nocino|marzipan|praline|gianduja|nuts?",
        ),
        _words("(?:pine|tiger|cola|kola|ground|palm) nuts?|nut[- ]free"),
    ),
    _Trigger(Allergen.TREE_NUTS, _words("orgeat"), None, certain=False, note=_ORGEAT_NOTE),
    _Trigger(Allergen.TREE_NUTS, _words("falernum|amaretto"), None, certain=False, note=_OFTEN_ALMOND_NOTE),
    _Trigger(Allergen.PINE_NUTS, _words("pine ?nuts?|pinon nuts?|pignolis?")),
    _Trigger(Allergen.CHESTNUT, _words("chestnuts?|marrons?")),
    _Trigger(Allergen.PEANUTS, _words("peanuts?|ground ?nuts?|arachis")),
    _Trigger(Allergen.SOYBEANS, _words("soya?|soybeans?|tofu|edamame")),
    _Trigger(
        Allergen.SOYBEANS, _words("lecithin"), _words("sunflower lecithin|egg lecithin|soya? lecithin"),
        certain=False, note=N_("Lecithin is often from soy: read the packaging."),
    ),
    _Trigger(Allergen.WHEAT, _words("wheat|spelt|kamut|semolina|seitan|farro"), _words("buckwheat")),
    _Trigger(
        Allergen.OTHER_GLUTEN, _words("barley|rye|oats?|oatmeal|malt|malted|beers?|lagers?|stouts?|ales?"),
        _words("(?:ginger|root) (?:beers?|ales?)"),
    ),
    _Trigger(
        Allergen.FISH, _words("fish|anchov(?:y|ies)|isinglass|tuna|bonito|dashi|worcestershire"),
    ),
    _Trigger(
        Allergen.CRUSTACEANS, _words("shrimps?|prawns?|crabs?|lobsters?|cray ?fish"), _words("crab ?apples?"),
    ),
    _Trigger(
        Allergen.MOLLUSCS, _words("clams?|oysters?|squid|octopus|mussels?"), _words("oyster mushrooms?"),
    ),
    _Trigger(Allergen.CELERY, _words("celery|celeriac")),
    _Trigger(Allergen.MUSTARD, _words("mustard")),
    _Trigger(Allergen.SESAME, _words("sesame|tahini|benne")),
    _Trigger(Allergen.LUPIN, _words("lupins?|lupine")),
    _Trigger(
        Allergen.SULPHITES, _words("sul(?:ph|f)ites?|sul(?:ph|f)ur dioxide|metabisul(?:ph|f)ite|e ?22[0-8]"),
        note=_SULPHITE_NOTE,
    ),
    _Trigger(
        Allergen.SULPHITES,
        _words("wines?|champagne|vermouths?|sherry|ports?|madeira|ciders?|dried fruits?|raisins?"), None,
        certain=False, note=_SULPHITE_NOTE,
    ),
    _Trigger(Allergen.COCONUT, _words("coconuts?"), note=_COCONUT_NOTE),
    _Trigger(
        Allergen.COCONUT, _words("mct|medium[- ]chain triglycerides?|caprylic|capric"), None,
        certain=False, note=N_("This carrier is often made from coconut: read the packaging."),
    ),
    _Trigger(
        Allergen.CITRUS,
        _words("grapefruits?|oranges?|lemons?|limes?|bergamots?|mandarins?|tangerines?|yuzus?|citrus|limonene"),
        _words("lemon ?grass|lemon balm|lemon verbena|lemon thyme|mock orange|lime flowers?|bergamot mint"),
    ),
)  # fmt: skip

# The European list exempts cereals distilled into spirit; a whisky's name still says rye or malt.
_DISTILLED_AWAY = frozenset({Allergen.WHEAT, Allergen.OTHER_GLUTEN})


@dataclass(frozen=True, slots=True)
class AllergenLine:
    """One allergen suggested by one ingredient's name.

    `certain` is False where the ingredient only often contains it; `note` (possibly empty) says what to
    check; `standing` is by the list of `source`.
    """

    ingredient: str
    allergen: Allergen
    standing: Standing
    certain: bool
    note: str
    source: Source


def allergen_lines(ingredient_names: Iterable[str], jurisdiction: Jurisdiction) -> list[AllergenLine]:
    """Return the allergens that the names suggest: listed ones first, then those worth mentioning.

    EU: the fourteen of Regulation (EU) No 1169/2011, Annex II; UK: the same; US: the nine major allergens of
    the FASTER Act, with sulphites declared apart and coconut no longer a tree nut (FDA, January 2025). A bar
    under other rules gets every line as worth mentioning.
    """
    lines = []
    for name in ingredient_names:
        plain = read_name(name)
        distilled = guess_kind(plain) is IngredientKind.SPIRIT
        found: set[Allergen] = set()
        for trigger in _TRIGGERS:
            left = trigger.spared.sub(" ", plain) if trigger.spared else plain
            if trigger.allergen in found or not trigger.words.search(left):
                continue
            if distilled and trigger.allergen in _DISTILLED_AWAY:
                continue
            found.add(trigger.allergen)
            standing, source = _standing(trigger.allergen, jurisdiction)
            lines.append(
                AllergenLine(name, trigger.allergen, standing, trigger.certain, trigger.note, source)
            )
    order = list(Standing)
    return sorted(lines, key=lambda line: (order.index(line.standing), not line.certain))


def _standing(allergen: Allergen, jurisdiction: Jurisdiction) -> tuple[Standing, Source]:
    if jurisdiction not in _LISTS:
        return Standing.WORTH_SAYING, PRACTICE
    listed, source = _LISTS[jurisdiction]
    if jurisdiction is Jurisdiction.US:
        if allergen is Allergen.SULPHITES:
            return Standing.LISTED_APART, US_SULPHITES_SOURCE
        if allergen in {Allergen.TREE_NUTS, Allergen.PINE_NUTS, Allergen.COCONUT, Allergen.CHESTNUT}:
            source = US_NUTS_SOURCE
    if allergen in listed:
        return Standing.LISTED, source
    # The list itself is the source for what it does not name.
    return Standing.WORTH_SAYING, PRACTICE if allergen is Allergen.CITRUS else source


def to_declare(lines: Iterable[AllergenLine]) -> list[Allergen]:
    """Return the allergens on the bar's list that the lines name, each once, in the order of the list."""
    named = {line.allergen for line in lines if line.standing is not Standing.WORTH_SAYING}
    return [allergen for allergen in Allergen if allergen in named]
