"""Spirit substitution within scale, cost, batch and clear."""

from __future__ import annotations

from fractions import Fraction

from bot.chat.dialogue.inputs.shared_slots import FORMULA_SLOT
from bot.chat.dialogue.inputs.strength import ask_strength, percent_of
from bot.chat.dialogue.slots import Given, Slot
from bot.chat.dialogue.turn import Say, Turn
from bot.chat.grammar.syntax import Swap
from bot.chat.i18n.language import _, show_number
from bot.chat.reply.message import reply
from bot.chat.reply.units import show_ml, show_percent
from bot.trade.formulas.kinds import IngredientKind
from bot.work.formulas import ingredients
from bot.work.formulas.formulas import FormulaView
from bot.work.formulas.ingredients import IngredientView
from bot.work.liquids import spirit_substitution
from bot.work.liquids.spirit_substitution import Swapped, UnknownStrengthError


def accept_swap(turn: Turn, given: Given, value: Swap) -> Swapped:
    """Turn a swap as typed into the formula with its spirit replaced for the same ethanol."""
    view = given[FORMULA_SLOT]
    ingredient = _ingredient(turn, value)
    if value.level is not None:
        percent = percent_of(turn, value.level)
    elif ingredient is not None and ingredient.strength_percent is not None:
        percent = ingredient.strength_percent
    else:
        raise Say(ask_strength(turn, "" if ingredient is None else ingredient.name, view.name))
    if percent == 0:
        raise Say(reply(_("A spirit of 0 % holds no ethanol to put in its place.")))
    try:
        return spirit_substitution.swap_in(view, percent, ingredient)
    except UnknownStrengthError as error:
        raise Say(ask_strength(turn, error.name, view.name)) from None


def _ingredient(turn: Turn, value: Swap) -> IngredientView | None:
    if value.named is None:
        return None
    noun = turn.noun(value.named, "INGREDIENT", _("spirit"))
    found = ingredients.get(turn.context, int(noun.id))
    if found.kind is not IngredientKind.SPIRIT and found.strength_percent is None:
        raise Say(
            reply(_("{name} is no spirit here but {kind}.").format(name=found.name, kind=_(found.kind)))
        )
    return found


_SAME_SHARE = 0.95  # of the oil's share: less is a difference worth naming

SWAP_SLOT = Slot("swap", accept_swap, rule="swap_answer_slot")


def wanted_view(view: FormulaView, swapped: Swapped | None) -> FormulaView:
    """Return the formula to use: with another spirit if one was given."""
    return view if swapped is None else swapped.view


def shown_names(swapped: Swapped | None) -> dict[str, str]:
    """Return the shown name of a swapped spirit, which keeps people from pouring the usual one."""
    if swapped is None:
        return {}
    strength = show_number(swapped.percent, 1)
    return {
        line.new_name: _("{name} at {percent} %").format(name=line.new_name, percent=strength)
        for line in swapped.lines
    }


def thinned(swapped: Swapped | None) -> str:
    """Return how much less oil each spray carries once the spirit's volume has grown, or ''."""
    if swapped is None:
        return ""
    oils = [line for line in swapped.view.lines if line.ingredient.kind is IngredientKind.CITRUS_OIL]
    oil_ml = float(sum(line.amount for line in oils))
    before, after = (100 * oil_ml / one.volume_ml for one in (swapped.before, swapped.after))
    if after > _SAME_SHARE * before:
        return ""
    return _("Each spray carries less oil: {after} of the mix instead of {before}.").format(
        after=_oil_percent(after), before=_oil_percent(before)
    )


def _oil_percent(percent: float) -> str:
    return f"{show_number(Fraction(f'{percent:.3g}'), 2)} %"


def swap_lines(swapped: Swapped | None, units: str, factor: Fraction) -> list[str]:
    """Describe the swap: more or less spirit, the strength, the added water."""
    if swapped is None:
        return []
    swap = swapped.lines[0].swap
    if swap.from_percent == swap.to_percent:
        return []
    times = Fraction(str(round(swap.to_ml / swap.from_ml, 3))) if swap.from_ml else Fraction(1)
    lines = [
        _("Same ethanol from {new} instead of {old}: {times} times as much of it.").format(
            new=show_percent(float(swapped.percent)),
            old=show_percent(swap.from_percent),
            times=show_number(times, 2),
        )
    ]
    moved = _("The mix is then {after} instead of {before}").format(
        after=show_percent(swapped.after.strength_percent),
        before=show_percent(swapped.before.strength_percent),
    )
    water = sum(line.swap.water_ml for line in swapped.lines)
    volume = show_ml(Fraction(str(round(abs(water), 3))) * factor, units)
    if water <= -0.05:
        moved += _(", with {volume} of water that the formula has not").format(volume=volume)
    elif water >= 0.05:
        moved += _("; {volume} of water would bring it back").format(volume=volume)
    return [*lines, moved + "."]
