"""The names of a bar, remembered until the bar changes."""

from __future__ import annotations

from bot.chat.vocabulary import vocabulary_for
from bot.work.desk import BarView
from storage.store import Store
from storage.tables import Bar
from tests.house import House


def _names(store: Store) -> set[str]:
    with store.reading() as unit:
        bar = unit.session.get(Bar, 1)
        assert bar is not None
        vocabulary = vocabulary_for(unit, BarView.of(bar), "en", store.serial)
        return {noun.name for noun in vocabulary.of_kind("INGREDIENT")}


def test_a_name_is_known_from_the_message_after(house: House) -> None:
    house.open_bar()
    assert "lime" not in _names(house.store)
    house.person("Ana").says("waste 3 limes")
    assert "lime" in _names(house.store)


def test_another_database_opened_in_the_same_process_is_not_mistaken_for_the_first(store_url: str) -> None:
    # A store that is closed gives its place in memory to the next one.
    serials = set()
    for _again in range(5):
        opened = Store(store_url)
        serials.add(opened.serial)
        opened.close()
        del opened
    assert len(serials) == 5
