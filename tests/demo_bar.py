"""The demo bar for conversations, always on the same evening."""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager
from datetime import UTC, datetime
from pathlib import Path

from bot.chat.reply.message import Place
from bot.demo import filling
from storage import migrate
from storage.store import Store
from tests.house import CHANNEL, Hands, House, Person, Room

EVENING = datetime(2026, 11, 25, 19, 30, tzinfo=UTC)


@contextmanager
def demo_bar(folder: Path) -> Iterator[Person]:
    """Fill the demo bar in its own database; yields its owner, Robin."""
    store = Store(f"sqlite:///{folder / 'demo.sqlite'}")
    migrate.upgrade(store)
    clock = Hands(EVENING)
    filling.fill(store, clock, CHANNEL, "Robin")
    house = House(store, clock)
    robin = house.person("Robin")
    house.rooms["private robin"] = Room(Place(f"{CHANNEL} robin", True))
    try:
        yield robin
    finally:
        house.close()
