"""Checks against sources outside this project; run as a table with python -m tests.outside.

Each module named checks_<rule>.py here holds a list CHECKS of Check.
"""

from __future__ import annotations

import importlib
import pkgutil
from collections.abc import Iterator

from tests.outside.check import Check


def all_checks() -> Iterator[Check]:
    """Yield every check of every checks_<rule> module, by rule."""
    for found in sorted(pkgutil.iter_modules(__path__), key=lambda module: module.name):
        if found.name.startswith("checks_"):
            yield from importlib.import_module(f"{__name__}.{found.name}").CHECKS
