"""Limit the work that a piece of a test may do, by its calls: the same number on every machine."""

from __future__ import annotations

import sys
from collections.abc import Iterator
from contextlib import contextmanager
from types import FrameType


@contextmanager
def at_most_calls(most: int) -> Iterator[None]:
    """Fail as soon as the block has called more functions, of Python and of C, in this thread.

    The steps within one call of C do not count: neither a regular expression's nor an array's.
    """
    count = 0

    def counted(_frame: FrameType, event: str, _of: object) -> None:
        nonlocal count
        count += event in {"call", "c_call"}
        if count > most:
            raise AssertionError(f"more than {most:,} calls")

    before = sys.getprofile()
    sys.setprofile(counted)
    try:
        yield
    finally:
        sys.setprofile(before)
    # The block may have caught the error.
    assert count <= most, f"more than {most:,} calls"
