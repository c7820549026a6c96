"""How long ago something was certain, by a clock that goes on while this process stands still."""

from __future__ import annotations

import time

# Where there is such a clock it counts the sleep of the machine as well.
_CLOCK = getattr(time, "CLOCK_BOOTTIME", time.CLOCK_MONOTONIC)


def uptime() -> float:
    """Return seconds from some fixed moment, to be subtracted from each other."""
    return time.clock_gettime(_CLOCK)
