"""A PostgreSQL server for the tests: a given one, or a private one in a temporary folder.

`PEEL_TEST_POSTGRES` names a server by URL, with a role that may create databases. Otherwise a private server
is started from the binaries found on this machine; it listens only on a socket in its own folder, and is
removed after the tests. With `PEEL_REQUIRE_POSTGRES=1` a missing server is an error.
"""

from __future__ import annotations

import atexit
import os
import pwd
import shutil
import signal
import subprocess
import tempfile
import time
from collections.abc import Mapping
from contextlib import suppress
from functools import cache
from itertools import count
from pathlib import Path

from sqlalchemy import URL, create_engine, text

from storage import migrate
from storage.store import Store, read_url

NAMED = "PEEL_TEST_POSTGRES"
REQUIRED = "PEEL_REQUIRE_POSTGRES"
_START_SECONDS = 30
_PREFIX, _OWNER = "peel-pg-", "owner"
_PORT = "5432"  # only the socket's name: nothing listens on the network


class NoPostgresError(Exception):
    """No server to test against; the text says what was tried."""


def binaries() -> Path | None:
    """Return the folder with initdb and postgres, the newest version first; None without."""
    folders = sorted(
        Path("/usr/lib/postgresql").glob("*/bin"), key=lambda path: float(path.parent.name), reverse=True
    )
    found = shutil.which("initdb")
    if found is not None:
        folders.append(Path(found).resolve().parent)
    return next((one for one in folders if (one / "initdb").exists() and (one / "postgres").exists()), None)


def _unprivileged() -> pwd.struct_passwd | None:
    """Return the user for the server: the current one, except root, which PostgreSQL refuses."""
    if os.geteuid() != 0:
        return None
    for name in ("postgres", "nobody"):
        try:
            return pwd.getpwnam(name)
        except KeyError:
            continue
    raise NoPostgresError("PostgreSQL does not run as root, and there is no user postgres or nobody")


class Private:
    """A server in its own folder, on a socket there; it ends with this process at the latest.

    Without `durable` it does not wait for the disk, so commits do not survive a crash. `options` are settings
    of the server. Raises NoPostgresError.
    """

    def __init__(self, folder: Path, *, durable: bool = False, options: Mapping[str, str] | None = None):
        bin_folder = binaries()
        if bin_folder is None:
            where = "on PATH or in /usr/lib/postgresql"
            raise NoPostgresError(f"no PostgreSQL: {NAMED} is not set, and there is no initdb {where}")
        self._folder = folder
        (folder / _OWNER).write_text(str(os.getpid()))
        user = _unprivileged()
        self._run_as: dict[str, object] = {"cwd": folder, "stdin": subprocess.DEVNULL}
        if user is not None:
            os.chown(folder, user.pw_uid, user.pw_gid)
            self._run_as |= {"user": user.pw_uid, "group": user.pw_gid, "extra_groups": []}
        data = folder / "data"
        making = [bin_folder / "initdb", "-D", data, "-U", "peel", "-A", "trust", "-E", "UTF8", "--locale=C"]
        made = subprocess.run(
            [*making, "-N"],
            capture_output=True,
            text=True,
            check=False,
            **self._run_as,  # type: ignore[call-overload]
        )
        if made.returncode:
            raise NoPostgresError(f"initdb failed: {made.stderr.strip()[-400:]}")
        settings = {"listen_addresses": "", "unix_socket_directories": str(folder), "port": _PORT}
        settings |= (
            {} if durable else {"fsync": "off", "synchronous_commit": "off", "full_page_writes": "off"}
        )
        settings |= options or {}
        words = [word for name, value in settings.items() for word in ("-c", f"{name}={value}")]
        self._command = [bin_folder / "postgres", "-D", data, *words]
        self.url = URL.create(
            "postgresql+psycopg",
            username="peel",
            database="postgres",
            query={"host": str(folder), "port": _PORT},
        )
        self.process = self._launch()
        atexit.register(self.remove)
        self.wait()

    def _launch(self) -> subprocess.Popen[bytes]:
        with (self._folder / "log").open("ab") as log:
            server: subprocess.Popen[bytes] = subprocess.Popen(
                self._command,
                stdout=log,
                stderr=log,
                **self._run_as,  # type: ignore[call-overload]
            )
            return server

    def wait(self) -> None:
        """Wait until it accepts connections."""
        engine = create_engine(self.url)
        try:
            end = time.monotonic() + _START_SECONDS
            while True:
                try:
                    with engine.connect():
                        return
                except Exception:
                    if self.process.poll() is not None or time.monotonic() > end:
                        said = (self._folder / "log").read_text(errors="replace")
                        raise NoPostgresError(f"the server did not start: {said[-400:]}") from None
                    time.sleep(0.05)
        finally:
            engine.dispose()

    def end(self, how: signal.Signals = signal.SIGINT) -> None:
        """Stop it: SIGINT aborts running work, SIGQUIT stops as in a crash."""
        self.process.send_signal(how)
        try:
            self.process.wait(10)
        except subprocess.TimeoutExpired:
            self.process.kill()
            self.process.wait()

    def again(self) -> None:
        """Start it again on the same data, without waiting for it."""
        self.process = self._launch()

    def remove(self) -> None:
        """Stop it and delete its folder."""
        atexit.unregister(self.remove)
        self.end(signal.SIGTERM if self.process.poll() is None else signal.SIGQUIT)
        shutil.rmtree(self._folder, ignore_errors=True)


def folder_for_private() -> Path:
    """Create a folder that a private server's user can enter, so not below pytest's folder."""
    return Path(tempfile.mkdtemp(prefix=_PREFIX))


@cache
def server() -> URL:
    """Return the URL of the server, starting one if none is given. Raises NoPostgresError."""
    named = os.environ.get(NAMED)
    if named:
        return read_url(named)
    _sweep()
    return Private(folder_for_private()).url


def _sweep() -> None:
    """Stop and remove the servers of killed test runs."""
    for folder in Path(tempfile.gettempdir()).glob(f"{_PREFIX}*"):
        # Belongs to another user, or is being created or removed: leave it alone.
        with suppress(OSError, ValueError):
            owner = int((folder / _OWNER).read_text())
            if owner == os.getpid() or _lives(owner):
                continue
            server_id = int((folder / "data" / "postmaster.pid").read_text().split()[0])
            if str(folder) in Path(f"/proc/{server_id}/cmdline").read_text():
                os.kill(server_id, signal.SIGQUIT)
            shutil.rmtree(folder, ignore_errors=True)


def _lives(process: int) -> bool:
    try:
        os.kill(process, 0)
    except ProcessLookupError:
        return False
    except PermissionError:
        return True
    return True


def is_required() -> bool:
    """Whether a missing server is an error rather than a reason to skip."""
    return os.environ.get(REQUIRED, "") not in {"", "0"}


_numbers = count(1)


def _execute(statement: str) -> str:
    engine = create_engine(server(), isolation_level="AUTOCOMMIT")
    try:
        with engine.connect() as connection:
            done = connection.execute(text(statement))
            return str(done.scalar()) if done.returns_rows else ""
    finally:
        engine.dispose()


def create_database(template: str | None = None) -> URL:
    """Create a new database and return its URL; empty, or a copy of `template`."""
    name = f"peel_{os.getpid()}_{next(_numbers)}"
    copied = f' TEMPLATE "{template}"{_strategy()}' if template else ""
    _execute(f'CREATE DATABASE "{name}"{copied}')
    return server().set(database=name)


@cache
def _strategy() -> str:
    """Return how a template is copied: by files where nobody waits for the disk, half the work of the log."""
    if os.environ.get(NAMED):
        return ""
    return " STRATEGY FILE_COPY" if int(_execute("SHOW server_version_num")) >= 150_000 else ""


def drop_database(url: URL) -> None:
    """Remove a database, closing its connections."""
    _execute(f'DROP DATABASE IF EXISTS "{url.database}" WITH (FORCE)')


@cache
def migrated_template() -> str:
    """Return the name of a migrated database, to be copied for each test."""
    url = create_database()
    atexit.register(_drop_quietly, url)
    store = Store(url.render_as_string(hide_password=False))
    try:
        migrate.upgrade(store)
    finally:
        store.close()
    return str(url.database)


def _drop_quietly(url: URL) -> None:
    if os.environ.get(NAMED):  # removed with the private server
        drop_database(url)
