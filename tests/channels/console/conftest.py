"""The program as a process in an empty folder."""

from __future__ import annotations

import os
import subprocess
import sys
from collections.abc import Callable
from pathlib import Path

import pytest

Run = Callable[..., subprocess.CompletedProcess[bytes]]


@pytest.fixture
def run(tmp_path: Path) -> Run:
    """Run `python -m bot` in an empty folder, with a database of its own and no token."""

    def started(
        *arguments: str, typed: str | bytes = b"", **environment: str
    ) -> subprocess.CompletedProcess[bytes]:
        clean = {key: value for key, value in os.environ.items() if not key.startswith("TELEGRAM_")}
        clean["DATABASE_URL"] = f"sqlite:///{tmp_path / 'own.sqlite'}"
        return subprocess.run(
            [sys.executable, "-W", "error", "-m", "bot", *arguments],
            input=typed.encode() if isinstance(typed, str) else typed,
            capture_output=True,
            timeout=60,
            cwd=tmp_path,
            env={**clean, **environment},
            check=False,
        )

    return started
