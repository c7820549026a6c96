"""Misleading lines write no row that was not meant.

`misleading.tsv` holds what was said and the tables in which a row is meant, '' for none. Each line is said to
a fresh copy of a prepared bar; a line that wrote something is followed by a new copy.
"""

from __future__ import annotations

import csv
from collections.abc import Callable
from pathlib import Path

import pytest
from sqlalchemy import func, select

from bot.chat.conversation.conversation import Conversation
from storage.store import Store
from storage.tables import Base, Question
from tests.house import House
from tests.prepared import prepared

TABLE = Path(__file__).with_name("misleading.tsv")
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


def _lines(language: str) -> list[tuple[str, str]]:
    with TABLE.open(encoding="utf-8", newline="") as file:
        rows = csv.DictReader(file, delimiter="\t", quoting=csv.QUOTE_NONE)
        return [(row["line"], row["rows"] or "") for row in rows if row["language"] == language]


def _open_book(house: House, language: str) -> None:
    def fill() -> None:
        house.person("Ana", "en")
        ana = house.open_bar("Ana", city="Lisbon" if language == "en" else "Madrid")
        ana.says(f"language {language}")
        for line in _BOOK[language]:
            ana.says(line)

    prepared(house, ("misleading", language), fill)


def _counts(store: Store) -> dict[str, int]:
    tables = [table for table in Base.metadata.sorted_tables if table.name not in _BESIDE]
    with store.engine.connect() as connection:
        query = select(*(select(func.count()).select_from(one).scalar_subquery() for one in tables))
        found = connection.execute(query).one()
    return {table.name: count for table, count in zip(tables, found, strict=True)}


def _forget_question(store: Store) -> None:
    with store.engine.begin() as connection:
        connection.execute(Question.__table__.delete())  # type: ignore[attr-defined]


@pytest.mark.parametrize("language", ["en", "es"])
def test_no_misleading_line_writes_a_row(language: str, another_house: Callable[[], House]) -> None:
    """The rows that each line writes are those that the table names: none for all but a few."""
    wrong: list[str] = []
    house = another_house()
    _open_book(house, language)
    before = _counts(house.store)
    said = _lines(language)
    for line, meant in said:
        house.confirms_new = False
        house.person("Ana").says(line)
        _forget_question(house.store)
        house.conversation = Conversation(house.store, house.clock)
        after = _counts(house.store)
        written = {name for name, count in after.items() if count != before[name]}
        if written != set(meant.split()):
            wrong.append(f"{line}: {', '.join(sorted(written))}")
        if written:
            house = another_house()
            _open_book(house, language)
            before = _counts(house.store)
    assert len(said) >= 150
    assert wrong == []
