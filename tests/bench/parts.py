"""CPU and memory of the processes that share the machine, including children."""

from __future__ import annotations

import os
from contextlib import suppress
from pathlib import Path

_CLOCK_TICKS = os.sysconf("SC_CLK_TCK")


def _stat(process: int) -> list[str]:
    """The fields of /proc/<process>/stat after the name, the first being the state; empty if it is gone."""
    with suppress(OSError):
        # The second field, the name in brackets, may contain blanks.
        return Path(f"/proc/{process}/stat").read_text().rpartition(")")[2].split()
    return []


def cpu_seconds(process: int, *, family: bool = False) -> float:
    """User and system time of a process so far; with its `family`, also of its children, ended or not.

    0 without /proc.
    """
    found = _stat(process)
    if not found:
        return 0.0
    ticks = sum(int(one) for one in found[11 : 15 if family else 13])
    if family:
        for place in Path("/proc").glob("[0-9]*"):
            other = _stat(int(place.name))
            if other and int(other[1]) == process:
                ticks += int(other[11]) + int(other[12])
    return ticks / _CLOCK_TICKS


def resident_mib(process: int) -> float | None:
    """Resident memory of a process in MiB, None without /proc."""
    with suppress(OSError):
        for line in Path(f"/proc/{process}/status").read_text().splitlines():
            if line.startswith("VmRSS:"):
                return int(line.split()[1]) / 1024
    return None


def machine() -> str:
    """The size of this machine, for readers of the figures."""
    memory = ""
    with suppress(OSError):
        kilobytes = int(Path("/proc/meminfo").read_text().split()[1])
        memory = f", {kilobytes / 1024 / 1024:.0f} GB of memory"
    name = ""
    with suppress(OSError):
        lines = Path("/proc/cpuinfo").read_text().splitlines()
        mhz = [line.partition(":")[2].strip() for line in lines if line.startswith("cpu MHz")]
        name = f" at {float(mhz[0]) / 1000:.1f} GHz" if mhz else ""
    return f"{os.cpu_count()} cores{name}{memory}"
