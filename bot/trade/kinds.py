"""Kinds of preparation and of ingredient, and what each brings by default.

The values of both enumerations are stored in the database: never change one.
Every default number here is common practice, no source; a bar or a formula may
set its own.
"""

from __future__ import annotations

import re
import unicodedata
from dataclasses import dataclass
from enum import StrEnum

from bot.trade.words import N_

COMMON_PRACTICE = N_("common practice, no source")


class Preparation(StrEnum):
    """What sort of thing a formula makes."""

    AROMA_MIST = "aroma mist"
    TINCTURE = "tincture"
    INFUSION = "infusion"
    SYRUP = "syrup"
    CORDIAL = "cordial"
    JUICE = "juice"
    ACID_ADJUSTED_JUICE = "acid-adjusted juice"
    SALINE = "saline"
    OTHER = "other"


class IngredientKind(StrEnum):
    """What sort of thing an ingredient is, as far as the rules of the trade need to know."""

    CITRUS_OIL = "citrus oil"
    SPIRIT = "spirit"
    PROPYLENE_GLYCOL = "propylene glycol"
    GLYCEROL = "glycerol"
    CARRIER_OIL = "carrier oil"
    WATER = "water"
    SUGAR = "sugar"
    ACID = "acid"
    JUICE = "juice"
    FRUIT = "fruit"
    OTHER = "other"


class MeasuredBy(StrEnum):
    """How an ingredient is usually measured out."""

    VOLUME = "volume"
    MASS = "mass"
    COUNT = "count"


@dataclass(frozen=True, slots=True)
class PreparationDefaults:
    """What a kind of preparation brings until the bar or the formula says otherwise.

    `rest_hours` is the rest before first use, in hours; `discard_days` is the
    number of days after the day of making on which it is thrown out. The
    caution ids are those of bot.trade.cautions. The numbers are common
    practice, no source.
    """

    rest_hours: int
    discard_days: int
    keep_cold: bool
    caution_ids: tuple[str, ...]
    label_lines: tuple[str, ...]
    source: str = COMMON_PRACTICE


@dataclass(frozen=True, slots=True)
class IngredientProperties:
    """What the rules need to know of a kind of ingredient, whatever its name.

    `needs_food_grade` says that the same thing is widely sold in grades not
    meant for food, so that the grade has to be asked about. `flammable` says
    that the neat ingredient can be lit in a bar (a weak spirit may not:
    bot.trade.flash has the bands by strength).
    """

    needs_food_grade: bool
    flammable: bool
    measured_by: MeasuredBy
    is_liquid: bool


_FLAMMABLE_LINE = N_("Flammable: keep away from flame and heat")
_COLD_LINE = N_("Keep refrigerated")

PREPARATION_DEFAULTS: dict[Preparation, PreparationDefaults] = {
    Preparation.AROMA_MIST: PreparationDefaults(
        rest_hours=24,
        discard_days=180,
        keep_cold=False,
        caution_ids=(
            "flame-at-spray",
            "ventilation",
            "neat-oil-contact",
            "sealed-storage",
            "guest-allergies",
        ),
        label_lines=(
            _FLAMMABLE_LINE,
            N_("Aroma spray for drinks: not to be drunk neat"),
            N_("Keep closed, cool and out of the light"),
        ),
    ),
    Preparation.TINCTURE: PreparationDefaults(
        rest_hours=14 * 24,
        discard_days=365,
        keep_cold=False,
        caution_ids=("no-flame", "house-licence", "sealed-storage"),
        label_lines=(_FLAMMABLE_LINE, N_("For use by the dash or drop: not to be drunk neat")),
    ),
    Preparation.INFUSION: PreparationDefaults(
        rest_hours=48,
        discard_days=90,
        keep_cold=False,
        caution_ids=("house-licence", "solids-covered", "sealed-storage"),
        label_lines=(N_("House infusion: contains alcohol"),),
    ),
    Preparation.SYRUP: PreparationDefaults(
        rest_hours=0,
        discard_days=14,
        keep_cold=True,
        caution_ids=("hot-sugar", "clean-bottles", "keep-cold"),
        label_lines=(_COLD_LINE,),
    ),
    Preparation.CORDIAL: PreparationDefaults(
        rest_hours=24,
        discard_days=21,
        keep_cold=True,
        caution_ids=("clean-bottles", "keep-cold"),
        label_lines=(_COLD_LINE,),
    ),
    Preparation.JUICE: PreparationDefaults(
        rest_hours=0,
        discard_days=1,
        keep_cold=True,
        caution_ids=("wash-fruit", "keep-cold", "food-code-juice"),
        label_lines=(_COLD_LINE, N_("Fresh juice, not pasteurised")),
    ),
    Preparation.ACID_ADJUSTED_JUICE: PreparationDefaults(
        rest_hours=0,
        discard_days=3,
        keep_cold=True,
        caution_ids=("wash-fruit", "acid-contact", "keep-cold", "food-code-juice"),
        label_lines=(_COLD_LINE, N_("Juice with added acid, not pasteurised")),
    ),
    Preparation.SALINE: PreparationDefaults(
        rest_hours=0,
        discard_days=30,
        keep_cold=False,
        caution_ids=("clean-bottles",),
        label_lines=(N_("Salt solution: for use by the drop"),),
    ),
    Preparation.OTHER: PreparationDefaults(
        rest_hours=0,
        discard_days=7,
        keep_cold=True,
        caution_ids=("clean-bottles", "ask-inspector"),
        label_lines=(_COLD_LINE,),
    ),
}

_BY_VOLUME = MeasuredBy.VOLUME

INGREDIENT_PROPERTIES: dict[IngredientKind, IngredientProperties] = {
    IngredientKind.CITRUS_OIL: IngredientProperties(True, True, _BY_VOLUME, True),
    IngredientKind.SPIRIT: IngredientProperties(True, True, _BY_VOLUME, True),
    IngredientKind.PROPYLENE_GLYCOL: IngredientProperties(True, False, _BY_VOLUME, True),
    IngredientKind.GLYCEROL: IngredientProperties(True, False, _BY_VOLUME, True),
    IngredientKind.CARRIER_OIL: IngredientProperties(True, False, _BY_VOLUME, True),
    IngredientKind.WATER: IngredientProperties(False, False, _BY_VOLUME, True),
    IngredientKind.SUGAR: IngredientProperties(False, False, MeasuredBy.MASS, False),
    IngredientKind.ACID: IngredientProperties(True, False, MeasuredBy.MASS, False),
    IngredientKind.JUICE: IngredientProperties(False, False, _BY_VOLUME, True),
    IngredientKind.FRUIT: IngredientProperties(False, False, MeasuredBy.COUNT, False),
    IngredientKind.OTHER: IngredientProperties(False, False, _BY_VOLUME, True),
}


def plain_name(name: str) -> str:
    """Return `name` in lower case, without accents, with single spaces, for looking words up in it."""
    bare = "".join(c for c in unicodedata.normalize("NFKD", name) if not unicodedata.combining(c))
    return " ".join(bare.casefold().split())


def _any_word(*words: str) -> re.Pattern[str]:
    return re.compile(r"\b(?:" + "|".join(words) + r")\b")


CITRUS_FRUIT_WORDS = (
    r"grapefruits?", r"oranges?", r"lemons?", r"limes?", r"bergamots?", r"mandarins?", r"tangerines?",
    r"clementines?", r"satsumas?", r"yuzus?", r"kumquats?", r"citrons?", r"pomelos?", r"calamansis?",
    r"sudachis?", r"kabosus?", r"tangelos?",
)  # fmt: skip
_OTHER_FRUIT_WORDS = (
    r"apples?", r"pears?", r"pineapples?", r"mangos?", r"mangoes", r"peach(?:es)?", r"plums?", r"cherry",
    r"cherries", r"(?:[a-z]*berry|[a-z]*berries)", r"grapes?", r"melons?", r"watermelons?", r"cucumbers?",
    r"bananas?", r"figs?", r"rhubarb", r"passion ?fruits?", r"pomegranates?", r"apricots?", r"tomato(?:es)?",
    r"peels?", r"zests?", r"rinds?", r"wedges?", r"fruits?",
)  # fmt: skip

# Words for things that look like a kind of ours but are not it.
_NOT_FOR_DRINKS = _any_word(
    "isopropyl", "isopropanol", "rubbing", "methanol", "methyl", "methylated", "denatured", "surgical",
    "wood alcohol", "ethylene", "diethylene", "antifreeze", "fragrance",
)  # fmt: skip
_OF_NO_KIND = _any_word(
    "syrups?", "vinegars?", "honey", "agave", "molasses", "purees?", "milk", "cream", "butter",
    "eggs?", "salt",
    "saline", "orgeat",
)  # fmt: skip
_UNSURE = _any_word(
    "liqueurs?", "bitters", "vermouths?", "wines?", "beers?", "ciders?", "sherry", "cordials?",
    "sodas?", "tonic",
    "flowers?", "blossoms?", "coconut water", "rose water", "leaf", "leaves", "lemonade",
    "extracts?", "essence",
)  # fmt: skip
_JUICE = _any_word("juices?")
_GLYCOL = _any_word("pg", "(?:mono)?propylene glycol", "glycol", "propane ?-? ?1,2 ?-? ?diol", "e ?1520")
_GLYCEROL = _any_word("glycerols?", "glycerine?s?", "vg", "e ?422")
_CARRIER = _any_word(
    "mct", "medium[ -]chain triglycerides?", "carrier",
    "(?:coconut|sunflower|olive|grape ?seed|rape ?seed|canola|rice bran|vegetable|neutral|sesame"
    "|almond|peanut"
    "|groundnut|walnut|hazelnut|avocado|soya?|soybean|corn|safflower) oil",
)  # fmt: skip
_OIL = _any_word("oils?")
_CITRUS_OIL = _any_word(*CITRUS_FRUIT_WORDS, "citrus", "limonene")
_NOT_PEEL_OIL = _any_word(
    "leaf", "leaves", "flowers?", "blossoms?", "balm", "verbena", "myrtle", "mint", "thyme", "grass", "basil",
    "eucalyptus", "tea tree", "petitgrain", "neroli",
)  # fmt: skip
_ACID = _any_word(
    "acids?", "citric", "malic", "tartaric", "lactic", "ascorbic", "phosphoric", "acid phosphate"
)
_SPIRIT = _any_word(
    "spirits?", "vodkas?", "gins?", "rums?", "whiske?ys?", "whiskies", "bourbons?", "rye",
    "scotch", "tequilas?",
    "mezcals?", "brandy", "brandies", "cognacs?", "armagnacs?", "piscos?", "grappas?", "cachacas?",
    "aquavits?",
    "absinthes?", "eaux? de vie", "calvados", "arrack", "baijiu", "shochu", "soju", "ethanol", "alcohols?",
    "gns", "over-?proof", "high[ -]proof", r"\d+(?:\.\d+)? proof",
)  # fmt: skip
_SUGAR = _any_word("sugars?", "sucrose", "dextrose", "glucose", "fructose", "demerara", "muscovado", "caster")
_WATER = re.compile(
    r"(?:(?:still|filtered|distilled|tap|mineral|spring|sparkling|purified|deionised|deionized|hot"
    "|cold|boiling"
    r"|boiled|iced?|soda|drinking) ?)*(?:water|ice)"
)
_FRUIT = _any_word(*CITRUS_FRUIT_WORDS, *_OTHER_FRUIT_WORDS)

# The first rule that matches decides, so the narrow ones stand before the wide ones.
_GUESSES: tuple[tuple[re.Pattern[str], IngredientKind | None], ...] = (
    (_NOT_FOR_DRINKS, None),
    (_JUICE, IngredientKind.JUICE),
    (_OF_NO_KIND, IngredientKind.OTHER),
    (_GLYCOL, IngredientKind.PROPYLENE_GLYCOL),
    (_GLYCEROL, IngredientKind.GLYCEROL),
    (_CARRIER, IngredientKind.CARRIER_OIL),
)
_LATER_GUESSES: tuple[tuple[re.Pattern[str], IngredientKind | None], ...] = (
    (_UNSURE, None),
    (_ACID, IngredientKind.ACID),
    (_SPIRIT, IngredientKind.SPIRIT),
    (_SUGAR, IngredientKind.SUGAR),
    (_FRUIT, IngredientKind.FRUIT),
)


def is_peel_oil_name(name: str) -> bool:
    """Whether an ingredient's name says that it is an oil of citrus peel (or limonene itself)."""
    plain = plain_name(name)
    if _CARRIER.search(plain) or _NOT_PEEL_OIL.search(plain) or not _CITRUS_OIL.search(plain):
        return False
    return bool(_OIL.search(plain)) or "limonene" in plain


def is_oil_name(name: str) -> bool:
    """Whether an ingredient's name calls it an oil of any kind."""
    return bool(_OIL.search(plain_name(name)))


def guess_kind(name: str) -> IngredientKind | None:
    """Return the kind that ordinary words in an ingredient's name suggest, or None when they do not say.

    Only for offering a default that a person can change: no rule of the trade
    may rest on a name alone. Names of alcohols and glycols that are not for
    drinks give None on purpose, so that nobody is offered 'spirit' for them.
    """
    plain = plain_name(name)
    for pattern, kind in _GUESSES:
        if pattern.search(plain):
            return kind
    if is_peel_oil_name(plain):
        return IngredientKind.CITRUS_OIL
    if _OIL.search(plain):
        return IngredientKind.OTHER
    if _WATER.fullmatch(plain):
        return IngredientKind.WATER
    for pattern, kind in _LATER_GUESSES:
        if pattern.search(plain):
            return kind
    return None
