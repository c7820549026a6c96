"""Food grade: questions about an ingredient, and the mark it carries until they are answered."""

from __future__ import annotations

import re
from dataclasses import dataclass
from datetime import date
from enum import StrEnum

from bot.trade.formulas.ingredient_names.reading import read_name
from bot.trade.formulas.kinds import (
    INGREDIENT_PROPERTIES,
    IngredientKind,
    is_carrier_name,
    is_not_for_drinks,
    is_oil_name,
    is_peel_oil_name,
)
from bot.trade.safety.held_substances import held_in
from bot.trade.sources import HowKnown, Source
from bot.trade.words import N_

_SEEN = date(2026, 11, 25)


class FoodGrade(StrEnum):
    """Whether a member of the bar has confirmed that an ingredient is sold for food; stored by value."""

    CONFIRMED = "confirmed"
    NOT_CONFIRMED = "not confirmed"


GRADE_MARK = N_("Food grade not confirmed")


class OilStanding(StrEnum):
    """The position of an aromatic oil on the list of 21 CFR 182.20, by its name."""

    CITRUS_LISTED = "citrus listed"
    LISTED = "listed"
    CITRUS_NOT_NAMED = "citrus, not named"
    UNLISTED = "unlisted"


@dataclass(frozen=True, slots=True)
class ListedOil:
    """A name on the list of 21 CFR 182.20 or 182.60, its words, and how its listing is known."""

    name: str
    words: str
    citrus: bool
    how_known: HowKnown


LIST_SOURCE = Source(
    N_("21 CFR 182.20 (d-limonene: 182.60); parts of the list read in copies of 1998, 2006 and 2015"),
    HowKnown.READ_SECOND_HAND,
    _SEEN,
)

_READ, _SECOND, _MEMORY = HowKnown.READ, HowKnown.READ_SECOND_HAND, HowKnown.MEMORY


def _oil(name: str, how: HowKnown, words: str | None = None, *, citrus: bool = False) -> ListedOil:
    return ListedOil(name, words or name, citrus, how)


# The list goes by species; the words are those on bottles sold for drinks.
LISTED_OILS: tuple[ListedOil, ...] = (
    _oil("orange", _SECOND, "sweet orange|blood orange|navel orange|valencia orange|orange", citrus=True),
    _oil("bitter orange", _MEMORY, "bitter orange|seville orange|sour orange|bigarade", citrus=True),
    _oil("tangerine", _READ, citrus=True),
    _oil("bergamot", _SECOND, citrus=True),
    _oil("lemon", _SECOND, citrus=True),
    _oil("lime", _MEMORY, "lime|key lime|persian lime", citrus=True),
    _oil("grapefruit", _MEMORY, citrus=True),
    _oil("mandarin", _MEMORY, citrus=True),
    _oil("d-limonene", _SECOND, "limonene", citrus=True),
    *(
        _oil(name, _READ)
        for name in (
            "allspice", "angelica", "coriander", "cumin", "fennel", "ginger", "hyssop", "lavender", "mace",
            "tarragon", "thyme", "turmeric", "savory", "ylang-ylang", "geranium", "galangal",
        )
    ),
    _oil("clary sage", _READ, "clary sage|clary"),
    _oil("neroli", _MEMORY, "neroli|orange blossom|orange flower"),
    _oil("lemongrass", _MEMORY, "lemon ?grass"),
    _oil("lemon balm", _SECOND, "lemon balm|melissa"),
    *(
        _oil(name, _MEMORY)
        for name in (
            "anise", "basil", "bay", "caraway", "cardamom", "celery seed", "cinnamon", "citronella", "clove",
            "juniper", "marjoram", "nutmeg", "oregano", "palmarosa", "parsley",
            "black pepper", "peppermint", "petitgrain", "rose", "rosemary", "sage", "spearmint", "star anise",
            "chamomile", "jasmine", "hops",
        )
    ),
)  # fmt: skip


def _pattern(oil: ListedOil) -> re.Pattern[str]:
    return re.compile(rf"\b(?:{oil.words})s?\b")


_CITRUS = tuple((_pattern(oil), oil) for oil in LISTED_OILS if oil.citrus)
_OTHERS = tuple((_pattern(oil), oil) for oil in LISTED_OILS if not oil.citrus)

# A peel oil whose name contains a listed fruit's name but that comes from another species.
_OTHER_SPECIES = re.compile(r"\b(?:kaffir|makrut|combava|finger|desert|australian|wild|sweet) limes?\b")


def listed_oil(name: str) -> ListedOil | None:
    """Return the list entry that matches an oil's name, or None; a name alone proves nothing."""
    plain = read_name(name)
    peel = is_peel_oil_name(plain)
    if peel and _OTHER_SPECIES.search(plain):
        return None
    # The longest match decides, so that bitter orange does not count as orange.
    found = [
        (match.end() - match.start(), oil)
        for pattern, oil in (_CITRUS if peel else _OTHERS)
        if (match := pattern.search(plain))
    ]
    return max(found, key=lambda pair: pair[0])[1] if found else None


def oil_standing(name: str) -> OilStanding | None:
    """Return the position of an aromatic oil on the United States list of flavouring oils, or None.

    None when the name is not that of an aromatic oil (a carrier oil such as sunflower is not one). The list
    is 21 CFR 182.20, oils generally recognised for use in food; parts of it are from memory (see
    ListedOil.how_known). Other jurisdictions keep other lists, so there it is only an indication.
    """
    plain = read_name(name)
    if is_carrier_name(plain) or not (is_oil_name(plain) or is_peel_oil_name(plain)):
        return None
    found = listed_oil(plain)
    if is_peel_oil_name(plain):
        return OilStanding.CITRUS_LISTED if found else OilStanding.CITRUS_NOT_NAMED
    return OilStanding.LISTED if found else OilStanding.UNLISTED


class GradeReason(StrEnum):
    """The reason for a question about an ingredient."""

    NOT_FOR_DRINKS = "not for drinks"
    HOLDS_POISON = "holds a poison"
    OIL_UNLISTED = "oil unlisted"
    CITRUS_NOT_NAMED = "citrus not named"
    NOT_CONFIRMED = "grade not confirmed"


GRADE_TEXTS: dict[GradeReason, str] = {
    GradeReason.NOT_FOR_DRINKS: N_(
        "The name is that of something not made for drinking: stop, and do not use it unless the "
        "supplier's papers say that it is sold for food."
    ),
    GradeReason.OIL_UNLISTED: N_(
        "This oil is not on the list of flavouring oils known here: stop, and ask the supplier for its food "
        "papers before any of it goes into a mix."
    ),
    GradeReason.CITRUS_NOT_NAMED: N_(
        "This citrus oil is not named on the list of flavouring oils known here: ask the supplier for its "
        "food papers."
    ),
    GradeReason.NOT_CONFIRMED: N_(
        "The same thing is sold in grades not meant for food: is this one sold as food grade, with the "
        "supplier's papers to show it?"
    ),
}  # fmt: skip


@dataclass(frozen=True, slots=True)
class GradedIngredient:
    """The facts about an ingredient that decide its grade."""

    name: str
    kind: IngredientKind
    grade: FoodGrade = FoodGrade.NOT_CONFIRMED


@dataclass(frozen=True, slots=True)
class GradeQuestion:
    """A question to answer before an ingredient is used; `stop` blocks the work until then."""

    ingredient: GradedIngredient
    reason: GradeReason
    stop: bool
    text: str


# Alcohol by its chemical or trade name, which laboratories and cleaners also buy; vodka is not in question.
_BARE_ALCOHOL = re.compile(r"\b(?:ethanol|(?:ethyl |grain )?alcohol)\b")

_STOPS = frozenset({GradeReason.NOT_FOR_DRINKS, GradeReason.OIL_UNLISTED})


def question_for(ingredient: GradedIngredient) -> GradeQuestion | None:
    """Return the most serious question about an ingredient, or None.

    A confirmed food grade answers every question except that of a name not meant for drinks.
    """
    if is_not_for_drinks(ingredient.name):
        return _question(ingredient, GradeReason.NOT_FOR_DRINKS)
    if ingredient.grade is FoodGrade.CONFIRMED:
        return None
    for held in held_in((ingredient.name,)):
        if held.stops_at(ingredient.name):
            return GradeQuestion(ingredient, GradeReason.HOLDS_POISON, True, held.text)
    standing = oil_standing(ingredient.name)
    if ingredient.kind is not IngredientKind.CARRIER_OIL:
        if standing is OilStanding.UNLISTED:
            return _question(ingredient, GradeReason.OIL_UNLISTED)
        if standing is OilStanding.CITRUS_NOT_NAMED:
            return _question(ingredient, GradeReason.CITRUS_NOT_NAMED)
    properties = INGREDIENT_PROPERTIES[ingredient.kind]
    if (
        standing is not None
        or properties.needs_food_grade
        or _BARE_ALCOHOL.search(read_name(ingredient.name))
    ):
        return _question(ingredient, GradeReason.NOT_CONFIRMED)
    return None


def _question(ingredient: GradedIngredient, reason: GradeReason) -> GradeQuestion:
    return GradeQuestion(ingredient, reason, reason in _STOPS, GRADE_TEXTS[reason])
