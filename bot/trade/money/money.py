"""Money in whole minor units of its currency, as defined by ISO 4217.

Amounts are `Decimal`s or exact fractions; they become whole minor units only for payment or storage, rounded
half to even.
"""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal
from fractions import Fraction
from functools import cache
from typing import Final

from bot.trade.errors import OutOfRangeError, TradeError

PLACES: Final = 12  # decimals of an amount before it is rounded to minor units


@dataclass
class UnknownCurrencyError(TradeError):
    """ISO 4217 lists no currency with minor units under this code."""

    code: str


@cache
def minor_digits(currency: str) -> int:
    """Return the number of decimals of the currency's minor unit: 2 for EUR, 0 for JPY, 3 for KWD.

    The code's letter case does not matter. Source: ISO 4217 list one, from the iso4217 library. Raises
    UnknownCurrencyError, also for codes without minor units such as gold.
    """
    from iso4217 import Currency  # noqa: PLC0415 - reads a large file, which a start need not wait for

    try:
        digits = Currency(currency.upper()).exponent
    except ValueError:
        digits = None
    if digits is None:
        raise UnknownCurrencyError(currency)
    return int(digits)


def to_minor(amount: Decimal | Fraction, currency: str) -> int:
    """Return an amount in whole minor units, rounded half to even: 12.345 EUR gives 1234.

    Raises UnknownCurrencyError, or OutOfRangeError for an amount that is not finite.
    """
    digits = minor_digits(currency)
    if isinstance(amount, Decimal) and not amount.is_finite():
        raise OutOfRangeError("amount of money", float(amount), None, None, currency)
    return round(Fraction(amount) * Fraction(10) ** digits)


def from_minor(minor: int, currency: str) -> Decimal:
    """Return whole minor units as an exact amount with all the currency's decimals.

    Raises UnknownCurrencyError.
    """
    return _exact(minor, minor_digits(currency))


def as_decimal(amount: Fraction) -> Decimal:
    """Return an exact amount as a Decimal with 12 decimals, rounded half to even."""
    return _exact(round(amount * 10**PLACES), PLACES)


def _exact(units: int, places: int) -> Decimal:
    """Return units / 10**places, built from digits because arithmetic would round to the decimal context."""
    return Decimal((int(units < 0), tuple(map(int, str(abs(units)))), -places))
