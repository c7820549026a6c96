"""Word what becomes of peeled fruit: the juice that it may give, and the acid for it."""

from __future__ import annotations

from decimal import Decimal
from fractions import Fraction

from bot.chat.dialogue.turn import Turn
from bot.chat.features.fruit.acid_adjustment import acid_words
from bot.chat.i18n.language import _
from bot.chat.reply.message import Button
from bot.chat.reply.units import show_ml
from bot.trade.fruit.acidity_table import Juice
from bot.trade.fruit.handbook import ExpectedJuice, YieldBasis
from bot.trade.words import N_
from bot.work.formulas.ingredients import IngredientView
from bot.work.fruit import acid_adjustment

BASIS = {
    YieldBasis.PUBLISHED: N_("published yield"),
    YieldBasis.LIKE_FRUIT: N_("estimated from a like fruit"),
    YieldBasis.MIXED: N_("published and your own"),
    YieldBasis.MEASURED: N_("your own yield"),
}


def acid_button(turn: Turn, fruit: IngredientView, juice: ExpectedJuice | None) -> Button:
    """Return the button for the acid that the expected juice needs, or for more peeled fruit."""
    if juice is None or acid_adjustment.juice_named(fruit.name, turn.context.bar.language) is None:
        return Button(_("More peeled"), "peeled")
    return sour_button(turn, fruit, _whole_ml(juice.volume_ml))


def _whole_ml(ml: Decimal) -> str:
    return str(int(round(ml, -1)) or int(ml) or 1)


def what_to_do(turn: Turn, fruit: IngredientView, juice: ExpectedJuice | None) -> list[str]:
    """Return what the peeled fruit may become: its juice, the acid for it, and formulas that take it."""
    units = turn.context.bar.units
    lines = []
    if juice is not None:
        lines.append(
            _("About {volume} juice ({low} to {high}; {basis}).").format(
                volume=rounded_volume(juice.volume_ml, units),
                low=rounded_volume(juice.range_ml.low, units),
                high=rounded_volume(juice.range_ml.high, units),
                basis=_(BASIS[juice.basis]),
            )
        )
    source = acid_adjustment.juice_named(fruit.name, turn.context.bar.language)
    if juice is not None and source in {Juice.ORANGE, Juice.GRAPEFRUIT, Juice.MANDARIN}:
        found = acid_adjustment.sour(turn.context, fruit.name, Juice.LIME.value, Fraction(juice.volume_ml))
        citric, malic = acid_adjustment.likely_acid_g(found)
        lines.append(_("To lime strength: {acids}.").format(acids=acid_words(citric, malic)))
    used = acid_adjustment.formulas_using(turn.context, fruit)
    if used:
        lines.append(_("In the book: {names}.").format(names=", ".join(one.name for one in used)))
    return lines


def rounded_volume(ml: Decimal, units: str) -> str:
    """Write an expected volume with its known precision."""
    return show_ml(Fraction(round(ml, -1)) if ml >= 100 else Fraction(round(ml)), units)


def sour_button(turn: Turn, fruit: IngredientView, ml: str) -> Button:
    """Return the button that works out the acid for this much of a fruit's juice."""
    target = (
        "lemon"
        if acid_adjustment.juice_named(fruit.name, turn.context.bar.language) is Juice.LIME
        else "lime"
    )
    return Button(_("Acid for it"), f"acid {ml} ml #{fruit.id} to {target}")
