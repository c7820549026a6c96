"""Current and past prices. Price rows are never edited: a correction is a new row."""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Sequence
from dataclasses import dataclass
from datetime import datetime
from decimal import Decimal
from fractions import Fraction

from sqlalchemy import func

from bot.trade.formulas.measures import Dimension, Quantity
from bot.trade.money.cost import PackPrice
from bot.trade.money.money import as_decimal, from_minor, to_minor
from bot.work.context import BarView, Context
from bot.work.errors import BadValueError
from bot.work.formulas.formulas import in_base
from bot.work.standing import Details, Rows, stands
from storage.tables import Price

_MOST_MINOR = 10**12


@dataclass(frozen=True, slots=True)
class PriceView:
    """One price: `pack` as typed and in base units (mL, g or pieces), garnishes per piece of fruit.

    `place` is its position in the order of prices: the highest up to an instant is in force.
    """

    id: int
    place: int
    ingredient_id: int
    pack: Quantity
    pack_amount: Fraction
    dimension: Dimension
    price: Decimal
    garnishes: tuple[Fraction, Fraction] | None
    at: datetime
    tax_factor: Fraction = Fraction(1)

    @property
    def pack_price(self) -> PackPrice:
        """The price for the trade rules, with the bar's tax added or removed."""
        counted = self.price if self.tax_factor == 1 else as_decimal(Fraction(self.price) * self.tax_factor)
        return PackPrice(self.pack_amount, self.dimension, counted)

    @property
    def per_base(self) -> Fraction:
        """The exact price of one mL, one g or one piece, with the bar's tax added or removed."""
        return self.typed_per_base * self.tax_factor

    @property
    def typed_per_base(self) -> Fraction:
        """The same from the price as entered."""
        return Fraction(self.price) / self.pack_amount


def tax_factor(bar: BarView) -> Fraction:
    """Return the factor for an entered price, so that the bar counts it with or without tax."""
    with_tax = 1 + Fraction(bar.settings.tax_percent) / 100
    return {"added": with_tax, "taken out": 1 / with_tax}.get(bar.settings.tax, Fraction(1))


def set_price(
    context: Context,
    ingredient_id: int,
    pack: Quantity,
    price: Decimal,
    garnishes: tuple[Fraction, Fraction] | None = None,
) -> PriceView:
    """Set the price of a pack from now on.

    The garnishes per piece of fruit default to those of the last price. Raises BadValueError for an empty
    pack or a price below zero.
    """
    price_view = write(context, ingredient_id, pack, price, garnishes)
    context.log("price", price=price_view.id, ingredient=ingredient_id)
    return price_view


def write(
    context: Context,
    ingredient_id: int,
    pack: Quantity,
    price: Decimal,
    garnishes: tuple[Fraction, Fraction] | None = None,
) -> PriceView:
    """Do the same without its own log line, as part of another entry."""
    amount, _dimension = in_base(context.bar, pack)
    if amount <= 0:
        raise BadValueError("pack", str(float(pack.number)))
    minor = to_minor(price, context.bar.currency)
    if not 0 <= minor <= _MOST_MINOR:
        raise BadValueError("price", str(price))
    if garnishes is None:
        before = in_force(context, [ingredient_id]).get(ingredient_id)
        garnishes = before.garnishes if before is not None else None
    row = context.add(
        Price(
            ingredient_id=ingredient_id,
            pack_amount=pack.number,
            pack_unit=pack.unit,
            price_minor=minor,
            garnishes_low=garnishes[0] if garnishes else None,
            garnishes_high=garnishes[1] if garnishes else None,
            at=context.now,
            by=context.person_id,
        )
    )
    context.book.touched()
    return _view(context, row)


def _view(context: Context, row: Price) -> PriceView:
    pack = Quantity(row.pack_amount, row.pack_unit)
    amount, dimension = in_base(context.bar, pack)
    garnishes = None
    if row.garnishes_low is not None:
        garnishes = row.garnishes_low, row.garnishes_high or row.garnishes_low
    price = from_minor(row.price_minor, context.bar.currency)
    return PriceView(
        row.id,
        row.first,
        row.ingredient_id,
        pack,
        amount,
        dimension,
        price,
        garnishes,
        row.at,
        tax_factor(context.bar),
    )


def logged_in(context: Context, details: Details) -> PriceView | None:
    """Return the price of a log entry; None if the entry has no number."""
    row = context.book.get(Price, details.get("price", 0))
    return None if row is None else _view(context, row)


def in_force(
    context: Context, ingredient_ids: Sequence[int] | None = None, at: datetime | None = None
) -> dict[int, PriceView]:
    """Return the valid price of each ingredient, now or at an earlier instant.

    An undone price never counts; a correction replaces the corrected price.
    """
    if at is not None:
        return _read_in_force(context, ingredient_ids, at)
    key = ("prices", None if ingredient_ids is None else tuple(sorted(set(ingredient_ids))))
    return context.book.remembered(
        context.bar.revision, key, lambda: _read_in_force(context, ingredient_ids, None)
    )


def _read_in_force(
    context: Context, ingredient_ids: Sequence[int] | None, at: datetime | None
) -> dict[int, PriceView]:
    newest = (
        context.book.rows(Price, func.max(Price.first)).where(stands(Price)).group_by(Price.ingredient_id)
    )
    if ingredient_ids is not None:
        newest = newest.where(Price.ingredient_id.in_(ingredient_ids))
    if at is not None:
        newest = newest.where(Price.at <= at)
    rows = context.book.all(Price, stands(Price), Price.first.in_(newest.scalar_subquery()))
    return {row.ingredient_id: _view(context, row) for row in rows}


def history(context: Context, ingredient_id: int) -> list[PriceView]:
    """Return every price of an ingredient that was valid, oldest first."""
    rows = context.book.all(Price, Price.ingredient_id == ingredient_id, stands(Price), order=Price.first)
    return [_view(context, row) for row in rows]


def case_of(context: Context, ingredient_id: int) -> Quantity | None:
    """Return the pack of the last price that was for more than one piece or unit of mass, or None."""
    packs = [
        one.pack
        for one in history(context, ingredient_id)
        if one.dimension is not Dimension.VOLUME and one.pack.number != 1
    ]
    return packs[-1] if packs else None


class Course:
    """The prices of one ingredient over time, for many instants in one query."""

    def __init__(self, known: Sequence[PriceView]) -> None:
        self._known: list[PriceView] = []
        newest: PriceView | None = None
        for one in sorted(known, key=lambda view: view.at):
            newest = one if newest is None or one.place > newest.place else newest
            self._known.append(newest)
        self._instants = sorted(one.at for one in known)

    def at(self, instant: datetime) -> PriceView | None:
        """Return the valid price at an instant: the last entered of those up to then."""
        count = bisect_right(self._instants, instant)
        return self._known[count - 1] if count else None


def course(context: Context, ingredient_id: int) -> Course:
    """Return the prices of an ingredient over time."""
    return Course(history(context, ingredient_id))


def _touch(context: Context, row: Price) -> None:
    context.book.touched()


ROWS = Rows(Price, "price", _touch, _touch)  # a restored price takes its position among the others
