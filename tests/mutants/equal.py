"""The faults that change nothing a person or a rule could notice, each with its reason."""

from __future__ import annotations

from tests.mutants.changes import Change

# module, function or name, before, after: why it is the same
EQUAL: dict[tuple[str, str, str, str], str] = {
    ("bot/trade/liquids/sucrose.py", "_ICUMSA", "1.1597", now): "moves no density by 0.01 kg/m3"
    for now in ("1.182894", "1.136506")
}


def is_equal(change: Change) -> bool:
    """Whether a fault is known to change nothing."""
    return (change.path, change.place, change.was, change.now) in EQUAL
