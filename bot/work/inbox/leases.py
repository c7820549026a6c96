"""Monotonic time, including suspend, for the age of a lease."""

from __future__ import annotations

import time

# The clock includes suspend where the system has such a clock.
_CLOCK = getattr(time, "CLOCK_BOOTTIME", time.CLOCK_MONOTONIC)


def uptime() -> float:
    """Return seconds since a fixed moment, for differences."""
    return time.clock_gettime(_CLOCK)
