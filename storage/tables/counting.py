"""Tables of quantities: prices, waste, deliveries, stock, peeled fruit and juice, drinks."""

from __future__ import annotations

from datetime import date, datetime
from fractions import Fraction

from sqlalchemy import ForeignKeyConstraint, Index, String, UniqueConstraint, false
from sqlalchemy.orm import Mapped, mapped_column

from storage.tables.base import Correctable, InBar, Numbered


class Price(Correctable):
    """The price of a pack. A correction is a new row that points to the old one."""

    __tablename__ = "price"
    __table_args__ = (
        ForeignKeyConstraint(["bar_id", "ingredient_id"], ["ingredient.bar_id", "ingredient.id"]),
        Index(None, "bar_id", "ingredient_id", "id"),
    )

    ingredient_id: Mapped[int]
    pack_amount: Mapped[Fraction]
    pack_unit: Mapped[str] = mapped_column(String(40))
    price_minor: Mapped[int]
    garnishes_low: Mapped[Fraction | None]
    garnishes_high: Mapped[Fraction | None]
    at: Mapped[datetime]
    by: Mapped[int]
    void: Mapped[bool] = mapped_column(default=False)  # true: the corrected row is void


class Waste(Correctable):
    """Something thrown out, by pieces, mass or volume. An undo is a row with the opposite signs."""

    __tablename__ = "waste"
    __table_args__ = (
        ForeignKeyConstraint(["bar_id", "ingredient_id"], ["ingredient.bar_id", "ingredient.id"]),
        UniqueConstraint("bar_id", "source", "line"),
        Index(None, "bar_id", "business_day"),
    )

    ingredient_id: Mapped[int]
    # Thousandths as integers, so that the database adds them up exactly.
    count_milli: Mapped[int | None]
    grams_milli: Mapped[int | None]
    volume_milli: Mapped[int | None]
    reason: Mapped[str] = mapped_column(String(40))
    business_day: Mapped[date]
    cost_minor: Mapped[int | None]
    price_id: Mapped[int | None]
    at: Mapped[datetime]
    by: Mapped[int]
    source: Mapped[str] = mapped_column(String(80))
    line: Mapped[int]
    late: Mapped[bool] = mapped_column(default=False, server_default=false())  # in the late shift

    @property
    def amount_milli(self) -> int:
        """Thousandths of pieces, grams or mL, whichever was said."""
        said = (self.count_milli, self.grams_milli, self.volume_milli)
        return next((one for one in said if one is not None), 0)


class Delivery(Correctable):
    """A delivery. An undo is a row with the opposite signs that points to the first."""

    __tablename__ = "delivery"
    __table_args__ = (
        ForeignKeyConstraint(["bar_id", "ingredient_id"], ["ingredient.bar_id", "ingredient.id"]),
        UniqueConstraint("bar_id", "source", "line"),
        Index(None, "bar_id", "ingredient_id", "business_day"),
        Index(None, "bar_id", "business_day"),
    )

    ingredient_id: Mapped[int]
    dimension: Mapped[str] = mapped_column(String(8))
    amount_milli: Mapped[int]  # thousandths of mL, g or pieces, so that the database adds them up exactly
    cost_minor: Mapped[int | None]
    price_id: Mapped[int | None]
    business_day: Mapped[date]
    at: Mapped[datetime]
    by: Mapped[int]
    source: Mapped[str] = mapped_column(String(80))
    line: Mapped[int]


class StockCount(Correctable):
    """A count of stock on hand. A void row undoes the row it points to."""

    __tablename__ = "stock_count"
    __table_args__ = (
        ForeignKeyConstraint(["bar_id", "ingredient_id"], ["ingredient.bar_id", "ingredient.id"]),
        Index(None, "bar_id", "ingredient_id", "id"),
    )

    ingredient_id: Mapped[int]
    dimension: Mapped[str] = mapped_column(String(8))
    amount_milli: Mapped[int]
    business_day: Mapped[date]
    at: Mapped[datetime]
    by: Mapped[int]
    # The highest number of each table at the time of the count; only later rows change the stock after it.
    after_delivery: Mapped[int] = mapped_column(default=0, server_default="0")
    after_batch: Mapped[int] = mapped_column(default=0, server_default="0")
    after_waste: Mapped[int] = mapped_column(default=0, server_default="0")
    void: Mapped[bool] = mapped_column(default=False)


class PeeledFruit(Numbered):
    """Fruit with its peel used and its flesh left, and the time at which it counts as lost."""

    __tablename__ = "peeled_fruit"
    __table_args__ = (
        ForeignKeyConstraint(["bar_id", "ingredient_id"], ["ingredient.bar_id", "ingredient.id"]),
        Index(None, "bar_id", "ingredient_id", "lost_at"),
        Index(None, "bar_id", "lost_at"),
    )

    ingredient_id: Mapped[int]
    count_milli: Mapped[int]
    business_day: Mapped[date]
    lost_at: Mapped[datetime]
    at: Mapped[datetime]
    by: Mapped[int]


class Juicing(Correctable):
    """Fruit juiced and the juice: the bar's own yield. A void row undoes the row it points to."""

    __tablename__ = "juicing"
    __table_args__ = (
        ForeignKeyConstraint(["bar_id", "ingredient_id"], ["ingredient.bar_id", "ingredient.id"]),
        Index(None, "bar_id", "ingredient_id", "id"),
    )

    ingredient_id: Mapped[int]
    count_milli: Mapped[int]
    volume_ml: Mapped[Fraction]
    business_day: Mapped[date]
    at: Mapped[datetime]
    by: Mapped[int]
    void: Mapped[bool] = mapped_column(default=False)


class PeeledUse(Correctable):
    """The use of peeled fruit: juiced, binned, batch, or undone. An undo has the opposite sign."""

    __tablename__ = "peeled_use"
    __table_args__ = (
        ForeignKeyConstraint(["bar_id", "peeled_id"], ["peeled_fruit.bar_id", "peeled_fruit.id"]),
        ForeignKeyConstraint(["bar_id", "waste_id"], ["waste.bar_id", "waste.id"]),
        ForeignKeyConstraint(["bar_id", "juicing_id"], ["juicing.bar_id", "juicing.id"]),
        ForeignKeyConstraint(["bar_id", "batch_id"], ["batch.bar_id", "batch.id"]),
        Index(None, "bar_id", "peeled_id"),
        Index(None, "bar_id", "waste_id"),
    )

    peeled_id: Mapped[int]
    what: Mapped[str] = mapped_column(String(12))
    count_milli: Mapped[int]
    waste_id: Mapped[int | None]
    juicing_id: Mapped[int | None]
    batch_id: Mapped[int | None]
    at: Mapped[datetime]
    by: Mapped[int]


class StockPar(InBar):
    """The minimum stock of an ingredient; `told`: the warning about it was sent."""

    __tablename__ = "stock_par"
    __table_args__ = (
        ForeignKeyConstraint(["bar_id", "ingredient_id"], ["ingredient.bar_id", "ingredient.id"]),
    )

    ingredient_id: Mapped[int] = mapped_column(primary_key=True)
    amount: Mapped[Fraction]
    unit: Mapped[str] = mapped_column(String(40))
    told: Mapped[bool] = mapped_column(default=False)


class DrinksCount(Correctable):
    """The number of drinks served on a day: in all, of one on the list, with a formula or with a garnish.

    The last row of a day and subject without a void row is valid.
    """

    __tablename__ = "drinks_count"
    __table_args__ = (
        ForeignKeyConstraint(["bar_id", "formula_id"], ["formula.bar_id", "formula.id"]),
        ForeignKeyConstraint(["bar_id", "ingredient_id"], ["ingredient.bar_id", "ingredient.id"]),
        ForeignKeyConstraint(["bar_id", "menu_id"], ["menu_drink.bar_id", "menu_drink.id"]),
        Index(None, "bar_id", "business_day"),
    )

    business_day: Mapped[date]
    formula_id: Mapped[int | None]
    ingredient_id: Mapped[int | None]
    menu_id: Mapped[int | None]
    drinks: Mapped[int]
    ran_out: Mapped[bool] = mapped_column(default=False)  # demand may have been higher
    at: Mapped[datetime]
    by: Mapped[int]
    void: Mapped[bool] = mapped_column(default=False)
