"""Tests of the cached names of a bar, which are renewed when the bar changes."""

from __future__ import annotations

from datetime import UTC, datetime
from pathlib import Path

from bot.chat.grammar.vocabulary import vocabulary_for
from bot.work.context import BarView
from storage import migrate
from storage.store import Store
from storage.tables import Bar
from tests.house import Hands, House


def _names(store: Store) -> set[str]:
    with store.reading() as unit:
        bar = unit.session.get(Bar, 1)
        assert bar is not None
        vocabulary = vocabulary_for(unit, BarView.of(bar), "en")
        return {noun.name for noun in vocabulary.of_kind("INGREDIENT")}


def test_a_name_is_known_from_the_message_after(house: House) -> None:
    house.open_bar()
    assert "lime" not in _names(house.store)
    house.person("Ana").says("waste 3 limes")
    assert "lime" in _names(house.store)


def test_another_database_opened_in_the_same_process_is_not_mistaken_for_the_first(tmp_path: Path) -> None:
    found = []
    for number in range(3):
        # A new store can reuse the memory address of a closed one.
        store = Store(f"sqlite:///{tmp_path / str(number)}.sqlite")
        migrate.upgrade(store)
        house = House(store, Hands(datetime(2026, 11, 25, 18, tzinfo=UTC)))
        house.open_bar()
        house.person("Ana").says(f"price fruit{'abc'[number]} 0.60 each, 5 garnishes each")
        found.append(_names(store))
        house.close()
        store.close()
        del house, store
    assert found == [{"fruita"}, {"fruitb"}, {"fruitc"}]
