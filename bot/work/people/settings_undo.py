"""Undo a change of settings."""

from __future__ import annotations

from bot.work.context import Context
from bot.work.people import bars
from storage.types import JsonObject


def take_back(context: Context, details: JsonObject) -> None:
    """Restore the previous values."""
    before = {
        name: tuple(tuple(one) if isinstance(one, list) else one for one in value)
        if isinstance(value, list)
        else value
        for name, value in details["before"].items()
    }
    bars.change(context, **before)
