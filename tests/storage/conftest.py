"""What the tests of storage share."""

from tests.storage.filled import demo_file, filled, place

__all__ = ["demo_file", "filled", "place"]
