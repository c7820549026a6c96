"""Minor units of currencies against ISO 4217."""

from __future__ import annotations

from functools import partial

from babel.numbers import get_currency_precision

from bot.trade.money.money import minor_digits
from tests.outside.check import Check, Mark

LIST_ONE = "ISO 4217 list one, minor units, as a browser engine's generated table (2026-01-01) has them"
# Decimals other than two, and a few with two.
_PUBLISHED = {
    "USD": 2,
    "EUR": 2,
    "GBP": 2,
    "AUD": 2,
    "MXN": 2,
    "HUF": 2,
    "JPY": 0,
    "KRW": 0,
    "CLP": 0,
    "ISK": 0,
    "PYG": 0,
    "VND": 0,
    "UGX": 0,
    "XAF": 0,
    "BHD": 3,
    "IQD": 3,
    "JOD": 3,
    "KWD": 3,
    "LYD": 3,
    "OMR": 3,
    "TND": 3,
    "CLF": 4,
    "UYW": 4,
}
# Where Unicode's locale data, based on daily use, has the same decimals as ISO 4217.
_SAME_IN_CLDR = (
    "USD",
    "EUR",
    "GBP",
    "JPY",
    "KRW",
    "CLP",
    "ISK",
    "VND",
    "BHD",
    "KWD",
    "TND",
    "CHF",
    "SEK",
    "CAD",
)

CHECKS = [
    *(
        Check(
            "money", f"decimals of {code}", LIST_ONE, Mark.READ, digits, partial(minor_digits, code), "digits"
        )
        for code, digits in _PUBLISHED.items()
    ),
    *(
        Check(
            "money",
            f"decimals of {code}",
            "Unicode CLDR, by Babel",
            Mark.COMPUTED,
            get_currency_precision(code),
            partial(minor_digits, code),
            "digits",
        )
        for code in _SAME_IN_CLDR
    ),
]
