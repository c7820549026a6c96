"""New databases for the bench: files, and a PostgreSQL of its own that waits for the disk."""

from __future__ import annotations

from itertools import count
from pathlib import Path
from types import TracebackType

from sqlalchemy import create_engine, text

from tests import postgres
from tests.bench import parts


class Databases:
    """Gives out URLs; the PostgreSQL is started when it is first asked for and ends with the block."""

    def __init__(self) -> None:
        self._server: postgres.Private | None = None
        self._numbers = count(1)

    def __enter__(self) -> Databases:
        return self

    def __exit__(
        self, kind: type[BaseException] | None, error: BaseException | None, trace: TracebackType | None
    ) -> None:
        if self._server is not None:
            self._server.remove()

    def new(self, kind: str, folder: Path) -> str:
        """Return the URL of a new database, empty; of no kind it is nothing. Raises NoPostgresError."""
        number = next(self._numbers)
        if kind == "sqlite":
            return f"sqlite:///{folder / f'bench-{number}.sqlite'}"
        if kind != "postgresql":
            return ""
        if self._server is None:
            self._server = postgres.Private(postgres.folder_for_private(), durable=True)
        name = f"bench_{number}"
        engine = create_engine(self._server.url, isolation_level="AUTOCOMMIT")
        with engine.connect() as connection:
            connection.execute(text(f'CREATE DATABASE "{name}"'))
        engine.dispose()
        return self._server.url.set(database=name).render_as_string(hide_password=False)

    def cpu_seconds(self) -> float:
        """User and system time of the PostgreSQL so far, all its processes, 0 while there is none."""
        if self._server is None:
            return 0.0
        return parts.cpu_seconds(self._server.process.pid, family=True)
