"""Fixtures of the storage tests."""

from tests.storage.filled import demo_file, filled, place

__all__ = ["demo_file", "filled", "place"]
