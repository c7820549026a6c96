"""The command scale: amounts for a target, rounded to the bar's tools, in millilitres or grams."""

from __future__ import annotations

from dataclasses import dataclass, replace
from fractions import Fraction
from typing import TypeVar

from bot.chat.dialogue.arguments import Arguments
from bot.chat.dialogue.command import Command, Wish
from bot.chat.dialogue.inputs.shared_slots import FORMULA_SLOT, GRAMS_SLOT, LOSS_SLOT, TARGET_SLOT, SaidTarget
from bot.chat.dialogue.inputs.temperature import TEMPERATURE_SLOT, temperature_of
from bot.chat.dialogue.turn import Turn
from bot.chat.features.formulas.weigh_sheet import grams_grid, grams_notes
from bot.chat.features.liquids.clearing_words import clear_button, clear_line
from bot.chat.features.liquids.spirit_substitution import (
    SWAP_SLOT,
    shown_names,
    swap_lines,
    thinned,
    wanted_view,
)
from bot.chat.features.safety.caution_blocks import caution_blocks, cautions_button
from bot.chat.grammar.syntax import Bottles, Drinks, Factor, Stock, Target
from bot.chat.i18n.language import _, ngettext, show_number
from bot.chat.reply.message import Block, Button, Grid, Reply, Text
from bot.chat.reply.units import show_amount, show_ml, show_ounces, show_quantity, unit_name
from bot.trade.formulas.amounts import ByBottles
from bot.trade.formulas.measures import Dimension, from_ml
from bot.trade.formulas.tools import SPOONS
from bot.trade.safety.caution import Step
from bot.trade.words import N_
from bot.work.formulas import scaling
from bot.work.formulas.formulas import FormulaView
from bot.work.formulas.scaling import ScaleAnswer
from bot.work.liquids.spirit_substitution import Swapped


@dataclass(frozen=True, kw_only=True)
class ScaledArguments(Arguments):
    """A formula and its target, with options that change the amounts."""

    formula: FormulaView
    target: SaidTarget | None = None
    loss: Fraction | None = None
    swap: Swapped | None = None
    grams: bool = False
    temperature: Fraction | None = None

    @property
    def wanted(self) -> SaidTarget:
        """The target, if given."""
        if self.target is None:
            raise ValueError("no target was said")
        return self.target

    @property
    def said_target(self) -> str:
        """The target as typed, for a button that repeats it."""
        return self.words_for(TARGET_SLOT, LOSS_SLOT, SWAP_SLOT)


Scaled = TypeVar("Scaled", bound=ScaledArguments)


def with_target(arguments: Scaled, words: str, target: SaidTarget) -> Scaled:
    """Return the arguments with this target."""
    return replace(arguments, target=target, words={**arguments.words, TARGET_SLOT.name: words})


def answer_for(turn: Turn, arguments: ScaledArguments) -> ScaleAnswer:
    """Scale to the given target."""
    view = wanted_view(arguments.formula, arguments.swap)
    asked, target = arguments.wanted
    sizes = (target.size_ml,) if isinstance(target, ByBottles) else ()
    loss = arguments.loss or Fraction(0)
    if arguments.loss is None and isinstance(asked, Bottles | Drinks):
        loss = Fraction(turn.context.bar.settings.loss_percent) / 100
    temperature = temperature_of(turn, arguments.temperature)
    return scaling.scale_formula(
        turn.context, view, target, sizes, loss, temperature, weighed=arguments.grams
    )


def target_title(said: Target, units: str) -> str:
    """Write a target as a title: '8 x 50 ml', '600 drinks'."""
    if isinstance(said, Bottles):
        return f"{show_number(said.count, 0)} x {_amount_title(said, units)}"
    if isinstance(said, Drinks):
        count = int(said.count)
        return ngettext("{count} drink", "{count} drinks", count).format(count=show_number(count))
    if isinstance(said, Factor):
        if said.factor == 1:
            return _("as written")
        return _("x {factor}").format(factor=show_number(said.factor, 3))
    return ""


def _amount_title(said: Bottles, units: str) -> str:
    unit = said.size.unit
    word = unit.word if not isinstance(unit, str) else unit_name(unit, units)
    return f"{show_number(said.size.number, 3)} {word}"


def scale_reply(turn: Turn, arguments: ScaledArguments) -> Reply:
    """Return the amounts for the target, in mL or g, and whether the mix stays clear."""
    answer = answer_for(turn, arguments)
    asked, _target = arguments.wanted
    view, swapped = answer.formula, arguments.swap
    units = turn.context.bar.units
    names = shown_names(swapped)
    title = target_title(asked, units) or show_ml(answer.scaled.finished_ml or Fraction(0), units)
    temperature = temperature_of(turn, arguments.temperature)
    lines = swap_lines(swapped, units, answer.scaled.factor)
    lines += _facts(answer, asked, units)
    lines += grams_notes(answer, temperature, units) if arguments.grams else _rounding(answer)
    clearing = clear_line(turn, answer.measured, temperature, None if swapped is None else arguments.formula)
    # With another spirit it comes before the amounts, so that a split is read before the button to log it.
    blocks: list[Block] = [Text(clearing)] if clearing and swapped is not None else []
    lines = [thinned(swapped), *lines, clearing if swapped is None else ""]
    blocks += [grams_grid(answer, names) if arguments.grams else _grid(answer, units, names)]
    blocks += [Text(line) for line in lines if line]
    blocks += caution_blocks(turn, view, Step.MIXING, answer)
    return Reply(
        (Text(f"{view.name}: {title}", strong=True), *blocks), _next(turn, arguments, answer, bool(clearing))
    )


def _next(
    turn: Turn, arguments: ScaledArguments, answer: ScaleAnswer, clears: bool
) -> tuple[tuple[Button, ...], ...]:
    view, units = answer.formula, turn.context.bar.units
    ref = f"#{view.id}.{view.version}"
    asked = arguments.said_target
    warm = "" if arguments.temperature is None else f" at {arguments.words_for(TEMPERATURE_SLOT)}"
    rows: list[tuple[Button, ...]] = [(Button(_("Log this batch"), f"batch {ref} {asked}"),)]
    if arguments.grams:
        densities = Button(_("Densities"), f"density {ref}{warm}")
        by_volume = _("In ml") if units == "metric" else _("In oz")
        rows.append((Button(by_volume, f"scale {ref} {asked}"), densities))
    else:
        grams = Button(_("In grams"), f"scale {ref} {asked} in grams{warm}")
        rows.append((grams, Button(_("Cost"), f"cost {ref} {asked}")))
    if clears:
        other = Button(_("Another spirit"), f"swap {ref} {arguments.words_for(TARGET_SLOT)}")
        rows.append((clear_button(view, arguments.words_for(SWAP_SLOT)), other))
    rows.append((Button(_("Other size"), f"scale {ref}"), cautions_button(view)))
    return tuple(rows)


def _grid(answer: ScaleAnswer, units: str, names: dict[str, str]) -> Grid:
    rows = []
    for line in answer.rounded.lines:
        amount = show_amount(line.amount, line.dimension, units)
        if line.too_small_to_measure:
            amount = _("{amount} (too small to measure)").format(amount=amount)
        elif line.rest_tool is not None:
            first = show_amount(line.amount - line.rest, line.dimension, units)
            amount = f"{first} + {_small(line.rest, line.dimension, units)}"
        elif line.tool == SPOONS:
            amount = _small(line.amount, line.dimension, units)
        rows.append((names.get(line.name, line.name), amount))
    return Grid(tuple(rows))


def _small(amount: Fraction, dimension: Dimension, units: str) -> str:
    """Write an amount for a small measure: in a bar with US units in teaspoons where it is whole quarters."""
    if units == "us" and dimension is Dimension.VOLUME:
        spoons = from_ml(amount, "us_teaspoon").number
        if (4 * spoons).denominator == 1:
            return f"{show_ounces(spoons)} {unit_name('us_teaspoon', units)}"
    return show_amount(amount, dimension, units)


def _facts(answer: ScaleAnswer, said: Target, units: str) -> list[str]:
    facts = []
    if answer.finished_ml:
        made = _("Makes {volume}").format(volume=show_ml(answer.finished_ml, units))
        if answer.strength is not None and answer.strength.strength_percent > 0:
            made += _(" at {percent} % vol").format(
                percent=show_number(Fraction(str(round(answer.strength.strength_percent, 1))), 1)
            )
        if answer.loss_share and answer.fill is None:
            made += _(", {percent} % lost on the way").format(percent=show_number(answer.loss_share * 100, 1))
        facts.append(made)
    if answer.scaled.limiting is not None and isinstance(said, Stock) and len(said.amounts) > 1:
        facts.append(_("{name} runs out first.").format(name=answer.scaled.limiting))
    if answer.drinks is not None:
        low, high = (down_to_two(count) for count in answer.drinks)
        if isinstance(said, Drinks):
            low = max(low, int(said.count))  # what was asked is known to all its digits
        facts.append(
            _("Enough for {low} to {high} drinks").format(low=show_number(low, 0), high=show_number(high, 0))
            if low != high
            else _("Enough for {low} drinks").format(low=show_number(low, 0))
        )
    if answer.fill is not None:
        facts.append(_fill(answer, units))
    return facts


def down_to_two(count: int) -> int:
    """Return a count that follows from a range, rounded down to the two digits that are known."""
    step = int(10 ** max(0, len(str(count)) - 2))
    return count // step * step


def _fill(answer: ScaleAnswer, units: str) -> str:
    assert answer.fill is not None  # noqa: S101 - checked by the caller
    full = ", ".join(f"{count} x {show_ml(size, units)}" for size, count in answer.fill.full if count)
    text = _("Fills {bottles}").format(bottles=full or _("no bottle"))
    if answer.loss_share:
        text += _(", {percent} % lost on the way").format(percent=show_number(answer.loss_share * 100, 1))
    if answer.fill.left_over_ml > Fraction(1, 100):
        text += _(", {volume} over").format(volume=show_ml(answer.fill.left_over_ml, units))
    return text


def _rounding(answer: ScaleAnswer) -> list[str]:
    shift = answer.rounded.largest_ratio_shift
    tools = [
        tool for line in answer.rounded.lines for tool in (line.tool, line.rest_tool) if tool is not None
    ]
    if not tools:
        return []
    named = ", ".join(dict.fromkeys(_(tool) for tool in tools))
    if not shift:
        return [_("Exact with: {tools}.").format(tools=named)]
    if not answer.rounded.keeps_ratio:
        text = _("With {tools} the ratio is {percent} % off: weigh it in grams, or make more of it.")
        return [text.format(tools=named, percent=show_number(shift * 100, 0))]
    return [
        _("Rounded to {tools}: the ratio is off by {percent} % at most.").format(
            tools=named, percent=show_number(shift * 100, 1 if shift > Fraction(1, 1000) else 2)
        )
    ]


def line_texts(view: FormulaView, units: str) -> Grid:
    """Return a formula's lines as typed, each with its amount."""
    rows = []
    for line in view.lines:
        name = line.ingredient.name
        if line.ingredient.strength_percent is not None and not name.endswith("%"):
            name = f"{name} {show_number(line.ingredient.strength_percent, 2)}\u00a0%"
        amount = show_quantity(line.quantity, units)
        if line.dimension is Dimension.COUNT:
            amount = show_number(line.amount, 2)
        rows.append((name, amount))
    return Grid(tuple(rows))


_EXAMPLES = (
    N_("scale grapefruit mist to 8 x 50 ml"),
    N_("scale grapefruit mist with 12 ml grapefruit oil"),
    N_("scale grapefruit mist for 600 drinks, 5 % loss"),
    N_("scale grapefruit mist to 400 ml in grams at 27 C"),
    N_("scale grapefruit mist to 400 ml with 75.5 % spirit instead"),
)

COMMANDS = (
    Command(
        "scale",
        N_("amounts for a size, bottles, drinks or what you have"),
        scale_reply,
        words=(
            *("make amounts", "make", "amounts", "scale up", "scale down", "how much oil for"),
            *("how much oil do i need for", "how much do i need for"),
        ),
        examples=_EXAMPLES,
        slots=(FORMULA_SLOT, LOSS_SLOT, SWAP_SLOT, TARGET_SLOT, GRAMS_SLOT, TEMPERATURE_SLOT),
        menu=10,
        quick=True,
        wishes=(
            Wish(
                "scale",
                (
                    "{formula?} WITH {amount} {ingredient}",
                    "{formula?} TO {bottles}",
                    "{formula?} FOR {drinks}",
                    "{formula?} TO {amount}",
                    "{formula?} {factor}",
                    "{formula}",
                    "",
                ),
            ),
        ),
    ),
)
