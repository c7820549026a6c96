"""New databases for the benchmarks: files, and a private PostgreSQL with durable writes."""

from __future__ import annotations

import shutil
import tempfile
from collections.abc import Callable, Sequence
from itertools import count
from pathlib import Path
from types import TracebackType

from sqlalchemy import create_engine, make_url, text

from tests import postgres
from tests.bench import parts

Fill = Callable[[str, Sequence[int]], object]  # called with the URL and the people's numbers


class Databases:
    """Gives out URLs; PostgreSQL starts on first use and ends with the block."""

    def __init__(self) -> None:
        self._server: postgres.Private | None = None
        self._numbers = count(1)
        self._folder = tempfile.TemporaryDirectory(prefix="peel-bench-")
        self._filled: dict[tuple[str, Fill, tuple[int, ...]], str] = {}

    def __enter__(self) -> Databases:
        return self

    def __exit__(
        self, kind: type[BaseException] | None, error: BaseException | None, trace: TracebackType | None
    ) -> None:
        if self._server is not None:
            self._server.remove()
        self._folder.cleanup()

    def filled(self, kind: str, folder: Path, fill: Fill, people: Sequence[int]) -> str:
        """Return the URL of a new database filled by `fill`, which is called once and then copied."""
        if not kind:
            fill("", people)
            return ""
        key = (kind, fill, tuple(people))
        if key not in self._filled:
            self._filled[key] = self.new(kind, Path(self._folder.name))
            fill(self._filled[key], people)
        return self.new(kind, folder, self._filled[key])

    def new(self, kind: str, folder: Path, like: str = "") -> str:
        """Return the URL of a new database, empty or a copy; nothing without a kind.

        Raises NoPostgresError.
        """
        number = next(self._numbers)
        if kind == "sqlite":
            file = folder / f"bench-{number}.sqlite"
            if like:
                shutil.copy(make_url(like).database or "", file)
            return f"sqlite:///{file}"
        if kind != "postgresql":
            return ""
        if self._server is None:
            self._server = postgres.Private(postgres.folder_for_private(), durable=True)
        name = f"bench_{number}"
        template = f' TEMPLATE "{make_url(like).database}"' if like else ""
        engine = create_engine(self._server.url, isolation_level="AUTOCOMMIT")
        with engine.connect() as connection:
            connection.execute(text(f'CREATE DATABASE "{name}"{template}'))
        engine.dispose()
        return self._server.url.set(database=name).render_as_string(hide_password=False)

    def cpu_seconds(self) -> float:
        """User and system time of PostgreSQL so far, all its processes; 0 if it is not running."""
        if self._server is None:
            return 0.0
        return parts.cpu_seconds(self._server.process.pid, family=True)
