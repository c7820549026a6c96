"""Settings and details as a sent file has them: nothing comes in that a bar could not have set itself."""

from __future__ import annotations

from fractions import Fraction
from typing import Any

from bot.trade.safety.jurisdiction import Jurisdiction
from bot.work.context import BarSettings
from bot.work.errors import BadValueError

_LATEST_CLOSING = 12 * 60
_WORDS = ("currency", "units", "zone", "jurisdiction")
_NUMBERS = (
    "loss_percent",
    "spray_ml_low",
    "spray_ml_high",
    "temperature_c",
    "price_rise_percent",
    "missing_times",
    "tax_percent",
)
_RANGES = (
    *("wage", "batch_minutes", "garnish_minutes", "bottle_price", "label_price", "outlay"),
    *("drinks_a_week", "open_weeks"),
)


def columns_of(bar: dict[str, Any]) -> dict[str, Any]:
    """Return what a file says of the bar itself. Raises BadValueError where one is not of its kind."""
    columns = {name: bar[name] for name in (*_WORDS, "closing_minute") if name in bar}
    closing = columns.get("closing_minute", 0)
    if type(closing) is not int or not 0 <= closing <= _LATEST_CLOSING:
        raise BadValueError("settings", "")
    if not all(_is_word(columns[name]) for name in _WORDS if name in columns):
        raise BadValueError("settings", "")
    if columns.get("jurisdiction", Jurisdiction.OTHER) not in set(Jurisdiction):
        raise BadValueError("settings", "")
    return columns


def _is_word(value: Any) -> bool:
    return isinstance(value, str) and 0 < len(value) <= 64


def is_range(value: Any) -> bool:
    """Whether a setting is text of one number from nothing up, or of two, or of none."""
    if not isinstance(value, str) or len(value) > 80:
        return False
    try:
        numbers = [Fraction(part) for part in value.split()]
    except (ValueError, ZeroDivisionError):
        return False
    return len(numbers) <= 2 and numbers == sorted(numbers) and all(number >= 0 for number in numbers)


def settings_of(given: dict[str, Any]) -> BarSettings:
    """Return settings from a file. Raises BadValueError where one is not of its kind."""
    defaults = BarSettings()
    given = {name: value for name, value in given.items() if name != "formula_costs"}  # by number elsewhere
    for name, value in given.items():
        usual = getattr(defaults, name, None)
        expected = list if isinstance(usual, tuple) else type(usual)
        if usual is not None and type(value) is not expected:
            raise BadValueError("settings", name)
    try:
        settings = BarSettings.from_json(given)
        for name in _NUMBERS:
            Fraction(getattr(settings, name))
    except (TypeError, ValueError, ZeroDivisionError):
        raise BadValueError("settings", "") from None
    if not all(is_range(getattr(settings, name)) for name in _RANGES):
        raise BadValueError("settings", "")
    return settings


def plain_details(given: Any) -> dict[str, Any]:
    """Return what else is noted of an ingredient, as far as it is plain."""
    if not isinstance(given, dict):
        return {}
    return {
        str(name)[:40]: value[:200] if isinstance(value, str) else value
        for name, value in list(given.items())[:20]
        if isinstance(value, str | bool | int)
    }
