"""Suppress the warnings that reference libraries raise about themselves."""

from __future__ import annotations

import warnings
from collections.abc import Iterator
from contextlib import contextmanager


@contextmanager
def quiet_library() -> Iterator[None]:
    """Load a library's data without turning its warnings into failures.

    `thermo` leaves one data file open when CoolProp is installed beside it, as it is for the tests, and
    `chemicals` reads its tables through a call that pandas is about to drop.
    """
    with warnings.catch_warnings():
        warnings.simplefilter("ignore")
        yield
