"""One thing that `doctor` looked at."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Finding:
    """One thing examined: whether it is well, what was found, and what to do."""

    good: bool
    what: str
    remedy: str = ""
