"""Tests of migrations to the newest tables, from an empty database and from every revision."""

from __future__ import annotations

import os
import subprocess
import sys
from collections.abc import Mapping
from pathlib import Path

import pytest
from alembic.autogenerate import compare_metadata
from alembic.config import Config
from alembic.runtime.migration import MigrationContext
from alembic.script import ScriptDirectory
from sqlalchemy import Inspector, MetaData, create_engine, inspect, text

from storage import migrate
from storage.migrate import NewerDatabaseError
from storage.store import Store
from storage.tables import Base

_ROOT = Path(migrate.__file__).parent.parent


def _steps() -> list[str]:
    config = Config()
    config.set_main_option("script_location", str(_ROOT / "storage" / "migrations"))
    return [step.revision for step in ScriptDirectory.from_config(config).walk_revisions()][::-1]


def _difference(url: str) -> list[object]:
    engine = create_engine(Store(url).url)
    try:
        with engine.connect() as connection:
            return list(
                compare_metadata(
                    MigrationContext.configure(connection, opts={"compare_type": True}), Base.metadata
                )
            )
    finally:
        engine.dispose()


def _at(url: str) -> str | None:
    store = Store(url)
    try:
        return migrate.current(store)
    finally:
        store.close()


def _upgrade(url: str, to: str = "head") -> None:
    store = Store(url)
    try:
        migrate.upgrade(store, to)
    finally:
        store.close()


def test_there_is_one_newest_step_and_one_line_of_them() -> None:
    config = Config()
    config.set_main_option("script_location", str(_ROOT / "storage" / "migrations"))
    scripts = ScriptDirectory.from_config(config)
    assert scripts.get_heads() == [migrate.head()]
    assert list(migrate.revisions()) == [step.revision for step in scripts.walk_revisions()][::-1]
    assert scripts.get_bases() == [_steps()[0]]
    assert all(not step.is_branch_point for step in scripts.walk_revisions())


def test_from_nothing_to_the_newest_tables_without_a_difference(empty_url: str) -> None:
    assert _at(empty_url) is None
    _upgrade(empty_url)
    assert _at(empty_url) == migrate.head()
    assert _difference(empty_url) == []


def test_a_second_time_changes_nothing(empty_url: str) -> None:
    _upgrade(empty_url)
    _upgrade(empty_url)
    assert _difference(empty_url) == []


def test_step_by_step_leads_to_the_same_tables(empty_url: str) -> None:
    for step in _steps():
        _upgrade(empty_url, step)
        assert _at(empty_url) == step
    assert _difference(empty_url) == []


def _schema(url: str) -> dict[str, object]:
    """Return the schema as the database reports it, columns in any order."""
    engine = create_engine(Store(url).url)
    try:
        with engine.connect() as connection:
            found = inspect(connection)
            return {name: _table(found, name) for name in found.get_table_names()}
    finally:
        engine.dispose()


def _table(found: Inspector, name: str) -> dict[str, object]:
    columns = {one["name"]: {**one, "type": repr(one["type"])} for one in found.get_columns(name)}
    lists = (
        found.get_foreign_keys(name),
        found.get_indexes(name),
        found.get_unique_constraints(name),
        found.get_check_constraints(name),
    )
    return {
        "columns": {column: str(sorted(told.items())) for column, told in columns.items()},
        "key": found.get_pk_constraint(name),
        "others": [sorted(_words(one) for one in each) for each in lists],
    }


def _words(told: object) -> str:
    """Return a constraint as text, including its condition."""
    if isinstance(told, Mapping):
        return str(sorted(f"{name}: {_words(one)}" for name, one in told.items()))
    return str(told)


@pytest.mark.long
def test_new_tables_are_those_that_all_migrations_lead_to(empty_url: str) -> None:
    """A new database is created without migrations and must match a migrated one, including defaults."""
    _upgrade(empty_url)
    created = _schema(empty_url)
    engine = create_engine(Store(empty_url).url)
    with engine.begin() as connection:
        found = MetaData()
        found.reflect(connection)
        found.drop_all(connection)
    engine.dispose()
    for step in _steps():
        _upgrade(empty_url, step)
    assert _schema(empty_url) == created
    assert len(created) > 30


def test_a_database_of_a_newer_program_is_left_alone(empty_url: str) -> None:
    _upgrade(empty_url)
    engine = create_engine(Store(empty_url).url)
    with engine.begin() as connection:
        connection.execute(text("UPDATE alembic_version SET version_num = '9999'"))
        tables = set(inspect(connection).get_table_names())
    with pytest.raises(NewerDatabaseError) as caught:
        _upgrade(empty_url)
    assert caught.value.revision == "9999"
    with engine.connect() as connection:
        assert set(inspect(connection).get_table_names()) == tables
    engine.dispose()


def test_alembic_itself_finds_nothing_to_do(empty_url: str) -> None:
    _upgrade(empty_url)
    done = subprocess.run(
        [sys.executable, "-m", "alembic", "check"],
        cwd=_ROOT,
        env={**os.environ, "DATABASE_URL": empty_url},
        capture_output=True,
        text=True,
        check=False,
    )
    assert done.returncode == 0, done.stdout + done.stderr


def test_several_processes_that_start_at_once_migrate_it_once(empty_url: str) -> None:
    code = (
        "import sys; from storage import migrate; from storage.store import Store\n"
        "store = Store(sys.argv[1]); migrate.upgrade(store); store.close()"
    )
    started = [
        subprocess.Popen(
            [sys.executable, "-c", code, empty_url], cwd=_ROOT, stderr=subprocess.PIPE, text=True
        )
        for _ in range(3)
    ]
    said = [process.communicate(timeout=60)[1] for process in started]
    assert [process.returncode for process in started] == [0, 0, 0], said
    assert _difference(empty_url) == []
