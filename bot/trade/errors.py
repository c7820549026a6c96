"""Errors of the trade rules; they carry data, and the chat turns them into words."""

from __future__ import annotations

from dataclasses import dataclass


class TradeError(Exception):
    """A trade rule cannot give an answer for its input."""


@dataclass
class OutOfRangeError(TradeError):
    """A quantity is outside the range in which the rule holds.

    `quantity` is its plain name, `value` the value given, `low` and `high` the range (None where open),
    `unit` the unit of all three.
    """

    quantity: str
    value: float
    low: float | None
    high: float | None
    unit: str
