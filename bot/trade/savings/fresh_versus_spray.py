"""Compare fresh garnish with spray: cost per drink, week and year, and break-even points.

Money is in the bar's currency, times in minutes, volumes in mL. A year is the weeks that the bar is open.
Money and time are never one sum: an hour saved is paid all the same. Every answer is computed exactly for the
likely inputs and for the ends of its range; only the usual range is simulated.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from decimal import Decimal
from fractions import Fraction

from bot.trade.errors import OutOfRangeError
from bot.trade.numbers.ranges import Range
from bot.trade.numbers.uncertainty import (
    Estimate,
    Figure,
    Swing,
    draws,
    likely_values,
    swings,
    to_decimal,
    usual_range,
)
from bot.trade.words import N_

# The label of each input, by its field name.
INPUT_NAMES: dict[str, str] = {
    "fruit_price": N_("price of a fruit"),
    "garnishes_per_fruit": N_("garnishes from a fruit"),
    "waste_share": N_("fruit wasted"),
    "kept_share": N_("flesh juiced or used"),
    "peel_minutes": N_("minutes to cut a garnish"),
    "ingredients_cost": N_("ingredients of a batch"),
    "batch_minutes": N_("minutes to make a batch"),
    "bottle_cost": N_("bottle"),
    "label_cost": N_("label"),
    "loss_share": N_("spray lost"),
    "ml_per_spray": N_("ml a spray"),
    "sprays_per_drink": N_("sprays a drink"),
    "drinks_per_week": N_("drinks a week"),
}

_FRESH_INPUTS = ("fruit_price", "garnishes_per_fruit", "waste_share", "kept_share", "peel_minutes")
_SPRAY_INPUTS = (
    "ingredients_cost",
    "batch_minutes",
    "bottle_cost",
    "label_cost",
    "loss_share",
    "ml_per_spray",
    "sprays_per_drink",
)
_HOUSE_INPUTS = ("drinks_per_week",)
# The inputs that make their side cheaper as they grow.
_FALLING = {"garnishes_per_fruit", "kept_share"}


_NOTHING = Estimate.exactly(0)


@dataclass(frozen=True, slots=True)
class Fresh:
    """The fresh garnish: price of a fruit, garnishes from one, and share (0 to 1) wasted as logged.

    `peel_minutes` is the extra time of cutting one over spraying. `kept_share` is the share of the peeled
    fruit whose flesh is juiced or used: fresh fruit is credited with it, because it would be bought anyway.
    """

    fruit_price: Estimate
    garnishes_per_fruit: Estimate
    waste_share: Estimate
    peel_minutes: Estimate
    kept_share: Estimate = _NOTHING


@dataclass(frozen=True, slots=True)
class Spray:
    """One batch of the spray and its use.

    `ingredients_cost` is the batch as consumed; `bottle_cost` and `label_cost` are for each bottle filled (0
    for a refilled bottle); `loss_share` is the share that never reaches a drink: priming, the last of the
    bottle. `shelf_weeks` is how long the batch may be used before it expires; None when it is always used up.
    """

    ingredients_cost: Estimate
    batch_minutes: Estimate
    bottle_cost: Estimate
    label_cost: Estimate
    loss_share: Estimate
    ml_per_spray: Estimate
    sprays_per_drink: Estimate
    batch_ml: Decimal
    bottle_ml: Decimal
    shelf_weeks: Decimal | None = None


@dataclass(frozen=True, slots=True)
class House:
    """The bar: drinks a week with this garnish, weeks open a year, and the one-off outlay."""

    drinks_per_week: Estimate
    weeks_per_year: Decimal = Decimal(52)
    outlay: Decimal = Decimal(0)


@dataclass(frozen=True, slots=True)
class Answer:
    """One result: for the likely inputs, over the full range of inputs, and in the usual range.

    `whole` is exact. `usual` holds nine in ten of the simulated draws.
    """

    likely: Decimal
    whole: Range[Decimal]
    usual: Range[float]


@dataclass(frozen=True, slots=True)
class Costs:
    """A sum of money per drink, week and year."""

    per_drink: Answer
    per_week: Answer
    per_year: Answer


@dataclass(frozen=True, slots=True)
class Payback:
    """Weeks until the outlay is earned back; None if never."""

    likely: Decimal | None
    soonest: Decimal | None
    latest: Decimal | None


@dataclass(frozen=True, slots=True)
class BreakEvens:
    """Break-even points of fresh and spray, the other inputs at their likely values.

    `fruit_price`: below it, fresh is cheaper.
    `sprays_per_drink`: above it, fresh is cheaper; None when fresh is cheaper even with a single drop.
    `drinks_per_week`: below it a batch expires before it has paid off; None when no number does, or when the
    spray has no discard date. `drinks_until_paid`: drinks that earn the outlay; None when spray is not
    cheaper.
    """

    fruit_price: Decimal
    sprays_per_drink: Decimal | None
    drinks_per_week: Decimal | None
    drinks_until_paid: Decimal | None


@dataclass(frozen=True, slots=True)
class FreshAgainstSpray:
    """The whole comparison.

    `saving` is fresh less spray in money, `minutes` the time saved a week, `times_cheaper` fresh over spray
    per drink; `spray_cheaper_share` the share (0 to 1) of the simulated draws in which the spray is the
    cheaper. `swings` is the effect of each input alone on the weekly saving, the largest first.
    """

    fresh: Costs
    spray: Costs
    saving: Costs
    minutes: Answer
    times_cheaper: Answer
    spray_cheaper_share: float
    payback_weeks: Payback
    swings: tuple[Swing, ...]
    break_evens: BreakEvens

    @property
    def matter_most(self) -> tuple[str, ...]:
        """The field names of the (at most two) inputs with the largest effect on the weekly saving."""
        return tuple(swing.name for swing in self.swings[:2])


def compare(fresh: Fresh, spray: Spray, house: House, count: int = 4000, seed: int = 1) -> FreshAgainstSpray:
    """Return the comparison of fresh and spray for this bar.

    `count` draws with this `seed` give the usual ranges. Raises OutOfRangeError for an impossible input: a
    negative price, no garnishes, everything wasted.
    """
    _check(fresh, spray, house)
    model = _Model(fresh, spray, house)
    if model.batch_cost({name: estimate.low for name, estimate in model.estimates.items()}) == 0:
        raise OutOfRangeError("batch cost", 0, 0, None, "")  # the ratio to a free spray is undefined
    likely = model.results(likely_values(model.estimates))
    corners = model.corners()
    drawn = draws(model.results, model.estimates, count, seed)

    def answer(place: int, times: Decimal = Decimal(1)) -> Answer:
        whole = Range.around(*(to_decimal(end(row[place] for row in corners)) for end in (min, max)))
        usual = usual_range([row[place] for row in drawn])
        return Answer(to_decimal(likely[place]) * times, whole * times, usual * float(times))

    def costs(place: int) -> Costs:
        return Costs(answer(place), answer(place + 1), answer(place + 1, house.weeks_per_year))

    saving = costs(_SAVING)
    return FreshAgainstSpray(
        fresh=costs(_FRESH),
        spray=costs(_SPRAY),
        saving=saving,
        minutes=answer(_MINUTES),
        times_cheaper=answer(_TIMES),
        spray_cheaper_share=sum(row[_SAVING] > 0 for row in drawn) / len(drawn),
        payback_weeks=_payback(house.outlay, saving.per_week),
        swings=swings(lambda values: model.results(values)[_SAVING + 1], model.estimates),
        break_evens=_break_evens(model, house),
    )


# Indices into the results of the model; the weekly value follows the one per drink.
_FRESH, _SPRAY, _SAVING, _TIMES, _MINUTES = 0, 2, 4, 6, 7


@dataclass(frozen=True, slots=True)
class _Model:
    fresh: Fresh
    spray: Spray
    house: House

    @property
    def estimates(self) -> dict[str, Estimate]:
        found = {name: getattr(self.fresh, name) for name in _FRESH_INPUTS}
        found |= {name: getattr(self.spray, name) for name in _SPRAY_INPUTS}
        return found | {name: getattr(self.house, name) for name in _HOUSE_INPUTS}

    def results(self, values: Mapping[str, Figure]) -> tuple[Figure, ...]:
        """Fresh, spray and their difference, each per drink and week; their ratio; minutes saved a week."""
        fresh, spray, drinks = _fresh_cost(values), self.spray_cost(values), values["drinks_per_week"]
        saving = fresh - spray
        minutes = (values["peel_minutes"] - values["batch_minutes"] / self.drinks_served(values)) * drinks
        return fresh, fresh * drinks, spray, spray * drinks, saving, saving * drinks, fresh / spray, minutes

    def spray_cost(self, values: Mapping[str, Figure]) -> Figure:
        """The cost of one drink: the batch over the drinks served from it."""
        return self.batch_cost(values) / self.drinks_served(values)

    def drinks_served(self, values: Mapping[str, Figure]) -> Figure:
        """The drinks served from a batch before it is empty or expires."""
        drinks = self.drinks_in_batch(values)
        if self.spray.shelf_weeks is None:
            return drinks
        return min(drinks, values["drinks_per_week"] * _like(self.spray.shelf_weeks, drinks))

    def batch_cost(self, values: Mapping[str, Figure]) -> Figure:
        bottles = _like(self.spray.batch_ml / self.spray.bottle_ml, values["bottle_cost"])
        return values["ingredients_cost"] + bottles * (values["bottle_cost"] + values["label_cost"])

    def drinks_in_batch(self, values: Mapping[str, Figure]) -> Figure:
        poured_ml = _like(self.spray.batch_ml, values["loss_share"]) * (1 - values["loss_share"])
        return poured_ml / (values["ml_per_spray"] * values["sprays_per_drink"])

    def corners(self) -> list[tuple[Fraction, ...]]:
        """The input combinations at which a result can be lowest or highest.

        Each result is monotonic in every input, so its ends are where fresh is dearest and spray cheapest, or
        the reverse, with the drinks at one of their ends. One exception: the weekly saving can be highest
        exactly where the batch is used up as it expires.
        """
        estimates = self.estimates
        found = []
        for fresh_dear in (True, False):
            corner = {
                name: _dear(name, estimates[name], fresh_dear if name in _FRESH_INPUTS else not fresh_dear)
                for name in (*_FRESH_INPUTS, *_SPRAY_INPUTS)
            }
            drinks = estimates["drinks_per_week"]
            tried = {drinks.low, drinks.high}
            if self.spray.shelf_weeks is not None:
                used_up = self.drinks_in_batch(corner) / Fraction(self.spray.shelf_weeks)
                tried.add(min(max(used_up, drinks.low), drinks.high))
            found += [self.results({**corner, "drinks_per_week": number}) for number in tried]
        return found


def _fresh_cost(values: Mapping[str, Figure]) -> Figure:
    """The cost of one drink: the fruit, less the flesh of use, over the garnishes that reach a glass."""
    good = values["garnishes_per_fruit"] * (1 - values["waste_share"])
    return values["fruit_price"] * (1 - values["kept_share"]) / good


def _like(value: Decimal, other: Figure) -> Figure:
    """Return `value` in the number type of `other`."""
    return type(other)(value)


def _dear(name: str, estimate: Estimate, dear: bool) -> Fraction:
    return estimate.low if dear is (name in _FALLING) else estimate.high


def _payback(outlay: Decimal, weekly: Answer) -> Payback:
    def weeks(saved: Decimal) -> Decimal | None:
        if outlay == 0:
            return Decimal(0)
        return outlay / saved if saved > 0 else None

    return Payback(weeks(weekly.likely), weeks(weekly.whole.high), weeks(weekly.whole.low))


def _break_evens(model: _Model, house: House) -> BreakEvens:
    values = likely_values(model.estimates)
    fresh, spray = _fresh_cost(values), model.spray_cost(values)
    price = spray / _fresh_cost({**values, "fruit_price": Fraction(1)})
    unlimited = model.batch_cost(values) / model.drinks_in_batch(values)
    sprays = fresh / (unlimited / values["sprays_per_drink"])
    weekly: Fraction | None = None
    if model.spray.shelf_weeks is not None:
        shelf = Fraction(model.spray.shelf_weeks)
        # At this rate of use, the batch costs as much per week as the fresh garnish.
        if fresh > 0 and fresh >= unlimited:
            weekly = model.batch_cost(values) / shelf / fresh
        if model.batch_cost(values) / shelf > fresh * values["drinks_per_week"]:
            sprays = Fraction(0)  # the expired part costs more than the fresh garnish, at any rate of use
    return BreakEvens(
        to_decimal(price),
        to_decimal(sprays) if sprays > 0 else None,
        None if weekly is None else to_decimal(weekly),
        to_decimal(Fraction(house.outlay) / (fresh - spray)) if fresh > spray else None,
    )


def _check(fresh: Fresh, spray: Spray, house: House) -> None:
    costs = (
        ("fruit price", fresh.fruit_price),
        ("peel minutes", fresh.peel_minutes),
        ("ingredients cost", spray.ingredients_cost),
        ("batch minutes", spray.batch_minutes),
        ("bottle cost", spray.bottle_cost),
        ("label cost", spray.label_cost),
    )
    for name, estimate in costs:
        _within(name, estimate, positive=False)
    shares = (("waste", fresh.waste_share), ("kept", fresh.kept_share), ("loss", spray.loss_share))
    for name, estimate in shares:
        _within(name, estimate, positive=False, below=1)
    counts = (
        ("garnishes per fruit", fresh.garnishes_per_fruit),
        ("mL per spray", spray.ml_per_spray),
        ("sprays per drink", spray.sprays_per_drink),
        ("drinks per week", house.drinks_per_week),
        ("batch", Estimate.exactly(spray.batch_ml)),
        ("bottle", Estimate.exactly(spray.bottle_ml)),
        ("weeks per year", Estimate.exactly(house.weeks_per_year)),
    )
    for name, estimate in counts:
        _within(name, estimate, positive=True)
    _within("outlay", Estimate.exactly(house.outlay), positive=False)
    if spray.shelf_weeks is not None:
        _within("shelf life", Estimate.exactly(spray.shelf_weeks), positive=True)


def _within(name: str, estimate: Estimate, positive: bool, below: int | None = None) -> None:
    low, high = estimate.low, estimate.high
    if low < 0 or (positive and low == 0) or (below is not None and high >= below):
        raise OutOfRangeError(name, float(low if low <= 0 else high), 0, below, "")
