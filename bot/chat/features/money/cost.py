"""The command cost: a batch, a bottle, a spray and a drink, compared with fresh garnish."""

from __future__ import annotations

from dataclasses import dataclass, replace
from decimal import Decimal
from fractions import Fraction

from bot.chat.dialogue.command import Command, Wish
from bot.chat.dialogue.inputs.shared_slots import (
    FORMULA_SLOT,
    GRAMS_SLOT,
    LOSS_SLOT,
    MORE_DETAIL_SLOT,
    PICTURE_SLOT,
    TARGET_SLOT,
    SaidTarget,
)
from bot.chat.dialogue.inputs.temperature import TEMPERATURE_SLOT
from bot.chat.dialogue.slots import Given
from bot.chat.dialogue.turn import Turn
from bot.chat.features.formulas.scale import ScaledArguments, answer_for, target_title, with_target
from bot.chat.features.liquids.spirit_substitution import SWAP_SLOT
from bot.chat.features.savings.fresh_versus_spray import against_reply, rise_lines, small_money, tax_lines
from bot.chat.grammar.syntax import Amount, Factor, Total
from bot.chat.i18n.language import _, ngettext, show_money, show_number
from bot.chat.reply.message import Block, Button, Grid, Reply, Text
from bot.chat.reply.units import show_ml, show_range
from bot.trade.formulas.amounts import ByBottles, ByDrinks, ByFactor, ByTotal, Target
from bot.trade.words import N_
from bot.work.formulas.formulas import FormulaView
from bot.work.formulas.scaling import is_sprayed
from bot.work.liquids.spirit_substitution import Swapped
from bot.work.money import cost as costing
from bot.work.money.cost import CostAnswer, FreshAgainst


def _usual_ml(view: FormulaView) -> Fraction:
    """Return the most useful volume to cost: a sprayer's bottle, or a tenth of a litre to pour from."""
    return Fraction(50 if is_sprayed(view) else 100)


def _wants_target(turn: Turn, given: Given) -> bool:
    return MORE_DETAIL_SLOT not in given and PICTURE_SLOT not in given


def _usual_target(turn: Turn, view: FormulaView) -> tuple[str, SaidTarget]:
    """Return the last target of a formula with its text; the formula as written if it was never made."""
    ml = costing.last_made_ml(turn.context, view.id)
    if ml is None:
        return "x1", (Factor(Fraction(1)), ByFactor(Fraction(1)))
    return f"{show_number(ml, 0)} ml", (Total(Amount(ml, "ml")), ByTotal(ml))


@dataclass(frozen=True, kw_only=True)
class CostArguments(ScaledArguments):
    """The subject of the costing, and whether to compare with fresh fruit, in words or as a picture."""

    more_detail: bool = False
    picture: bool = False


def _cost(turn: Turn, arguments: CostArguments) -> Reply:
    if arguments.target is None:
        arguments = with_target(arguments, *_usual_target(turn, arguments.formula))
    answer = answer_for(turn, arguments)
    said, target = arguments.wanted
    bottle = target.size_ml if isinstance(target, ByBottles) else _usual_ml(answer.formula)
    found = costing.cost_of(turn.context, answer, bottle)
    if arguments.more_detail or arguments.picture:
        return against_reply(turn, found, arguments.said_target, arguments.picture)
    units = turn.context.bar.units
    title = target_title(said, units) or show_ml(answer.scaled.finished_ml or Fraction(0), units)
    view = answer.formula
    if found.cost.total is None:
        first = _("{name}: no prices yet").format(name=view.name)
    else:
        first = _("{name}, {what}: {money}").format(
            name=view.name, what=title, money=_small(found, found.cost.total)
        )
        if found.cost.is_partial:
            first += " " + _("(part of it)")
    blocks: list[Block] = []
    # Two grids: the wide ranges of the second would squeeze the names of the first.
    blocks += [Grid(rows) for rows in (_ingredient_rows(found), _unit_rows(found, units)) if rows]
    lines = (
        *_most_sprays(found, target),
        *_cash(found),
        *_missing(found),
        *_swapped(arguments.swap),
        *rise_lines(turn, view),
        *tax_lines(turn),
        *_fresh(found),
    )
    blocks += [Text(line) for line in lines]
    ref = f"#{view.id}.{view.version}"
    asked = arguments.said_target
    priceless = [
        Button(_("Price of {name}").format(name=name), f"price #{_number(found, name)}")
        for name in found.cost.missing[:4]
    ]
    return Reply(
        (Text(first, strong=True), *blocks),
        (
            *((one,) for one in priceless),
            *(((Button(_("Fresh against spray"), f"cost {ref} {asked} more"),),) if found.fresh else ()),
            (
                Button(_("Amounts"), f"scale {ref} {asked}"),
                Button(_("Log this batch"), f"batch {ref} {asked}"),
            ),
        ),
    )


def _swapped(swapped: Swapped | None) -> list[str]:
    if swapped is None or swapped.ingredient is not None:
        return []
    return [_("I used the price of {name} for the other spirit.").format(name=swapped.lines[0].name)]


def _number(found: CostAnswer, name: str) -> int:
    return next(line.ingredient.id for line in found.answer.formula.lines if line.ingredient.name == name)


def _ingredient_rows(found: CostAnswer) -> tuple[tuple[str, ...], ...]:
    return tuple((line.name, _small(found, line.consumed)) for line in found.cost.per_line if line.consumed)


def _small(found: CostAnswer, money: Decimal) -> str:
    """Write a part of the cost; where all of it is less than a unit, as exactly as the cost of a drink."""
    return show_money(money, extra_places=1 if (found.cost.total or 0) < 1 else 0)


def _most_sprays(found: CostAnswer, target: Target) -> list[str]:
    """Say why the sum is the dearer end of its drinks, if their sprays are a range."""
    sprays = found.answer.formula.sprays
    if not isinstance(target, ByDrinks) or sprays is None or sprays[0] == sprays[1]:
        return []
    text = _("The sum is for the most you spray, {sprays} a drink, in amounts your tools measure.")
    return [text.format(sprays=show_number(sprays[1]))]


def _unit_rows(found: CostAnswer, units: str) -> tuple[tuple[str, ...], ...]:
    result = found.cost
    rows: list[tuple[str, ...]] = []
    bottled = is_sprayed(found.answer.formula) or found.answer.fill is not None
    if result.per_bottle is not None and found.bottle_ml is not None:
        rows.append(
            (
                (_("Contents of a {size} bottle") if bottled else "{size}").format(
                    size=show_ml(found.bottle_ml, units)
                ),
                show_money(result.per_bottle),
            )
        )
    if result.per_spray is not None:
        rows.append((_("a spray"), small_money(result.per_spray)))
    if result.per_drink is not None:
        rows.append((_("a drink"), small_money(result.per_drink)))
    return tuple(rows)


def _cash(found: CostAnswer) -> list[str]:
    outlay = found.cost.outlay
    if outlay is None:
        return []
    packs = sum(line.packs or 0 for line in found.cost.per_line if line.outlay)
    return [
        ngettext(
            "Cash for {count} whole pack: {money}", "Cash for {count} whole packs: {money}", packs
        ).format(count=packs, money=show_money(outlay))
    ]


def _missing(found: CostAnswer) -> list[str]:
    lines = []
    if found.cost.missing:
        lines.append(
            _("No price for {names}: not counted, so the true cost is higher.").format(
                names=", ".join(found.cost.missing)
            )
        )
    if found.cost.missing_density:
        lines.append(
            _("Not counted: {names}. The pack is in another unit and I don't know the density.").format(
                names=", ".join(found.cost.missing_density)
            )
        )
    if found.cost.other_measure:
        lines.append(
            _("Not counted: {names}. The price is per piece, the formula uses another unit.").format(
                names=", ".join(found.cost.other_measure)
            )
        )
    return lines


def _fresh(found: CostAnswer) -> list[str]:
    if found.fresh_missing is not None:
        return [
            _("To compare with fresh {fruit}, say: price {fruit} 0.60 each, 5 garnishes each").format(
                fruit=found.fresh_missing
            )
        ]
    fresh = found.fresh
    if fresh is None:
        return []
    return [_fresh_line(fresh), _even_line(fresh)]


def _fresh_line(fresh: FreshAgainst) -> str:
    low, high = fresh.times
    return _("Fresh {fruit}: {cost} a drink, {times} times the spray").format(
        fruit=fresh.fruit.name,
        cost=small_money(fresh.per_drink),
        times=show_range(round(low, 1), round(high, 1), 1),
    )


def _even_line(fresh: FreshAgainst) -> str:
    return _("Breaks even at {price} a piece, or {sprays} sprays a drink").format(
        price=show_money(fresh.even_price), sprays=show_number(fresh.even_sprays, 0)
    )


_TARGET = replace(TARGET_SLOT, wanted=_wants_target)
_DETAIL = (MORE_DETAIL_SLOT, PICTURE_SLOT)

COMMANDS = (
    Command(
        "cost",
        N_("what a batch, a bottle and a drink cost"),
        _cost,
        words=(
            "costs",
            "cost of",
            "how much is",
            "what does",
            "how much does",
            "what do",
            "how much do",
            "compare",
        ),
        examples=(N_("cost grapefruit mist to 8 x 50 ml"), N_("cost grapefruit mist more")),
        slots=(FORMULA_SLOT, LOSS_SLOT, SWAP_SLOT, _TARGET, GRAMS_SLOT, TEMPERATURE_SLOT, *_DETAIL),
        menu=15,
        quick=True,
        wishes=(
            Wish(
                "cost",
                (
                    "{formula?} TO {bottles}",
                    "{formula?} TO {amount}",
                    "{formula?} FOR {drinks}",
                    "{formula} {fresh}",
                    "{formula?}",
                ),
            ),
        ),
    ),
)
