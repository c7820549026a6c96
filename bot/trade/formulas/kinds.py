"""Kinds of preparation and of ingredient, and their defaults.

The values of both enumerations are stored in the database: never change one. Every default number here is
common practice, no source; a bar or a formula may set its own.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from enum import StrEnum

from bot.trade.formulas.ingredient_names.reading import read_name
from bot.trade.sources import PRACTICE, Source
from bot.trade.words import N_


class Preparation(StrEnum):
    """The kind of preparation that a formula makes."""

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
    """The kind of an ingredient, as far as the trade rules need it."""

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


@dataclass(frozen=True, slots=True)
class PreparationDefaults:
    """Defaults of a kind of preparation, which a bar or a formula may override.

    `rest_hours` is the rest before first use, in hours. The rest are whole days: `discard_days` and
    `recheck_days` run from the day of making, `opened_days` from the day a bottle is opened; `recheck_days`
    is None where a second look is pointless. The caution ids are those of bot.trade.safety.cautions. The
    numbers are common practice, no source.
    """

    rest_hours: int
    discard_days: int
    opened_days: int
    recheck_days: int | None
    keep_cold: bool
    caution_ids: tuple[str, ...]
    label_lines: tuple[str, ...]
    source: Source = PRACTICE


@dataclass(frozen=True, slots=True)
class IngredientProperties:
    """Properties of a kind of ingredient, whatever its name.

    `needs_food_grade` means that the substance is also widely sold in grades not meant for food, so the grade
    must be asked. `flammable` means that the neat ingredient can be lit in a bar (a weak spirit may not:
    bot.trade.liquids.flash has the bands by strength).
    """

    needs_food_grade: bool
    flammable: bool
    is_liquid: bool


_FLAMMABLE_LINE = N_("Flammable: keep away from flame and heat")
_COLD_LINE = N_("Keep refrigerated")

PREPARATION_DEFAULTS: dict[Preparation, PreparationDefaults] = {
    Preparation.AROMA_MIST: PreparationDefaults(
        rest_hours=24,
        discard_days=180,
        opened_days=90,
        recheck_days=30,
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
        opened_days=180,
        recheck_days=7,
        keep_cold=False,
        caution_ids=("no-flame", "house-licence", "sealed-storage"),
        label_lines=(_FLAMMABLE_LINE, N_("For use by the dash or drop: not to be drunk neat")),
    ),
    Preparation.INFUSION: PreparationDefaults(
        rest_hours=48,
        discard_days=90,
        opened_days=60,
        recheck_days=1,
        keep_cold=False,
        caution_ids=("house-licence", "solids-covered", "sealed-storage"),
        label_lines=(N_("House infusion: contains alcohol"),),
    ),
    Preparation.SYRUP: PreparationDefaults(
        rest_hours=0,
        discard_days=14,
        opened_days=14,
        recheck_days=7,
        keep_cold=True,
        caution_ids=("hot-sugar", "clean-bottles", "keep-cold"),
        label_lines=(_COLD_LINE,),
    ),
    Preparation.CORDIAL: PreparationDefaults(
        rest_hours=24,
        discard_days=21,
        opened_days=14,
        recheck_days=7,
        keep_cold=True,
        caution_ids=("clean-bottles", "keep-cold"),
        label_lines=(_COLD_LINE,),
    ),
    Preparation.JUICE: PreparationDefaults(
        rest_hours=0,
        discard_days=1,
        opened_days=1,
        recheck_days=None,
        keep_cold=True,
        caution_ids=("wash-fruit", "keep-cold", "food-code-juice"),
        label_lines=(_COLD_LINE, N_("Fresh juice, not pasteurised")),
    ),
    Preparation.ACID_ADJUSTED_JUICE: PreparationDefaults(
        rest_hours=0,
        discard_days=3,
        opened_days=2,
        recheck_days=None,
        keep_cold=True,
        caution_ids=("wash-fruit", "acid-contact", "keep-cold", "food-code-juice"),
        label_lines=(_COLD_LINE, N_("Juice with added acid, not pasteurised")),
    ),
    Preparation.SALINE: PreparationDefaults(
        rest_hours=0,
        discard_days=30,
        opened_days=30,
        recheck_days=None,
        keep_cold=False,
        caution_ids=("clean-bottles",),
        label_lines=(N_("Salt solution: for use by the drop"),),
    ),
    Preparation.OTHER: PreparationDefaults(
        rest_hours=0,
        discard_days=7,
        opened_days=3,
        recheck_days=3,
        keep_cold=True,
        caution_ids=("clean-bottles", "ask-inspector"),
        label_lines=(_COLD_LINE,),
    ),
}

INGREDIENT_PROPERTIES: dict[IngredientKind, IngredientProperties] = {
    IngredientKind.CITRUS_OIL: IngredientProperties(True, True, True),
    IngredientKind.SPIRIT: IngredientProperties(False, True, True),
    IngredientKind.PROPYLENE_GLYCOL: IngredientProperties(True, False, True),
    IngredientKind.GLYCEROL: IngredientProperties(True, False, True),
    IngredientKind.CARRIER_OIL: IngredientProperties(True, False, True),
    IngredientKind.WATER: IngredientProperties(False, False, True),
    IngredientKind.SUGAR: IngredientProperties(False, False, False),
    IngredientKind.ACID: IngredientProperties(True, False, False),
    IngredientKind.JUICE: IngredientProperties(False, False, True),
    IngredientKind.FRUIT: IngredientProperties(False, False, False),
    IngredientKind.OTHER: IngredientProperties(False, False, True),
}


def _any_word(*alternatives: str) -> re.Pattern[str]:
    return re.compile(r"\b(?:" + "|".join(alternatives) + r")\b")


CITRUS_FRUIT_WORDS = (
    "grapefruits?|oranges?|lemons?|limes?|bergamots?|mandarins?|tangerines?|clementines?|satsumas?",
    "yuzus?|kumquats?|citrons?|pomelos?|calamansis?|sudachis?|kabosus?|tangelos?",
)
_OTHER_FRUIT_WORDS = (
    "apples?|pears?|pineapples?|mango(?:e?s)?|peach(?:es)?|plums?|cherry|cherries|[a-z]*berry|[a-z]*berries",
    "grapes?|melons?|watermelons?|cucumbers?|bananas?|figs?|rhubarb|passion ?fruits?|pomegranates?",
    "apricots?|tomato(?:es)?|peels?|zests?|rinds?|wedges?|fruits?",
)

# Words for things that look like one of these kinds but are not.
_NOT_FOR_DRINKS = _any_word(
    "isopropyl|isopropanol|rubbing|methanol|methyl|methylated|denatured|surgical|wood alcohol",
    "ethylene|diethylene|antifreeze|fragrance",
)
_OF_NO_KIND = _any_word(
    "syrups?|vinegars?|honey|agave|molasses|purees?|milk|cream|butter|eggs?|salt|saline|orgeat"
)
_UNSURE = _any_word(
    "liqueurs?|bitters|vermouths?|wines?|beers?|ciders?|sherry|cordials?|sodas?|tonic|lemonade",
    "flowers?|blossoms?|coconut water|rose water|leaf|leaves|extracts?|essence",
)
_JUICE = _any_word("juices?")
_GLYCOL = _any_word("pg|(?:mono)?propylene glycol|glycol|propane ?-? ?1,2 ?-? ?diol|e ?1520")
_GLYCEROL = _any_word("glycerols?|glycerine?s?|vg|e ?422")
_CARRIER = _any_word(
    "mct|medium[ -]chain triglycerides?|carrier",
    "(?:coconut|sunflower|olive|grape ?seed|rape ?seed|canola|rice bran|vegetable|neutral|sesame|corn"
    "|almond|peanut|groundnut|walnut|hazelnut|avocado|soya?|soybean|safflower) oil",
)
_OIL = _any_word("oils?")
_CITRUS_OIL = _any_word(*CITRUS_FRUIT_WORDS, "citrus|limonene")
_NOT_PEEL_OIL = _any_word(
    "leaf|leaves|flowers?|blossoms?|balm|verbena|myrtle|mint|thyme|grass|basil|eucalyptus|tea tree",
    "petitgrain|neroli",
)
_ACID = _any_word("acids?|citric|malic|tartaric|lactic|ascorbic|phosphoric")
_SPIRIT = _any_word(
    "spirits?|vodkas?|gins?|rums?|whiske?ys?|whiskies|bourbons?|rye|scotch|tequilas?|mezcals?|brandy",
    "brandies|cognacs?|armagnacs?|piscos?|grappas?|cachacas?|aquavits?|absinthes?|eaux? de vie|calvados",
    "arrack|baijiu|shochu|soju|ethanol|alcohols?|gns|over-?proof|high[ -]proof",
    r"\d+ proof",  # of "75.5 proof" the end
)
_SUGAR = _any_word("sugars?|sucrose|dextrose|glucose|fructose|demerara|muscovado|caster")
_WATER = re.compile(
    "(?:(?:still|filtered|distilled|tap|mineral|spring|sparkling|purified|deionised|deionized|hot|cold"
    "|boiling|boiled|iced?|soda|drinking) ?)*(?:water|ice)"
)
_FRUIT = _any_word(*CITRUS_FRUIT_WORDS, *_OTHER_FRUIT_WORDS)
_VARIETY = re.compile("(?:blood|navel|valencia|key|persian|pink|ruby|white|red|green|bitter|sweet|passion) ")
_PARTS = _any_word("peels?|zests?|rinds?|wedges?|fruits?")

# The first matching rule decides, so narrow rules come before wide ones.
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


def is_not_for_drinks(name: str) -> bool:
    """Whether an ingredient's name describes an alcohol, a glycol or an oil not made for drinking."""
    return bool(_NOT_FOR_DRINKS.search(read_name(name)))


def is_peel_oil_name(name: str) -> bool:
    """Whether an ingredient's name describes an oil of citrus peel (or limonene itself)."""
    plain = read_name(name)
    if _CARRIER.search(plain) or _NOT_PEEL_OIL.search(plain) or not _CITRUS_OIL.search(plain):
        return False
    return bool(_OIL.search(plain)) or "limonene" in plain


def is_carrier_name(name: str) -> bool:
    """Whether an ingredient's name is that of an oil that carries flavour rather than having its own."""
    return bool(_CARRIER.search(read_name(name)))


def is_oil_name(name: str) -> bool:
    """Whether an ingredient's name calls it an oil of any kind."""
    return bool(_OIL.search(read_name(name)))


def is_fruit_name(name: str) -> bool:
    """Whether a whole name is the ordinary one of a fruit, and no word of it says anything else."""
    plain = read_name(name)
    plain = _VARIETY.sub("", plain, count=1) if _FRUIT.fullmatch(plain) is None else plain
    return _FRUIT.fullmatch(plain) is not None and _PARTS.fullmatch(plain) is None


def guess_kind(name: str) -> IngredientKind | None:
    """Return the kind that the words of an ingredient's name suggest, or None.

    Only for offering a default that a person can change: no rule of the trade may rest on a name alone. Names
    of alcohols and glycols that are not for drinks give None on purpose, so that 'spirit' is never suggested
    for them.
    """
    plain = read_name(name)
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
