"""Dump and restore a PostgreSQL database with pg_dump and pg_restore, custom format."""

from __future__ import annotations

import os
import re
import shutil
import subprocess
import tempfile
from pathlib import Path
from typing import Any

from sqlalchemy import inspect, text

from storage import census
from storage.refusals import Checked, NotWholeError, ToolFailedError, ToolMissingError, first_difference
from storage.store import Store
from storage.tables import Base

_COPY_BEGINS = re.compile(rb'COPY (?:"?\w+"?\.)?"?(?P<table>\w+)"? \(.*\) FROM stdin;\n')
_COPY_ENDS = b"\\.\n"


def _tool(name: str) -> str:
    found = shutil.which(name)
    if found is None:
        raise ToolMissingError(name)
    return found


def _reach(store: Store) -> tuple[str, dict[str, str]]:
    """Return the libpq arguments for this database; the password goes through the environment only.

    Every user of the machine can read a command line.
    """
    from psycopg.conninfo import make_conninfo  # noqa: PLC0415 - only where PostgreSQL is used

    parameters: dict[str, Any] = dict(store.engine.dialect.create_connect_args(store.url)[1])
    password = parameters.pop("password", None)
    for ours in ("context", "prepare_threshold", "autocommit"):
        parameters.pop(ours, None)
    environment = dict(os.environ, LC_ALL="C.UTF-8")
    if password:
        environment["PGPASSWORD"] = str(password)
    return make_conninfo(**parameters), environment


def _run_tool(words: list[str], environment: dict[str, str] | None = None) -> None:
    done = subprocess.run(  # noqa: S603 - fixed words; the URL is the owner's own
        words, env=environment, stdin=subprocess.DEVNULL, capture_output=True, text=True, check=False
    )
    if done.returncode:
        said = [line for line in done.stderr.splitlines() if line.strip()]
        raise ToolFailedError(said[0] if said else words[0])


def dump(store: Store, aside: Path) -> Checked:
    """Dump into the empty file `aside`; its content must match the row counts.

    Raises ToolMissingError, ToolFailedError and NotWholeError.
    """
    program = _tool("pg_dump")
    _tool("pg_restore")
    reach, environment = _reach(store)
    with store.engine.connect() as connection:
        # The count uses the snapshot that pg_dump then reads, so both must agree exactly.
        connection.execute(text("SET TRANSACTION ISOLATION LEVEL REPEATABLE READ, READ ONLY"))
        snapshot = connection.scalar(text("SELECT pg_export_snapshot()"))
        rows = census.count_rows(connection)
        revision = census.revision_of(connection)
        words = ["--format=custom", "--no-owner", "--no-privileges", f"--snapshot={snapshot}"]
        _run_tool([program, *words, f"--file={aside}", f"--dbname={reach}"], environment)
        connection.rollback()
    copied = check(aside)
    if copied.rows != rows or copied.revision != revision:
        raise NotWholeError(first_difference(rows, copied.rows) or "alembic_version")
    return copied


def check(path: Path) -> Checked:
    """Check all of a dump without a server and count its rows. Raises NotWholeError."""
    words = [_tool("pg_restore"), "--data-only", "--file=-", str(path)]
    rows: dict[str, int] = {}
    revision: str | None = None
    table: str | None = None
    with tempfile.TemporaryFile() as errors:
        reader = subprocess.Popen(  # noqa: S603 - as in _run_tool
            words, stdin=subprocess.DEVNULL, stdout=subprocess.PIPE, stderr=errors
        )
        assert reader.stdout is not None  # noqa: S101 - asked for above
        with reader.stdout as lines:
            for line in lines:
                if table is None:
                    begins = _COPY_BEGINS.fullmatch(line)
                    if begins:
                        table = begins["table"].decode()
                        rows[table] = 0
                elif line == _COPY_ENDS:
                    table = None
                else:
                    rows[table] += 1
                    if table == "alembic_version":
                        revision = line.strip().decode()
        if reader.wait() or table is not None:
            errors.seek(0)
            raise NotWholeError(
                errors.read().decode(errors="replace").strip().partition("\n")[0] or str(path)
            )
    rows.pop("alembic_version", None)
    return Checked(path, revision, rows)


def restore(path: Path, into: Store) -> None:
    """Restore a dump into a database without rows, completely or not at all."""
    tool = _tool("pg_restore")
    reach, environment = _reach(into)
    ours = {*Base.metadata.tables, "alembic_version"}
    with into.engine.begin() as connection:
        # The database has no rows; `migrate` may have created its tables, possibly at another revision.
        for name in sorted(ours & set(inspect(connection).get_table_names())):
            connection.execute(text(f'DROP TABLE "{name}" CASCADE'))
    words = ["--single-transaction", "--exit-on-error", "--no-owner", "--no-privileges"]
    _run_tool([tool, *words, f"--dbname={reach}", str(path)], environment)
