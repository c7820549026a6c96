"""Conversations for the README and tests/stories/TRANSCRIPTS.md, held over real HTTP.

python -m tests.transcript            prints them
python -m tests.transcript --write    writes them between their marks
"""

from __future__ import annotations

import argparse
import asyncio
import tempfile
from collections.abc import Awaitable, Callable
from datetime import UTC, datetime
from functools import partial
from pathlib import Path

from bot.channels.telegram.channel import TelegramChannel
from storage import migrate
from storage.store import Store
from tests.api import Person, Server
from tests.channels.telegram.conftest import MIST, SET_UP, Telephone, settings_for
from tests.demo_bar import demo_bar
from tests.house import Hands, lines
from tests.house import Person as Caller

_ROOT = Path(__file__).parents[1]
README = _ROOT / "README.md"
TRANSCRIPTS = Path(__file__).with_name("stories") / "TRANSCRIPTS.md"
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
    await _later(phone, ana, hours=10.5, minutes=1)
    await ana.says("waste 6 grapefruits mouldy, 2 grapefruits dried out")
    await _later(phone, ana, hours=13.5)
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


async def _chemistry(phone: Telephone) -> str:
    ana = phone.server.person("Ana")
    await ana.says("/start")
    for answer in (*SET_UP, MIST):
        await ana.says(answer)
    begin = len(phone.server.transcript(ana))
    for line in (
        "strength 500 ml 96 to 70",
        "strength grapefruit mist",
        "scale grapefruit mist to 8 x 50 ml in grams at 27 C",
        "clear grapefruit mist",
        "clear grapefruit mist more",
        "scale grapefruit mist to 8 x 50 ml with 75.5 % spirit instead",
        "dose grapefruit mist in 60 ml, 3 drinks",
        "weigh blue 152.31 150.55 148.80 147.02 20 sprays with grapefruit mist",
        "opened grapefruit oil 100 days ago",
        "batch grapefruit mist to 400 ml",
    ):
        await ana.says(line)
    return phone.server.transcript(ana)[begin:].strip()


async def _fruit() -> str:
    """Ask the demo bar about fruit, point by point."""
    with tempfile.TemporaryDirectory() as folder, demo_bar(Path(folder)) as robin:
        return "\n".join(line for said in FRUIT for line in _asked(robin, said))


FRUIT = (
    *("week", "week more", "month 2026-10", "report 2026-10-01 to 2026-10-15", "spraying", "week picture"),
    *("bought 2 cases oranges 80 each 34.00; 40 limes 9.60", "count oranges 180, limes 120", "fruit orange"),
    *("peeled 4 oranges", "juiced 3 oranges 205 ml", "bin peeled 1 orange"),
    *("acid 280 ml orange juice to lime", "acid 1 l grapefruit juice to lemon"),
    *("cost grapefruit mist to 8 x 50 ml", "cost grapefruit mist more", "cost grapefruit mist picture"),
    *("making grapefruit mist 30-40 min, bottle 2.50", "making grapefruit mist none"),
    *("price oranges", "price oranges picture", "bar tax 10 % added", "cost saline to 500 ml"),
    *("plan", "plan grapefruit mist", "shopping", "drinks 45 grapefruit mist", "fruit par orange"),
    *("stock", "stock neutral spirit 4.8 l", "par fine salt 700 g", "what can I make?"),
    *("trials", "trial 1", "trial saline: fine salt 22 g", "50 ml", "blind", "trial made 3"),
    *("taste #3 A 4 4 3 2", "trial 3", "batch 41"),
    *("undo", "export"),
)


def _asked(person: Caller, said: str) -> list[str]:
    out = [f"{person.name}: {said}"]
    for one in person.says(said):
        first, *rest = lines(one)
        out += [f"bot: {first}", *(f"    {line}" for line in rest)]
    return out


STORIES: dict[str, tuple[Path, Callable[[], Awaitable[str]]]] = {
    "a night": (README, partial(_hold, _night)),
    "the chemistry": (TRANSCRIPTS, partial(_hold, _chemistry)),
    "the fruit": (TRANSCRIPTS, _fruit),
}


def _marks(name: str) -> tuple[str, str]:
    return f"<!-- {name}: begin -->", f"<!-- {name}: end -->"


async def held(name: str) -> str:
    """Run a conversation and return it as text."""
    return await STORIES[name][1]()


def shown(name: str) -> str:
    """Return the excerpt for its page."""
    begin, end = _marks(name)
    text = STORIES[name][0].read_text("utf-8")
    return text.partition(f"{begin}\n```text\n")[2].partition(f"\n```\n{end}")[0]


def main() -> None:
    """Print the conversations, or write them to their pages."""
    parser = argparse.ArgumentParser(prog="python -m tests.transcript")
    parser.add_argument("--write", action="store_true", help="put them between their marks")
    write = parser.parse_args().write
    for name, (page, _story) in STORIES.items():
        written = asyncio.run(held(name))
        if not write:
            print(written, end="\n\n")
            continue
        begin, end = _marks(name)
        before, _begin, rest = page.read_text("utf-8").partition(begin)
        after = rest.partition(end)[2]
        page.write_text(f"{before}{begin}\n```text\n{written}\n```\n{end}{after}", "utf-8")


if __name__ == "__main__":
    main()
