"""Say misleading lines to a prepared bar, and print the rows that they write.

python -m tests.understanding.misleading         the table
python -m tests.understanding.misleading --all   every line with the rows that it writes and the answer

`misleading.tsv` holds the lines and the tables in which a row is meant, '' for none. Each line is said to
a fresh copy of the bar; a line that wrote something is followed by a new copy.
"""

from __future__ import annotations

import argparse
import csv
import sys
import tempfile
from collections.abc import Callable, Iterable, Iterator
from contextlib import ExitStack
from dataclasses import dataclass
from datetime import UTC, datetime
from pathlib import Path

from sqlalchemy import func, select

from bot.chat.conversation.conversation import Conversation
from storage import migrate
from storage.store import Store
from storage.tables import Base, Question
from tests.house import Hands, House
from tests.prepared import prepared

TABLE = Path(__file__).with_name("misleading.tsv")
LANGUAGES = ("en", "es")
_NOW = datetime(2026, 11, 25, 18, tzinfo=UTC)
_BESIDE = {"question", "counter", "reminder", "inbox"}  # what a question in progress needs
_BOOK = {
    "en": (
        "new formula Lime mist\nlime oil 10 ml\nneutral spirit 96 % 60 ml\nkind aroma mist",
        "price oranges 0.60 each",
        "waste 2 oranges mouldy, 2 limes mouldy, 2 lemons mouldy, 1 grapefruit mouldy",
        "batch lime mist to 200 ml",
    ),
    "es": (
        "nueva fórmula Bruma de lima\naceite de lima 10 ml\nalcohol neutro 96 % 60 ml\nbruma aromática",
        "precio naranjas 0,60 cada una",
        "merma 2 naranjas con moho, 2 limas con moho, 2 limones con moho, 1 pomelo con moho",
        "lote bruma de lima a 200 ml",
    ),
}


@dataclass(frozen=True, slots=True)
class Said:
    """A line, the tables in which a row is meant and was written, and the answer's first line."""

    line: str
    meant: frozenset[str]
    written: frozenset[str]
    answer: str


def lines(language: str) -> list[tuple[str, str]]:
    """Return the lines of the table in a language, each with the tables that it means."""
    with TABLE.open(encoding="utf-8", newline="") as file:
        rows = csv.DictReader(file, delimiter="\t", quoting=csv.QUOTE_NONE)
        return [(row["line"], row["rows"] or "") for row in rows if row["language"] == language]


def said(build: Callable[[], House], language: str, table: Iterable[tuple[str, str]]) -> Iterator[Said]:
    """Say each line to the bar, and yield what it wrote."""
    house = _opened(build, language)
    before = _counts(house.store)
    for line, meant in table:
        house.confirms_new = False
        replies = house.person("Ana").says(line)
        _forget_question(house.store)
        house.conversation = Conversation(house.store, house.clock)
        after = _counts(house.store)
        written = frozenset(name for name, count in after.items() if count != before[name])
        answer = replies[0].first_line if replies else ""
        yield Said(line, frozenset(meant.split()), written, answer)
        if written:
            house = _opened(build, language)
            before = _counts(house.store)


def _opened(build: Callable[[], House], language: str) -> House:
    house = build()

    def fill() -> None:
        house.person("Ana", "en")
        ana = house.open_bar("Ana", city="Lisbon" if language == "en" else "Madrid")
        ana.says(f"language {language}")
        for line in _BOOK[language]:
            ana.says(line)

    prepared(house, ("misleading", language), fill)
    return house


def _counts(store: Store) -> dict[str, int]:
    tables = [table for table in Base.metadata.sorted_tables if table.name not in _BESIDE]
    with store.engine.connect() as connection:
        query = select(*(select(func.count()).select_from(one).scalar_subquery() for one in tables))
        found = connection.execute(query).one()
    return {table.name: count for table, count in zip(tables, found, strict=True)}


def _forget_question(store: Store) -> None:
    with store.engine.begin() as connection:
        connection.execute(Question.__table__.delete())  # type: ignore[attr-defined]


def houses(folder: Path, closing: ExitStack) -> Callable[[], House]:
    """Return a function that builds houses on new SQLite files in a folder."""
    empty = folder / "empty.sqlite"
    store = Store(f"sqlite:///{empty}")
    migrate.upgrade(store)
    store.close()

    def build() -> House:
        path = folder / f"{len(list(folder.iterdir()))}.sqlite"
        path.write_bytes(empty.read_bytes())
        house = House(Store(f"sqlite:///{path}"), Hands(_NOW))
        closing.callback(house.close)
        return house

    return build


def main() -> int:
    """Run the command line; return 1 if a line wrote a row that was not meant."""
    reader = argparse.ArgumentParser(description="Say misleading lines, and print the rows that they write.")
    reader.add_argument("--all", action="store_true", help="print every line with what it wrote")
    everything = reader.parse_args().all
    print(f"{'language':<10}{'lines':>7}{'nothing written':>17}{'written as meant':>18}{'wrong':>7}")
    wrong: list[Said] = []
    for language in LANGUAGES:
        with tempfile.TemporaryDirectory() as folder, ExitStack() as closing:
            found = list(said(houses(Path(folder), closing), language, lines(language)))
        others = [one for one in found if one.written != one.meant]
        nothing = sum(not one.written and not one.meant for one in found)
        meant = len(found) - nothing - len(others)
        print(f"{language:<10}{len(found):>7}{nothing:>17}{meant:>18}{len(others):>7}")
        wrong += others
        for one in found if everything else ():
            print(f"  {one.line}: {', '.join(sorted(one.written)) or 'nothing'}: {one.answer}")
    for one in wrong:
        print(f"wrong: {one.line}: {', '.join(sorted(one.written)) or 'nothing'}")
    return 1 if wrong else 0


if __name__ == "__main__":
    sys.exit(main())
