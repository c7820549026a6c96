"""Spray pumps: Student's t, the trade's figures, the scale needed, and the nasal-spray criterion."""

from __future__ import annotations

from collections.abc import Callable
from functools import partial

from bot.trade.numbers.ranges import Range
from bot.trade.numbers.student_t import two_sided_quantile
from bot.trade.spray.sprayers import (
    DENSITY_SHARE,
    ML_PER_SPRAY_PRACTICE,
    PRIMING_SPRAYS_USUAL,
    SPRAYS_PER_DRINK_PRACTICE,
    USUAL_PUMPS_ML,
    Weighing,
    calibrate,
    drift,
    drinks_per_bottle,
    evenness,
)
from tests.outside.check import Check, Mark
from tests.outside.quiet import quiet_library

_USP = "USP 29 <601>, nasal sprays, delivered-dose uniformity"
_PRACTICE = "common practice, no source"


def _against_scipy(degrees: int, confidence: float) -> Callable[[], float]:
    def got() -> float:
        from scipy.stats import t  # noqa: PLC0415 - an oracle for tests only

        return two_sided_quantile(confidence, degrees) / float(t.ppf((1 + confidence) / 2, degrees)) - 1

    return got


def _table(degrees: int) -> Callable[[], float]:
    return lambda: two_sided_quantile(0.95, degrees)


def _scale_error(step_g: float) -> Callable[[], float]:
    def got() -> float:
        # 20 strokes of 0.1 mL of a mix of 0.88 g/mL take 1.76 g.
        error = calibrate([Weighing(100.0, 98.24, 20)], 0.88, step_g).scale_error_percent
        assert error is not None
        return error

    return got


def _doses(outside_80: int, of: int = 20) -> Callable[[], str]:
    # Half of the doses outside are high and half low, so the mean stays at the label claim.
    doses = [1.22 if place % 2 else 0.78 for place in range(outside_80)] + [1.0] * (of - outside_80)
    return lambda: evenness(doses, 1.0).value


def _interval_half(*outputs: float) -> float:
    """Half the interval of runs of 20 sprays of a mix of 0.88 g/mL on a scale that shows 0.1 g."""
    runs = [Weighing(150.0, 150.0 - 20 * 0.88 * ml, 20) for ml in outputs]
    found = calibrate(runs, 0.88, 0.1).interval_95_ml
    assert found is not None
    return (found.high - found.low) / 2


def _guide_half(*outputs: float) -> float:
    with quiet_library():
        from scipy import stats  # noqa: PLC0415 - an oracle for tests only

        count = len(outputs)
        runs = stats.t.ppf(0.975, count - 1) * stats.sem(outputs)
        # A reading rounded to the step is even over it: variance step^2 / 12, a difference twice that.
        rounded = stats.norm.ppf(0.975) * stats.uniform(scale=0.1).std() * 2**0.5 / (20 * 0.88) / count**0.5
        density = stats.norm.ppf(0.975) * DENSITY_SHARE * sum(outputs) / count
    return float((runs**2 + rounded**2 + density**2) ** 0.5)


def _drifts(*outputs: float) -> str:
    return "a drift" if drift(outputs) is not None else "chance"


def _drifts_by_library(*outputs: float) -> str:
    with quiet_library():
        from scipy import stats  # noqa: PLC0415 - an oracle for tests only

        found = stats.linregress(range(len(outputs)), outputs)
    return "a drift" if found.pvalue < 0.05 else "chance"


_FALLING, _LEVEL = (0.110, 0.107, 0.103, 0.101, 0.097), (0.10, 0.11, 0.10, 0.11, 0.10)

CHECKS: list[Check] = [
    *(
        Check(
            "pump",
            f"half of the 95 % interval of runs {', '.join(map(str, runs))} mL, scale and density included",
            "scipy: t, uniform and normal distributions, added as the GUM does (the way from memory)",
            Mark.COMPUTED,
            partial(_guide_half, *runs),
            partial(_interval_half, *runs),
            "mL",
            2e-5,
        )
        for runs in (_FALLING, _LEVEL, (0.1, 0.1, 0.1))
    ),
    *(
        Check(
            "pump",
            f"runs of {', '.join(map(str, runs))} mL",
            "scipy: linear regression, p below 0.05",
            Mark.COMPUTED,
            partial(_drifts_by_library, *runs),
            partial(_drifts, *runs),
        )
        for runs in (_FALLING, _LEVEL)
    ),
    Check(
        "pump",
        "usual pump sizes, smallest",
        "a pump maker's page (nanshansg.com): 0.05, 0.07, 0.10 and 0.14 mL",
        Mark.READ,
        0.05,
        lambda: USUAL_PUMPS_ML.low,
        "mL",
    ),
    *(
        Check(
            "pump",
            f"Student's t, {confidence:.0%}, {degrees} degrees of freedom, relative difference",
            "scipy.stats.t.ppf",
            Mark.COMPUTED,
            0.0,
            _against_scipy(degrees, confidence),
            "",
            1e-10,
        )
        for confidence in (0.90, 0.95, 0.99)
        for degrees in (1, 2, 3, 4, 5, 9, 10, 29, 100)
    ),
    *(
        Check(
            "pump",
            f"Student's t, 95 %, {degrees} degrees of freedom",
            "NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.6.7.2, table of t",
            Mark.READ,
            expected,
            _table(degrees),
            "",
            0.0005,
        )
        for degrees, expected in ((1, 12.706), (2, 4.303), (3, 3.182), (5, 2.571), (10, 2.228), (30, 2.042))
    ),
    Check(
        "pump",
        "fine-mist spray, least",
        _PRACTICE,
        Mark.PRACTICE,
        1 / 15,
        lambda: ML_PER_SPRAY_PRACTICE.low,
        "mL",
    ),
    Check(
        "pump",
        "fine-mist spray, most",
        _PRACTICE,
        Mark.PRACTICE,
        1 / 10,
        lambda: ML_PER_SPRAY_PRACTICE.high,
        "mL",
    ),
    Check(
        "pump",
        "sprays a drink, most",
        _PRACTICE,
        Mark.PRACTICE,
        3.0,
        lambda: SPRAYS_PER_DRINK_PRACTICE.high,
    ),
    Check(
        "pump",
        "priming sprays, within 5 to 6",
        "a pump maker's page on dosage",
        Mark.READ,
        (5.0, 6.0),
        lambda: PRIMING_SPRAYS_USUAL.middle,
    ),
    Check(
        "pump",
        "50 mL, worst case 3 x 0.1 mL",
        _PRACTICE,
        Mark.PRACTICE,
        166.0,
        lambda: float(drinks_per_bottle(50.0, Range(0.1, 0.1), Range(3.0, 3.0)).fewest),
        "drinks",
    ),
    Check(
        "pump",
        "fewest drinks from a 50 mL bottle at the default sprays and spray volume",
        _PRACTICE,
        Mark.PRACTICE,
        (150.0, 1000.0),
        lambda: float(drinks_per_bottle(50.0).fewest),
        "drinks",
    ),
    Check(
        "pump",
        "20 sprays of 0.1 mL on a 0.01 g scale: below 1 %",
        "1.76 g weighed, worked apart from this program",
        Mark.APART,
        (0.0, 1.0),
        _scale_error(0.01),
        "%",
    ),
    Check(
        "pump",
        "the same on a 0.1 g scale: about 6 %",
        "1.76 g weighed, worked apart from this program",
        Mark.APART,
        6.0,
        _scale_error(0.1),
        "%",
        0.5,
    ),
    Check("pump", "2 of 20 doses outside 80 to 120 %", _USP, Mark.READ, "even", _doses(2)),
    Check("pump", "3 of 20 doses outside 80 to 120 %", _USP, Mark.READ, "doubtful", _doses(3)),
    Check("pump", "6 of 20 doses outside 80 to 120 %", _USP, Mark.READ, "doubtful", _doses(6)),
    Check("pump", "7 of 20 doses outside 80 to 120 %", _USP, Mark.READ, "uneven", _doses(7)),
    Check(
        "pump",
        "one dose outside 75 to 125 %",
        _USP,
        Mark.READ,
        "uneven",
        lambda: evenness([1.26] + [1.0] * 19, 1.0).value,
    ),
    Check(
        "pump",
        "mean below 85 % of the label claim",
        _USP,
        Mark.READ,
        "uneven",
        lambda: evenness([0.84] * 20, 1.0).value,
    ),
]
