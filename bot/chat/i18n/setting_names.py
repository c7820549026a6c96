"""The names of a bar's settings, as one says them."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from bot.trade.formulas.measures import HOUSE_MEASURES
from bot.trade.words import N_

# key: (name shown, other ways to say it)
SETTINGS: dict[str, tuple[str, tuple[str, ...]]] = {
    "name": (N_("name"), ("bar name",)),
    "currency": (N_("currency"), ("money",)),
    "units": (N_("units"), ("measures",)),
    "zone": (N_("time zone"), ("zone", "timezone")),
    "closing": (N_("closing hour"), ("closing", "closing time", "close")),
    "jurisdiction": (N_("rules"), ("jurisdiction", "country", "where")),
    "ounces": (N_("ounces"), ("oz", "ounce")),
    "household": (N_("spoons and cups"), ("spoons", "cups", "pints")),
    "service_days": (N_("service days"), ("open days", "days open")),
    "quiet": (N_("quiet hours"), ("quiet", "silence")),
    "close_prompt": (N_("close reminder"), ("waste reminder", "close prompt")),
    "discard_warn": (N_("discard warning"), ("discard reminder", "warn days")),
    "loss": (N_("bottling loss"), ("loss",)),
    "temperature": (N_("temperature"), ("bar temperature", "room temperature")),
    "spray": (N_("spray size"), ("ml per spray", "spray volume")),
    "tools": (N_("tools"), ("measuring tools",)),
    "reasons": (N_("waste reasons"), ("reasons",)),
    "labels": (N_("label paper"), ("labels", "label sheet", "label roll")),
    "language": (N_("language"), ()),
    "late": (N_("late shift"), ("late shift from", "shift")),
    "peeled": (N_("peeled fruit"), ("peeled hours", "peeled")),
    "price_rise": (N_("price rise"), ("price alert",)),
    "missing": (N_("missing fruit"), ("missing",)),
    "tax": (N_("tax"), ("vat", "sales tax")),
    "pictures": (N_("pictures"), ("picture",)),
    "week_picture": (N_("week picture"), ("trend picture", "picture of the week")),
    "wage": (N_("wage"), ("wage an hour", "wages")),
    "batch_minutes": (N_("batch minutes"), ("minutes a batch",)),
    "garnish_minutes": (N_("garnish minutes"), ("minutes a garnish", "peel minutes")),
    "bottle_price": (N_("bottle price"), ("bottle cost",)),
    "label_price": (N_("label price"), ("label cost",)),
    "outlay": (N_("outlay"), ("spray outlay",)),
    "drinks_a_week": (N_("drinks a week"), ("weekly drinks",)),
    "open_weeks": (N_("weeks open"), ("open weeks",)),
    **{measure: (measure, ()) for measure in HOUSE_MEASURES if measure not in {"part", "bottle"}},
}


@dataclass(frozen=True, slots=True)
class Page:
    """Settings that are shown together; `house_measures` are those among them that have a usual size."""

    title: str
    settings: tuple[str, ...]
    house_measures: tuple[str, ...] = ()


_SIZES = tuple(measure for measure in HOUSE_MEASURES if measure in SETTINGS)
ALL = "all"  # the word for all pages at once
# The word of each page, as it stands behind its button, and what is on it.
PAGES: dict[str, Page] = {
    "hours": Page(
        N_("Hours and reminders"),
        ("closing", "service_days", "late", "close_prompt", "quiet", "discard_warn", "zone"),
    ),
    "mixing": Page(
        N_("Measuring"),
        ("units", "ounces", "household", "temperature", "spray", "loss", "tools", *_SIZES),
        _SIZES,
    ),
    "costs": Page(
        N_("Money and work"),
        (
            *("currency", "tax", "price_rise", "missing", "wage", "batch_minutes", "garnish_minutes"),
            *("bottle_price", "label_price", "outlay", "drinks_a_week", "open_weeks"),
        ),
    ),
    "house": Page(
        N_("The bar, labels, waste"),
        ("name", "language", "jurisdiction", "labels", "pictures", "week_picture", "reasons", "peeled"),
    ),
}


def page_of(setting: str) -> str:
    """Return the word of the page that a setting stands on."""
    return next(name for name, page in PAGES.items() if setting in page.settings)


# Where a setting is kept under another name than its own.
_KEPT_AS = {
    "closing_minute": "closing",
    "oz_liquid": "ounces",
    "quiet_from": "quiet",
    "quiet_to": "quiet",
    "close_prompt_at": "close_prompt",
    "discard_warn_days": "discard_warn",
    "loss_percent": "loss",
    "temperature_c": "temperature",
    "spray_ml_low": "spray",
    "spray_ml_high": "spray",
    "late_from": "late",
    "peeled_hours": "peeled",
    "price_rise_percent": "price_rise",
    "tax_percent": "tax",
    "dark_pictures": "pictures",
}


def settings_changed(before: Mapping[str, Any], after: Mapping[str, Any]) -> list[str]:
    """Return which settings a change in the log was about, by the fields that it kept."""
    found: list[str] = []
    for field in after:
        if field == "house_ml":
            old, new = before.get(field, {}), after[field]
            found += [size for size in _SIZES if old.get(size) != new.get(size)]
        else:
            found.append(_KEPT_AS.get(field, field))
    return [key for key in dict.fromkeys(found) if key in SETTINGS]
