"""Measurements: python -m tests.bench."""
