"""Fixtures of all tests: no connection leaves this machine, and a Bot API server on request."""

from __future__ import annotations

import functools
import ipaddress
import os
import shutil
import socket
import tempfile
import zlib
from collections.abc import AsyncIterator, Callable, Iterator
from datetime import UTC, datetime
from pathlib import Path
from typing import Any

import pytest
from sqlalchemy import Dialect

from bot.work.people import places
from storage import migrate
from storage.store import Store
from tests import examples, postgres
from tests.api import Server
from tests.faults.program import Loaded
from tests.house import Hands, House

# python-telegram-bot gives times as timedelta instead of warning about the future change.
os.environ["PTB_TIMEDELTA"] = "1"
# The console uses the terminal's language; tests use English unless they set another.
os.environ["LC_ALL"] = "C.UTF-8"

# In memory if there is room: otherwise most of the time goes to waiting for disk commits.
_MEMORY, _ROOM = Path("/dev/shm"), 4 << 30  # noqa: S108 - each test makes a folder of its own in there
if "TMPDIR" not in os.environ and os.access(_MEMORY, os.W_OK) and shutil.disk_usage(_MEMORY).free > _ROOM:
    os.environ["TMPDIR"] = tempfile.tempdir = str(_MEMORY)

_refused: list[str] = []


class OutsideConnectionError(RuntimeError):
    """A test tried to connect to something other than this machine."""


def _is_local(family: int, address: Any) -> bool:
    if family == socket.AF_UNIX:
        return True
    host = str(address[0]).partition("%")[0]
    if host in {"", "localhost"}:
        return True
    try:
        return ipaddress.ip_address(host).is_loopback
    except ValueError:
        return False


def _refuse(what: str) -> OutsideConnectionError:
    _refused.append(what)
    return OutsideConnectionError(f"tests may not leave this machine: {what}")


@pytest.fixture(scope="session", autouse=True)
def _local_sockets_only() -> Iterator[None]:
    """Allow connections to loopback and unix addresses only, and look up no other names."""
    look_up = socket.getaddrinfo

    def guarded(name: str) -> Any:
        original = getattr(socket.socket, name)

        def connect(self: socket.socket, *arguments: Any) -> Any:
            # sendto(data, [flags,] address) has the address last; connect has only the address.
            if not _is_local(self.family, arguments[-1]):
                raise _refuse(f"{name} {arguments[-1]!r}")
            return original(self, *arguments)

        return connect

    def look_up_local(host: Any, *arguments: Any, **options: Any) -> Any:
        name = host.decode() if isinstance(host, bytes) else host
        if name is not None and not _is_local(socket.AF_INET, (name,)):
            raise _refuse(f"look-up of {name!r}")
        return look_up(host, *arguments, **options)

    with pytest.MonkeyPatch.context() as patch:
        for name in ("connect", "connect_ex", "sendto"):
            patch.setattr(socket.socket, name, guarded(name))
        patch.setattr(socket, "getaddrinfo", look_up_local)
        yield


@pytest.fixture(scope="session", autouse=True)
def _table_of_cities_read_once() -> Iterator[None]:
    """Unpack the table of cities once; the program unpacks it at each look-up, which it seldom needs."""
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(places, "table", functools.cache(places.table))
        yield


@pytest.fixture(autouse=True)
def outside_connections(_local_sockets_only: None) -> Iterator[list[str]]:
    """The refused connections of this test; the test fails if there are any.

    A retry loop may catch the error itself and hide it.
    """
    _refused.clear()
    yield _refused
    assert not _refused, f"connections to the outside: {_refused}"


@pytest.fixture
async def api() -> AsyncIterator[Server]:
    """A Bot API server; the test fails if the bot did anything that Telegram refuses."""
    server = Server()
    await server.start()
    yield server
    violations = await server.stop()
    assert violations == []


def pytest_addoption(parser: pytest.Parser) -> None:
    parser.addoption("--update-stories", action="store_true", help="write the answers in tests/stories anew")
    parser.addoption("--all", action="store_true", help="run the long part too, on every database")


def pytest_configure(config: pytest.Config) -> None:
    examples.choose(long=config.getoption("--all"))


# Tests that add little about a database to those of storage: in the short part one in twenty of them
# also runs on PostgreSQL.
_TALKATIVE = (
    "tests/chat/",
    "tests/stories/",
    "tests/channels/",
    "tests/fuzz/",
    "tests/understanding/",
    "tests/work/",
    "tests/storage/test_migrate_rows.py",  # rows of every past revision
    "tests/storage/test_moving.py",
)


@pytest.hookimpl(trylast=True)  # the order chosen by another plugin stays, except for the first ones
def pytest_collection_modifyitems(config: pytest.Config, items: list[pytest.Item]) -> None:
    items.sort(key=lambda item: item.get_closest_marker("first") is None)
    chosen = config.option.keyword or any("::" in one for one in config.args)
    if chosen or config.getoption("--all"):
        return
    there = {item.nodeid for item in items}
    left = {item.nodeid for item in items if _is_left_out(item, there)}
    if left:
        config.hook.pytest_deselected(items=[item for item in items if item.nodeid in left])
        items[:] = [item for item in items if item.nodeid not in left]


def _is_left_out(item: pytest.Item, there: set[str]) -> bool:
    if item.get_closest_marker("long") is not None:
        return True
    name = item.nodeid
    if not name.startswith(_TALKATIVE) or "[postgresql" not in name:
        return False
    on_sqlite = name.replace("[postgresql", "[sqlite")
    return on_sqlite in there and zlib.crc32(on_sqlite.encode()) % 20 != 0


@pytest.fixture(scope="session")
def loaded() -> Iterator[Loaded]:
    """A process that has loaded the program and starts it, many times faster than a person does."""
    with Loaded() as process:
        yield process


DATABASES = ("sqlite", "postgresql")


def need_postgres() -> None:
    """Skip without PostgreSQL, unless it is required."""
    try:
        postgres.server()
    except postgres.NoPostgresError as error:
        if postgres.is_required():
            raise
        pytest.skip(str(error))


@pytest.fixture(params=DATABASES)
def database(request: pytest.FixtureRequest) -> str:
    """Each database in turn; PostgreSQL is skipped if missing, unless it is required."""
    if request.param == "postgresql":
        need_postgres()
    return str(request.param)


@pytest.fixture
def empty_url(database: str, tmp_path: Path) -> Iterator[str]:
    """The URL of an empty database."""
    if database == "sqlite":
        yield f"sqlite:///{tmp_path / 'empty.sqlite'}"
        return
    url = postgres.create_database()
    yield url.render_as_string(hide_password=False)
    postgres.drop_database(url)


@pytest.fixture(scope="session")
def _migrated_file(tmp_path_factory: pytest.TempPathFactory) -> Path:
    path = tmp_path_factory.mktemp("template") / "migrated.sqlite"
    store = Store(f"sqlite:///{path}")
    migrate.upgrade(store)
    store.close()
    return path


@pytest.fixture
def store_url(database: str, tmp_path: Path, request: pytest.FixtureRequest) -> Iterator[str]:
    """The URL of a database with the newest tables and no rows."""
    if database == "sqlite":
        path = tmp_path / "house.sqlite"
        shutil.copy(request.getfixturevalue("_migrated_file"), path)
        yield f"sqlite:///{path}"
        return
    url = postgres.create_database(postgres.migrated_template())
    yield url.render_as_string(hide_password=False)
    postgres.drop_database(url)


_COMPILED: dict[str, tuple[Dialect, dict[Any, Any]]] = {}


def _share_statements(store: Store) -> None:
    """Let all stores of one kind compile each statement once: else every test compiles them anew."""
    engine = store.engine
    dialect, compiled = _COMPILED.setdefault(engine.name, (engine.dialect, {}))
    engine.dialect = dialect
    engine.update_execution_options(compiled_cache=compiled)


@pytest.fixture
def store(store_url: str) -> Iterator[Store]:
    """A database with the newest tables and no rows, SQLite and PostgreSQL in turn."""
    opened = Store(store_url)
    _share_statements(opened)
    yield opened
    opened.close()


WEDNESDAY = datetime(2026, 11, 25, 18, tzinfo=UTC)


@pytest.fixture
def house(store: Store) -> Iterator[House]:
    """A house with a database of its own, its clock at Wednesday 25 November 2026, 18:00 UTC."""
    built = House(store, Hands(WEDNESDAY))
    yield built
    built.close()


@pytest.fixture
def another_house(
    database: str, tmp_path: Path, request: pytest.FixtureRequest
) -> Iterator[Callable[[], House]]:
    """Builds houses, each on a new database, for a test that needs many."""
    built: list[House] = []

    def build() -> House:
        if database == "sqlite":
            path = tmp_path / f"house-{len(built)}.sqlite"
            shutil.copy(request.getfixturevalue("_migrated_file"), path)
            url = f"sqlite:///{path}"
        else:
            made = postgres.create_database(postgres.migrated_template())
            url = made.render_as_string(hide_password=False)
        built.append(House(Store(url), Hands(WEDNESDAY)))
        _share_statements(built[-1].store)
        return built[-1]

    yield build
    for house in built:
        house.close()
        if database == "postgresql":
            postgres.drop_database(house.store.url)
