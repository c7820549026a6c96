"""The names of a bar's settings, and the pages that show them."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any, NamedTuple

from bot.trade.formulas.measures import HOUSE_MEASURES
from bot.trade.words import N_


class Name(NamedTuple):
    """The name shown, other names, and the stored fields if their names differ."""

    name: str
    also: tuple[str, ...] = ()
    fields: tuple[str, ...] = ()


class Page(NamedTuple):
    """Settings on one page, by their keys."""

    title: str
    settings: Mapping[str, Name]


ALL = "all"  # the word for all pages at once
# The word of each page, as its button sends it.
PAGES: dict[str, Page] = {
    "hours": Page(
        N_("Hours and reminders"),
        {
            "closing": Name(N_("closing hour"), ("closing", "closing time", "close"), ("closing_minute",)),
            "service_days": Name(N_("service days"), ("open days", "days open")),
            "late": Name(N_("late shift"), ("late shift from", "shift"), ("late_from",)),
            "close_prompt": Name(
                N_("close reminder"), ("waste reminder", "close prompt"), ("close_prompt", "close_prompt_at")
            ),
            "morning": Name(N_("morning message"), ("morning", "today message"), ("morning_at",)),
            "quiet": Name(N_("quiet hours"), ("quiet", "silence"), ("quiet_from", "quiet_to")),
            "discard_warn": Name(
                N_("discard warning"), ("discard reminder", "warn days"), ("discard_warn_days",)
            ),
            "zone": Name(N_("time zone"), ("zone", "timezone")),
        },
    ),
    "mixing": Page(
        N_("Measuring"),
        {
            "units": Name(N_("units"), ("measures",)),
            "ounces": Name(N_("ounces"), ("oz", "ounce"), ("oz_liquid",)),
            "household": Name(N_("spoons and cups"), ("spoons", "cups", "pints")),
            "temperature": Name(
                N_("temperature"), ("bar temperature", "room temperature"), ("temperature_c",)
            ),
            "coldest": Name(
                N_("coldest storage"), ("coldest", "cold store", "coldest place"), ("coldest_c",)
            ),
            "spray": Name(
                N_("spray size"), ("ml per spray", "spray volume"), ("spray_ml_low", "spray_ml_high")
            ),
            "loss": Name(N_("bottling loss"), ("loss",), ("loss_percent",)),
            "tools": Name(N_("tools"), ("measuring tools",)),
            **{one: Name(one, (), ("house_ml",)) for one in HOUSE_MEASURES if one not in {"part", "bottle"}},
        },
    ),
    "costs": Page(
        N_("Money and work"),
        {
            "currency": Name(N_("currency"), ("money",)),
            "tax": Name(N_("tax"), ("vat", "sales tax"), ("tax", "tax_percent")),
            "price_rise": Name(N_("price rise"), ("price alert",), ("price_rise_percent",)),
            "missing": Name(N_("missing fruit"), ("missing",), ("missing_times",)),
            "wage": Name(N_("wage"), ("wage an hour", "wages")),
            "batch_minutes": Name(N_("batch minutes"), ("minutes a batch",)),
            "garnish_minutes": Name(N_("garnish minutes"), ("minutes a garnish", "peel minutes")),
            "bottle_price": Name(N_("bottle price"), ("bottle cost",)),
            "label_price": Name(N_("label price"), ("label cost",)),
            "outlay": Name(N_("outlay"), ("spray outlay",)),
            "drinks_a_week": Name(N_("drinks a week"), ("weekly drinks",)),
            "open_weeks": Name(N_("weeks open"), ("open weeks",)),
        },
    ),
    "house": Page(
        N_("The bar, labels, waste"),
        {
            "name": Name(N_("name"), ("bar name",)),
            "language": Name(N_("language")),
            "jurisdiction": Name(N_("rules"), ("jurisdiction", "country", "where")),
            "labels": Name(N_("label paper"), ("labels", "label sheet", "label roll")),
            "pictures": Name(N_("pictures"), ("picture",), ("dark_pictures",)),
            "week_picture": Name(N_("week picture"), ("trend picture", "picture of the week")),
            "reasons": Name(N_("waste reasons"), ("reasons",)),
            "peeled": Name(N_("peeled fruit"), ("peeled hours", "peeled"), ("peeled_hours",)),
        },
    ),
}
SETTINGS: dict[str, Name] = {key: name for page in PAGES.values() for key, name in page.settings.items()}


def page_of(setting: str) -> str:
    """Return the word of the page with a setting."""
    return next(name for name, page in PAGES.items() if setting in page.settings)


def settings_changed(before: Mapping[str, Any], after: Mapping[str, Any]) -> list[str]:
    """Return the settings of a logged change, by its stored fields."""
    found: list[str] = []
    for field, new in after.items():
        if field == "house_ml":
            found += [size for size in HOUSE_MEASURES if before.get(field, {}).get(size) != new.get(size)]
        else:
            found += [key for key, one in SETTINGS.items() if field in (one.fields or (key,))]
    return [key for key in dict.fromkeys(found) if key in SETTINGS]
