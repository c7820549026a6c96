"""Oracle libraries that warn about themselves: their warnings are theirs, not ours."""

from __future__ import annotations

import warnings
from collections.abc import Iterator
from contextlib import contextmanager


@contextmanager
def quiet_library() -> Iterator[None]:
    """Let a library load its data without its own warnings counting as our failures.

    `thermo` leaves one data file open when CoolProp is installed beside it, as it
    is for the tests, and `chemicals` reads its tables through a call that pandas
    is about to drop.
    """
    with warnings.catch_warnings():
        warnings.simplefilter("ignore")
        yield
