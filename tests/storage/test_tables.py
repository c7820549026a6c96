"""Tests that every row belongs to one bar, enforced by the keys."""

from __future__ import annotations

from sqlalchemy import ForeignKeyConstraint, PrimaryKeyConstraint, Table, UniqueConstraint

from storage.tables import Base, InBar

# Tables used before the bar is known. Give the reason for an addition in storage/tables.
DIRECTORY = frozenset({"bar", "person", "room", "question", "inbox"})
_TABLES = Base.metadata.tables


def _of_bars() -> list[Table]:
    return [table for name, table in _TABLES.items() if name not in DIRECTORY]


def test_the_directory_is_just_what_is_listed() -> None:
    mapped = {mapper.class_ for mapper in Base.registry.mappers}
    in_bar = {model.__tablename__ for model in mapped if issubclass(model, InBar)}
    assert set(_TABLES) - in_bar == DIRECTORY


def test_every_key_of_a_bars_table_begins_with_the_bar() -> None:
    for table in _of_bars():
        for key in table.constraints:
            if isinstance(key, PrimaryKeyConstraint | UniqueConstraint):
                assert next(iter(key.columns)).name == "bar_id", f"{table.name}: {key.name}"
        for index in table.indexes:
            if index.unique:
                assert next(iter(index.columns)).name == "bar_id", f"{table.name}: {index.name}"


def test_a_reference_between_bars_tables_takes_the_bar_along() -> None:
    for table in _of_bars():
        for key in table.constraints:
            if not isinstance(key, ForeignKeyConstraint):
                continue
            pairs = [(element.parent.name, element.column) for element in key.elements]
            target = pairs[0][1].table.name
            if target in DIRECTORY:
                assert len(pairs) == 1, f"{table.name}: {key.name}"
            else:
                name, column = pairs[0]
                assert (name, column.name) == ("bar_id", "bar_id"), f"{table.name}: {key.name}"


def test_the_directory_points_into_no_bars_table() -> None:
    for name in DIRECTORY:
        for key in _TABLES[name].foreign_keys:
            assert key.column.table.name in DIRECTORY, f"{name}.{key.parent.name}"


def test_every_constraint_has_a_name_that_a_migration_can_find() -> None:
    for table in _TABLES.values():
        for key in table.constraints:
            if isinstance(key, PrimaryKeyConstraint | UniqueConstraint | ForeignKeyConstraint):
                assert key.name, table.name
                assert len(str(key.name)) <= 63, f"PostgreSQL cuts {key.name}"
        for index in table.indexes:
            assert index.name
            assert len(str(index.name)) <= 63, f"PostgreSQL cuts {index.name}"
