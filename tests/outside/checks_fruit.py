"""The fruit handbook against every published row."""

from __future__ import annotations

import csv
from collections.abc import Callable
from decimal import Decimal
from pathlib import Path
from typing import ParamSpec

from bot.trade.fruit import handbook
from bot.trade.fruit.usda_table import FOODS
from tests.outside.check import Check, Mark

Given = ParamSpec("Given")

_SR28 = "USDA National Nutrient Database, release 28, WEIGHT and FOOD_DES"
_ERS = "USDA Economic Research Service, fruit prices 2020: oranges 1.2131 $/lb, yield 0.68"


def _published() -> list[dict[str, str]]:
    with Path(__file__).with_name("sr28_citrus.csv").open(encoding="utf-8", newline="") as rows:
        return list(csv.DictReader(rows))


def later(rule: Callable[Given, Decimal], *given: Given.args, **named: Given.kwargs) -> Callable[[], float]:
    """Return a call of `rule` with these arguments, made only when the check runs."""
    return lambda: float(rule(*given, **named))


def _grams(number: str, wording: str, amount: Decimal) -> Decimal:
    row = handbook.portion(number, wording)
    return amount * row.grams / row.amount  # by the unit, so that the published amount counts too


def _refuse_percent(number: str) -> Decimal:
    return FOODS[number].refuse_percent


def _grams_sd(number: str, wording: str) -> Decimal:
    return handbook.portion(number, wording).grams_sd or Decimal(-1)


def _juice_ml(key: str) -> Decimal:
    return handbook.expected_juice(key, Decimal(1)).volume_ml


def _row_checks() -> list[Check]:
    checks = []
    for row in _published():
        what = f"{row['ndb_no']} {row['food']}: {row['amount']} {row['portion']}, edible part"
        got = later(_grams, row["ndb_no"], row["portion"], Decimal(row["amount"]))
        checks.append(Check("fruit", what, _SR28, Mark.READ, float(row["grams"]), got, "g", 1e-9))
    return checks


def _refuse_checks() -> list[Check]:
    checks = []
    for number, food, refuse in sorted(
        {(row["ndb_no"], row["food"], row["refuse_percent"]) for row in _published()}
    ):
        checks.append(
            Check(
                "fruit",
                f"{number} {food}: refuse",
                _SR28,
                Mark.READ,
                float(refuse),
                later(_refuse_percent, number),
                "%",
                1e-9,
            )
        )
    return checks


def _spread_checks() -> list[Check]:
    checks = []
    for row in _published():
        if not row["sd"]:
            continue
        number, wording = row["ndb_no"], row["portion"]
        checks.append(
            Check(
                "fruit",
                f"{number} {row['food']}: {wording}, standard deviation",
                _SR28,
                Mark.READ,
                float(row["sd"]),
                later(_grams_sd, number, wording),
                "g",
                1e-9,
            )
        )
    return checks


# Whole fruit as purchased: key, size, edible grams, refuse percent, all as published.
_WHOLE = [
    ("orange", "small", 96, 27),
    ("orange", "medium", 131, 27),
    ("orange", "large", 184, 27),
    ("navel", "medium", 140, 32),
    ("valencia", "medium", 121, 25),
    ("florida", "medium", 141, 26),
    ("florida", "large", 151, 26),
    ("lemon", "medium", 58, 47),
    ("lemon", "large", 84, 47),
    ("lime", "medium", 67, 16),
    ("grapefruit", "small", 200, 50),
    ("grapefruit", "medium", 256, 50),
    ("grapefruit", "large", 332, 50),
    ("mandarin", "small", 76, 26),
    ("mandarin", "medium", 88, 26),
    ("mandarin", "large", 120, 26),
]

# A food-service distributor's size table: lemons in a case of 115, 140, 165; ounces each; inches across.
_SIZE_TABLE = "a food-service distributor's table of lemon sizes and case counts"
_CITRUS_PAGE = "a produce distributor's page on oranges: 2 to 4 mediums (113 to the case) give about 1 cup"

# Juice of one fruit: key, published grams, published grams of a cup (236.588 mL).
_JUICE = [("orange", 86, 248), ("lemon", 48, 244), ("lime", 44, 242), ("grapefruit", 196, 247)]


def _whole_checks() -> list[Check]:
    return [
        Check(
            "fruit",
            f"{key}, {size}: as purchased, {edible} / (1 - {refuse} %)",
            _SR28,
            Mark.READ,
            edible / (1 - refuse / 100),
            later(handbook.mass_from_count, key, Decimal(1), size),
            "g",
            1e-6,
        )
        for key, size, edible, refuse in _WHOLE
    ]


def _juice_checks() -> list[Check]:
    checks = []
    for key, grams, cup in _JUICE:
        checks.append(
            Check(
                "fruit",
                f"{key}: juice of one fruit, {grams} g at {cup} g per US cup",
                _SR28,
                Mark.READ,
                grams / (cup / 236.5882365),
                later(_juice_ml, key),
                "mL",
                1e-6,
            )
        )
    # The fluid ounce is a second, rounded weighing of the same juice.
    for number, key, ounce in [
        ("09206", "orange", 31.0),
        ("09152", "lemon", 30.5),
        ("09160", "lime", 30.8),
        ("09128", "grapefruit", 30.9),
    ]:
        checks.append(
            Check(
                "fruit",
                f"{key} juice {number}: density by the cup against that by the fluid ounce",
                _SR28,
                Mark.READ,
                ounce / 29.5735295625,
                later(handbook.juice_density, key),
                "g/mL",
                # the ounce of lime is 0.5 g heavier than an eighth of its cup: four cups were weighed
                0.02 if key == "lime" else 0.002,
            )
        )
    return checks


CHECKS: list[Check] = [
    *_row_checks(),
    *_refuse_checks(),
    *_spread_checks(),
    *_whole_checks(),
    *_juice_checks(),
    Check(
        "fruit",
        "lemon of 2.130 in, 3.88 oz, against the published 2-1/8 in as purchased",
        _SIZE_TABLE,
        Mark.READ,
        3.88 * 28.349523125,
        later(handbook.mass_from_count, "lemon", Decimal(1), "medium"),
        "g",
        2,
    ),
    Check(
        "fruit",
        "lemon of 2.410 in, 5.57 oz, against the published 2-3/8 in as purchased",
        _SIZE_TABLE,
        Mark.READ,
        5.57 * 28.349523125,
        later(handbook.mass_from_count, "lemon", Decimal(1), "large"),
        "g",
        2,
    ),
    Check(
        "fruit",
        "21 US cups from a case of 115 lemons of 2.410 in: juice of one large lemon, within a tenth",
        _SIZE_TABLE,
        Mark.READ,
        21 * 236.5882365 / 115,
        lambda: float(handbook.expected_juice("lemon", Decimal(1), size="large").volume_ml),
        "mL",
        4.3,
    ),
    Check(
        "fruit",
        "orange: juice of one medium",
        _CITRUS_PAGE,
        Mark.READ,
        (236.5882365 / 4, 236.5882365 / 2),
        later(_juice_ml, "orange"),
        "mL",
    ),
    Check(
        "fruit",
        "an orange bought by the pound: price of the edible part alone is too low by the refuse",
        _ERS + "; refuse 27 % by SR28",
        Mark.READ,
        0.27,
        lambda: float(
            1
            - Decimal("1.2131")
            / Decimal("453.59237")
            * 131
            / handbook.price_per_fruit("orange", Decimal("1.2131") / Decimal("0.45359237"))
        ),
        "share",
        1e-9,
    ),
]
