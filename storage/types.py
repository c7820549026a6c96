"""Column types for exact numbers and UTC instants in any database.

SQLite stores neither time offsets nor decimals, so instants are stored as whole seconds since 1970-01-01 UTC
and amounts as exact text.
"""

from __future__ import annotations

from datetime import UTC, date, datetime, timedelta
from fractions import Fraction
from typing import Any

from sqlalchemy import BigInteger, Dialect, String
from sqlalchemy.types import TypeDecorator

JsonObject = dict[str, Any]
"""A JSON object as a column, a file or Telegram holds it: the border where types end."""

_EPOCH = datetime(1970, 1, 1, tzinfo=UTC)
_LONGEST = 80
_MOST_PLACES = 20


class Instant(TypeDecorator[datetime]):
    """An aware UTC datetime, to the second, stored as an integer."""

    impl = BigInteger
    cache_ok = True

    def process_bind_param(self, value: datetime | None, dialect: Dialect) -> int | None:
        """Refuse a naive datetime, because its instant would be a guess."""
        if value is None:
            return None
        if value.tzinfo is None:
            raise ValueError("an instant needs a time zone")
        # In integers: a float of seconds rounds up within a microsecond of the next second.
        return (value - _EPOCH) // timedelta(seconds=1)

    def process_result_value(self, value: Any, dialect: Dialect) -> datetime | None:
        """Return the instant in UTC."""
        return None if value is None else datetime.fromtimestamp(value, UTC)


class Day(TypeDecorator[date]):
    """A calendar day without a time, stored as ISO 8601 text so that it sorts and compares."""

    impl = String(10)
    cache_ok = True

    def process_bind_param(self, value: date | None, dialect: Dialect) -> str | None:
        """Format as YYYY-MM-DD."""
        return None if value is None else value.isoformat()

    def process_result_value(self, value: Any, dialect: Dialect) -> date | None:
        """Parse YYYY-MM-DD."""
        return None if value is None else date.fromisoformat(value)


def exact_text(value: Fraction) -> str:
    """Write a fraction as a plain decimal if it has a short one, else as numerator/denominator."""
    rest = value.denominator
    twos = fives = 0
    while rest % 2 == 0:
        rest //= 2
        twos += 1
    while rest % 5 == 0:
        rest //= 5
        fives += 1
    places = max(twos, fives)
    if rest != 1 or places > _MOST_PLACES:
        return f"{value.numerator}/{value.denominator}"
    # In integers: Decimal would round to the precision of its context.
    digits = str(abs(value.numerator) * 10**places // value.denominator).rjust(places + 1, "0")
    text = f"{digits[:-places]}.{digits[-places:]}" if places else digits
    return f"-{text}" if value < 0 else text


def exact(text: str) -> Fraction:
    """Read what `exact_text` wrote.

    Raises ValueError for anything else, an exponent too: a small text of one can be a number of any length.
    """
    if len(text) > _LONGEST or "e" in text.casefold():
        raise ValueError(text[:_LONGEST])
    try:
        return Fraction(text)
    except ZeroDivisionError:
        raise ValueError(text) from None


class Exact(TypeDecorator[Fraction]):
    """An exact amount, stored as text: '36.5', or '1/3' if the decimal does not terminate."""

    impl = String(_LONGEST)
    cache_ok = True

    def process_bind_param(self, value: Fraction | None, dialect: Dialect) -> str | None:
        """Write without rounding, up to 38 digits on either side of the slash."""
        if value is None:
            return None
        text = exact_text(Fraction(value))
        # Nobody types that many digits: more come from a division, and no scale shows them.
        return text if len(text) <= _LONGEST else exact_text(Fraction(value).limit_denominator(10**38))

    def process_result_value(self, value: Any, dialect: Dialect) -> Fraction | None:
        """Read the same fraction back."""
        return None if value is None else Fraction(value)
