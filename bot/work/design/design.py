"""Design a spray to order, from what is on the shelf and in amounts that the bar's tools measure."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from enum import StrEnum
from fractions import Fraction
from itertools import islice

from bot.trade.design import design as rules
from bot.trade.design.design import Shares, Shelf
from bot.trade.formulas.amounts import ByBottles, ByStock, ByTotal, Target
from bot.trade.formulas.kinds import PREPARATION_DEFAULTS, Preparation
from bot.trade.formulas.measures import Dimension
from bot.trade.liquids.clearing import estimate
from bot.trade.liquids.clearing.mend import State
from bot.trade.safety.limits import Part
from bot.trade.spray.dose import LimitState
from bot.work.context import Context
from bot.work.design.bench import USUAL_DRINK_ML, USUAL_ML, Bench, Names, Wishes, bench_for, line_of
from bot.work.formulas import scaling
from bot.work.formulas.formulas import FormulaView
from bot.work.formulas.mixture import mix_of
from bot.work.formulas.scaling import ScaleAnswer
from bot.work.liquids.evidence import mixture_in
from bot.work.money import cost as costing
from bot.work.money.cost import CostAnswer
from bot.work.spray import dose
from bot.work.spray.dose import DoseAnswer, DoseQuestion
from bot.work.stock.on_hand import on_hand

# Glycol that an oilier design keeps, and the oil of one that lasts longer. Common practice, no source.
_KEPT_GLYCOL = 5
_LASTING_OIL = Fraction(2, 3)
_WORTH_GLYCOL = 3  # percent more, so that a design lasts noticeably longer
_TRIES = 12  # mixes on the grid that are rounded to the tools and judged


class Aim(StrEnum):
    """What a design is best at among those that meet the wishes, or nearly."""

    WANTED = "wanted"
    AROMA = "more aroma"
    HOLD = "lasts longer"
    LIGHT = "lighter"
    PRICE = "cheaper"


class Wish(StrEnum):
    """A wish that can be given up where not all can be met."""

    OIL = "oil"
    SPIRIT = "spirit"
    COLD = "cold"
    BOTH = "oil and spirit"


@dataclass(frozen=True, slots=True)
class Design:
    """One formula that was found: rounded to the tools, and judged as every formula is.

    `short` names what the shelf has too little of.
    """

    aim: Aim
    shares: Shares
    answer: ScaleAnswer
    dose: DoseAnswer
    cost: CostAnswer
    short: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class GivenUp:
    """A wish, and what it would have to be: percent of oil, % vol of spirit, or °C.

    Where no wish alone is enough it is both oil and spirit: the percent of oil with the strongest spirit.
    """

    wish: Wish
    value: float


@dataclass(frozen=True, slots=True)
class Proposal:
    """The designs, the wanted one first; none if nothing meets the wishes, and then what to give up."""

    wishes: Wishes
    temperature_c: float
    designs: tuple[Design, ...]
    give_up: tuple[GivenUp, ...] = ()


def propose(context: Context, wishes: Wishes, names: Names) -> Proposal:
    """Return the formula that meets all wishes, with others that trade aroma, hold and price against it."""
    bench = bench_for(context, wishes, names)
    temperature = bench.bounds.temperature_c
    oil = _wanted_oil(wishes)
    if oil is None:
        oil = float(min(rules.USUAL_OIL, rules.most_oil(bench.shelves, bench.bounds)))
    order = rules.by_cost if wishes.cheapest else rules.by_hold
    holding = rules.with_oil(oil, bench.shelves, bench.bounds) if oil else []
    wanted = _first(bench, Aim.WANTED, order(holding))
    if wanted is None:
        return Proposal(wishes, temperature, (), tuple(_give_up(bench, oil or 1.0)))
    return Proposal(wishes, temperature, (wanted, *_others(bench, wanted)))


def _wanted_oil(wishes: Wishes) -> float | None:
    """Return the percent of oil that was asked for, None where nobody did."""
    if wishes.oil_percent is not None:
        return float(wishes.oil_percent)
    if wishes.oil_ml is None or wishes.target is None:
        return None
    return float(100 * wishes.oil_ml / _made_ml(wishes.target))


def _made_ml(target: ByTotal | ByBottles) -> Fraction:
    if isinstance(target, ByTotal):
        return target.ml
    return target.count * target.size_ml / (1 - target.loss_share)


# -- one design ------------------------------------------------------------------------------


def _first(bench: Bench, aim: Aim, found: Iterable[Shares]) -> Design | None:
    """Return the first of some mixes that holds after rounding to the tools too."""
    tried = (judged(bench, aim, one) for one in islice(found, _TRIES))
    return next((one for one in tried if one is not None), None)


def judged(bench: Bench, aim: Aim, shares: Shares) -> Design | None:
    """Return a mix in amounts that the tools measure; None if it does not keep to everything then."""
    bench.context.take_time()
    answer = scaling.scale_formula(bench.context, _view(bench, shares), *_target(bench))
    if not answer.rounded.keeps_ratio or any(line.too_small_to_measure for line in answer.rounded.lines):
        return None
    if not _is_clear(answer.measured, bench.bounds.temperature_c):
        return None
    drink = bench.wishes.drink_ml or USUAL_DRINK_ML
    dosed = dose.answer(bench.context, answer.measured, DoseQuestion(drink, sprays=bench.sprays))
    if any(one.state is LimitState.OVER for one in dose.composition(dosed)):
        return None
    asked = bench.wishes.glycol_g_per_l
    if asked is not None and dosed.doses[Part.GLYCOL].mg_per_litre.high > 1000 * float(asked):
        return None
    bottle = bench.wishes.target.size_ml if isinstance(bench.wishes.target, ByBottles) else None
    cost = costing.cost_of(bench.context, answer, bottle)
    return Design(aim, shares, answer, dosed, cost, tuple(_short(bench.context, answer.measured)))


def _is_clear(view: FormulaView, temperature_c: float) -> bool:
    """Whether a formula stays clear by the models and what is published, with the margin and without."""
    mixture = mixture_in(mix_of(view))
    if mixture is None:
        return False
    mixes = (mixture, rules.with_margin(mixture))
    return all(estimate.state_of(one, temperature_c) is State.CLEAR for one in mixes)


def _target(bench: Bench) -> tuple[Target, tuple[Fraction, ...], Fraction]:
    """Return the size to make, the bottles to fill, and the share lost on the way."""
    wishes = bench.wishes
    if isinstance(wishes.target, ByBottles):
        return wishes.target, (wishes.target.size_ml,), wishes.target.loss_share
    if wishes.target is not None:
        return wishes.target, (), Fraction(0)
    if wishes.oil_ml is not None:
        return ByStock({bench.oil.name: wishes.oil_ml}), (), Fraction(0)
    return ByTotal(USUAL_ML[bench.context.bar.units]), (), Fraction(0)


def _view(bench: Bench, shares: Shares) -> FormulaView:
    """Return a formula of 100 mL that is not in the book."""
    spirit = bench.spirits[shares.shelf]
    amounts = (
        (bench.oil, shares.oil),
        (bench.glycol, shares.glycol),
        (spirit, 100 - shares.oil - shares.glycol),
    )
    usual = PREPARATION_DEFAULTS[Preparation.AROMA_MIST]
    return FormulaView(
        id=0,
        name=bench.wishes.fruit,
        preparation=Preparation.AROMA_MIST,
        version=1,
        latest=1,
        lines=tuple(line_of(one, Fraction(ml).limit_denominator(1000)) for one, ml in amounts if ml > 0),
        rest_hours=Fraction(usual.rest_hours),
        discard_days=usual.discard_days,
        sprays=bench.sprays,
        spray_ml=bench.spray_ml,
        garnish=None,
        note="",
        made_at=bench.context.now,
        archived=False,
    )


def _short(context: Context, view: FormulaView) -> Iterator[str]:
    """Yield the names of what was counted and is too little."""
    there = on_hand(context, [line.ingredient.id for line in view.lines if line.ingredient.id])
    for line in view.lines:
        one = there.get(line.ingredient.id)
        if one is not None and one.dimension is Dimension.VOLUME and one.amount < line.amount:
            yield line.ingredient.name


# -- others, and what to give up -------------------------------------------------------------


def _others(bench: Bench, wanted: Design) -> list[Design]:
    """Return designs that trade aroma, hold and price against the wanted one, each better in one of them."""
    shelves, bounds, shares = bench.shelves, bench.bounds, wanted.shares
    most = rules.most_oil(shelves, bounds, _KEPT_GLYCOL)
    oilier = range(most, max(int(shares.oil) + 1, most - 3), -1)
    richer = [one for oil in oilier for one in rules.by_hold(rules.with_oil(oil, shelves, bounds))[:4]]
    leaner = rules.by_hold(rules.with_oil(round(shares.oil * float(_LASTING_OIL)), shelves, bounds))
    lasts = bool(leaner) and leaner[0].glycol >= shares.glycol + _WORTH_GLYCOL
    cheaper = rules.by_cost(rules.with_oil(shares.oil, shelves, bounds))
    found = (
        _first(bench, Aim.AROMA, richer),
        _first(bench, Aim.HOLD if lasts else Aim.LIGHT, (one for one in leaner if 1 <= one.oil < shares.oil)),
        _first(bench, Aim.PRICE, (one for one in cheaper if one.per_ml < shares.per_ml * 0.99)),
    )
    return [one for one in found if one is not None]


def _give_up(bench: Bench, oil: float) -> Iterator[GivenUp]:
    """Yield each wish that could be given up alone, and what it would have to be."""
    most = rules.most_oil(bench.shelves, bench.bounds)
    weakest = rules.weakest_spirit(oil, bench.bounds)
    cold = rules.mildest_cold(oil, bench.shelves, bench.bounds)
    if 0 < most < oil:
        yield GivenUp(Wish.OIL, float(most))
    if weakest is not None and all(one.percent < weakest for one in bench.shelves):
        yield GivenUp(Wish.SPIRIT, weakest)
    if cold is not None:
        yield GivenUp(Wish.COLD, cold)
    if not most and weakest is None:
        strongest = rules.most_oil([Shelf(rules.STRONGEST_PERCENT)], bench.bounds)
        yield GivenUp(Wish.BOTH, float(strongest))
