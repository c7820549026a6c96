"""Numbers of the demo besides the fruit: drinks served, stock counted and bought, and two trials.

A part is a function from the stage to acts, as in story.py.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from decimal import Decimal
from fractions import Fraction

from bot.demo import book
from bot.demo.book import MANAGER, MEMBER, OWNER
from bot.demo.stage import Act, Stage
from bot.trade.formulas.measures import Quantity
from bot.trade.trials.tasting import Aspect
from bot.work.context import Context
from bot.work.formulas import formulas
from bot.work.formulas.formulas import DraftLine
from bot.work.spray import drinks
from bot.work.spray.drinks import DrinksDay
from bot.work.stock import counts, pars
from bot.work.trials import trial_life, trials

_DRINKS_A_NIGHT = 140  # of average trade
_GARNISHED = (("orange", 0.16), ("grapefruit", 0.09))  # the share of drinks that get this garnish fresh
_SPRAYED = ((book.GRAPEFRUIT_MIST, 0.45), (book.ORANGE_MIST, 0.3))
_COUNTED_NIGHTS = 40  # drinks are logged since then
_FORGOTTEN = 0.08  # the share of nights without a log

# The stock found on a night: ingredient, amount, unit.
_FOUND_NIGHTS_AGO = 25
_FOUND = (
    ("neutral spirit", "1.2", "l"),
    ("propylene glycol", "640", "ml"),
    ("glycerol", "410", "ml"),
    ("grapefruit oil", "64", "ml"),
    ("sweet orange oil", "38", "ml"),
    ("caster sugar", "11.5", "kg"),
    ("fine salt", "700", "g"),
    ("citric acid", "850", "g"),
    ("malic acid", "400", "g"),
    ("cardamom pods", "130", "g"),
)
# Nights ago, ingredient, packs, amount and unit of one, and its price, as in the price list.
_BOUGHT = (
    (19, "neutral spirit", "1", "5", "l", "91.00"),
    (19, "grapefruit oil", "1", "100", "ml", "47.50"),
    (6, "grapefruit oil", "1", "100", "ml", "49.90"),
    (5, "cardamom pods", "1", "100", "g", "6.90"),
)
_PARS = (("neutral spirit", "2", "l"), ("grapefruit oil", "60", "ml"), ("sweet orange oil", "40", "ml"))


def poured(stage: Stage) -> Iterator[Act]:
    """Log at close how many drinks went out, in all and by garnish; some nights it is forgotten."""
    dice = stage.chance("poured")
    for night in range(_COUNTED_NIGHTS - 1, -1, -1):
        day = stage.night(night)
        busy = book.TRADE_BY_WEEKDAY[day.weekday()] * dice.uniform(0.85, 1.15)
        whole = round(_DRINKS_A_NIGHT * busy)
        sprayed = night < book.SPRAY_SINCE
        if dice.random() < _FORGOTTEN:
            continue
        wanted: list[tuple[int, str, str]] = [(whole, "", "")]
        for fruit, share in _GARNISHED:
            fresh = 0.4 if sprayed else 1.0
            wanted.append((round(whole * share * fresh * dice.uniform(0.8, 1.2)), "", fruit))
        for name, share in _SPRAYED if sprayed else ():
            wanted.append((round(whole * share * dice.uniform(0.8, 1.2)), name, ""))
        yield Act(stage.at(day, "25:45"), MEMBER, _pours(stage, wanted))


def _pours(stage: Stage, wanted: list[tuple[int, str, str]]) -> Callable[[Context], object]:
    def does(context: Context) -> None:
        day = context.today
        counted = [
            DrinksDay(day, count, stage.formulas.get(name), stage.ingredients.get(fruit))
            for count, name, fruit in wanted
            if not name or name in stage.formulas  # otherwise not logged yet
        ]
        drinks.log_all(context, counted)

    return does


def shelf(stage: Stage) -> Iterator[Act]:
    """Count the stock once, set pars, and log deliveries; sweet orange oil runs low."""
    for name, amount, unit in _FOUND:
        yield Act(stage.at(_FOUND_NIGHTS_AGO, "15:05"), OWNER, _counts(stage, name, amount, unit))
    for name, amount, unit in _PARS:
        yield Act(stage.at(_FOUND_NIGHTS_AGO, "15:25"), OWNER, _wants(stage, name, amount, unit))
    for night, name, packs, amount, unit, price in _BOUGHT:
        yield Act(stage.at(night, "15:12"), OWNER, _buys(stage, name, packs, amount, unit, price))


def _counts(stage: Stage, name: str, amount: str, unit: str) -> Callable[[Context], object]:
    return lambda context: counts.count(context, stage.ingredients[name], Quantity(Fraction(amount), unit))


def _wants(stage: Stage, name: str, amount: str, unit: str) -> Callable[[Context], object]:
    return lambda context: pars.set_par(context, stage.ingredients[name], Quantity(Fraction(amount), unit))


def _buys(
    stage: Stage, name: str, packs: str, amount: str, unit: str, price: str
) -> Callable[[Context], object]:
    pack = Quantity(Fraction(amount), unit)
    return lambda context: counts.buy(context, stage.ingredients[name], Fraction(packs), pack, Decimal(price))


# -- trials -----------------------------------------------------------------------------------

_ASPECTS = tuple(Aspect)
# The trial led to the version change of this formula.
_CHANGED = next(one.nights_ago for one in book.CHANGES if one.formula == book.GRAPEFRUIT_MIST)
# Scores by member and variant number, in the order of the aspects: 0 is the current formula.
_OLD_SCORES = {
    OWNER: ((3, 3, 3, 2), (4, 4, 4, 2)),
    MANAGER: ((3, 4, 2, 2), (4, 4, 4, 3)),
    MEMBER: ((3, 3, 3, 1), (5, 4, 4, 2)),
}
_NEW_SCORES = {MANAGER: ((3, 3, 3, 2), (3, 4, 3, 3)), MEMBER: ((4, 3, 3, 2), (3, 4, 4, 3))}


def tasted(stage: Stage) -> Iterator[Act]:
    """Taste more oil in the grapefruit mist long ago, and recently another orange mist, blind."""
    night = _CHANGED + 3
    begun: dict[str, int] = {}
    yield Act(
        stage.at(night, "16:00"),
        OWNER,
        _begins(stage, begun, book.GRAPEFRUIT_MIST, "grapefruit oil", "9", blind=False),
    )
    for who, given in _OLD_SCORES.items():
        yield Act(stage.at(night - 1, "17:30"), who, _tastes(begun, book.GRAPEFRUIT_MIST, given))
    yield Act(
        stage.at(night - 1, "18:00"),
        OWNER,
        lambda context: trial_life.close(context, begun[book.GRAPEFRUIT_MIST]),
    )
    yield Act(
        stage.at(2, "16:00"),
        MANAGER,
        _begins(stage, begun, book.ORANGE_MIST, "sweet orange oil", "8", blind=True),
    )
    for who, given in _NEW_SCORES.items():
        yield Act(stage.at(1, "17:30"), who, _tastes(begun, book.ORANGE_MIST, given))


def _begins(
    stage: Stage, begun: dict[str, int], name: str, oil: str, amount: str, *, blind: bool
) -> Callable[[Context], None]:
    def does(context: Context) -> None:
        number = stage.formulas[name]
        line = DraftLine(stage.ingredients[oil], Quantity(Fraction(amount), "ml"))
        draft = formulas.with_line(formulas.draft_of(formulas.get(context, number)), line)
        changed = f"{oil} {amount} ml"
        begun[name] = trial_life.start(context, number, draft.lines, changed, Fraction(20), blind).id

    return does


def _tastes(
    begun: dict[str, int], name: str, given: tuple[tuple[int, ...], ...]
) -> Callable[[Context], None]:
    def does(context: Context) -> None:
        trial = trials.get(context, begun[name])
        for variant in trial.variants:
            scores = dict(zip(_ASPECTS, given[variant.number], strict=True))
            trial_life.score(context, trial.id, variant.code, scores)

    return does


PARTS = (poured, shelf, tasted)
