"""Stock on hand: low stock, shopping in whole packs, and producible formulas.

Amounts are exact, in mL, g or pieces, each ingredient in one measure.
"""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from decimal import Decimal
from fractions import Fraction

from bot.trade.errors import OutOfRangeError
from bot.trade.formulas.amounts import amounts_by_name, scale
from bot.trade.formulas.recipe import ByStock, Recipe

# The search for the cheapest combination of packs stops after this many steps with the best found; two or
# three pack sizes, as bars have, need a fraction of it.
_MOST_TRIES = 20_000


@dataclass(frozen=True, slots=True)
class Pack:
    """A pack on sale: its content and its price (None if unknown). Raises OutOfRangeError."""

    size: Fraction
    price: Decimal | None = None

    def __post_init__(self) -> None:
        if not self.size > 0:
            raise OutOfRangeError("pack", float(self.size), 0, None, "")
        if self.price is not None and not self.price >= 0:
            raise OutOfRangeError("price", float(self.price), 0, None, "")


@dataclass(frozen=True, slots=True)
class ToBuy:
    """One line of a shopping list.

    `short` is the amount missing beyond the stock; `packs` the number of each pack to buy, empty when no pack
    is known; `cost` their price, None when not known; `left_over` their content beyond `short`.
    """

    name: str
    needed: Fraction
    on_hand: Fraction
    short: Fraction
    packs: tuple[tuple[Pack, int], ...]
    cost: Decimal | None
    left_over: Fraction


@dataclass(frozen=True, slots=True)
class Makeable:
    """How much of a formula the stock allows.

    `factor` is the multiple of the formula as written, `finished_ml` its volume (None if unknown), `limiting`
    the ingredient that runs out first (None when none of them was ever counted), `not_counted` the
    ingredients without a known stock, which do not limit.
    """

    name: str
    factor: Fraction
    finished_ml: Fraction | None
    limiting: str | None
    not_counted: tuple[str, ...]


def shopping_list(
    needed: Mapping[str, Fraction],
    on_hand: Mapping[str, Fraction],
    packs: Mapping[str, Sequence[Pack]],
) -> tuple[ToBuy, ...]:
    """Return the whole packs to buy to cover `needed`, beyond the stock on hand.

    An ingredient missing from `on_hand` counts as none. Of several packs it chooses the cheapest combination,
    then the smallest leftover, then the fewest packs; packs without a price only if no pack has one. Raises
    OutOfRangeError for a negative amount.
    """
    found = []
    for name, amount in needed.items():
        there = on_hand.get(name, Fraction(0))
        if not amount >= 0 or not there >= 0:
            raise OutOfRangeError(name, float(min(amount, there)), 0, None, "")
        short = amount - there
        if short > 0:
            chosen = _best_packs(short, packs.get(name, ()))
            cost = _price(chosen) if chosen else None
            held = sum((pack.size * count for pack, count in chosen), Fraction(0))
            left_over = held - short if chosen else Fraction(0)
            found.append(ToBuy(name, amount, there, short, chosen, cost, left_over))
    return tuple(found)


def list_cost(lines: Sequence[ToBuy]) -> tuple[Decimal, tuple[str, ...]]:
    """Return the cost of a shopping list, and the names left out because their price is not known."""
    known = [line.cost for line in lines if line.cost is not None]
    return sum(known, Decimal(0)), tuple(line.name for line in lines if line.cost is None)


def low_stock(on_hand: Mapping[str, Fraction], least: Mapping[str, Fraction]) -> tuple[str, ...]:
    """Return the ingredients below the bar's par, the scarcest first.

    Scarcity is by share of the par; an ingredient missing from `on_hand` counts as none.
    """
    shares = {name: on_hand.get(name, Fraction(0)) / wanted for name, wanted in least.items() if wanted > 0}
    return tuple(sorted((name for name, share in shares.items() if share < 1), key=lambda name: shares[name]))


def what_can_be_made(recipes: Mapping[str, Recipe], on_hand: Mapping[str, Fraction]) -> tuple[Makeable, ...]:
    """Return how much of every formula the stock allows, the largest factor first.

    Raises OutOfRangeError for a negative stock.
    """
    found = []
    for name, recipe in recipes.items():
        wanted = [line.name for line in amounts_by_name(recipe.lines).values() if line.amount]
        if not any(ingredient in on_hand for ingredient in wanted):
            found.append(Makeable(name, Fraction(0), None, None, tuple(wanted)))
            continue
        most = scale(recipe, ByStock(on_hand))
        found.append(Makeable(name, most.factor, most.finished_ml, most.limiting, most.not_counted))
    return tuple(sorted(found, key=lambda one: (-one.factor, one.name)))


def _price(chosen: Sequence[tuple[Pack, int]]) -> Decimal | None:
    prices = [pack.price * count for pack, count in chosen if pack.price is not None]
    return sum(prices, Decimal(0)) if len(prices) == len(chosen) else None


def _best_packs(short: Fraction, packs: Sequence[Pack]) -> tuple[tuple[Pack, int], ...]:
    """Search the combinations from the largest pack down, pruning branches that cannot be the cheapest."""
    priced = [pack for pack in packs if pack.price is not None]
    kinds = sorted(dict.fromkeys(priced or packs), key=lambda pack: pack.size, reverse=True)
    unit_prices = [Fraction(pack.price or 0) / pack.size for pack in kinds]
    best: tuple[tuple[Fraction, Fraction, int], tuple[tuple[Pack, int], ...]] | None = None
    tries = 0

    def try_from(place: int, missing: Fraction, cost: Fraction, chosen: tuple[tuple[Pack, int], ...]) -> None:
        nonlocal best, tries
        tries += 1
        if missing <= 0:
            rank = (cost, -missing, sum(count for _, count in chosen))
            if best is None or rank < best[0]:
                best = rank, chosen
            return
        if place == len(kinds) or (best is not None and tries > _MOST_TRIES):
            return
        if best is not None and cost + missing * min(unit_prices[place:]) > best[0][0]:
            return
        pack = kinds[place]
        full = math.ceil(missing / pack.size)
        fewest = full if place == len(kinds) - 1 else 0  # the smallest pack must cover the rest
        for count in range(full, fewest - 1, -1):
            more = ((pack, count),) if count else ()
            price = Fraction(pack.price or 0) * count
            try_from(place + 1, missing - count * pack.size, cost + price, chosen + more)

    try_from(0, short, Fraction(0), ())
    return best[1] if best else ()
