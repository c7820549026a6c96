"""Reading amounts of money."""

from __future__ import annotations

from decimal import Decimal

from bot.chat.language import _
from bot.chat.message import reply
from bot.chat.talk import Say
from bot.chat.values import Money


def as_money(value: Money, currency: str) -> Decimal:
    """Return an amount in the bar's currency. Says so when another currency was written."""
    if value.currency is not None and value.currency != currency:
        raise Say(
            reply(
                _("This bar counts in {currency}, not {other}.").format(
                    currency=currency, other=value.currency
                )
            )
        )
    return Decimal(value.number.numerator) / Decimal(value.number.denominator)
