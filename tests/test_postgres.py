"""Tests of the search for a PostgreSQL server."""

from __future__ import annotations

import os
import subprocess
import sys
import time
from pathlib import Path

import pytest

from storage.store import Store
from storage.tables import Bar
from tests import postgres
from tests.postgres import NAMED, REQUIRED, NoPostgresError

_ROOT = Path(__file__).parent.parent
_ONE_TEST = "tests/storage/test_migrate.py::test_a_second_time_changes_nothing"


@pytest.fixture
def _no_server_yet(monkeypatch: pytest.MonkeyPatch) -> None:
    """Simulate a process that has not looked for a server."""
    monkeypatch.setattr(postgres, "server", postgres.server.__wrapped__)
    monkeypatch.delenv(NAMED, raising=False)


@pytest.mark.usefixtures("_no_server_yet")
def test_a_named_server_is_used_and_none_started(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv(NAMED, "postgres://tester@db.invalid/tests")
    monkeypatch.setattr(postgres, "binaries", lambda: pytest.fail("looked for binaries"))
    assert postgres.server().render_as_string() == "postgresql+psycopg://tester@db.invalid/tests"


@pytest.mark.usefixtures("_no_server_yet")
def test_without_a_server_or_binaries_the_reason_names_both(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(postgres, "binaries", lambda: None)
    with pytest.raises(NoPostgresError, match=f"{NAMED} is not set, and there is no initdb"):
        postgres.server()


@pytest.mark.long
@pytest.mark.parametrize(("required", "code", "said"), [("", 0, "skipped"), ("1", 1, "NoPostgresError")])
def test_what_is_missing_is_skipped_unless_it_is_required(required: str, code: int, said: str) -> None:
    # A process in which no binaries can be found.
    hide = "import sys, pytest; from tests import postgres; postgres.binaries = lambda: None; "
    run = f"sys.exit(pytest.main(['-q', '-n0', '-p', 'no:cacheprovider', '{_ONE_TEST}']))"
    environment = {name: value for name, value in os.environ.items() if name != NAMED}
    done = subprocess.run(
        [sys.executable, "-c", hide + run],
        cwd=_ROOT,
        env={**environment, REQUIRED: required},
        capture_output=True,
        text=True,
        check=False,
    )
    assert done.returncode == code, done.stdout
    assert said in done.stdout
    assert "1 passed" in done.stdout  # SQLite is tested all the same


@pytest.mark.parametrize("database", ["postgresql"], indirect=True)
def test_every_test_has_a_database_of_its_own(store_url: str) -> None:
    other = postgres.create_database(postgres.migrated_template())
    store = Store(other.render_as_string(hide_password=False))
    try:
        assert store.url.database != Store(store_url).url.database
        with store.reading() as unit:
            assert unit.session.query(Bar).count() == 0
    finally:
        store.close()
        postgres.drop_database(other)


@pytest.mark.parametrize("database", ["postgresql"], indirect=True)
@pytest.mark.long
def test_the_server_of_a_killed_run_is_stopped_by_the_next(database: str) -> None:
    start = (
        "import os, signal; from tests import postgres; print(postgres.server().query['host'], flush=True); "
    )
    kill = "os.kill(os.getpid(), signal.SIGKILL)"
    environment = {name: value for name, value in os.environ.items() if name != NAMED}
    killed = subprocess.run(
        [sys.executable, "-c", start + kill],
        cwd=_ROOT,
        env=environment,
        capture_output=True,
        text=True,
        check=False,
    )
    left = Path(killed.stdout.strip())
    assert left.name.startswith("peel-pg-"), killed.stderr
    server_id = int((left / "data" / "postmaster.pid").read_text().split()[0])
    postgres._sweep()
    assert not left.exists()
    for _time in range(200):
        if not Path(f"/proc/{server_id}").exists():
            return
        time.sleep(0.05)
    raise AssertionError("the server still runs")
