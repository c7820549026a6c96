"""Words for units, and the bar's settings that some of them need.

Nothing is guessed: a word is in a table, or it is unknown; a word for several units is resolved by the bar's
settings, or the bot asks. Letters that a general parser takes for a tesla, a molar or the speed of light
("T", "M", "c") are in no table.
"""

from __future__ import annotations

import difflib
import unicodedata
from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType
from typing import Final, Literal

from bot.trade.errors import TradeError

LONGEST_WORD: Final = 32  # characters; no unit name comes close, and the search for similar words stays cheap


@dataclass
class UnknownUnitError(TradeError):
    """No unit has this name; `nearest` are known words with a similar spelling, best first."""

    unit: str
    nearest: tuple[str, ...] = ()


@dataclass
class AmbiguousUnitError(TradeError):
    """The word names several units and the bar's settings do not decide; `choices` are canonical units."""

    word: str
    choices: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class AmbiguousUnit:
    """A word for more than one unit; `choices` are canonical units."""

    word: str
    choices: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class UnitSense:
    """The bar's settings and the thing measured, as far as known.

    `oz_liquid` is which fluid ounce the bar pours by, `household` the system of its spoons, cups, pints,
    quarts and gallons, `liquid` whether the thing measured is a liquid. None means not known.
    """

    oz_liquid: Literal["us", "imperial"] | None = None
    household: Literal["us", "metric", "imperial"] | None = None
    liquid: bool | None = None


UnitWords = Mapping[str, "str | AmbiguousUnit"]
NO_WORDS: Final[UnitWords] = MappingProxyType({})

_OZ = AmbiguousUnit("oz", ("us_fluid_ounce", "imperial_fluid_ounce", "ounce"))
_FL_OZ = AmbiguousUnit("fl oz", ("us_fluid_ounce", "imperial_fluid_ounce"))
_TSP = AmbiguousUnit("tsp", ("us_teaspoon", "metric_teaspoon"))
_TBSP = AmbiguousUnit("tbsp", ("us_tablespoon", "metric_tablespoon"))
_CUP = AmbiguousUnit("cup", ("us_cup", "metric_cup", "imperial_cup"))
_PINT = AmbiguousUnit("pint", ("us_pint", "imperial_pint"))
_QUART = AmbiguousUnit("quart", ("us_quart", "imperial_quart"))
_GALLON = AmbiguousUnit("gallon", ("us_gallon", "imperial_gallon"))

_ENGLISH: Final[dict[str | AmbiguousUnit, str]] = {
    "ml": "ml, mls, mils, cc, millilitre, millilitres, milliliter, milliliters",
    "cl": "cl, cls, centilitre, centilitres, centiliter, centiliters",
    "dl": "dl, dls, decilitre, decilitres, deciliter, deciliters",
    "l": "l, ltr, ltrs, litre, litres, liter, liters",
    "mg": "mg, mgs, milligram, milligrams, milligramme, milligrammes",
    "g": "g, gr, gm, gms, gram, grams, gramme, grammes",
    "kg": "kg, kgs, kilo, kilos, kilogram, kilograms, kilogramme, kilogrammes",
    "pound": "lb, lbs, pound, pounds",
    "ounce": "oz wt, wt oz, oz weight, weight oz, avoirdupois ounce, avoirdupois ounces",
    "us_fluid_ounce": "us oz, us fl oz, us fluid oz, us fluid ounce, us fluid ounces",
    "imperial_fluid_ounce": (
        "imperial oz, imp oz, uk oz, imp fl oz, uk fl oz, imperial fl oz, imperial fluid oz, "
        "imperial fluid ounce, imperial fluid ounces"
    ),
    "us_teaspoon": "us tsp, us teaspoon, us teaspoons",
    "us_tablespoon": "us tbsp, us tablespoon, us tablespoons",
    "us_cup": "us cup, us cups",
    "us_pint": "us pint, us pints",
    "us_quart": "us quart, us quarts",
    "us_gallon": "us gallon, us gallons, us gal",
    "metric_teaspoon": "metric tsp, metric teaspoon, metric teaspoons",
    "metric_tablespoon": "metric tbsp, metric tablespoon, metric tablespoons",
    "metric_cup": "metric cup, metric cups",
    "imperial_cup": "imp cup, uk cup, imperial cup, imperial cups",
    "imperial_pint": "imp pint, uk pint, imperial pint, imperial pints",
    "imperial_quart": "imp quart, uk quart, imperial quart, imperial quarts",
    "imperial_gallon": "imp gallon, uk gallon, imperial gallon, imperial gallons",
    "each": "each, ea, pc, pcs, piece, pieces, unit, units, whole",
    "dozen": "dozen, dozens, doz, dz",
    "dash": "dash, dashes",
    "drop": "drop, drops",
    "barspoon": "barspoon, barspoons, bar spoon, bar spoons, bsp, bsps",
    "splash": "splash, splashes",
    "jigger": "jigger, jiggers",
    "part": "part, parts",
    "bottle": "bottle, bottles, btl, btls",
    _OZ: "oz, ozs, ounce, ounces",
    _FL_OZ: "fl oz, floz, fl ozs, fluid oz, fluid ounce, fluid ounces",
    _TSP: "tsp, tsps, teaspoon, teaspoons, teaspoonful, teaspoonfuls",
    _TBSP: "tbsp, tbsps, tablespoon, tablespoons, tablespoonful, tablespoonfuls",
    _CUP: "cup, cups, cupful, cupfuls",
    _PINT: "pint, pints, pt, pts",
    _QUART: "quart, quarts, qt, qts",
    _GALLON: "gallon, gallons, gal, gals",
}


def _without_accents(word: str) -> str:
    return "".join(char for char in unicodedata.normalize("NFKD", word) if not unicodedata.combining(char))


def _table(rows: Mapping[str | AmbiguousUnit, str]) -> UnitWords:
    """Invert rows of 'unit: words'; words with accents are found without them too."""
    table: dict[str, str | AmbiguousUnit] = {}
    for unit, words in rows.items():
        for word in words.split(", "):
            table[word] = unit
            table[_without_accents(word)] = unit
    return MappingProxyType(table)


UNIT_WORDS: Final = _table(_ENGLISH)
"""Words understood in every language: symbols and English names, in the form of `normal_word`."""


def unit_table(rows: Mapping[str, str]) -> UnitWords:
    """Return the unit words of another language, given as rows of 'English word: words, words'."""
    return _table({UNIT_WORDS[english]: words for english, words in rows.items()})


def normal_word(word: str) -> str:
    """Return the form used to look up unit words.

    Normalises to NFKC, drops letter case and full stops, and turns underscores and runs of spaces into one
    space: "Fl. Oz." gives "fl oz", "㎖" gives "ml".
    """
    plain = unicodedata.normalize("NFKC", word[: LONGEST_WORD * 2]).casefold()
    return " ".join(plain.replace(".", " ").replace("_", " ").split())


def look_up(word: str, also: UnitWords = NO_WORDS) -> str | AmbiguousUnit | None:
    """Return the unit or units for a word, in a language's own words or in English, or None."""
    if len(word) > LONGEST_WORD:
        return None
    normal = normal_word(word)
    return also.get(normal) or UNIT_WORDS.get(normal)


def nearest_words(word: str, also: UnitWords = NO_WORDS) -> tuple[str, ...]:
    """Return up to three known unit words with a similar spelling, best first."""
    if len(word) > LONGEST_WORD:
        return ()
    return tuple(difflib.get_close_matches(normal_word(word), {**UNIT_WORDS, **also}, n=3, cutoff=0.6))


def resolve_unit(word: str, sense: UnitSense, also: UnitWords = NO_WORDS) -> str:
    """Return the canonical unit that a typed word means in this bar.

    The bar's settings, and whether a liquid is measured, narrow a word for several units. A kitchen set to
    imperial owns 5 mL and 15 mL spoons (common practice); there is no metric pint, so the bot asks a metric
    kitchen.

    Raises UnknownUnitError (with near words) or AmbiguousUnitError (with the choices left).
    """
    found = look_up(word, also)
    if found is None:
        raise UnknownUnitError(word, nearest_words(word, also))
    if isinstance(found, str):
        return found
    choices = _narrow(found.choices, sense)
    if len(choices) > 1:
        raise AmbiguousUnitError(found.word, choices)
    return choices[0]


def _narrow(choices: tuple[str, ...], sense: UnitSense) -> tuple[str, ...]:
    """Return the choices that the settings allow, or all of them if they allow none."""
    if "us_fluid_ounce" in choices:
        if "ounce" in choices and sense.liquid is not None:
            choices = tuple(choice for choice in choices if (choice != "ounce") == sense.liquid)
        if sense.oz_liquid is not None:
            choices = tuple(c for c in choices if c in ("ounce", f"{sense.oz_liquid}_fluid_ounce"))
        return choices
    if sense.household is None:
        return choices
    kept = [choice for choice in choices if choice.startswith(sense.household)]
    if not kept and sense.household == "imperial":
        kept = [choice for choice in choices if choice.startswith("metric")]
    return tuple(kept) or choices
