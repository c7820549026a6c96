"""Tests that a read-only unit keeps nothing, and raises an error instead of losing rows."""

from __future__ import annotations

import pytest

from storage.store import Store
from storage.tables import Counter
from storage.unit import ReadOnlyError


def test_a_reading_unit_refuses_new_rows(store: Store) -> None:
    with store.reading() as unit, pytest.raises(ReadOnlyError):
        unit.bar(1).add(Counter(name="x", value=1))
