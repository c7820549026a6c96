"""The real Telegram channel in this process, at the Bot API server on loopback, its clock set by hand."""

from __future__ import annotations

from collections.abc import AsyncIterator
from dataclasses import dataclass
from datetime import UTC, datetime

import pytest

from bot.channels.telegram.channel import TelegramChannel
from bot.channels.telegram.updates import CHANNEL
from bot.settings import Secret, Settings
from bot.trade.safety.jurisdiction import Jurisdiction
from bot.work.people import bars, people
from storage.store import Store
from tests.api import Person, Server
from tests.house import Hands

SET_UP = ("The Copper Gull", "Europe/Lisbon", "looks right")
MIST = (
    "new formula Grapefruit mist\n"
    "grapefruit oil 12 ml\n"
    "propylene glycol 22 ml\n"
    "neutral spirit 96 % 62 ml\n"
    "replaces grapefruit\n"
    "kind aroma mist"
)


def settings_for(server: Server, store: Store) -> Settings:
    """The environment's settings for a bot at this server."""
    return Settings(
        telegram_bot_token=Secret(server.token),
        telegram_api_base=server.base_url,
        database_url=store.url.render_as_string(hide_password=False),
        telegram_sends_per_second=0,
        messages_per_minute=0,
        tick_seconds=3600,
    )


@dataclass
class Telephone:
    """The server, the running channel and the clock."""

    server: Server
    channel: TelegramChannel
    clock: Hands

    async def opened_bar(self, name: str = "Ana") -> Person:
        """A person who has opened a bar before: by the use case, not by the seven messages."""
        person = self.server.person(name)
        self.server.chat(person).started = True
        number, now = str(person.id), self.clock.now()
        with self.channel.store.writing() as unit:
            who = people.meet(unit, CHANNEL, number, name, "en", number, True, "")
            bars.open_bar(
                unit,
                who,
                name,
                True,
                now,
                name=SET_UP[0],
                zone="Europe/Lisbon",
                jurisdiction=Jurisdiction.EU,
                currency="EUR",
                units="metric",
            )
        return person

    async def opens_bar(self, name: str = "Ana") -> Person:
        """A person who has just opened a bar by messages."""
        person = self.server.person(name)
        await person.says("/start")
        for answer in SET_UP:
            await person.says(answer)
        return person

    async def tick(self, **spans: float) -> int:
        """Advance the clock and send due reminders."""
        self.clock.turn(**spans)
        return await self.channel.ticker.tick()

    async def restart(self) -> None:
        """Stop the channel and start another on the same database."""
        await self.channel.stop()
        self.channel = TelegramChannel(
            settings_for(self.server, self.channel.store), self.channel.store, self.clock
        )
        self.server.idle = lambda: self.channel.idle
        await self.channel.start()


@pytest.fixture
async def telephone(api: Server, store: Store) -> AsyncIterator[Telephone]:
    """A running bot; the test fails if it did anything that Telegram refuses."""
    clock = Hands(datetime(2026, 11, 25, 18, 0, tzinfo=UTC))
    built = Telephone(api, TelegramChannel(settings_for(api, store), store, clock), clock)
    api.idle = lambda: built.channel.idle
    await built.channel.start()
    yield built
    await built.channel.stop()
