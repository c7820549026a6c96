"""Word a design: what is in it, how it was judged, its others, and what to give up where nothing holds."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from fractions import Fraction

from bot.chat.dialogue.inputs.settling import SURE, settle_line
from bot.chat.dialogue.log_words import typed_amount
from bot.chat.dialogue.turn import Turn
from bot.chat.features.liquids.strength_words import flash_words
from bot.chat.i18n.language import _, show_money, show_number, show_sensibly
from bot.chat.reply.message import Block, Button, Grid, Reply, Text
from bot.chat.reply.units import own_volume, show_ml, show_percent, show_range, show_temperature
from bot.trade.design.design import STRONGEST_PERCENT
from bot.trade.formulas.kinds import Preparation
from bot.trade.formulas.measures import Dimension, from_ml
from bot.trade.safety.limits import LimitUnit, Part
from bot.trade.words import N_
from bot.work.design.bench import USUAL_DRINK_ML
from bot.work.design.design import Aim, Design, GivenUp, Proposal, Wish
from bot.work.formulas import formulas
from bot.work.formulas.ingredients import IngredientView
from bot.work.formulas.mixture import mix_of
from bot.work.spray.dose import composition

_AIMS = {
    Aim.WANTED: N_("Write it down"),
    Aim.AROMA: N_("More aroma"),
    Aim.HOLD: N_("Lasts longer"),
    Aim.LIGHT: N_("Lighter"),
    Aim.PRICE: N_("Cheaper"),
}
# How each wish is typed again.
_TYPED = {
    "oil_amount": "with {} oil",
    "oil_share": "with {}",
    "spirit_level": "with {}",
    "size": "{}",
    "glycol_limit": "at most {} glycol",
    "drink": "in {}",
    "sprayed": "with {}",
    "temperature": "at {}",
    "cheapest": "{}",
}


def fruit_buttons(fruit: Iterable[str]) -> tuple[tuple[Button, ...], ...]:
    """Return a button for a design of each fruit."""
    return (tuple(Button(one, f"design {one}") for one in fruit),)


def designed(turn: Turn, found: Proposal) -> Reply:
    """Show the design that meets all wishes, with the others that are nearly it."""
    wanted, *others = found.designs
    name = _("{fruit} mist").format(fruit=found.wishes.fruit).capitalize()
    units = turn.context.bar.units
    first = _("{name}: {shares}").format(name=name, shares=_shares(wanted))
    rows = [(_named(line.ingredient), show_ml(line.amount, units)) for line in wanted.answer.measured.lines]
    blocks: list[Block] = [Grid(tuple(rows)), *map(Text, _judged(turn, found, wanted))]
    blocks += [Text(f"{_(_AIMS[one.aim])}: {_shares(one)}{_cost(one)}.") for one in others]
    buttons: tuple[tuple[Button, ...], ...] = ()
    if turn.context.role.manages:
        free = _free_name(turn, name)
        buttons = tuple(
            (Button(_(_AIMS[one.aim]), _new_line(turn, free, found, one)),) for one in found.designs
        )
    return Reply((Text(first, strong=True), *blocks), buttons)


def _named(ingredient: IngredientView) -> str:
    name, percent = ingredient.name, ingredient.strength_percent
    return name if percent is None or name.endswith("%") else f"{name} {show_number(percent, 1)} %"


def _shares(one: Design) -> str:
    oil, glycol = (Fraction(str(round(share, 1))) for share in (one.shares.oil, one.shares.glycol))
    return _("{oil} % oil, {glycol} % glycol").format(oil=show_number(oil, 1), glycol=show_number(glycol, 1))


def _cost(one: Design) -> str:
    known = one.cost.cost.consumed
    return "" if known is None or one.cost.cost.is_partial else f", {show_money(known)}"


def _judged(turn: Turn, found: Proposal, one: Design) -> list[str]:
    """Return how a design was judged: what it makes, clearing, dose, flash point, cost and stock."""
    units, answer = turn.context.bar.units, one.answer
    lines = []
    if answer.finished_ml is not None and answer.strength is not None:
        text = _("Makes {volume} at {percent}").format(
            volume=show_ml(answer.finished_ml, units), percent=show_percent(answer.strength.strength_percent)
        )
        lines.append(f"{text}{_cost(one)}")
    clear = _("Clear at {temperature} by both models, with a tenth more oil too: the rested bottle decides.")
    lines.append(clear.format(temperature=show_temperature(found.temperature_c, units)))
    lines += _dosed(turn, found, one)
    flash = mix_of(answer.measured).flash
    if flash is not None and flash.band_c is not None:
        lines.append(flash_words(turn, flash))
    if found.wishes.cheapest and one.cost.cost.missing:
        lines.append(_("No price yet: {names}.").format(names=", ".join(one.cost.cost.missing)))
    if one.short:
        lines.append(_("Too little on the shelf: {names}.").format(names=", ".join(one.short)))
    return lines


def _dosed(turn: Turn, found: Proposal, one: Design) -> list[str]:
    """Say the most glycol in a drink, and the limits that it keeps."""
    part = one.dose.doses[Part.GLYCOL]
    if part.mg_per_drink.high <= 0:
        return []
    text = _("Glycol: up to {amount} g/l in {drink} with {sprays} sprays").format(
        amount=show_sensibly(Fraction(str(round(part.mg_per_litre.high / 1000, 3))), 2),
        drink=show_ml(found.wishes.drink_ml or USUAL_DRINK_ML, turn.context.bar.units),
        sprays=show_range(*(one.answer.formula.sprays or (Fraction(1), Fraction(1)))),
    )
    limits = [
        Fraction(str(verdict.limit.value)) / 1000
        for verdict in composition(one.dose)
        if verdict.limit.unit is LimitUnit.MG_PER_LITRE
    ]
    if found.wishes.glycol_g_per_l is not None:
        limits.append(found.wishes.glycol_g_per_l)
    if limits:
        text += _(", limit {limit} g/l").format(limit=show_number(min(limits), 2))
    return [f"{text}."]


# -- writing it down -------------------------------------------------------------------------


def _free_name(turn: Turn, name: str) -> str:
    """Return a name that no formula has: 'Orange mist', else 'Orange mist 2' and so on."""
    taken = {one.name.casefold() for one in formulas.listed(turn.context, archived=True)}
    names = [name, *(f"{name} {number}" for number in range(2, len(taken) + 3))]
    return next(one for one in names if one.casefold() not in taken)


def _new_line(turn: Turn, name: str, found: Proposal, one: Design) -> str:
    """Return the line that writes a design down as a formula, in the amounts that its tools measure."""
    units = turn.context.bar.units
    lines = [f"new formula {name}"]
    for line in one.answer.measured.lines:
        item = line.ingredient
        new = "" if item.id or item.strength_percent is None else f" {item.strength_percent} %"
        amount = typed_amount(line.amount, Dimension.VOLUME)
        if units != "metric":
            ounces = from_ml(line.amount, f"{units}_fluid_ounce").number
            amount = f"{ounces} {own_volume(units)}"
        lines.append(f"{item.name}{new} {amount}")
    low, high = one.answer.formula.sprays or (Fraction(1), Fraction(1))
    lines += [f"kind {Preparation.AROMA_MIST.value}", f"replaces {found.wishes.fruit}"]
    lines.append(f"sprays {low}" if low == high else f"sprays {low}-{high}")
    return settle_line(SURE, "\n".join(lines))


# -- giving up -------------------------------------------------------------------------------


def given_up(turn: Turn, found: Proposal, words: Mapping[str, str]) -> Reply:
    """Say that nothing meets all wishes, and which one to give up by how much, each by a tap."""
    first = _("No {fruit} mist meets all of that.").format(fruit=found.wishes.fruit)
    lines = [_given_up(turn, one) for one in found.give_up]
    rows = [
        (Button(label, _typed(found, words, one)),)
        for one, (_text, label) in zip(found.give_up, lines, strict=True)
    ]
    head = _("Give up one:") if lines else _("Your tools can't measure so little. Ask for more.")
    told = [Text(text) for text, _label in lines]
    return Reply((Text(first, strong=True), Text(head), *told), tuple(rows))


def _given_up(turn: Turn, one: GivenUp) -> tuple[str, str]:
    """Return what to give up in a sentence, and as the label of a button."""
    value = show_number(Fraction(str(one.value)), 1)
    if one.wish is Wish.OIL:
        return _("Oil: at most {percent} % of it.").format(percent=value), _("{percent} % oil").format(
            percent=value
        )
    if one.wish is Wish.SPIRIT:
        return (
            _("Spirit: at least {percent} % vol.").format(percent=value),
            _("{percent} % spirit").format(percent=value),
        )
    if one.wish is Wish.BOTH:
        strongest = show_number(Fraction(str(STRONGEST_PERCENT)), 1)
        return (
            _("Oil and spirit: at most {oil} % oil, with {spirit} % vol.").format(
                oil=value, spirit=strongest
            ),
            _("{oil} % oil, {spirit} % spirit").format(oil=value, spirit=strongest),
        )
    shown = show_temperature(one.value, turn.context.bar.units)
    return _("Cold: bottles at {temperature} or warmer.").format(temperature=shown), shown


def _typed(found: Proposal, words: Mapping[str, str], one: GivenUp) -> str:
    """Return the line that designs again with one wish changed."""
    value = show_number(Fraction(str(one.value)), 1)
    kept = {slot: text for slot, text in words.items() if slot in _TYPED}
    if one.wish in {Wish.OIL, Wish.BOTH}:
        kept.pop("oil_amount", None)
        kept["oil_share"] = f"{value} % oil"
    if one.wish is Wish.SPIRIT:
        kept["spirit_level"] = f"{value} % spirit"
    if one.wish is Wish.BOTH:
        kept["spirit_level"] = f"{STRONGEST_PERCENT:g} % spirit"
    if one.wish is Wish.COLD:
        kept["temperature"] = f"{value} C"
    wishes = " ".join(_TYPED[slot].format(text) for slot, text in kept.items())
    return f"design {found.wishes.fruit} {wishes}"
