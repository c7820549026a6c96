"""Fixtures of the storage tests."""

from tests.storage.filled import demo_database, demo_file, filled, place

__all__ = ["demo_database", "demo_file", "filled", "place"]
