"""The output of a bar's sprayers, from their weighings."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction

from bot.trade.spray.sprayers import Evenness, PumpOutput, Weighing, calibrate, evenness
from bot.work.context import Context
from storage.tables import FormulaSprayer, Sprayer, SprayerRun

# With three runs or more the confidence interval is narrow enough to use; below that, the range of the runs.
_RUNS_FOR_INTERVAL = 3
# The criterion is for single sprays; fewer than this say nothing about evenness.
_SINGLE_SPRAYS_TO_JUDGE = 10
_PLACES = 7


@dataclass(frozen=True, slots=True)
class Sprayed:
    """The output of one spray of a sprayer, mL low and high, and the sprayer's name."""

    sprayer: str
    ml: tuple[Fraction, Fraction]


def runs_of(context: Context, sprayer_id: int) -> Sequence[SprayerRun]:
    """Return the valid weighings of a sprayer, oldest first."""
    return context.book.all(
        SprayerRun,
        SprayerRun.sprayer_id == sprayer_id,
        SprayerRun.undone_at.is_(None),
        order=SprayerRun.id,
    )


def output_of(runs: Sequence[SprayerRun]) -> PumpOutput | None:
    """Return the output from the runs without priming; None if no run counts.

    Runs may have been made with different mixes, so each is first converted to mL by its own density.
    """
    counted = [run for run in runs if not run.priming]
    if not counted:
        return None
    weighings = [
        Weighing(
            float(run.before_g / run.density_g_per_ml), float(run.after_g / run.density_g_per_ml), run.sprays
        )
        for run in counted
    ]
    step = max(run.step_g / run.density_g_per_ml for run in counted)
    return calibrate(weighings, 1.0, float(step))


def reckoned_ml(output: PumpOutput) -> tuple[Fraction, Fraction]:
    """Return the range to compute with: the 95 % interval from three runs on, else the range of the runs."""
    interval = output.interval_95_ml
    if len(output.runs_ml) >= _RUNS_FOR_INTERVAL and interval is not None and interval.low > 0:
        low, high = interval.low, interval.high
    else:
        low, high = min(output.runs_ml), max(output.runs_ml)
    return _exact(low), _exact(high)


def _exact(ml: float) -> Fraction:
    return max(Fraction(str(round(ml, _PLACES))), Fraction(1, 10**_PLACES))


def evenness_of(runs: Sequence[SprayerRun]) -> Evenness | None:
    """Return the evenness of single sprays; None if fewer than ten were weighed one by one."""
    single = [
        float((run.before_g - run.after_g) / run.density_g_per_ml)
        for run in runs
        if run.sprays == 1 and not run.priming
    ]
    if len(single) < _SINGLE_SPRAYS_TO_JUDGE:
        return None
    return evenness(single, sum(single) / len(single))


def sprayed_by(context: Context, formula_id: int) -> Sprayed | None:
    """Return the output for a formula by its own sprayer, else by the bar's; None if not weighed."""
    own = context.book.get(FormulaSprayer, formula_id)
    number = context.bar.settings.sprayer if own is None else own.sprayer_id
    row = context.book.get(Sprayer, number) if number else None
    if row is None or row.archived_at is not None:
        return None
    output = output_of(runs_of(context, row.id))
    return None if output is None else Sprayed(row.name, reckoned_ml(output))
