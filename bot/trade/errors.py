"""Errors of the trade rules: they carry data, and only the chat turns them into words."""

from __future__ import annotations

from dataclasses import dataclass


class TradeError(Exception):
    """A rule of the trade cannot answer with what it was given."""


@dataclass
class OutOfRangeError(TradeError):
    """A quantity lies outside the range in which the rule holds.

    `quantity` is its plain name, `value` what was given, `low` and `high` the
    range (None where open), `unit` the unit of all three.
    """

    quantity: str
    value: float
    low: float | None
    high: float | None
    unit: str
