"""Create a bar, and change its settings."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import datetime
from typing import Any
from zoneinfo import ZoneInfo, ZoneInfoNotFoundError

from babel.core import get_global
from babel.numbers import get_territory_currencies, list_currencies

from bot.trade.money.money import UnknownCurrencyError, minor_digits
from bot.trade.safety.jurisdiction import Jurisdiction
from bot.work.context import EVERY_DAY, BarSettings, BarView, Context, Role
from bot.work.errors import BadValueError, NotAllowedError, NotThereError
from bot.work.people import people
from bot.work.reminders import own, planning
from bot.work.standing import plain
from storage.tables import Bar
from storage.types import JsonObject
from storage.unit import Unit

DEFAULT_CLOSING_MINUTE = 5 * 60
_EU = frozenset(
    "AT BE BG HR CY CZ DK EE FI FR DE GR HU IE IT LV LT LU MT NL PL PT RO SK SI ES SE".split()  # noqa: SIM905
)
COLUMNS = frozenset({"name", "language", "currency", "units", "zone", "closing_minute", "jurisdiction"})
UNITS = ("metric", "us", "imperial")


@dataclass(frozen=True, slots=True)
class Likely:
    """Likely values for a place: suggested as defaults, never set silently."""

    jurisdiction: Jurisdiction
    currency: str
    units: str


def likely_in(zone: str) -> Likely:
    """Return the likely rules, currency and units of the country of a time zone (CLDR)."""
    land = get_global("zone_territories").get(zone, "001")
    currencies = get_territory_currencies(land) if land != "001" else []
    currency = currencies[0] if currencies else "USD"
    if land == "US":
        return Likely(Jurisdiction.US, currency, "us")
    if land == "GB":
        return Likely(Jurisdiction.UK, currency, "metric")
    return Likely(Jurisdiction.EU if land in _EU else Jurisdiction.OTHER, currency, "metric")


def check_currency(code: str) -> str:
    """Return an ISO 4217 code in capitals.

    Raises BadValueError for one that is not in use, and for gold, tests and 'no currency'.
    """
    found = code.strip().upper()
    try:
        minor_digits(found)
    except UnknownCurrencyError:
        raise BadValueError("currency", code) from None
    if found not in list_currencies():
        raise BadValueError("currency", code)
    return found


def open_bar(
    unit: Unit,
    presence: people.Presence,
    who: str,
    private: bool,
    now: datetime,
    *,
    name: str,
    zone: str,
    jurisdiction: Jurisdiction,
    currency: str,
    units: str,
    closing_minute: int = DEFAULT_CLOSING_MINUTE,
    language: str = "en",
) -> BarView:
    """Create a bar with the person as its owner. Raises BadValueError for an invalid value."""
    clean = " ".join(name.split())
    if not clean or len(clean) > 80:
        raise BadValueError("bar name", name[:80])
    _check_zone(zone)
    if units not in UNITS:
        raise BadValueError("units", units)
    settings = BarSettings()
    if units == "us":
        settings = settings.changed(oz_liquid="us", household="us")
    bar = Bar(
        name=clean,
        language=language,
        currency=check_currency(currency),
        units=units,
        zone=zone,
        closing_minute=closing_minute,
        jurisdiction=jurisdiction,
        settings=settings.to_json(),
        created_at=now,
    )
    view = people.found_bar(unit, presence, bar, who, private, now)
    planning.plan_close(unit.bar(view.id), view, now)
    return view


def _check_zone(zone: str) -> None:
    try:
        ZoneInfo(zone)
    except (ZoneInfoNotFoundError, ValueError):
        raise BadValueError("time zone", zone) from None


def values_now(context: Context, names: Iterable[str]) -> JsonObject:
    """Return columns or settings of the bar by name, as the log stores them."""
    return {
        name: plain(getattr(context.bar if name in COLUMNS else context.bar.settings, name)) for name in names
    }


def change(context: Context, **values: Any) -> BarView:
    """Change columns or settings of the bar by name and log that; return the updated bar.

    Raises NotAllowedError for a plain member and BadValueError for an invalid value.
    """
    before, after = change_unlogged(context, **values)
    context.log("settings", before=before, after=after)
    return context.bar


def change_unlogged(context: Context, **values: Any) -> tuple[JsonObject, JsonObject]:
    """Change columns or settings without a log line; return the old and new values. Raises as `change`."""
    if not context.role.manages:
        raise NotAllowedError(Role.MANAGER)
    row = context.book.session.get(Bar, context.bar.id)
    if row is None:
        raise NotThereError("bar", context.bar.name)
    if "zone" in values:
        _check_zone(values["zone"])
    if "currency" in values:
        values["currency"] = check_currency(values["currency"])
    if values.get("units", "metric") not in UNITS:
        raise BadValueError("units", values["units"])
    if values.get("service_days", EVERY_DAY) == 0:
        raise BadValueError("service days", "")
    before: JsonObject = {}
    settings = BarSettings.from_json(row.settings)
    for key, value in values.items():
        if key in COLUMNS:
            before[key] = getattr(row, key)
            setattr(row, key, value)
        else:
            before[key] = getattr(settings, key)
            settings = settings.changed(**{key: value})
    row.settings = settings.to_json()
    context.book.touched()
    context.bar = BarView.of(row)
    planning.plan_close(context.book, context.bar, context.now)
    own.plan_morning(context.book, context.bar, context.now)
    return plain(before), plain(values)
