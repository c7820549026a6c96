"""Acidity of juices against the literature, and the arithmetic of acid equivalents."""

from __future__ import annotations

from decimal import Decimal

from bot.trade.fruit.acidity import (
    AcidRecipe,
    CitricForm,
    acid_to_add,
    acidity,
    outcome,
    readings,
    rule_of_thumb,
)
from bot.trade.fruit.acidity_table import Juice, citric_equivalents
from tests.outside.check import Check, Mark

_PENNISTON = "Penniston et al. 2008, J Endourol 22, 567 (abstract: 1.44 and 1.38 g/oz, an ounce of 30 mL)"
_TABLE = "Penniston et al. 2008, table as quoted on a public page"
_KARADENIZ = "Karadeniz 2004, Turk J Agric For 28, 267-271, abstract"
_RANDHAWA = "Randhawa et al. 2014, J Anim Plant Sci 24, 211-215, abstract"
_NOUR = "Nour et al. 2010, Not Bot Horti Agrobo 38, 44-48, abstract: citric acid of ten citrus juices"
_TRADE_TABLE = "a fruit-juice trader's table of acid conversions (anhydrous citric acid = 1)"
_SPEC = "US Commercial Item Description A-A-20144B: lemon juice, anhydrous citric acid at least 5.0 g/100 mL"


def _citric_mean(juice: Juice, place: int) -> float:
    return float(readings(juice)[place].citric.middle)


def _missing(source: Juice, measured: str, target: Juice) -> float:
    added = acid_to_add(Decimal(1000), acidity(source, Decimal(measured)), acidity(target), Decimal(1))
    return float(added.citric_g)


def _thumb_ends(measured: str) -> float:
    recipe = rule_of_thumb(Juice.ORANGE, Juice.LIME) or AcidRecipe(Decimal(0), Decimal(0))
    start = acidity(Juice.ORANGE, Decimal(measured))
    return float(outcome(Decimal(1000), start, acidity(Juice.LIME), recipe).ends_at_g_per_l.low)


def _equivalents_by_titration(citric_g: str, malic_g: str) -> float:
    # Base, in mol, by each acid's hydrogens: a second way to the same number.
    base = 3 * float(citric_g) / 192.124 + 2 * float(malic_g) / 134.087
    return base / 3 * 192.124


CHECKS: list[Check] = [
    Check(
        "acidity",
        "lemon, citric acid",
        _PENNISTON,
        Mark.READ,
        1.44 / 0.030,
        lambda: _citric_mean(Juice.LEMON, 0),
        "g/L",
        0.2,
    ),
    Check(
        "acidity",
        "lime, citric acid",
        _PENNISTON,
        Mark.READ,
        1.38 / 0.030,
        lambda: _citric_mean(Juice.LIME, 0),
        "g/L",
        0.2,
    ),
    Check(
        "acidity",
        "lime, one standard deviation",
        _TABLE,
        Mark.READ,
        6.86,
        lambda: float(readings(Juice.LIME)[0].citric.width / 2),
        "g/L",
        0.005,
    ),
    Check(
        "acidity",
        "lemon, one standard deviation",
        _TABLE,
        Mark.READ,
        3.82,
        lambda: float(readings(Juice.LEMON)[0].citric.width / 2),
        "g/L",
        0.005,
    ),
    Check(
        "acidity",
        "orange, fresh, citric acid",
        _TABLE,
        Mark.READ,
        9.10,
        lambda: _citric_mean(Juice.ORANGE, 0),
        "g/L",
        0.005,
    ),
    Check(
        "acidity",
        "orange, fresh, one standard deviation",
        _TABLE,
        Mark.READ,
        1.98,
        lambda: float(readings(Juice.ORANGE)[0].citric.width / 2),
        "g/L",
        0.005,
    ),
    Check(
        "acidity",
        "orange, ready to drink, citric acid",
        _TABLE,
        Mark.READ,
        (16.7, 16.9),
        lambda: _citric_mean(Juice.ORANGE, 1),
        "g/L",
    ),
    Check(
        "acidity",
        "grapefruit, ready to drink, citric acid",
        _TABLE,
        Mark.READ,
        25.0,
        lambda: _citric_mean(Juice.GRAPEFRUIT, 0),
        "g/L",
        0.005,
    ),
    Check(
        "acidity",
        "orange, citric acid",
        _KARADENIZ,
        Mark.READ,
        13.28,
        lambda: _citric_mean(Juice.ORANGE, 2),
        "g/L",
        0.005,
    ),
    Check(
        "acidity",
        "orange, malic acid",
        _KARADENIZ,
        Mark.READ,
        7.79,
        lambda: float(readings(Juice.ORANGE)[2].malic or 0),
        "g/L",
        0.005,
    ),
    Check(
        "acidity",
        "grapefruit, citric acid",
        _KARADENIZ,
        Mark.READ,
        19.61,
        lambda: _citric_mean(Juice.GRAPEFRUIT, 1),
        "g/L",
        0.005,
    ),
    Check(
        "acidity",
        "mandarin, citric acid",
        _KARADENIZ,
        Mark.READ,
        9.22,
        lambda: _citric_mean(Juice.MANDARIN, 0),
        "g/L",
        0.005,
    ),
    Check(
        "acidity",
        "mandarin, malic acid",
        _KARADENIZ,
        Mark.READ,
        5.29,
        lambda: float(readings(Juice.MANDARIN)[0].malic or 0),
        "g/L",
        0.005,
    ),
    Check(
        "acidity",
        "lemon, citric acid, least",
        _KARADENIZ,
        Mark.READ,
        48.54,
        lambda: float(readings(Juice.LEMON)[1].citric.low),
        "g/L",
        0.005,
    ),
    Check(
        "acidity",
        "lemon, citric acid, most",
        _KARADENIZ,
        Mark.READ,
        60.32,
        lambda: float(readings(Juice.LEMON)[1].citric.high),
        "g/L",
        0.005,
    ),
    Check(
        "acidity",
        "mandarin (Kinnow), citric acid, against the other study's mean",
        _RANDHAWA,
        Mark.READ,
        9.2592,
        lambda: _citric_mean(Juice.MANDARIN, 0),
        "g/L",
        0.1,
    ),
    Check(
        "acidity",
        "mandarin (Kinnow), malic acid, against the other study's mean",
        _RANDHAWA,
        Mark.READ,
        5.1962,
        lambda: float(readings(Juice.MANDARIN)[0].malic or 0),
        "g/L",
        0.1,
    ),
    Check(
        "acidity",
        "mildest likely juice",
        _NOUR,
        Mark.READ,
        (6.88, 73.93),
        lambda: min(float(acidity(juice).likely_g_per_l) for juice in Juice),
        "g/L",
    ),
    Check(
        "acidity",
        "sourest likely juice",
        _NOUR,
        Mark.READ,
        (6.88, 73.93),
        lambda: max(float(acidity(juice).likely_g_per_l) for juice in Juice),
        "g/L",
    ),
    Check(
        "acidity",
        "likely lemon against the least that the specification allows",
        _SPEC,
        Mark.READ,
        (50.0, 73.93),
        lambda: float(acidity(Juice.LEMON).likely_g_per_l),
        "g/L",
    ),
    Check(
        "acidity",
        "malic acid that equals 1 g of citric acid",
        _TRADE_TABLE,
        Mark.READ,
        1.047,
        lambda: float(1 / citric_equivalents(Decimal(0), Decimal(1))),
        "g",
        0.0005,
    ),
    Check(
        "acidity",
        "citric acid monohydrate that equals 1 g of anhydrous",
        _TRADE_TABLE,
        Mark.READ,
        1.094,
        lambda: float(CitricForm.MONOHYDRATE.weight),
        "g",
        0.0005,
    ),
    Check(
        "acidity",
        "citric equivalents of 32 g citric and 20 g malic acid",
        "three and two acid hydrogens",
        Mark.APART,
        _equivalents_by_titration("32", "20"),
        lambda: float(citric_equivalents(Decimal(32), Decimal(20))),
        "g",
        1e-9,
    ),
    Check(
        "acidity",
        "orange of 9.1 g/L to the measured lime",
        "45.86 - 9.10 g/L citric acid",
        Mark.APART,
        36.76,
        lambda: _missing(Juice.ORANGE, "9.10", Juice.LIME),
        "g/L",
        0.005,
    ),
    Check(
        "acidity",
        "orange of 20.72 g/L (13.28 citric, 7.79 malic) to the measured lime",
        "45.86 - 20.72 g/L",
        Mark.APART,
        25.14,
        lambda: _missing(Juice.ORANGE, "20.72", Juice.LIME),
        "g/L",
        0.005,
    ),
    Check(
        "acidity",
        "orange of 9.1 g/L with 32 g citric and 20 g malic acid",
        "rule of thumb: common practice, no source",
        Mark.PRACTICE,
        60.2,
        lambda: _thumb_ends("9.10"),
        "g/L",
        0.05,
    ),
    Check(
        "acidity",
        "orange of 20.7 g/L with 32 g citric and 20 g malic acid",
        "rule of thumb: common practice, no source",
        Mark.PRACTICE,
        71.8,
        lambda: _thumb_ends("20.72"),
        "g/L",
        0.05,
    ),
]
