"""Monotonic time, including suspend, for the age of a lease."""

from __future__ import annotations

import time

# The clock includes suspend where the system has such a clock; Windows has none of these calls.
_CLOCK: int | None = getattr(time, "CLOCK_BOOTTIME", getattr(time, "CLOCK_MONOTONIC", None))


def uptime() -> float:
    """Return seconds since a fixed moment, for differences."""
    return time.monotonic() if _CLOCK is None else time.clock_gettime(_CLOCK)
