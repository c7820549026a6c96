"""Undo of a change of settings."""

from __future__ import annotations

from typing import Any

from bot.work.context import Desk
from bot.work.people import bars


def take_back(desk: Desk, details: dict[str, Any]) -> None:
    """Set what was changed back to what it was before."""
    before = {
        name: tuple(tuple(one) if isinstance(one, list) else one for one in value)
        if isinstance(value, list)
        else value
        for name, value in details["before"].items()
    }
    bars.change(desk, **before)
