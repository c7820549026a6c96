"""Column types that keep exact numbers and true instants in any database.

SQLite keeps neither time offsets nor decimals by itself, so instants are stored
as whole seconds since 1970-01-01 UTC and amounts as exact text.
"""

from __future__ import annotations

from datetime import UTC, date, datetime
from decimal import Decimal
from fractions import Fraction
from typing import Any

from sqlalchemy import BigInteger, Dialect, String
from sqlalchemy.types import TypeDecorator


class Instant(TypeDecorator[datetime]):
    """An aware UTC datetime, to the second, kept as an integer."""

    impl = BigInteger
    cache_ok = True

    def process_bind_param(self, value: datetime | None, dialect: Dialect) -> int | None:
        """Refuse a naive datetime: its instant would be a guess."""
        if value is None:
            return None
        if value.tzinfo is None:
            raise ValueError("an instant needs a time zone")
        return int(value.timestamp())

    def process_result_value(self, value: Any, dialect: Dialect) -> datetime | None:
        """Give the instant back in UTC."""
        return None if value is None else datetime.fromtimestamp(value, UTC)


class Day(TypeDecorator[date]):
    """A calendar day without a time, kept as ISO 8601 text so that it sorts and compares."""

    impl = String(10)
    cache_ok = True

    def process_bind_param(self, value: date | None, dialect: Dialect) -> str | None:
        """Write as YYYY-MM-DD."""
        return None if value is None else value.isoformat()

    def process_result_value(self, value: Any, dialect: Dialect) -> date | None:
        """Read back from YYYY-MM-DD."""
        return None if value is None else date.fromisoformat(value)


def exact_text(value: Fraction) -> str:
    """Write a fraction as a plain decimal where it ends, else as numerator/denominator."""
    rest = value.denominator
    twos = fives = 0
    while rest % 2 == 0:
        rest //= 2
        twos += 1
    while rest % 5 == 0:
        rest //= 5
        fives += 1
    if rest != 1:
        return f"{value.numerator}/{value.denominator}"
    places = max(twos, fives)
    digits = value.numerator * 10**places // value.denominator
    return format(Decimal(digits).scaleb(-places), "f")


class Exact(TypeDecorator[Fraction]):
    """An exact amount, kept as text: '36.5', or '1/3' where no decimal ends."""

    impl = String(80)
    cache_ok = True

    def process_bind_param(self, value: Fraction | None, dialect: Dialect) -> str | None:
        """Write without rounding."""
        return None if value is None else exact_text(Fraction(value))

    def process_result_value(self, value: Any, dialect: Dialect) -> Fraction | None:
        """Read back the same fraction."""
        return None if value is None else Fraction(value)
