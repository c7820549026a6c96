"""Open a bar and act in it, for tests that call use cases directly."""

from __future__ import annotations

from datetime import UTC, datetime

from bot.trade.safety.jurisdiction import Jurisdiction
from bot.work.context import Context, Role
from bot.work.people import bars, people
from storage.unit import Unit

_NOW = datetime(2026, 11, 25, 18, tzinfo=UTC)


def opened_bar(unit: Unit, units: str) -> Context:
    """Return the context of the owner of a new bar with these units."""
    who = people.meet(unit, "test", "ana", "Ana", "en", "room", True, "")
    made = bars.open_bar(
        unit,
        who,
        "Ana",
        True,
        _NOW,
        name="The Copper Gull",
        zone="Europe/Lisbon",
        jurisdiction=Jurisdiction.EU,
        currency="EUR",
        units=units,
    )
    return Context(unit.bar(made.id), made, who.person_id or 1, "Ana", Role.OWNER, 0, _NOW, "test")
