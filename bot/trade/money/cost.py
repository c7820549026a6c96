"""Cost of a batch, cash outlay for its packs, and fresh garnish against spray.

Cost consumed is the share of each pack that goes into the batch; cash outlay is the price of the whole packs
to buy. A missing price is never zero: it is named, and the totals are marked as partial. Money is `Decimal`
with 12 decimals, not rounded to coins.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from decimal import Decimal
from enum import Enum, auto
from fractions import Fraction
from math import ceil
from types import MappingProxyType
from typing import Final

from bot.trade.errors import OutOfRangeError
from bot.trade.formulas.measures import Dimension
from bot.trade.formulas.recipe import Line, Range, above_zero, checked_range, checked_share
from bot.trade.money.money import as_decimal

MoneyRange = tuple[Decimal, Decimal]
"""Money as low and high end, both included."""

_NO_DENSITIES: Final[Mapping[str, Fraction]] = MappingProxyType({})


def _price(quantity: str, price: Decimal) -> Decimal:
    """Return a price unchanged if it is a number and not below zero. Raises OutOfRangeError."""
    if not price.is_finite() or price < 0:
        raise OutOfRangeError(quantity, float(price), 0, None, "")
    return price


@dataclass(frozen=True, slots=True)
class PackPrice:
    """The price and content of one pack: mL, g or pieces, as `dimension` says.

    Raises OutOfRangeError for an empty pack or a price below zero.
    """

    pack_amount: Fraction
    dimension: Dimension
    price: Decimal

    def __post_init__(self) -> None:
        above_zero("pack", self.pack_amount, self.dimension)
        _price("pack price", self.price)


@dataclass(frozen=True, slots=True)
class Vessel:
    """The bottle for the batch: its size in mL and the price of an empty one."""

    size_ml: Fraction
    price: Decimal = Decimal(0)

    def __post_init__(self) -> None:
        above_zero("bottle size", self.size_ml, "mL")
        _price("bottle price", self.price)


@dataclass(frozen=True, slots=True)
class Spraying:
    """Sprays per drink and mL per spray, each a range."""

    sprays_per_drink: Range
    ml_per_spray: Range

    def __post_init__(self) -> None:
        checked_range("sprays per drink", self.sprays_per_drink, "")
        checked_range("volume of a spray", self.ml_per_spray, "mL")


class Unpriced(Enum):
    """Why an ingredient has no cost."""

    NO_PRICE = auto()
    NO_DENSITY = auto()
    OTHER_MEASURE = auto()


@dataclass(frozen=True, slots=True)
class IngredientCost:
    """One ingredient's cost: `consumed` by the batch; whole `packs` to buy and their `outlay`.

    All three are None where `unpriced` says why.
    """

    name: str
    consumed: Decimal | None
    packs: int | None
    outlay: Decimal | None
    unpriced: Unpriced | None = None


@dataclass(frozen=True, slots=True)
class Cost:
    """What a batch costs.

    `consumed` and `outlay` are the sums over the priced ingredients (None if none is priced), `total` is
    consumed plus labour and bottles. `per_ml`, `per_bottle`, `per_spray` and `per_drink` divide the total by
    the usable mL; they are None where an input is missing. `missing` names ingredients without a price,
    `missing_density` those priced by mass but measured by volume (or the other way round) whose density is
    not known, `other_measure` those counted on one side only.
    """

    consumed: Decimal | None
    outlay: Decimal | None
    per_line: tuple[IngredientCost, ...]
    missing: tuple[str, ...]
    missing_density: tuple[str, ...]
    other_measure: tuple[str, ...]
    usable_ml: Fraction | None = None
    total: Decimal | None = None
    per_ml: Decimal | None = None
    per_bottle: Decimal | None = None
    per_spray: MoneyRange | None = None
    per_drink: MoneyRange | None = None

    @property
    def is_partial(self) -> bool:
        """Whether the sums leave out an ingredient."""
        return bool(self.missing or self.missing_density or self.other_measure)


def cost(
    lines: Iterable[Line],
    prices: Mapping[str, PackPrice],
    *,
    densities_g_per_ml: Mapping[str, Fraction] = _NO_DENSITIES,
    finished_ml: Fraction | None = None,
    loss_share: Fraction = Fraction(0),
    labour: Decimal = Decimal(0),
    bottle: Vessel | None = None,
    spraying: Spraying | None = None,
) -> Cost:
    """Return the cost of a batch of these lines.

    Lines of one name are one ingredient, so that its packs are counted once. `finished_ml` is the volume
    made; the share `loss_share` of it never reaches a drink. Without `finished_ml` there is no cost per mL.
    Densities convert between a volume and the mass that is priced.

    Raises OutOfRangeError for a finished volume or density that is not above zero, a loss outside 0 up to 1,
    or labour below zero.
    """
    per_line = tuple(
        _ingredient_cost(name, amounts, prices.get(name), densities_g_per_ml.get(name))
        for name, amounts in _by_name(lines).items()
    )
    kept_share = 1 - checked_share("loss share", loss_share)
    usable_ml = None if finished_ml is None else above_zero("volume", finished_ml, "mL") * kept_share
    consumed = _sum(line.consumed for line in per_line)
    per_ml = total = None
    if consumed is not None:
        total = Fraction(consumed) + Fraction(_price("labour", labour))
        if usable_ml is not None:
            per_ml = total / usable_ml + (Fraction(bottle.price) / bottle.size_ml if bottle else 0)
            total = per_ml * usable_ml
    return Cost(
        consumed=consumed,
        outlay=_sum(line.outlay for line in per_line),
        per_line=per_line,
        missing=_names(per_line, Unpriced.NO_PRICE),
        missing_density=_names(per_line, Unpriced.NO_DENSITY),
        other_measure=_names(per_line, Unpriced.OTHER_MEASURE),
        usable_ml=usable_ml,
        total=None if total is None else as_decimal(total),
        per_ml=None if per_ml is None else as_decimal(per_ml),
        per_bottle=None if per_ml is None or bottle is None else as_decimal(per_ml * bottle.size_ml),
        per_spray=None if spraying is None else _times(per_ml, spraying.ml_per_spray),
        per_drink=None
        if spraying is None
        else _times(per_ml, spraying.ml_per_spray, spraying.sprays_per_drink),
    )


def _by_name(lines: Iterable[Line]) -> dict[str, dict[Dimension, Fraction]]:
    """Return the amount of each ingredient in each measure."""
    sums: dict[str, dict[Dimension, Fraction]] = {}
    for line in lines:
        amounts = sums.setdefault(line.name, {})
        amounts[line.dimension] = amounts.get(line.dimension, Fraction(0)) + line.amount
    return sums


def _ingredient_cost(
    name: str, amounts: Mapping[Dimension, Fraction], price: PackPrice | None, density: Fraction | None
) -> IngredientCost:
    if price is None:
        return IngredientCost(name, None, None, None, Unpriced.NO_PRICE)
    needed = Fraction(0)
    for measured, amount in amounts.items():
        in_packs = _in_measure_of_pack(amount, measured, price.dimension, density)
        if isinstance(in_packs, Unpriced):
            return IngredientCost(name, None, None, None, in_packs)
        needed += in_packs
    share = needed / price.pack_amount
    return IngredientCost(
        name,
        as_decimal(share * Fraction(price.price)),
        ceil(share),
        as_decimal(ceil(share) * Fraction(price.price)),
    )


def _in_measure_of_pack(
    amount: Fraction, measured: Dimension, pack: Dimension, density_g_per_ml: Fraction | None
) -> Fraction | Unpriced:
    if measured is pack:
        return amount
    if Dimension.COUNT in (measured, pack):
        return Unpriced.OTHER_MEASURE
    if density_g_per_ml is None:
        return Unpriced.NO_DENSITY
    above_zero("density", density_g_per_ml, "g/mL")
    return amount * density_g_per_ml if pack is Dimension.MASS else amount / density_g_per_ml


def _names(per_line: Iterable[IngredientCost], why: Unpriced) -> tuple[str, ...]:
    return tuple(line.name for line in per_line if line.unpriced is why)


def _sum(amounts: Iterable[Decimal | None]) -> Decimal | None:
    """Return the exact sum of the known values, or None if there are none."""
    known = [Fraction(amount) for amount in amounts if amount is not None]
    return as_decimal(sum(known, Fraction(0))) if known else None


def _times(per_ml: Fraction | None, *ranges: Range) -> MoneyRange | None:
    if per_ml is None:
        return None
    low = high = per_ml
    for lower, higher in ranges:
        low, high = low * lower, high * higher
    return as_decimal(low), as_decimal(high)


def fresh_per_drink(
    price_each: Decimal, garnishes_each: Fraction, wasted_share: Fraction = Fraction(0)
) -> Decimal:
    """Return the cost of fresh garnish per drink: the price of a piece over the garnishes it yields.

    The share `wasted_share` of the fruit is thrown away unused. Raises OutOfRangeError for a price below
    zero, no garnishes, or a share outside 0 up to 1.
    """
    used = above_zero("garnishes", garnishes_each, "") * (1 - checked_share("wasted share", wasted_share))
    return as_decimal(Fraction(_price("price of a piece", price_each)) / used)


def fresh_to_spray(fresh: Decimal, spray: MoneyRange) -> tuple[Fraction, Fraction]:
    """Return the cost ratio of fresh garnish to spray, per drink, as low and high end.

    Raises OutOfRangeError if the spray costs nothing or its ends are in the wrong order.
    """
    low, high = checked_range("cost of a sprayed drink", (Fraction(spray[0]), Fraction(spray[1])), "")
    each = Fraction(_price("cost of a fresh garnish", fresh))
    return each / high, each / low


def break_even_price_each(
    spray_per_drink: Decimal, garnishes_each: Fraction, wasted_share: Fraction = Fraction(0)
) -> Decimal:
    """Return the price per piece of fruit at which fresh garnish costs as much as the spray.

    Raises as `fresh_per_drink` does.
    """
    used = above_zero("garnishes", garnishes_each, "") * (1 - checked_share("wasted share", wasted_share))
    return as_decimal(Fraction(_price("cost of a sprayed drink", spray_per_drink)) * used)


def break_even_sprays(fresh: Decimal, per_spray: Decimal) -> Fraction:
    """Return how many sprays cost as much as one fresh garnish. Raises OutOfRangeError for a free spray."""
    each = above_zero("cost of a spray", Fraction(_price("cost of a spray", per_spray)), "")
    return Fraction(_price("cost of a fresh garnish", fresh)) / each
