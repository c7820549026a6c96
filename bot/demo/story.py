"""The events of the demo bar in its twelve weeks, in parts.

A part is a function from the stage to acts (a moment, a person, a use case). To add something, write a part
and add it to PARTS; each has its own random generator, so the others do not change.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Iterator
from datetime import timedelta
from decimal import Decimal
from fractions import Fraction
from random import Random

from bot.demo import book
from bot.demo.book import MANAGER, MEMBER, OWNER
from bot.demo.stage import Act, Stage
from bot.trade.formulas.amounts import ByBottles, ByFactor, ByTotal, Target
from bot.trade.formulas.measures import Dimension, Quantity
from bot.trade.safety.caution import Step
from bot.trade.safety.cautions import cautions_for
from bot.trade.safety.jurisdiction import Jurisdiction
from bot.work.batches import batch_life
from bot.work.batches.batch_life import NewBatch
from bot.work.batches.batches import Clarity
from bot.work.context import Context
from bot.work.formulas import formulas, ingredients, scaling
from bot.work.formulas.formulas import Draft, DraftLine
from bot.work.formulas.mixture import mix_of
from bot.work.fruit import waste
from bot.work.fruit.waste import WasteLine
from bot.work.log import chain
from bot.work.money import prices
from bot.work.safety.contents import contents_of

_SATURDAY, _FRIDAY, _WEDNESDAY, _MONDAY = 5, 4, 2, 0


# -- stock, formulas, prices ----------------------------------------------------------------


def stock(stage: Stage) -> Iterator[Act]:
    """Add the bar's ingredients, and the food grades confirmed by their makers."""
    for one in book.STOCK:
        yield Act(stage.at(one.nights_ago, "15:00"), OWNER, _stocks(stage, one))


def _stocks(stage: Stage, one: book.Stock) -> Callable[[Context], None]:
    def does(context: Context) -> None:
        strength = None if one.strength_percent is None else Fraction(one.strength_percent)
        view = ingredients.add(context, one.name, one.kind, strength)
        if one.graded is not None:
            ingredients.confirm_grade(context, view.id, one.graded)
        stage.ingredients[one.name] = view.id

    return does


def specs(stage: Stage) -> Iterator[Act]:
    """Add the formulas, and change some of them later."""
    for one in book.FORMULAS:
        yield Act(stage.at(one.nights_ago, "15:20"), OWNER, _writes(stage, one))
    for change in book.CHANGES:
        yield Act(stage.at(change.nights_ago, change.clock), OWNER, _changes(stage, change))


def _writes(stage: Stage, one: book.Spec) -> Callable[[Context], None]:
    def does(context: Context) -> None:
        draft = Draft(
            one.preparation,
            tuple(_line(stage, *line) for line in one.lines),
            rest_hours=None if one.rest_hours is None else Fraction(one.rest_hours),
            discard_days=one.discard_days,
            garnish=None if one.garnish is None else stage.ingredients[one.garnish],
            note=one.note,
        )
        stage.formulas[one.name] = formulas.add(context, one.name, draft).id

    return does


def _line(stage: Stage, name: str, amount: str, unit: str) -> DraftLine:
    return DraftLine(stage.ingredients[name], Quantity(Fraction(amount), unit))


def _changes(stage: Stage, change: book.Change) -> Callable[[Context], None]:
    def does(context: Context) -> None:
        number = stage.formulas[change.formula]
        draft = formulas.draft_of(formulas.get(context, number))
        for line in change.lines:
            draft = formulas.with_line(draft, _line(stage, *line))
        for name in change.without:
            draft = formulas.without_line(draft, stage.ingredients[name])
        formulas.change(context, number, draft)

    return does


def paid(stage: Stage) -> Iterator[Act]:
    """Log pack prices, up and down."""
    for one in book.PRICES:
        yield Act(stage.at(one.nights_ago, "15:10"), OWNER, _pays(stage, one))


def _pays(stage: Stage, one: book.Paid) -> Callable[[Context], object]:
    garnishes = None if one.garnishes is None else (Fraction(one.garnishes[0]), Fraction(one.garnishes[1]))
    pack = Quantity(Fraction(one.amount), one.unit)
    return lambda context: prices.set_price(
        context, stage.ingredients[one.name], pack, Decimal(one.price), garnishes
    )


# -- batches --------------------------------------------------------------------------------


def _make(
    stage: Stage, key: str, formula: str, target: Target, lots: dict[str, str] | None = None
) -> Callable[[Context], None]:
    """Make a batch under a key for later acts, with lots by ingredient."""

    def does(context: Context) -> None:
        view = formulas.get(context, stage.formulas[formula])
        sizes = (target.size_ml,) if isinstance(target, ByBottles) else ()
        answer = scaling.scale_formula(context, view, target, sizes)
        cautions = cautions_for(
            Step.RESTING,
            contents_of(mix_of(answer.measured), float(answer.finished_ml or 0) or None),
            Jurisdiction(context.bar.jurisdiction),
            view.preparation,
        )
        made = batch_life.make(context, NewBatch(answer, caution_ids=[one.id for one in cautions]))
        stage.batches[key] = made.batch.number
        for name, lot in (lots or {}).items():
            batch_life.note_lot(context, made.batch.number, stage.ingredients[name], lot)

    return does


def _check(stage: Stage, key: str, clarity: Clarity, note: str = "") -> Callable[[Context], object]:
    return lambda context: batch_life.check(context, stage.batches[key], clarity, note)


def _open(stage: Stage, key: str) -> Callable[[Context], object]:
    return lambda context: batch_life.open_batch(context, stage.batches[key])


def _use_up(stage: Stage, key: str) -> Callable[[Context], object]:
    return lambda context: batch_life.use_up(context, stage.batches[key])


def _discard(stage: Stage, key: str, lost_ml: int | None, reason: str) -> Callable[[Context], object]:
    lost = None if lost_ml is None else Fraction(lost_ml)
    return lambda context: batch_life.discard(context, stage.batches[key], lost, reason)


def _bottles(count: int, size_ml: int = 50) -> Target:
    return ByBottles(count, Fraction(size_ml))


def mists(stage: Stage) -> Iterator[Act]:
    """Make the mists: the first of each in its smallest size, one hazy and then clear, one split."""

    def act(night: int, clock: str, does: Callable[[Context], object], who: str = OWNER) -> Act:
        return Act(stage.at(night, clock), who, does)

    def life(key: str, ready: int, opened: int | None = None, used: int | None = None) -> Iterator[Act]:
        yield act(ready, "18:00", _check(stage, key, Clarity.CLEAR))
        if opened is not None:
            yield act(opened, "18:05", _open(stage, key), MANAGER)
        if used is not None:
            yield act(used, "24:20", _use_up(stage, key), MEMBER)

    def grapefruit(key: str, count: int, lot: str) -> Callable[[Context], None]:
        lots = {"grapefruit oil": lot, "propylene glycol": "PG-0417"}
        return _make(stage, key, book.GRAPEFRUIT_MIST, _bottles(count), lots)

    def orange(key: str, count: int, lot: str) -> Callable[[Context], None]:
        return _make(stage, key, book.ORANGE_MIST, _bottles(count), {"sweet orange oil": lot})

    since = book.SPRAY_SINCE
    yield act(since + 3, "16:30", grapefruit("first", 1, "GO-118"))
    yield act(since + 2, "17:00", _check(stage, "first", Clarity.HAZY, "a veil at the shoulder"))
    yield act(since + 1, "17:00", _check(stage, "first", Clarity.CLEAR, "cleared in a warm room"))
    yield act(since, "18:00", _open(stage, "first"))
    yield act(since - 3, "24:10", _use_up(stage, "first"), MEMBER)

    yield act(29, "16:20", grapefruit("grapefruit 1", 4, "GO-118"))
    yield from life("grapefruit 1", 28, 27, 16)
    yield act(17, "16:20", grapefruit("grapefruit 2", 4, "GO-131"))
    yield from life("grapefruit 2", 16, 16, 5)
    yield act(7, "16:40", grapefruit("grapefruit 3", 4, "GO-131"))
    yield from life("grapefruit 3", 6, 5)
    yield act(3, "16:15", grapefruit("grapefruit 4", 4, "GO-140"))
    yield from life("grapefruit 4", 2)
    # On the last day, open or closed, so that something is always resting and can be undone.
    yield Act(stage.at(stage.last_day, "23:40"), OWNER, grapefruit("grapefruit 5", 8, "GO-140"))

    yield act(29, "16:10", orange("orange first", 1, "SO-77"))
    yield act(28, "17:20", _check(stage, "orange first", Clarity.SPLIT, "oil on top: the water is too much"))
    yield act(28, "17:30", _discard(stage, "orange first", None, "split"))
    yield act(27, "16:10", orange("orange 1", 3, "SO-77"))
    yield from life("orange 1", 26, 25, 13)
    yield act(14, "17:50", orange("orange 2", 3, "SO-77"))
    yield from life("orange 2", 13, 13)
    yield act(1, "23:20", orange("orange 3", 3, "SO-82"))


def tinctures(stage: Stage) -> Iterator[Act]:
    """Make tincture and saline, each in time for the one before."""
    pods = {"one": "CP-09", "two": "CP-09", "three": "CP-15"}
    for key, night in (("one", 70), ("two", 38), ("three", 4)):
        name = f"cardamom {key}"
        make = _make(stage, name, book.CARDAMOM, ByFactor(Fraction(1)), {"cardamom pods": pods[key]})
        yield Act(stage.at(night, "15:50"), OWNER, make)
        if night > 12:
            clear = _check(stage, name, Clarity.CLEAR, "strained twice")
            yield Act(stage.at(night - 13, "16:50"), OWNER, clear)
    yield Act(stage.at(56, "18:20"), MANAGER, _open(stage, "cardamom one"))
    yield Act(stage.at(23, "24:30"), MEMBER, _use_up(stage, "cardamom one"))
    yield Act(stage.at(22, "18:20"), MANAGER, _open(stage, "cardamom two"))
    for number, (night, end) in enumerate(((71, 48), (48, 24), (24, None)), start=1):
        name = f"saline {number}"
        yield Act(stage.at(night, "16:00"), OWNER, _make(stage, name, book.SALINE, ByFactor(Fraction(5))))
        yield Act(stage.at(night, "18:10"), MEMBER, _open(stage, name))
        if end is not None:
            yield Act(stage.at(end, "15:55"), MEMBER, _use_up(stage, name))


def kitchen(stage: Stage) -> Iterator[Act]:
    """Make syrup every Wednesday and sour orange every Friday; leftovers are discarded."""
    dice = stage.chance("kitchen")
    wednesdays = [night for night, day in enumerate(stage.nights) if day.weekday() == _WEDNESDAY]
    for night in wednesdays:
        name, maker = f"syrup {night}", _maker(night)
        made = stage.night(night)
        make = _make(stage, name, book.SYRUP, ByTotal(Fraction(2000)))
        yield Act(stage.at(made, "16:20"), maker, make)
        yield Act(stage.at(made, "18:15"), maker, _open(stage, name))
        ends = stage.at(made + timedelta(days=7), "15:30")
        if night == wednesdays[5]:
            yield Act(ends, maker, _discard(stage, name, 600, "smells off"))
        else:
            yield Act(ends, maker, _use_up(stage, name))
    for night, day in enumerate(stage.nights):
        if day.weekday() == _FRIDAY:
            yield from _sour_orange(stage, dice, night)


def _sour_orange(stage: Stage, dice: Random, night: int) -> Iterator[Act]:
    name, maker, made = f"sour {night}", _maker(night), stage.night(night)
    make = _make(stage, name, book.SOUR_ORANGE, ByTotal(Fraction(dice.choice((750, 1000, 1500)))))
    yield Act(stage.at(made, "16:45"), maker, make)
    yield Act(stage.at(made, "18:30"), maker, _open(stage, name))
    if dice.random() < 0.35:
        lost = dice.randrange(100, 400, 50)
        thrown = stage.at(made + timedelta(days=2), "25:30")
        yield Act(thrown, MEMBER, _discard(stage, name, lost, "past its date"))
    else:
        yield Act(stage.at(made + timedelta(days=1), "25:40"), MEMBER, _use_up(stage, name))


def _maker(night: int) -> str:
    """Return the maker: recently the owner, so that open reminders reach the owner."""
    return OWNER if night < 14 else MANAGER


# -- waste ----------------------------------------------------------------------------------


def closings(stage: Stage) -> Iterator[Act]:
    """Log the night's waste at each close: more on busy nights, less fruit since the spray."""
    dice = stage.chance("closings")
    for night, day in sorted(enumerate(stage.nights), reverse=True):
        trade = book.TRADE_BY_WEEKDAY[day.weekday()]
        lines = []
        for fruit, reason, before, since in book.WASTE_RATES:
            mean = trade * (since if night < book.SPRAY_SINCE else before)
            pieces = _poisson(dice, mean)
            if pieces:
                lines.append((fruit, Fraction(pieces), Dimension.COUNT, reason))
        who = OWNER if night == 0 else dice.choice((MEMBER, MEMBER, MANAGER))
        minute = dice.randrange(20, 55)
        if lines:
            yield Act(stage.at(day, f"25:{minute}"), who, _waste(stage, lines))


def _poisson(dice: Random, mean: float) -> int:
    """Return a Poisson number with this mean (Knuth's multiplication method)."""
    limit, number, product = math.exp(-mean), 0, dice.random()
    while product > limit:
        number += 1
        product *= dice.random()
    return number


def _waste(stage: Stage, lines: list[tuple[str, Fraction, Dimension, str]]) -> Callable[[Context], object]:
    return lambda context: waste.log(
        context,
        [
            WasteLine(stage.ingredients[name], amount, dimension, reason)
            for name, amount, dimension, reason in lines
        ],
    )


def deliveries(stage: Stage) -> Iterator[Act]:
    """Find damaged fruit in the crates on some Mondays, when the bar is closed."""
    dice = stage.chance("deliveries")
    for back in range(7 * book.WEEKS, -1, -1):
        day = stage.last_day - timedelta(days=back)
        if day.weekday() != _MONDAY:
            continue
        lines: list[tuple[str, Fraction, Dimension, str]] = []
        if dice.random() < 0.7:
            lines.append(
                ("orange", Fraction(dice.randrange(1, 4)), Dimension.COUNT, "damaged on delivery"),
            )
        grams = Fraction(dice.randrange(150, 800, 50))
        lines.append(("lime", grams, Dimension.MASS, "damaged on delivery"))
        # Crates arrive before noon; the first entry is in the afternoon.
        if day > stage.first_day:
            yield Act(stage.at(day, "11:20"), MANAGER, _waste(stage, lines))


def slip(stage: Stage) -> Iterator[Act]:
    """Log sixty oranges instead of six, and undo it."""

    def does(context: Context) -> None:
        sixty = WasteLine(stage.ingredients["orange"], Fraction(60), Dimension.COUNT, "mouldy")
        chain.undo(context, waste.log(context, [sixty]).entry)

    saturdays = [night for night, day in enumerate(stage.nights) if day.weekday() == _SATURDAY]
    yield Act(stage.at(saturdays[1], "25:05"), MEMBER, does)


Part = Callable[[Stage], Iterator[Act]]
PARTS: tuple[Part, ...] = (
    stock,
    paid,
    specs,
    mists,
    tinctures,
    kitchen,
    closings,
    deliveries,
    slip,
)
