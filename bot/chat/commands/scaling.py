"""Scale: amounts for what is wanted, rounded to the bar's tools, in millilitres or grams."""

from __future__ import annotations

from fractions import Fraction

from bot.chat.asks import FORMULA_SLOT, GRAMS_SLOT, LOSS_SLOT, TARGET_SLOT
from bot.chat.cautioning import caution_blocks, cautions_button
from bot.chat.language import _, ngettext, show_number
from bot.chat.message import Block, Button, Grid, Reply, Text
from bot.chat.talk import Command, Given, Talk
from bot.chat.units import show_amount, show_g, show_ml, show_quantity
from bot.chat.values import Bottles, Drinks, Factor, Stock, Target
from bot.trade.amounts import ByBottles
from bot.trade.amounts import Target as TradeTarget
from bot.trade.caution import Step
from bot.trade.measures import Dimension
from bot.trade.words import N_
from bot.work import scaling
from bot.work.formulas import FormulaView
from bot.work.scaling import ScaleAnswer


def answer_for(talk: Talk, given: Given) -> ScaleAnswer:
    """Scale what was asked for."""
    view: FormulaView = given["formula"]
    said, target = given["target"]
    sizes = (target.size_ml,) if isinstance(target, ByBottles) else ()
    loss = loss_of(talk, given) if isinstance(said, Bottles | Drinks) else given.get("loss", Fraction(0))
    return scaling.scale_formula(talk.desk, view, target, sizes, loss)


def loss_of(talk: Talk, given: Given) -> Fraction:
    """Return the share lost in bottling: as said, else the bar's own."""
    share: Fraction = given.get("loss", Fraction(talk.desk.bar.settings.loss_percent) / 100)
    return share


def said_target(given: Given) -> str:
    """Return the target in the words that asked for it, for a button that asks the same."""
    text = given.texts["target"]
    loss = given.texts.get("loss")
    return f"{text} {loss}" if loss else text


def target_title(said: Target, units: str) -> str:
    """Write a target as a title: '8 x 50 ml', '600 drinks'."""
    if isinstance(said, Bottles):
        return f"{show_number(said.count, 0)} x {_amount_title(said)}"
    if isinstance(said, Drinks):
        count = int(said.count)
        return ngettext("{count} drink", "{count} drinks", count).format(count=show_number(count))
    if isinstance(said, Factor):
        if said.factor == 1:
            return _("as written")
        return _("{factor} times").format(factor=show_number(said.factor, 3))
    return ""


def _amount_title(said: Bottles) -> str:
    from bot.chat.units import unit_name  # noqa: PLC0415 - one small name

    unit = said.size.unit
    word = unit.word if not isinstance(unit, str) else unit_name(unit)
    return f"{show_number(said.size.number, 3)} {word}"


def _scale(talk: Talk, given: Given) -> Reply:
    answer = answer_for(talk, given)
    said, _target = given["target"]
    view = answer.formula
    units = talk.desk.bar.units
    title = target_title(said, units) or show_ml(answer.finished_ml or Fraction(0), units)
    blocks: list[Block] = []
    in_grams = "grams" in given
    blocks.append(_grams_grid(answer) if in_grams else _grid(answer, units))
    blocks += [Text(line) for line in _facts(answer, said, units)]
    if in_grams:
        blocks.append(Text(_grams_note(answer)))
    else:
        blocks += [Text(line) for line in _rounding(answer)]
    blocks += caution_blocks(talk, view, Step.MIXING, answer)
    ref = f"#{view.id}.{view.version}"
    asked = said_target(given)
    other = (
        Button(_("In ml"), f"scale {ref} {asked}")
        if in_grams
        else Button(_("In grams"), f"scale {ref} {asked} in grams")
    )
    return Reply(
        (Text(f"{view.name}: {title}", strong=True), *blocks),
        (
            (Button(_("Log this batch"), f"batch {ref} {asked}"),),
            (other, Button(_("Cost"), f"cost {ref} {asked}")),
            (Button(_("Other size"), f"scale {ref}"), cautions_button(view)),
        ),
    )


def _grid(answer: ScaleAnswer, units: str) -> Grid:
    rows = []
    for line in answer.rounded.lines:
        amount = show_amount(line.amount, line.dimension, units)
        if line.too_small_to_measure:
            amount = _("{amount} (too small to measure)").format(amount=amount)
        rows.append((line.name, amount))
    return Grid(tuple(rows))


def _grams_grid(answer: ScaleAnswer) -> Grid:
    rows = []
    total: Fraction | None = Fraction(0)
    for line, mass in zip(answer.scaled.lines, answer.masses, strict=True):
        if mass.grams is None:
            total = None
            rows.append((line.name, show_amount(line.amount, line.dimension)))
        else:
            total = None if total is None else total + mass.grams
            rows.append((line.name, show_g(mass.grams)))
    if total is not None:
        rows.append((_("Total"), show_g(total)))
    return Grid(tuple(rows))


def _grams_note(answer: ScaleAnswer) -> str:
    sources = sorted({_(mass.source) for mass in answer.masses if mass.source})
    if not sources:
        return _("Weighed at 20 °C; I know no densities for the rest.")
    return _("At 20 °C. Densities: {sources}.").format(sources="; ".join(sources))


def _facts(answer: ScaleAnswer, said: Target, units: str) -> list[str]:
    facts = []
    if answer.finished_ml:
        made = _("Makes {volume}").format(volume=show_ml(answer.finished_ml, units))
        if answer.strength is not None and answer.strength.strength_percent > 0:
            made += _(" at {percent} % vol").format(
                percent=show_number(Fraction(str(round(answer.strength.strength_percent, 1))), 1)
            )
        facts.append(made)
    if answer.scaled.limiting is not None and isinstance(said, Stock) and len(said.amounts) > 1:
        facts.append(_("{name} runs out first.").format(name=answer.scaled.limiting))
    if answer.drinks is not None:
        low, high = answer.drinks
        facts.append(
            _("Enough for {low} to {high} drinks").format(low=show_number(low, 0), high=show_number(high, 0))
            if low != high
            else _("Enough for {low} drinks").format(low=show_number(low, 0))
        )
    if answer.fill is not None:
        facts.append(_fill(answer, units))
    return facts


def _fill(answer: ScaleAnswer, units: str) -> str:
    assert answer.fill is not None  # noqa: S101 - the caller looked
    full = ", ".join(f"{count} x {show_ml(size, units)}" for size, count in answer.fill.full if count)
    text = _("Fills {bottles}").format(bottles=full or _("no bottle"))
    if answer.loss_share:
        text += _(", {percent} % lost on the way").format(percent=show_number(answer.loss_share * 100, 1))
    if answer.fill.left_over_ml > Fraction(1, 100):
        text += _(", {volume} over").format(volume=show_ml(answer.fill.left_over_ml, units))
    return text


def _rounding(answer: ScaleAnswer) -> list[str]:
    shift = answer.rounded.largest_ratio_shift
    tools = [line.tool for line in answer.rounded.lines if line.tool is not None]
    if not tools:
        return []
    named = ", ".join(dict.fromkeys(_(tool) for tool in tools))
    if not shift:
        return [_("Exact with: {tools}.").format(tools=named)]
    return [
        _("Rounded to {tools}: the ratio is off by {percent} % at most.").format(
            tools=named, percent=show_number(shift * 100, 1 if shift > Fraction(1, 1000) else 2)
        )
    ]


def trade_target(given: Given) -> TradeTarget:
    """Return the target in the rules' terms."""
    target: TradeTarget = given["target"][1]
    return target


def line_texts(view: FormulaView, units: str) -> Grid:
    """Return a formula's lines as typed, each beside its amount."""
    rows = []
    for line in view.lines:
        name = line.ingredient.name
        if line.ingredient.strength_percent is not None:
            name = f"{name} {show_number(line.ingredient.strength_percent, 2)} %"
        amount = show_quantity(line.quantity)
        if line.dimension is Dimension.COUNT:
            amount = show_number(line.amount, 2)
        rows.append((name, amount))
    return Grid(tuple(rows))


_EXAMPLES = (
    N_("scale grapefruit mist to 8 x 50 ml"),
    N_("scale grapefruit mist with 12 ml grapefruit oil"),
    N_("scale grapefruit mist for 600 drinks, 5 % loss"),
)

COMMANDS = (
    Command(
        "scale",
        N_("amounts for a size, bottles, drinks or what you have"),
        _scale,
        words=("make amounts", "amounts"),
        examples=_EXAMPLES,
        slots=(FORMULA_SLOT, LOSS_SLOT, TARGET_SLOT, GRAMS_SLOT),
        menu=10,
    ),
)
