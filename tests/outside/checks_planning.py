"""The newsvendor's par against published examples, one of them wrong, and scipy for the quantiles."""

from __future__ import annotations

from decimal import Decimal
from fractions import Fraction

from scipy import stats

from bot.trade.planning.fruit_par import (
    critical_fractile,
    discrete_par,
    fractile_from_prices,
    normal_par,
    normal_par_interval,
    poisson_par,
    uniform_par,
)
from tests.outside.check import Check, Mark

_COURSE = "course notes on the newsboy model: F(Q*) = cu / (cu + co)"
_CALCULATOR = "a public calculator's test text: price 7, cost 5"
_QUESTION_40 = (
    "published exercise: demand N(1000, 200), profit 40, loss 10 a unit; answer by scipy.stats.norm"
)
_QUESTION_30 = (
    "published exercise: demand N(1000, 200), profit 30, loss 20 a unit; answer by scipy.stats.norm"
)
_QUESTION_60 = "published exercise: demand N(80, 30), profit 60, loss 110 a unit; answer by scipy.stats.norm"
_QUESTION_14 = "published exercise: price 20, purchase 14, salvage 5"
_VENDOR = "published exercise: a paper costs 25, sells at 85 and is returned at 5 cents"
_BEER = "published exercise: shortage 2, left over 1 a case; demand 10 to 50 with 0.2, 0.3, 0.3, 0.1, 0.1"
_NOTES = "public notes on the discrete newsvendor: price 10, cost 4, salvage 1, six weeks; answer 14"
_HALF = "a public description of the newsvendor model: price 2, cost 1, demand N(1000, 200); answer 1000"


def _fractile(under: str, over: str) -> Fraction:
    return critical_fractile(Decimal(under), Decimal(over))


def _prices(price: str, cost: str, salvage: str = "0") -> Fraction:
    return fractile_from_prices(Decimal(price), Decimal(cost), Decimal(salvage))


def _avoids_published_sign_error() -> str:
    par = normal_par(80, 30, _fractile("60", "110"))
    # The published 92.6 adds 0.42 standard deviations although the fractile is below one half.
    return "below the mean" if par < 80 and abs(par - 92.6) > 20 else "as published"


_FRIDAYS = [31, 44, 28, 39, 52, 35, 41, 47, 30, 38, 36, 49]
_MEAN, _DEVIATION = float(sum(_FRIDAYS)) / 12, float(stats.tstd(_FRIDAYS))
_SHIFT = float(stats.norm.ppf(0.75)) * 12**0.5


def _exact_end(share: float) -> float:
    return _MEAN + _DEVIATION * float(stats.nct.ppf(share, 11, _SHIFT)) / 12**0.5


CHECKS: list[Check] = [
    Check(
        "planning",
        "fractile of price 7, cost 5",
        _CALCULATOR,
        Mark.READ,
        2 / 7,
        lambda: float(_prices("7", "5")),
        "",
        1e-12,
    ),
    Check(
        "planning",
        "par for N(50, 20), price 7, cost 5",
        _CALCULATOR,
        Mark.READ,
        38.68,
        lambda: normal_par(50, 20, _prices("7", "5")),
        "units",
        0.005,
    ),
    Check(
        "planning",
        "par for demand spread evenly from 50 to 80, price 7, cost 5",
        "50 + 2/7 x 30; " + _COURSE,
        Mark.APART,
        58.571428571,
        lambda: uniform_par(50, 80, _prices("7", "5")),
        "units",
        1e-6,
    ),
    Check(
        "planning",
        "fractile of profit 40, loss 10",
        _QUESTION_40,
        Mark.APART,
        0.8,
        lambda: float(_fractile("40", "10")),
        "",
        1e-12,
    ),
    Check(
        "planning",
        "par for N(1000, 200), profit 40, loss 10",
        _QUESTION_40,
        Mark.COMPUTED,
        float(stats.norm.ppf(0.8, 1000, 200)),
        lambda: normal_par(1000, 200, _fractile("40", "10")),
        "units",
        0.001,
    ),
    Check(
        "planning",
        "par for N(1000, 200), profit 30, loss 20",
        _QUESTION_30,
        Mark.COMPUTED,
        float(stats.norm.ppf(0.6, 1000, 200)),
        lambda: normal_par(1000, 200, _fractile("30", "20")),
        "units",
        0.001,
    ),
    Check(
        "planning",
        "par for N(80, 30), profit 60, loss 110",
        _QUESTION_60,
        Mark.COMPUTED,
        float(stats.norm.ppf(60 / 170, 80, 30)),
        lambda: normal_par(80, 30, _fractile("60", "110")),
        "units",
        0.001,
    ),
    Check(
        "planning",
        "the same, against the published answer 92.6, which has the sign of z wrong",
        "a question-and-answer page: fractile 0.35, z 0.3853, Q 92.6",
        Mark.READ,
        "below the mean",
        _avoids_published_sign_error,
    ),
    Check(
        "planning",
        "fractile of price 20, purchase 14, salvage 5",
        _QUESTION_14 + "; 6 / 15",
        Mark.APART,
        0.4,
        lambda: float(_prices("20", "14", "5")),
        "",
        1e-12,
    ),
    Check(
        "planning",
        "par for demand spread evenly from 80 to 150 at that fractile",
        _QUESTION_14 + "; 80 + 0.4 x 70",
        Mark.APART,
        108.0,
        lambda: uniform_par(80, 150, _prices("20", "14", "5")),
        "units",
        1e-9,
    ),
    Check(
        "planning",
        "par for N(115, 15) at that fractile",
        _QUESTION_14 + "; scipy.stats.norm",
        Mark.COMPUTED,
        float(stats.norm.ppf(0.4, 115, 15)),
        lambda: normal_par(115, 15, _prices("20", "14", "5")),
        "units",
        1e-6,
    ),
    Check(
        "planning",
        "par for N(115, 5) at that fractile",
        _QUESTION_14 + "; scipy.stats.norm",
        Mark.COMPUTED,
        float(stats.norm.ppf(0.4, 115, 5)),
        lambda: normal_par(115, 5, _prices("20", "14", "5")),
        "units",
        1e-6,
    ),
    Check(
        "planning",
        "fractile of a newspaper",
        _VENDOR + "; 60 / 80",
        Mark.APART,
        0.75,
        lambda: float(_prices("85", "25", "5")),
        "",
        1e-12,
    ),
    Check(
        "planning",
        "par for N(1000, 200), price 2, cost 1",
        _HALF,
        Mark.READ,
        1000.0,
        lambda: normal_par(1000, 200, _prices("2", "1")),
        "units",
        1e-6,
    ),
    Check(
        "planning",
        "par for cases of beer, fractile 2/3",
        _BEER + "; 0.2 + 0.3 + 0.3 is the first to reach it",
        Mark.APART,
        30.0,
        lambda: float(discrete_par({10: 2, 20: 3, 30: 3, 40: 1, 50: 1}, _fractile("2", "1"))),
        "cases",
        0,
    ),
    Check(
        "planning",
        "par from six weeks, where 4 of 6 must reach 6/9 exactly",
        _NOTES,
        Mark.READ,
        14.0,
        lambda: float(discrete_par({10: 1, 12: 1, 14: 2, 16: 1, 20: 1}, _prices("10", "4", "1"))),
        "units",
        0,
    ),
    Check(
        "planning",
        "par for Poisson demand of 9.5, fractile 0.8",
        "scipy.stats.poisson",
        Mark.COMPUTED,
        float(stats.poisson.ppf(0.8, 9.5)),
        lambda: float(poisson_par(9.5, Fraction(4, 5))),
        "fruit",
        0,
    ),
    Check(
        "planning",
        "par for Poisson demand of 120, fractile 0.95",
        "scipy.stats.poisson",
        Mark.COMPUTED,
        float(stats.poisson.ppf(0.95, 120)),
        lambda: float(poisson_par(120, Fraction(19, 20))),
        "fruit",
        0,
    ),
    Check(
        "planning",
        "four-in-five interval of a normal par from twelve days, lower end",
        "exact non-central t, scipy.stats.nct",
        Mark.COMPUTED,
        _exact_end(0.1),
        lambda: normal_par_interval(_FRIDAYS, Fraction(3, 4))[0],
        "fruit",
        1.0,
    ),
    Check(
        "planning",
        "four-in-five interval of a normal par from twelve days, upper end",
        "exact non-central t, scipy.stats.nct",
        Mark.COMPUTED,
        _exact_end(0.9),
        lambda: normal_par_interval(_FRIDAYS, Fraction(3, 4))[1],
        "fruit",
        1.0,
    ),
]
