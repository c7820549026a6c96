"""The rest of peeled fruit, for its reminder."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime
from fractions import Fraction

from sqlalchemy import func

from storage.tables import Ingredient, PeeledFruit, PeeledUse
from storage.unit import Book


@dataclass(frozen=True, slots=True)
class Left:
    """The rest of fruit that was peeled together: the fruit, the pieces, and the time of loss."""

    ingredient_id: int
    name: str
    count: Fraction
    lost_at: datetime


def left_of(book: Book, peeled_id: int) -> Left | None:
    """Return the rest, or None if nothing is left."""
    row = book.get(PeeledFruit, peeled_id)
    if row is None:
        return None
    gone = book.rows(PeeledUse, func.coalesce(func.sum(PeeledUse.count_milli), 0)).where(
        PeeledUse.peeled_id == peeled_id
    )
    left = row.count_milli - int(book.session.scalar(gone) or 0)
    fruit = book.get(Ingredient, row.ingredient_id)
    if left <= 0 or fruit is None:
        return None
    return Left(row.ingredient_id, fruit.name, Fraction(left, 1000), row.lost_at)
