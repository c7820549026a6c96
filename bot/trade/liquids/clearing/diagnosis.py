"""The order in which to look for the cause of a hazy or split batch: the cheapest and likeliest test first.

Common practice, no source; the models and the bar's own looks decide which cause is likely.
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

from bot.trade.liquids.clearing.estimate import COLD_BELOW_C
from bot.trade.words import N_


class Cause(StrEnum):
    """One possible cause, as a test that finds it."""

    REST = N_("rested long enough")
    COLD = N_("room temperature")
    STRENGTH = N_("spirit's strength")
    WATER = N_("water in glassware")
    WAX = N_("wax")
    OIL = N_("too much oil")


@dataclass(frozen=True, slots=True)
class Case:
    """What is known of a batch.

    `likely_clear` is the probability of a clear look before this batch was looked at, None without oil or an
    answer of the models. `filtered` and `thinned` tell whether it was filtered and had spirit added.
    """

    rested: bool
    split: bool
    temperature_c: float
    likely_clear: float | None
    filtered: bool = False
    thinned: bool = False


@dataclass(frozen=True, slots=True)
class Test:
    """One test, and whether what is known answers it already."""

    cause: Cause
    done: bool


_DOUBTFUL = 0.35  # below this the amounts themselves are the likeliest cause


def tests_for(case: Case) -> tuple[Test, ...]:
    """Return all tests for a batch in their order; the first that is not done is the next one."""
    if case.likely_clear is None:
        order = [Cause.REST, Cause.COLD, Cause.WAX]
    elif case.likely_clear < _DOUBTFUL:
        order = [Cause.REST, Cause.COLD, Cause.OIL, Cause.STRENGTH, Cause.WATER, Cause.WAX]
    elif case.split:
        order = [Cause.REST, Cause.COLD, Cause.STRENGTH, Cause.WATER, Cause.OIL, Cause.WAX]
    else:
        order = [Cause.REST, Cause.COLD, Cause.WAX, Cause.STRENGTH, Cause.WATER, Cause.OIL]
    done = {
        Cause.REST: case.rested,
        Cause.COLD: case.temperature_c >= COLD_BELOW_C,
        Cause.WAX: case.filtered,
        Cause.OIL: case.thinned,
    }
    return tuple(Test(cause, done.get(cause, False)) for cause in order)


def next_test(tests: tuple[Test, ...]) -> Cause:
    """Return the next test; once the others are done, the amounts, or the filter without oil."""
    return next((one.cause for one in tests if not one.done), tests[-1].cause)
