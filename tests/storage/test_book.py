"""Tests that a bar's book shows only that bar's rows."""

from __future__ import annotations

from datetime import UTC, datetime

import pytest
from sqlalchemy import bindparam, func

from storage.memory import BarMemory
from storage.store import Store
from storage.tables import Bar, Base, Ingredient, Waste
from storage.unit import Book, ReadOnlyError, Unit, of_bar

_NOW = datetime(2026, 11, 25, 18, tzinfo=UTC)


def _ingredient(name: str) -> Ingredient:
    return Ingredient(name=name, match_key=name, kind="fruit", made_at=_NOW)


@pytest.fixture
def bars(store: Store) -> tuple[int, int]:
    """Two bars with a lime each, the second with a lemon too."""
    numbers = []
    with store.writing() as unit:
        for name in ("The Copper Gull", "The Low Tide"):
            row = Bar(
                name=name,
                language="en",
                currency="EUR",
                units="metric",
                zone="Europe/Lisbon",
                closing_minute=300,
                jurisdiction="EU",
                settings={},
                created_at=_NOW,
            )
            unit.session.add(row)
            unit.session.flush()
            numbers.append(row.id)
            unit.bar(row.id).add(_ingredient("lime"))
        unit.bar(numbers[1]).add(_ingredient("lemon"))
    return numbers[0], numbers[1]


def test_each_way_to_read_is_scoped(store: Store, bars: tuple[int, int]) -> None:
    one, other = bars
    with store.reading() as unit:
        book, theirs = unit.bar(one), unit.bar(other)
        assert [row.name for row in book.all(Ingredient)] == ["lime"]
        assert {row.name for row in theirs.all(Ingredient)} == {"lime", "lemon"}
        assert book.one(Ingredient, Ingredient.name == "lemon") is None
        assert book.get(Ingredient, 2) is None
        assert list(unit.session.scalars(book.rows(Ingredient, Ingredient.name))) == ["lime"]
        assert {row.bar_id for row in unit.session.scalars(theirs.select(Ingredient))} == {other}


def test_numbers_count_up_in_each_bar_by_itself(store: Store, bars: tuple[int, int]) -> None:
    one, other = bars
    with store.reading() as unit:
        assert [row.id for row in unit.bar(one).all(Ingredient)] == [1]
        assert sorted(row.id for row in unit.bar(other).all(Ingredient)) == [1, 2]


def test_a_row_of_another_bar_becomes_ours_by_adding_it_only(store: Store, bars: tuple[int, int]) -> None:
    one, other = bars
    with store.writing() as unit:
        row = _ingredient("grapefruit")
        row.bar_id = other
        unit.bar(one).add(row)
    with store.reading() as unit:
        assert unit.bar(other).one(Ingredient, Ingredient.name == "grapefruit") is None


def test_what_is_remembered_of_one_bar_is_not_told_to_another(store: Store, bars: tuple[int, int]) -> None:
    one, other = bars
    with store.reading() as unit:
        names = {
            bar: unit.bar(bar).remembered(0, ("names",), lambda bar=bar: _names(unit.bar(bar)))  # type: ignore[misc]
            for bar in bars
        }
        again: dict[int, list[str]] = {bar: unit.bar(bar).remembered(0, ("names",), list) for bar in bars}
    assert names == again == {one: ["lime"], other: ["lemon", "lime"]}


def test_nothing_uncommitted_is_remembered(store: Store, bars: tuple[int, int]) -> None:
    one, _other = bars
    with store.reading() as unit:
        revision = unit.session.get(Bar, one).revision  # type: ignore[union-attr]
    with store.writing() as unit:
        unit.bar(one).add(_ingredient("quince"))
        unit.bar(one).touched()
        # Another part of the same transaction requests the book again.
        assert unit.bar(one).remembered(revision, ("names",), lambda: _names(unit.bar(one))) == [
            "lime",
            "quince",
        ]
        unit.session.rollback()
    with store.reading() as unit:
        assert unit.bar(one).remembered(revision, ("names",), lambda: _names(unit.bar(one))) == ["lime"]


def test_a_newer_revision_lets_go_of_the_one_before(store: Store, bars: tuple[int, int]) -> None:
    one, other = bars
    memory = store.memory
    assert memory.get(one, 1, "a", lambda: "first") == "first"
    assert memory.get(other, 1, "a", lambda: "another's") == "another's"
    assert memory.get(one, 2, "a", lambda: "second") == "second"
    # A reader of an older state gets that state, and caches nothing.
    assert memory.get(one, 1, "a", lambda: "as it was") == "as it was"
    assert memory.get(one, 2, "a", lambda: "asked in vain") == "second"
    assert memory.get(other, 1, "a", lambda: "asked in vain") == "another's"


def test_the_bars_and_things_last_used_are_kept(store: Store) -> None:
    memory = BarMemory(2)
    for bar in (1, 2, 1, 3):
        memory.get(bar, 1, "a", lambda bar=bar: f"of {bar}")  # type: ignore[misc]
    assert memory.get(1, 1, "a", lambda: "anew") == "of 1"
    assert memory.get(2, 1, "a", lambda: "anew") == "anew"
    for number in range(1000):
        memory.get(1, 1, number, lambda number=number: number)  # type: ignore[misc]
    assert memory.get(1, 1, "a", lambda: "anew") == "anew"


def _names(book: Book) -> list[str]:
    return sorted(row.name for row in book.all(Ingredient))


def test_every_table_of_a_bar_can_be_reached_through_its_book(store: Store, bars: tuple[int, int]) -> None:
    from storage.tables import InBar  # noqa: PLC0415 - only here

    one, _other = bars
    models = [mapper.class_ for mapper in Base.registry.mappers if issubclass(mapper.class_, InBar)]
    with store.reading() as unit:
        for model in models:
            assert f"{model.__tablename__}.bar_id = " in str(unit.bar(one).select(model))
            assert all(row.bar_id == one for row in unit.bar(one).all(model))


def _waste(pieces: int, source: str) -> dict[str, object]:
    return {
        "ingredient_id": 1,
        "count_milli": pieces * 1000,
        "reason": "mouldy",
        "business_day": _NOW.date(),
        "cost_minor": pieces * 60,
        "at": _NOW,
        "by": 1,
        "source": source,
        "line": 1,
    }


def test_plain_values_are_numbered_on_with_rows(store: Store, bars: tuple[int, int]) -> None:
    one, other = bars
    with store.writing() as unit:
        book = unit.bar(one)
        assert book.write(Waste, [_waste(1, "a")]) == [1]
        row = book.add(Waste(**_waste(2, "b")))
        assert row.id == 2
        assert book.write(Waste, [_waste(3, "c"), _waste(4, "d")]) == [3, 4]
        assert unit.bar(other).write(Waste, [_waste(5, "a")]) == [1]
    with store.reading() as unit:
        rows = unit.bar(one).all(Waste, order=Waste.id)
        # The table's defaults apply here too.
        assert [(row.count_milli, row.late, row.grams_milli) for row in rows] == [
            (1000, False, None),
            (2000, False, None),
            (3000, False, None),
            (4000, False, None),
        ]


def test_a_statement_built_once_is_scoped_by_the_book_that_asks_it(
    store: Store, bars: tuple[int, int]
) -> None:
    total = of_bar(Waste, func.sum(Waste.cost_minor)).where(Waste.business_day == bindparam("day"))
    lines = of_bar(Waste, Waste.id, Waste.count_milli)
    one, other = bars
    with store.writing() as unit:
        unit.bar(one).write(Waste, [_waste(1, "a"), _waste(2, "b")])
        unit.bar(other).write(Waste, [_waste(5, "a")])
        assert unit.bar(one).value(total, day=_NOW.date()) == 180
        assert unit.bar(other).value(total, day=_NOW.date()) == 300
        assert [tuple(row) for row in unit.bar(other).found(lines)] == [(1, 5000)]


def test_plain_values_come_after_what_was_changed_before(store: Store, bars: tuple[int, int]) -> None:
    one, _other = bars
    with store.writing() as unit:
        book = unit.bar(one)
        lime = book.get(Ingredient, 1)
        assert lime is not None
        lime.name = "key lime"
        book.write(Waste, [_waste(1, "a")])
        assert book.value(of_bar(Ingredient, Ingredient.name)) == "key lime"


def test_a_unit_that_only_reads_writes_no_plain_values(store: Store, bars: tuple[int, int]) -> None:
    with store.reading() as unit, pytest.raises(ReadOnlyError):
        unit.bar(bars[0]).write(Waste, [_waste(1, "a")])


def test_changes_on_rows_are_kept_or_dropped_with_the_rest(store: Store, bars: tuple[int, int]) -> None:
    one, _other = bars

    def rename(fail: bool) -> None:
        with store.writing() as unit:
            lime = unit.bar(one).get(Ingredient, 1)
            assert lime is not None
            lime.name = "lost" if fail else "kept"
            unit.bar(one).write(Waste, [_waste(1, f"rename {fail}")])
            if fail:
                raise RuntimeError

    rename(fail=False)
    with pytest.raises(RuntimeError):
        rename(fail=True)
    with store.reading() as unit:
        assert [row.name for row in unit.bar(one).all(Ingredient)] == ["kept"]
        assert [row.source for row in unit.bar(one).all(Waste)] == ["rename False"]


def _fail_after_changes(unit: Unit, book: Book, lime: Ingredient) -> None:
    with unit.attempt():
        book.touched()
        lime.name = "yellow lime"
        book.add(_ingredient("orange"))
        raise ZeroDivisionError


def test_a_failed_attempt_takes_back_its_own_changes_only(store: Store, bars: tuple[int, int]) -> None:
    one, _other = bars
    with store.writing() as unit:
        book = unit.bar(one)
        lime = book.one(Ingredient)
        assert lime is not None
        lime.name = "green lime"
        with pytest.raises(ZeroDivisionError):
            _fail_after_changes(unit, book, lime)
        assert [row.name for row in book.all(Ingredient)] == ["green lime"]
        assert book.remembered(1, ("one",), lambda: "made") == "made"
        with unit.attempt():
            book.add(_ingredient("lemon"))
    with store.reading() as unit:
        assert {row.name for row in unit.bar(one).all(Ingredient)} == {"green lime", "lemon"}
        assert unit.bar(one).remembered(1, ("one",), lambda: "made anew") == "made"
