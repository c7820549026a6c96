"""Measure how long the replies are: those of all stories, and those to a list of lines in the demo bar.

python -m tests.replies           prints the longest, and how many are above the usual length
python -m tests.replies --all     prints every reply above the usual length
"""

from __future__ import annotations

import argparse
import tempfile
from collections.abc import Iterator
from dataclasses import dataclass
from datetime import UTC, datetime
from pathlib import Path

from bot.chat.conversation.folding import height
from bot.chat.reply.message import Reply
from storage import migrate
from storage.store import Store
from tests.demo_bar import demo_bar
from tests.house import Hands, House, Person
from tests.stories.play import FOLDER, Player, read

USUAL, MOST = 12, 30  # lines
_LONGEST_SHOWN = 25
_BEGIN = datetime(2026, 11, 25, 19, 30, tzinfo=UTC)

DEMO_LINES = """
help; help all; help fruit:1; help people:1; help waste; cautions; bar; bar measuring; team; bars; privacy
log; formulas; formula grapefruit mist; scale grapefruit mist to 8 x 50 ml; cost grapefruit mist x1
cost grapefruit mist more; clear grapefruit mist; clear grapefruit mist more; strength grapefruit mist
dose grapefruit mist in 90 ml; dose grapefruit mist in 90 ml, sources; density grapefruit mist
allergens grapefruit mist; swap grapefruit mist with 75 %; strength 500 ml 96 to 70
acid 280 ml orange juice to lime; batches; batch 40; label 40; photos 40; trials; trial 3; pump; spraying
week; month; waste report 2026-10-01 to 2026-11-20; fruit; fruit orange; peeled; drinks; price orange
plan; plan grapefruit mist; plan fruit; fruit par orange; shopping; can make; stock; pars; grade; import
undo 1; grapefruit mist against fresh; new formula Soft mist\\nlime oil 5 ml\\nneutral spirit 96 % 60 ml
batch grapefruit mist to 8 x 50 ml; waste 6 oranges mouldy, 2 limes dried out; peeled 4 oranges
"""


@dataclass(frozen=True)
class Measured:
    """A reply: where it was said, its lines of text and its rows of buttons."""

    where: str
    said: str
    lines: int
    rows: int


def lines_of(reply: Reply) -> int:
    """Return the lines of a reply's text on a small phone, without its buttons."""
    return sum(map(height, reply.blocks))


def _measured(where: str, said: str, reply: Reply) -> Measured:
    return Measured(where, " ".join(said.split()), lines_of(reply), len(reply.buttons))


def _lines() -> list[str]:
    return [
        one.strip().replace("\\n", "\n") for one in DEMO_LINES.replace("\n", ";").split(";") if one.strip()
    ]


def of_demo() -> list[Measured]:
    """Measure the replies to the list of lines, in the demo bar."""
    with tempfile.TemporaryDirectory() as folder, demo_bar(Path(folder)) as robin:
        return [_measured("demo", line, reply) for line in _lines() for reply in robin.says(line)]


def of_stories() -> Iterator[Measured]:
    """Measure every reply of every story."""
    for path in sorted(FOLDER.glob("*.story")):
        yield from _of_story(path)


def _of_story(path: Path) -> list[Measured]:
    found: list[Measured] = []
    said = ""

    def watch(_house: House, _person: Person, _room: str | None, reply: Reply) -> list[str]:
        found.append(_measured(path.stem, said, reply))
        return []

    with tempfile.TemporaryDirectory() as folder:
        store = Store(f"sqlite:///{Path(folder) / 'story.sqlite'}")
        migrate.upgrade(store)
        house = House(store, Hands(_BEGIN))
        try:
            player = Player(house, watch)
            for step in read(path)[0]:
                said = step.text
                player.play(step)
        finally:
            house.close()
    return found


def main() -> None:
    """Print the table."""
    parser = argparse.ArgumentParser(prog="python -m tests.replies")
    parser.add_argument("--all", action="store_true", help="every reply above the usual length")
    everything = parser.parse_args().all
    found = sorted([*of_demo(), *of_stories()], key=lambda one: -one.lines)
    usual = sum(one.lines <= USUAL for one in found)
    above = [one for one in found if one.lines > USUAL]
    print(f"{len(found)} replies, {100 * usual / len(found):.0f} % of at most {USUAL} lines")
    print(f"{sum(one.lines > MOST for one in found)} above {MOST} lines")
    for one in above if everything else above[:_LONGEST_SHOWN]:
        print(f"{one.lines:3} lines {one.rows:2} rows  {one.where:18} {one.said[:60]}")


if __name__ == "__main__":
    main()
