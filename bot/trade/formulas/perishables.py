"""Recognise ingredients that spoil: fat, egg, milk, garlic, fresh juice, fruit and cut plants."""

from __future__ import annotations

import re

from bot.trade.formulas.ingredient_names.reading import read_name
from bot.trade.formulas.kinds import IngredientKind

# Phrases with one of the words below that name something else.
SPARED = re.compile(r"\b(?:cream of tartar|cream sodas?|milk thistle|egg ?plants?|(?:cocoa|shea) butter)\b")
_FAT_EGG_MILK_GARLIC = re.compile(
    r"\b(?:milk|buttermilk|cream|half[- ]and[- ]half|butter|ghee|whey|yogh?urt|kefir|cheese|mascarpone"
    r"|eggs?|yolks?|albumen|eggnog|bacon|lard|tallow|schmaltz|suet|fat|[a-z]+ fat|meat|broth|stock|garlic)\b"
)
# Cut or heated plants that the Food Code names.
COVERED_PLANTS = (
    "melons?|watermelons?|cantaloupes?|honeydews?|tomato(?:es)?|lettuces?|spinach|kale|chard|arugula"
    "|sprouts?|cooked|roasted|blanched"
)
_CUT_PLANTS = re.compile(
    rf"\b(?:{COVERED_PLANTS}|purees?|herbs?|leaf|leaves|peels?|zests?|rinds?|wedges?|ginger"
    r"|mint|basil|cucumbers?)\b"
)
_DRIED = re.compile(r"\b(?:dried|dry|powder(?:ed)?|candied)\b")
_FRESH_KINDS = frozenset({IngredientKind.JUICE, IngredientKind.FRUIT})


def is_fat_egg_milk_or_garlic(name: str) -> bool:
    """Whether a name is that of a fat from an animal, egg, milk or garlic, or of something made of them."""
    return _FAT_EGG_MILK_GARLIC.search(SPARED.sub(" ", read_name(name))) is not None


def spoils(name: str, kind: IngredientKind) -> bool:
    """Whether an ingredient is fresh and spoils: juice, fruit, peel, herbs, fat, egg, milk, garlic."""
    plain = read_name(name)
    if _DRIED.search(plain):
        return False
    if kind in _FRESH_KINDS or is_fat_egg_milk_or_garlic(plain):
        return True
    return kind is IngredientKind.OTHER and _CUT_PLANTS.search(SPARED.sub(" ", plain)) is not None
