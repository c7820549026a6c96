"""Output of a sprayer in mL per spray, measured by weighing, and drinks per bottle."""

from __future__ import annotations

import math
import statistics
from collections.abc import Sequence
from dataclasses import dataclass
from enum import StrEnum

from bot.trade.errors import OutOfRangeError, TradeError
from bot.trade.numbers.ranges import Range
from bot.trade.numbers.student_t import two_sided_quantile

# Defaults for a fine-mist sprayer before it is weighed, and for sprays per drink: common practice, no source.
ML_PER_SPRAY_PRACTICE: Range[float] = Range(1 / 15, 1 / 10)
SPRAYS_PER_DRINK_PRACTICE: Range[float] = Range(2.0, 3.0)

# Sprays needed to prime a dry pump: 5 to 6, a pump maker's page (read).
PRIMING_SPRAYS_USUAL: Range[float] = Range(5.0, 6.0)

COARSE_SCALE_PERCENT = 5.0

# Standard uncertainty of a mix's density, as a share: what oils of one name differ by, and some degrees.
# Common practice, no source.
DENSITY_SHARE = 0.005
# A drift counts from this change over the runs, as a share of the mean, and if chance is unlikely to make it.
_DRIFT_SHARE = 0.03
_RUNS_TO_SEE_DRIFT = 4
_NORMAL_95 = 1.96

# Usual pumps give one of these, mL; a pump maker's page (read).
USUAL_PUMPS_ML: Range[float] = Range(0.05, 0.14)


class NoWeighingError(TradeError):
    """No run is left after removing the priming runs."""


@dataclass(frozen=True, slots=True)
class Weighing:
    """One run: the bottle's mass before and after a number of sprays, in grams.

    `priming` marks a run made only to fill the pump; it is not counted. Raises OutOfRangeError without a
    counted spray, or when the bottle did not get lighter.
    """

    mass_before_g: float
    mass_after_g: float
    sprays: int
    priming: bool = False

    def __post_init__(self) -> None:
        if self.sprays < 1:
            raise OutOfRangeError("sprays", self.sprays, 1, None, "")
        if not 0 <= self.mass_after_g < self.mass_before_g < math.inf:
            raise OutOfRangeError("mass after", self.mass_after_g, 0, self.mass_before_g, "g")

    @property
    def mass_sprayed_g(self) -> float:
        """The mass that left the bottle, in grams."""
        return self.mass_before_g - self.mass_after_g


@dataclass(frozen=True, slots=True)
class PumpOutput:
    """The measured output of one sprayer.

    `ml_per_spray` is the mean of the runs, `standard_deviation_ml` their spread and `interval_95_ml` the 95 %
    interval of the mean, scale and density included, both None with a single run. `scale_error_percent` is
    the largest error that the scale's step can cause in a run, None when the step was not given;
    `scale_too_coarse` is set when it passes 5 %. `drift_share` is the change from the first run to the last,
    as a share of the mean, None if chance may explain it.
    """

    ml_per_spray: float
    runs_ml: tuple[float, ...]
    standard_deviation_ml: float | None
    interval_95_ml: Range[float] | None
    scale_error_percent: float | None
    drift_share: float | None = None

    @property
    def scale_too_coarse(self) -> bool:
        """Whether the scale's step alone can cause an error above 5 % in a run."""
        return self.scale_error_percent is not None and self.scale_error_percent > COARSE_SCALE_PERCENT


def calibrate(
    runs: Sequence[Weighing], density_g_per_ml: float, scale_step_g: float | None = None
) -> PumpOutput:
    """Return a sprayer's output in mL per spray from runs of weighed sprays.

    Each run gives mass / (sprays x density); all runs have equal weight. The mix's density is in g/mL, the
    scale's step (the last figure it shows) in g. The interval adds three parts as squares, the way of the
    GUM (from memory): t s / sqrt(n) with Student's t at 95 %, the rounding of the scale (a difference of two
    readings spreads by step / sqrt(6)) and the density (DENSITY_SHARE), both at 1.96. Raises NoWeighingError
    when every run is a priming run, OutOfRangeError for a density or step that is not above zero. Method:
    common practice, the idea of a spray-weight test.
    """
    if not 0 < density_g_per_ml < math.inf:
        raise OutOfRangeError("density", density_g_per_ml, 0, None, "g/mL")
    if scale_step_g is not None and not 0 < scale_step_g < math.inf:
        raise OutOfRangeError("scale step", scale_step_g, 0, None, "g")
    counted = [run for run in runs if not run.priming]
    if not counted:
        raise NoWeighingError
    outputs = tuple(run.mass_sprayed_g / (run.sprays * density_g_per_ml) for run in counted)
    mean = statistics.fmean(outputs)
    spread: float | None = None
    interval: Range[float] | None = None
    if len(outputs) > 1:
        spread = statistics.stdev(outputs)
        runs_half = two_sided_quantile(0.95, len(outputs) - 1) * spread / math.sqrt(len(outputs))
        step_ml = [(scale_step_g or 0.0) / (run.sprays * density_g_per_ml) for run in counted]
        scale_half = _NORMAL_95 * math.sqrt(sum(step**2 for step in step_ml) / 6) / len(outputs)
        half = math.hypot(runs_half, scale_half, _NORMAL_95 * DENSITY_SHARE * mean)
        interval = Range(mean - half, mean + half)
    error = None
    if scale_step_g is not None:
        error = 100 * scale_step_g / min(run.mass_sprayed_g for run in counted)
    return PumpOutput(mean, outputs, spread, interval, error, drift(outputs))


def drift(outputs: Sequence[float]) -> float | None:
    """Return the change from the first run to the last as a share of the mean, None if it may be chance.

    Least squares over the runs in order; it counts where the slope differs from zero at 95 % (Student's t)
    and the change is 3 % of the mean or more. Needs four runs.
    """
    count = len(outputs)
    if count < _RUNS_TO_SEE_DRIFT:
        return None
    slope, start = statistics.linear_regression(range(count), outputs)
    left = sum((output - start - slope * i) ** 2 for i, output in enumerate(outputs))
    error = math.sqrt(left / (count - 2) / (count * (count**2 - 1) / 12))
    share = slope * (count - 1) / statistics.fmean(outputs)
    if abs(share) < _DRIFT_SHARE or abs(slope) <= two_sided_quantile(0.95, count - 2) * error:
        return None
    return share


def sprays_to_weigh(ml_per_spray: float, density_g_per_ml: float, scale_step_g: float) -> int:
    """Return the fewest sprays per run that keep the error of the scale's step within 5 %.

    Volumes in mL, density in g/mL, step in g, all above zero (else OutOfRangeError).
    """
    for name, value, unit in (
        ("spray", ml_per_spray, "mL"),
        ("density", density_g_per_ml, "g/mL"),
        ("scale step", scale_step_g, "g"),
    ):
        if not 0 < value < math.inf:
            raise OutOfRangeError(name, value, 0, None, unit)
    sprays = scale_step_g / (ml_per_spray * density_g_per_ml * COARSE_SCALE_PERCENT / 100)
    # A quotient of 1000 sprays slightly too high in binary must not become 1001.
    return max(1, math.ceil(sprays * (1 - 1e-12)))


def spray_ml_per_drink(ml_per_spray: Range[float], sprays_per_drink: Range[float]) -> Range[float]:
    """Return the mL of mix per drink, from the least to the most."""
    return ml_per_spray * sprays_per_drink


@dataclass(frozen=True, slots=True)
class DrinksPerBottle:
    """Whole drinks from one bottle: the fewest and the most (None when the smallest dose is zero)."""

    fewest: int
    most: int | None


def drinks_per_bottle(
    bottle_ml: float,
    ml_per_spray: Range[float] = ML_PER_SPRAY_PRACTICE,
    sprays_per_drink: Range[float] = SPRAYS_PER_DRINK_PRACTICE,
    priming_sprays: int = 0,
) -> DrinksPerBottle:
    """Return how many whole drinks a bottle garnishes, as a range.

    The fewest goes with the largest spray, the most sprays a drink and the
    priming sprays lost at that size; the most with the smallest. Volumes in mL.
    Raises OutOfRangeError for a bottle or a dose that is not above zero, or
    negative priming.
    """
    if not 0 < bottle_ml < math.inf:
        raise OutOfRangeError("bottle", bottle_ml, 0, None, "mL")
    if priming_sprays < 0:
        raise OutOfRangeError("priming sprays", priming_sprays, 0, None, "")
    per_drink = spray_ml_per_drink(ml_per_spray, sprays_per_drink)
    if not 0 <= per_drink.low <= per_drink.high < math.inf or per_drink.high == 0:
        raise OutOfRangeError("spray per drink", per_drink.high, 0, None, "mL")
    fewest = _whole((bottle_ml - priming_sprays * ml_per_spray.high) / per_drink.high)
    most = None
    if per_drink.low > 0:
        most = _whole((bottle_ml - priming_sprays * ml_per_spray.low) / per_drink.low)
    return DrinksPerBottle(fewest, most)


def _whole(drinks: float) -> int:
    # 50 mL at 0.1 mL per drink must be 500 drinks although 50 / 0.1 may be slightly too low in binary.
    return max(0, math.floor(drinks * (1 + 1e-12) + 1e-9))


class Evenness(StrEnum):
    """Evenness of single sprays, by a criterion for nasal sprays."""

    EVEN = "even"
    DOUBTFUL = "doubtful"
    UNEVEN = "uneven"


def evenness(sprays_ml: Sequence[float], nominal_ml: float) -> Evenness:
    """Return how evenly a pump doses, from the volumes of single sprays against its nominal volume, in mL.

    Even: at most one spray in ten outside 80 to 120 % of nominal, none outside
    75 to 125 %, and a mean within 85 to 115 %. Doubtful: up to three in ten
    outside 80 to 120 % (weigh more sprays). Else uneven. For 20 sprays these
    are the counts of USP <601>, nasal sprays, delivered-dose uniformity, first
    tier (USP 29 text, read): a medicine's test used as a yardstick, not a
    requirement on a bar. Raises NoWeighingError without sprays and
    OutOfRangeError for a nominal volume that is not above zero.
    """
    if not sprays_ml:
        raise NoWeighingError
    if not 0 < nominal_ml < math.inf:
        raise OutOfRangeError("nominal spray", nominal_ml, 0, None, "mL")
    shares = [spray / nominal_ml for spray in sprays_ml]
    far_outside = any(not 0.75 <= share <= 1.25 for share in shares)
    if far_outside or not 0.85 <= statistics.fmean(shares) <= 1.15:
        return Evenness.UNEVEN
    outside = sum(not 0.80 <= share <= 1.20 for share in shares)
    # 2 and 6 of 20, in whole numbers to avoid rounding.
    if 20 * outside <= 2 * len(shares):
        return Evenness.EVEN
    return Evenness.DOUBTFUL if 20 * outside <= 6 * len(shares) else Evenness.UNEVEN
