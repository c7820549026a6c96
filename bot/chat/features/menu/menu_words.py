"""Word the spec card of a drink, and who must be asked about the drinks of the list."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from bot.chat.dialogue.turn import Turn
from bot.chat.features.safety.caution_blocks import caution_blocks
from bot.chat.features.safety.grade_words import allergen_line
from bot.chat.features.savings.fresh_versus_spray import small_money
from bot.chat.features.spray.dose_words import state_words
from bot.chat.i18n.language import _, ngettext
from bot.chat.reply.message import Block, Button, Reply, Text
from bot.chat.reply.units import show_ml, show_range
from bot.trade.safety.caution import Step
from bot.work.menu.menu import MenuDrinkView, ServedView
from bot.work.menu.spec import Spec


def served_words(drink: MenuDrinkView, units: str) -> str:
    """Write what goes on a drink: '2 sprays Orange mist in 90 ml'."""
    served = ", ".join(_served(one, units) for one in drink.lines)
    if drink.glass_ml is None:
        return served
    return _("{served} in {volume}").format(served=served, volume=show_ml(drink.glass_ml, units))


def _served(one: ServedView, units: str) -> str:
    if one.sprays is None:
        return f"{show_ml(one.middle_ml, units)} {one.formula.name}"
    many = round(one.sprays[1])
    text = ngettext("{count} spray {name}", "{count} sprays {name}", many)
    return text.format(count=show_range(*one.sprays), name=one.formula.name)


def spec_reply(turn: Turn, found: Spec, *more: Button) -> Reply:
    """Show the spec card."""
    drink, units = found.drink, turn.context.bar.units
    first = _("{name}: {served}").format(name=drink.name, served=served_words(drink, units))
    blocks: list[Block] = [Text(first, strong=True)]
    if found.replaces:
        names = ", ".join(one.name for one in found.replaces)
        blocks.append(Text(_("Instead of fresh {names}").format(names=names)))
    blocks += [Text(line) for line in _costs(found)]
    if found.dose is not None:
        said = _("Dose of one drink, all of it together: {state}").format(state=state_words(found.dose))
        blocks.append(Text(said))
    blocks += [Text(line) for line in (allergen_line(found.allergens), *_inside(found)) if line]
    blocks.append(Text(_("Ask, and tell them what is in it.")))
    for one in drink.lines[:1]:
        blocks += caution_blocks(turn, one.formula, Step.SPRAYING)
    rows = [
        (
            Button(_("Count drinks"), "drinks"),
            Button(_("Dose"), _dose_line(drink)),
            Button(_("Drink list"), "menu"),
        )
    ]
    last = (Button(_("Take it off"), f"off menu #{drink.id}"), *more)
    return Reply(tuple(blocks), (*rows, last), edits=turn.message.tapped is not None)


def _dose_line(drink: MenuDrinkView) -> str:
    one = drink.lines[0]
    glass = "" if drink.glass_ml is None else f" in {drink.glass_ml} ml"
    sprays = "" if one.sprays is None else f" {one.sprays[0]}-{one.sprays[1]} sprays"
    taken = "" if one.ml is None else f" with {one.ml} ml"
    return f"dose #{one.formula.id}{glass}{sprays}{taken}"


def _costs(found: Spec) -> list[str]:
    if found.cost is None:
        return [_("No price yet for all of: {names}").format(names=", ".join(found.unpriced))]
    lines = [_("The aroma costs {money} a drink").format(money=small_money(found.cost))]
    if found.fresh is not None:
        lines[0] += ", " + _("fresh {money}").format(money=small_money(found.fresh))
    return lines


def asked_lines(specs: Sequence[Spec]) -> list[str]:
    """Say which drinks of a list guests must be asked about: no alcohol, citrus and medicines."""
    alcohol = _names(one for one in specs if one.has_alcohol)
    citrus = _names(one for one in specs if one.citrus)
    lines = (
        [_("Carries alcohol, for guests who drink none: {names}.").format(names=alcohol)] if alcohol else []
    )
    if citrus:
        lines.append(_("Carries citrus, for allergies and medicines: {names}.").format(names=citrus))
    return lines


def _inside(found: Spec) -> list[str]:
    """Say what a drink carries that a guest may have to leave."""
    lines = [_("Carries alcohol: say so to guests who drink none.")] if found.has_alcohol else []
    if found.citrus:
        names = ", ".join(found.citrus)
        lines.append(_("Carries {names}: ask about allergies and medicines.").format(names=names))
    return lines


def _names(specs: Iterable[Spec]) -> str:
    return ", ".join(one.drink.name for one in specs)
