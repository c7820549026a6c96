"""The result of one check of `doctor`."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Finding:
    """The result of one check: whether it passed, what was found, and advice."""

    good: bool
    what: str
    remedy: str = ""
