"""Shelf life: the Food Code's seven days, the age of oils, and the trade's usual times."""

from __future__ import annotations

from collections.abc import Callable
from datetime import UTC, date, datetime

from bot.trade.batches.keeping import WEAK_BELOW_PERCENT, Made, usual_time
from bot.trade.batches.shelf import (
    OIL_DAYS_COLD,
    OIL_DAYS_WARM,
    IngredientDate,
    ShelfQuestion,
    food_code_cover,
    shelf_plan,
)
from bot.trade.formulas.kinds import PREPARATION_DEFAULTS, IngredientKind, Preparation
from bot.trade.safety.jurisdiction import Jurisdiction
from tests.outside.check import Check, Mark

_CODE = "Food Code 3-501.17 text in Minnesota Rules 4626.0400: day of preparation is day 1, seven days"
_DEFINITION = "Food Code definition of time/temperature controlled food, as quoted by two food laboratories"
_PRACTICE = "common practice, no source"
_THUMB = "an essential-oil handbook author's rule of thumb: 1 to 2 years refrigerated, half of that otherwise"


def _plan(*names: str, ingredient_dates: tuple[IngredientDate, ...] = ()) -> Callable[[], str]:
    question = ShelfQuestion(
        Preparation.SYRUP,
        datetime(2016, 1, 1, 23, 0, tzinfo=UTC),
        Jurisdiction.US,
        made=Made(tuple((name, IngredientKind.FRUIT) for name in names)),
        ingredient_dates=ingredient_dates,
    )
    return shelf_plan(question).discard_on.isoformat


def _cover(name: str, preparation: Preparation, kind: IngredientKind) -> Callable[[], str]:
    return lambda: food_code_cover(preparation, ((name, kind),)).value


def _usual(
    preparation: Preparation, percent: float, *contents: tuple[str, IngredientKind], **more: float
) -> Callable[[], float]:
    return lambda: float(usual_time(preparation, Made(contents, percent, 0.9, **more)).days)


_GIN, _JUICE, _MILK = (
    ("gin", IngredientKind.SPIRIT),
    ("lime juice", IngredientKind.JUICE),
    ("milk", IngredientKind.OTHER),
)
_STRAWBERRIES, _PEEL = ("strawberries", IngredientKind.FRUIT), ("lemon peel", IngredientKind.FRUIT)


CHECKS: list[Check] = [
    *(
        Check(
            "shelf",
            f"{what}: not past the seventh day, the day of making counted",
            _CODE,
            Mark.READ,
            (0.0, 6.0),
            got,
            "days",
        )
        for what, got in (
            ("3.6 % infusion of gin, juice and milk", _usual(Preparation.INFUSION, 3.6, _GIN, _JUICE, _MILK)),
            ("0 % infusion of strawberries", _usual(Preparation.INFUSION, 0.0, _STRAWBERRIES)),
            ("4.6 % tincture", _usual(Preparation.TINCTURE, 4.6, _GIN)),
            ("40 % infusion with garlic in it", _usual(Preparation.INFUSION, 40.0, ("garlic", _MILK[1]))),
            ("syrup with milk", _usual(Preparation.SYRUP, 0.0, _MILK)),
        )
    ),
    Check(
        "shelf",
        "strength below which spirit no longer keeps an infusion",
        _PRACTICE,
        Mark.PRACTICE,
        20.0,
        lambda: WEAK_BELOW_PERCENT,
        "% vol",
    ),
    Check(
        "shelf",
        "peel in strong spirit, days after making",
        _PRACTICE,
        Mark.PRACTICE,
        30.0,
        _usual(Preparation.INFUSION, 60.0, _GIN, _PEEL),
        "days",
    ),
    Check(
        "shelf",
        "weak tincture with as much sugar as a 1:1 syrup keeps as that does",
        _PRACTICE,
        Mark.PRACTICE,
        14.0,
        _usual(Preparation.TINCTURE, 5.0, _GIN, sugar_g_per_l=615.0),
        "days",
    ),
    Check(
        "shelf",
        "covered food made at 23:00 on 1 January 2016",
        "Conference for Food Protection 2016, issue I-034: regulators' reading, discard on 7 January",
        Mark.READ,
        "2016-01-07",
        _plan("melon"),
    ),
    Check(
        "shelf",
        "a mix takes the date of its earliest ingredient",
        _CODE,
        Mark.READ,
        "2016-01-04",
        _plan("melon", ingredient_dates=(IngredientDate("juice", date(2016, 1, 4)),)),
    ),
    *(
        Check(
            "shelf",
            f"date marking reaches {name}",
            _DEFINITION,
            Mark.READ,
            "covered",
            _cover(name, Preparation.SYRUP, IngredientKind.FRUIT),
        )
        for name in (
            "cut melon",
            "cut tomatoes",
            "lettuce",
            "bean sprouts",
            "garlic in oil",
            "cooked pumpkin",
        )
    ),
    Check(
        "shelf",
        "cut citrus and its juice are not named",
        _DEFINITION,
        Mark.READ,
        "not named",
        _cover("orange juice", Preparation.JUICE, IngredientKind.JUICE),
    ),
    Check(
        "shelf",
        "citrus oil kept cold, opened, years",
        _THUMB,
        Mark.READ,
        (1.0, 2.0),
        lambda: (OIL_DAYS_COLD + 0.25) / 365.25,
        "years",
    ),
    Check(
        "shelf",
        "citrus oil not kept cold, share of that",
        _THUMB,
        Mark.READ,
        0.5,
        lambda: OIL_DAYS_WARM / OIL_DAYS_COLD,
        "",
        0.01,
    ),
    Check(
        "shelf",
        "aroma mist rests",
        _PRACTICE,
        Mark.PRACTICE,
        24.0,
        lambda: float(PREPARATION_DEFAULTS[Preparation.AROMA_MIST].rest_hours),
        "h",
    ),
    Check(
        "shelf",
        "aroma mist seen to stay clear this long before it is looked at again",
        _PRACTICE,
        Mark.PRACTICE,
        30.0,
        lambda: float(PREPARATION_DEFAULTS[Preparation.AROMA_MIST].recheck_days or 0),
        "days",
    ),
    Check(
        "shelf",
        "fresh lemon or lime juice, same day to two days",
        _PRACTICE,
        Mark.PRACTICE,
        (0.0, 2.0),
        lambda: float(PREPARATION_DEFAULTS[Preparation.JUICE].discard_days),
        "days",
    ),
    Check(
        "shelf",
        "fresh juice within what unpasteurised orange juice held at 7.8 °C lasted (5 to 8 days)",
        "J. Food Sci. 53(6), 1699 (1988), abstract",
        Mark.READ,
        (0.0, 5.0),
        lambda: float(PREPARATION_DEFAULTS[Preparation.ACID_ADJUSTED_JUICE].discard_days),
        "days",
    ),
    Check(
        "shelf",
        "syrup 1:1, two to four weeks cold",
        _PRACTICE,
        Mark.PRACTICE,
        (14.0, 28.0),
        lambda: float(PREPARATION_DEFAULTS[Preparation.SYRUP].discard_days),
        "days",
    ),
]
