"""The night in the README: held over real HTTP with the bot itself, and printed as it went.

python -m tests.transcript            prints it
python -m tests.transcript --write    puts it into the README between its marks
"""

from __future__ import annotations

import argparse
import asyncio
import tempfile
from collections.abc import Awaitable, Callable
from datetime import UTC, datetime
from pathlib import Path

from bot.channels.telegram import TelegramChannel
from storage import migrate
from storage.store import Store
from tests.api import Person, Server
from tests.channels.conftest import MIST, SET_UP, Telephone, settings_for
from tests.house import Hands

README = Path(__file__).parents[1] / "README.md"
BEGIN, END = "<!-- transcript of a night: begin -->", "<!-- transcript of a night: end -->"
_EVENING = datetime(2026, 11, 25, 18, 0, tzinfo=UTC)


async def _night(phone: Telephone) -> str:
    ana = phone.server.person("Ana")
    await ana.says("/start")
    for answer in SET_UP:
        await ana.says(answer)
    await ana.says(MIST)
    for price in (
        "price grapefruit oil 10 ml 7.90",
        "price propylene glycol 500 ml 11.50",
        "price neutral spirit 1 l 24",
        "price grapefruits 0.90 each, 8 garnishes each",
    ):
        await ana.says(price)
    await ana.says("scale grapefruit mist to 8 x 50 ml")
    await ana.taps("Cost")
    await ana.taps("Log this batch")
    await _later(phone, ana, hours=6.5, minutes=1)
    await ana.says("waste 6 grapefruits mouldy, 2 grapefruits dried out")
    await _later(phone, ana, hours=17.5)
    await ana.taps("Clear")
    await ana.says("/week")
    return phone.server.transcript(ana)


async def _later(phone: Telephone, ana: Person, **spans: float) -> None:
    mark = phone.server.mark()
    await phone.tick(**spans)
    await phone.server.follow(ana, mark)


async def _hold(story: Callable[[Telephone], Awaitable[str]]) -> str:
    with tempfile.TemporaryDirectory() as folder:
        store = Store(f"sqlite:///{Path(folder) / 'bar.sqlite'}")
        migrate.upgrade(store)
        clock = Hands(_EVENING)
        async with Server() as server:
            phone = Telephone(server, TelegramChannel(settings_for(server, store), store, clock), clock)
            server.idle = lambda: phone.channel.idle
            await phone.channel.start()
            try:
                return await story(phone)
            finally:
                await phone.channel.stop()
                store.close()


async def held() -> str:
    """Hold the conversation and return it as text."""
    return await _hold(_night)


def in_readme() -> str:
    """Return what the README shows of it."""
    text = README.read_text("utf-8")
    return text.partition(f"{BEGIN}\n```text\n")[2].partition(f"\n```\n{END}")[0]


def main() -> None:
    """Print the night, or write it into the README."""
    parser = argparse.ArgumentParser(prog="python -m tests.transcript")
    parser.add_argument("--write", action="store_true", help="put it into the README")
    written = asyncio.run(held())
    if not parser.parse_args().write:
        print(written)
        return
    before, _begin, rest = README.read_text("utf-8").partition(BEGIN)
    after = rest.partition(END)[2]
    README.write_text(f"{before}{BEGIN}\n```text\n{written}\n```\n{END}{after}", "utf-8")


if __name__ == "__main__":
    main()
