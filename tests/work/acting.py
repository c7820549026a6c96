"""Call use cases as a person of a bar."""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager

from bot.work.context import Context
from bot.work.people import people
from tests.house import CHANNEL, House


@contextmanager
def acting(house: House, name: str = "Ana") -> Iterator[Context]:
    """Yield the context of a person in their bar, within one transaction."""
    key = name.casefold()
    with house.store.writing() as unit:
        presence = people.find(unit, CHANNEL, key, f"private {key}", True)
        room = house.room(None, house.person(name))
        yield presence.context(unit, house.clock.now(), house.next_key(room))
