"""Undo and restore a change of settings."""

from __future__ import annotations

from typing import Any

from bot.work.context import Context
from bot.work.people import bars
from bot.work.standing import Details, Value


def _read(context: Context, details: Details) -> Details:
    return bars.values_now(context, details["before"])


def take_back_unchanged(context: Context, details: Details) -> None:
    """Restore the settings that were not changed later."""
    now = _read(context, details)
    same = {name: old for name, old in details["before"].items() if now[name] == details["after"][name]}
    if same:
        _write(context, details, same)


def _write(context: Context, details: Details, values: Details) -> None:
    bars.change_unlogged(context, **{name: _tuples(value) for name, value in values.items()})


def _tuples(value: Any) -> Any:
    """Return a value as the settings hold it: the log stores tuples as lists."""
    if not isinstance(value, list):
        return value
    return tuple(tuple(one) if isinstance(one, list) else one for one in value)


SETTINGS = Value(_read, _write)
