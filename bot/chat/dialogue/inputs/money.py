"""Parse amounts of money."""

from __future__ import annotations

from decimal import Decimal
from fractions import Fraction

from babel.numbers import get_currency_name

from bot.chat.dialogue.turn import Say
from bot.chat.grammar.syntax import Money
from bot.chat.i18n.language import _, show_money
from bot.chat.reply.message import reply
from bot.trade.money.money import minor_digits

# A sign alone is ambiguous: it stands for every currency written with it (CLDR).
_DOLLARS = """
    USD AUD BBD BMD BND BSD BZD CAD CLP COP CUP CVE DOP FJD GYD HKD JMD KYD LRD MXN NAD NZD SBD SGD SRD
    TTD TWD UYU XCD ARS
"""
_SIGNS = {
    "€": {"EUR"},
    "£": {"GBP", "EGP", "FKP", "GIP", "SHP"},
    "¥": {"JPY", "CNY"},
    "$": set(_DOLLARS.split()),
}
_CURRENCIES = sorted(set().union(*_SIGNS.values()))


def as_money(value: Money, currency: str) -> Decimal:
    """Return an amount in the bar's currency. Raises Say for another currency."""
    said = None if value.currency is None else _code_of(value.currency, currency)
    if said is not None and currency not in _SIGNS.get(said, {said}):
        raise Say(
            reply(_("This bar counts in {currency}, not {other}.").format(currency=currency, other=said))
        )
    amount = Decimal(value.number.numerator) / Decimal(value.number.denominator)
    return amount.scaleb(-minor_digits(currency)) if value.minor else amount


def _code_of(said: str, likely: str) -> str:
    """Return the code of a currency as typed, 'eur' or 'euros'; a sign stays, 'bucks' are the likely one."""
    if len(said) == 3 or said in _SIGNS:
        return said.upper()
    named = currency_named(said, likely)
    return likely if named == said else named


def without_currency(text: str, currency: str) -> str:
    """Return a text without currency signs and the bar's own code."""
    for sign in (*_SIGNS, currency):
        text = text.replace(sign, "")
    return text


def currency_of_sign(sign: str, likely: str) -> str:
    """Return the currency of a sign: the only one, or the likely one if it is a candidate.

    Any other text, and an ambiguous sign, is returned unchanged.
    """
    known = _SIGNS.get(sign.strip(), set())
    if likely in known:
        return likely
    return next(iter(known)) if len(known) == 1 else sign


def currency_named(text: str, likely: str) -> str:
    """Return the currency of a sign or a name, 'euros' or 'pounds'; the likely one if it is a candidate.

    Any other text is returned unchanged.
    """
    by_sign = currency_of_sign(text, likely)
    word = text.strip().casefold()
    if by_sign != text or len(word) <= 3:  # three letters are a code
        return by_sign
    named = [
        code
        for locale in ("en", "es")
        for code in dict.fromkeys((likely, *_CURRENCIES))
        if code and word in _names_of(code, locale)
    ]
    return named[0] if named and (named[0] == likely or len(set(named)) == 1) else text


def _names_of(code: str, locale: str) -> set[str]:
    """Return a currency's names, singular and plural, whole and by the noun alone.

    The noun is the last word, in Spanish the first.
    """
    whole = {get_currency_name(code, count, locale).casefold() for count in (1, 2)}
    return whole | {name.split()[0 if locale == "es" else -1] for name in whole}


def ends_of(text: str) -> tuple[Fraction, Fraction] | None:
    """Return the ends of a stored number or range, or None if it is not set."""
    parts = text.split()
    return (Fraction(parts[0]), Fraction(parts[-1])) if parts else None


def money_range(ends: tuple[Fraction, Fraction]) -> str:
    """Write an amount of money, or two for a range."""
    low, high = show_money(ends[0]), show_money(ends[1])
    return low if low == high else _("{low} to {high}").format(low=low, high=high)
