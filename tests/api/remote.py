"""Client of the control endpoint: controls a server process."""

from __future__ import annotations

import json
import subprocess
import sys
from http.client import HTTPConnection
from pathlib import Path
from types import TracebackType
from typing import Any

_ROOT = Path(__file__).parents[2]


class Remote:
    """A server in a process of its own."""

    def __init__(self) -> None:
        self.process = subprocess.Popen(
            [sys.executable, "-m", "tests.api"], cwd=_ROOT, stdout=subprocess.PIPE, text=True
        )
        assert self.process.stdout is not None
        begun = json.loads(self.process.stdout.readline())
        self.port: int = begun["port"]
        self.token: str = begun["token"]
        self.connection = HTTPConnection("127.0.0.1", self.port, timeout=600)

    def ask(self, what: str, **given: Any) -> Any:
        """Send one control request; see `tests.api.control` for the list."""
        self.connection.request("POST", f"/control/{what}", json.dumps(given))
        answer = json.loads(self.connection.getresponse().read())
        if not answer["ok"]:
            raise AssertionError(answer["error"])
        return answer["result"]

    def stop(self) -> list[str]:
        """Stop the server; returns all violations, including unanswered taps."""
        self.connection.close()
        self.process.terminate()
        output, _ = self.process.communicate(timeout=10)
        return [json.loads(line)["violation"] for line in output.splitlines()]

    def __enter__(self) -> Remote:
        return self

    def __exit__(
        self, kind: type[BaseException] | None, error: BaseException | None, trace: TracebackType | None
    ) -> None:
        if self.process.poll() is None:
            self.stop()
