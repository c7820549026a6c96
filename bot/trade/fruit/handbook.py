"""Reference data on citrus fruit: mass by size, refuse, and expected juice.

Masses in grams, volumes in mL at 20 °C. The published numbers are those of USDA National Nutrient Database,
release 28 (bot.trade.fruit.usda_table). Its portions are the edible part, so fruit as purchased weighs more:
grams / (1 - refuse).
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date
from decimal import Decimal
from enum import StrEnum

from bot.trade.errors import OutOfRangeError, TradeError
from bot.trade.fruit.usda_table import FOODS, PORTIONS, Portion
from bot.trade.numbers.ranges import Range
from bot.trade.sources import HowKnown, Source
from bot.trade.words import N_

SR28 = Source(N_("USDA National Nutrient Database, release 28 (2015)"), HowKnown.READ, date(2026, 11, 25))

# One US cup in mL, exact: 231 cubic inches to the gallon, 25.4 mm to the inch.
CUP_ML = Decimal("236.5882365")

# The weight of the published yield, in fruit, when mixed with a bar's own. Common practice, no source: about
# as many as the database squeezed for the lime.
PUBLISHED_WEIGHT_FRUIT = 12
# From this share of the weight on, the answer counts as the bar's own.
OWN_SHARE = Decimal("0.75")


@dataclass
class UnknownFruitError(TradeError):
    """No fruit of this `key` is in the handbook; `known` lists those that are."""

    key: str
    known: tuple[str, ...]


@dataclass
class UnknownFruitSizeError(TradeError):
    """`fruit` has no published `size`; `known` lists the sizes it has."""

    fruit: str
    size: str
    known: tuple[str, ...]


class YieldBasis(StrEnum):
    """The source of an expected yield."""

    PUBLISHED = "published"
    LIKE_FRUIT = "estimated from a like fruit"
    MIXED = "published and measured here"
    MEASURED = "measured here"


@dataclass(frozen=True, slots=True)
class FruitSize:
    """One published size: its edible part and the whole fruit as purchased, both in grams."""

    name: str
    portion: str
    edible_g: Decimal
    as_purchased_g: Decimal


@dataclass(frozen=True, slots=True)
class Fruit:
    """One fruit of the handbook; `refuse_share` is the share of its mass, 0 to 1, that is refuse."""

    key: str
    name: str
    ndb_number: str
    refuse_share: Decimal
    sizes: tuple[FruitSize, ...]
    usual_size: str
    source: Source = SR28

    def size(self, name: str | None = None) -> FruitSize:
        """Return the size called `name`, or the usual one.

        Raises UnknownFruitSizeError.
        """
        wanted = name or self.usual_size
        for size in self.sizes:
            if size.name == wanted:
                return size
        raise UnknownFruitSizeError(self.key, wanted, tuple(size.name for size in self.sizes))


@dataclass(frozen=True, slots=True)
class JuiceYield:
    """Juice of one fruit: mean and spread (one standard deviation) in mL, and its source."""

    mean_ml: Decimal
    spread_ml: Decimal
    basis: YieldBasis
    source: Source


@dataclass(frozen=True, slots=True)
class Squeezed:
    """One measurement by the bar: the number of fruit and the mL they gave."""

    count: Decimal
    volume_ml: Decimal


@dataclass(frozen=True, slots=True)
class ExpectedJuice:
    """Juice to expect: the likely volume and the range that holds about two times in three, in mL.

    `own_count` is the number of fruit the bar has measured, `own_share` the weight (0 to 1) of those
    measurements in the answer.
    """

    volume_ml: Decimal
    range_ml: Range[Decimal]
    per_fruit_ml: Decimal
    basis: YieldBasis
    own_count: Decimal
    own_share: Decimal
    source: Source


def portion(ndb_number: str, name: str) -> Portion:
    """Return the published portion of a food, by its database number and the portion's wording.

    Raises KeyError when there is none.
    """
    for row in PORTIONS:
        if row.ndb_number == ndb_number and row.portion == name:
            return row
    raise KeyError((ndb_number, name))


def refuse_share(ndb_number: str) -> Decimal:
    """Return the refuse of a food as purchased, as a share from 0 to 1."""
    return FOODS[ndb_number].refuse_percent / 100


def as_purchased_g(ndb_number: str, edible_g: Decimal) -> Decimal:
    """Return the mass as purchased, in grams, that holds `edible_g` of edible part."""
    return edible_g / (1 - refuse_share(ndb_number))


def _fruit(key: str, name: str, ndb_number: str, usual: str, sizes: dict[str, str]) -> Fruit:
    found = []
    for size_name, wording in sizes.items():
        row = portion(ndb_number, wording)
        edible = row.grams / row.amount  # the grapefruit row is for half a fruit
        found.append(FruitSize(size_name, wording, edible, as_purchased_g(ndb_number, edible)))
    return Fruit(key, name, ndb_number, refuse_share(ndb_number), tuple(found), usual)


FRUIT: dict[str, Fruit] = {
    fruit.key: fruit
    for fruit in (
        _fruit(
            "orange",
            N_("orange"),
            "09200",
            "medium",
            {
                "small": 'small (2-3/8" dia)',
                "medium": 'fruit (2-5/8" dia)',
                "large": 'large (3-1/16" dia)',
            },
        ),
        _fruit("navel", N_("navel orange"), "09202", "medium", {"medium": 'fruit (2-7/8" dia)'}),
        _fruit("valencia", N_("Valencia orange"), "09201", "medium", {"medium": 'fruit (2-5/8" dia)'}),
        _fruit(
            "florida",
            N_("Florida orange"),
            "09203",
            "medium",
            {"medium": 'fruit (2-5/8" dia)', "large": 'fruit (2-11/16" dia)'},
        ),
        _fruit(
            "lemon",
            N_("lemon"),
            "09150",
            "medium",
            {"medium": 'fruit (2-1/8" dia)', "large": 'fruit (2-3/8" dia)'},
        ),
        _fruit("lime", N_("lime"), "09159", "medium", {"medium": 'fruit (2" dia)'}),
        _fruit(
            "grapefruit",
            N_("grapefruit"),
            "09111",
            "medium",
            {
                "small": 'small (approx 3-1/2" dia)',
                "medium": 'medium (approx 4" dia)',
                "large": 'large (approx 4-1/2" dia)',
            },
        ),
        _fruit(
            "mandarin",
            N_("mandarin"),
            "09218",
            "medium",
            {
                "small": 'small (2-1/4" dia)',
                "medium": 'medium (2-1/2" dia)',
                "large": 'large (2-3/4" dia)',
            },
        ),
    )
}

# Fruit with a published juice yield: number of the juice, and the wording of its yield row.
_YIELD_ROWS = {
    "orange": ("09206", "fruit yields"),
    "lemon": ("09152", "lemon yields"),
    "lime": ("09160", "lime yields"),
    "grapefruit": ("09128", "fruit yields"),
}
# The size assumed for the published yield where it is not the usual one. The database does not state it; a
# food-service size table (lemons of 158 g and 130 g, both seen) gives 43 and 36 mL a lemon, which fits 46.5
# mL from the larger published lemon and not from the smaller.
_YIELD_SIZES = {"lemon": "large"}
# Fruit without a published juice yield, and the similar fruit whose juice share of the purchased mass
# applies.
_LIKE = {"navel": "orange", "valencia": "orange", "florida": "orange", "mandarin": "orange"}


def find_fruit(key: str) -> Fruit:
    """Return the fruit of that key (its plain English singular, as in FRUIT).

    Raises UnknownFruitError.
    """
    if key not in FRUIT:
        raise UnknownFruitError(key, tuple(FRUIT))
    return FRUIT[key]


def mass_from_count(key: str, count: Decimal, size: str | None = None) -> Decimal:
    """Return the mass as purchased, in grams, of `count` whole fruit.

    Raises UnknownFruitError, UnknownFruitSizeError, OutOfRangeError.
    """
    return _not_negative("count", count, "fruit") * find_fruit(key).size(size).as_purchased_g


def juice_density(key: str) -> Decimal:
    """Return the density of the raw juice in g/mL: the published cup over 236.588 mL.

    Fruit without a published juice use the orange's. Raises UnknownFruitError.
    """
    find_fruit(key)
    number, _ = _YIELD_ROWS[_LIKE.get(key, key)]
    return portion(number, "cup").grams / CUP_ML


def published_yield(key: str, size: str | None = None) -> JuiceYield:
    """Return the juice of one fruit by the published yields, in mL.

    The database gives one yield per fruit without its size; without `size` the answer is that yield. A named
    size scales it by mass, and a fruit without a yield uses the orange's share of the mass as purchased; both
    are marked as estimated. Only the lime has a published spread (11.0 of 44 g, 12 fruit); the others use it
    in proportion. Raises UnknownFruitError, UnknownFruitSizeError.
    """
    fruit = find_fruit(key)
    base = _LIKE.get(key, key)
    number, wording = _YIELD_ROWS[base]
    mean_ml = portion(number, wording).grams / juice_density(base)
    basis = YieldBasis.PUBLISHED
    if size is not None or base != key:
        like = FRUIT[base].size(_YIELD_SIZES.get(base))
        chosen = fruit.size(size)
        mean_ml *= chosen.as_purchased_g / like.as_purchased_g
        basis = YieldBasis.PUBLISHED if chosen == like else YieldBasis.LIKE_FRUIT
    return JuiceYield(mean_ml, mean_ml * _lime_spread(), basis, SR28)


def expected_juice(
    key: str, count: Decimal, measured: Sequence[Squeezed] = (), size: str | None = None
) -> ExpectedJuice:
    """Return the juice to expect from `count` peeled fruit, in mL.

    The published yield weighs as much as twelve fruit; the bar's own measurements weigh by their number of
    fruit, so they take over as they grow. The spread is between whole measurements and does not shrink with
    `count`, because the fruit of one delivery are alike. Raises UnknownFruitError, UnknownFruitSizeError,
    OutOfRangeError.
    """
    _not_negative("count", count, "fruit")
    published = published_yield(key, size)
    for one in measured:
        _positive("count", one.count, "fruit")
        _not_negative("volume", one.volume_ml, "mL")
    own_count = sum((one.count for one in measured), Decimal(0))
    if own_count == 0:
        return _expected(count, published, Decimal(0), Decimal(0))
    own_mean = sum((one.volume_ml for one in measured), Decimal(0)) / own_count
    weight = own_count / (own_count + PUBLISHED_WEIGHT_FRUIT)
    mean = weight * own_mean + (1 - weight) * published.mean_ml
    spread = published.spread_ml * mean / published.mean_ml
    if len(measured) > 1:
        spread = weight * _spread_between(measured, own_mean) + (1 - weight) * spread
    basis = YieldBasis.MEASURED if weight >= OWN_SHARE else YieldBasis.MIXED
    return _expected(count, JuiceYield(mean, spread, basis, published.source), own_count, weight)


def price_per_fruit(key: str, price_per_kg: Decimal, size: str | None = None) -> Decimal:
    """Return the price of one fruit bought by mass, in the currency of `price_per_kg`; not rounded.

    Uses the mass as purchased: pricing the edible part would leave out the quarter to half that is peel.
    Raises UnknownFruitError, UnknownFruitSizeError, OutOfRangeError.
    """
    price = _not_negative("price", price_per_kg, "per kg")
    return price * find_fruit(key).size(size).as_purchased_g / 1000


def _expected(count: Decimal, one: JuiceYield, own_count: Decimal, own_share: Decimal) -> ExpectedJuice:
    low = max(Decimal(0), one.mean_ml - one.spread_ml)
    high = one.mean_ml + one.spread_ml
    return ExpectedJuice(
        count * one.mean_ml,
        Range(count * low, count * high),
        one.mean_ml,
        one.basis,
        own_count,
        own_share,
        one.source,
    )


def _lime_spread() -> Decimal:
    row = portion(*_YIELD_ROWS["lime"])
    return (row.grams_sd or Decimal(0)) / row.grams


def _spread_between(measured: Sequence[Squeezed], mean_ml: Decimal) -> Decimal:
    # Standard deviation of the means of the measurements, weighted by number of fruit.
    count = sum((one.count for one in measured), Decimal(0))
    squares = sum((one.count * (one.volume_ml / one.count - mean_ml) ** 2 for one in measured), Decimal(0))
    return (squares / count * len(measured) / (len(measured) - 1)).sqrt()


def _not_negative(quantity: str, value: Decimal, unit: str) -> Decimal:
    if not value >= 0:
        raise OutOfRangeError(quantity, float(value), 0, None, unit)
    return value


def _positive(quantity: str, value: Decimal, unit: str) -> Decimal:
    if not value > 0:
        raise OutOfRangeError(quantity, float(value), 0, None, unit)
    return value
