"""Tests of the upgrade and the way back: the script itself, with two versions of the real program.

systemctl is a script that starts and stops the program as the unit does; everything else is real.
"""

from __future__ import annotations

import asyncio
import getpass
import os
import re
import shutil
import signal
import sys
from collections.abc import Iterator
from contextlib import suppress
from pathlib import Path

import pytest

from storage import migrate
from storage.store import Store
from tests.api import Server, free_port
from tests.channels.telegram.conftest import SET_UP

_ROOT = Path(migrate.__file__).parent.parent
_SYSTEMCTL = """#!/bin/sh
# start, stop, is-active [--quiet] of one unit
home={home}
case "$1" in
start)
    while IFS= read -r line; do export "$line"; done < {settings}
    export XDG_DATA_HOME={folder}
    cd "$home"
    setsid .venv/bin/python -m bot run >> {folder}/said.txt 2>&1 < /dev/null &
    echo $! > {folder}/pid
    ;;
stop)
    process=$(cat {folder}/pid)
    kill -TERM "$process" 2> /dev/null || true
    for _tenth in $(seq 200); do kill -0 "$process" 2> /dev/null || exit 0; sleep 0.1; done
    exit 1
    ;;
is-active) kill -0 "$(cat {folder}/pid)" 2> /dev/null ;;
esac
"""


class Machine:
    """A folder with an installed program, its settings, its state, and systemctl."""

    def __init__(self, folder: Path, server: Server) -> None:
        self.folder = folder
        self.home, self.settings = folder / "home", folder / "bot.env"
        self.state = folder / "peel-ledger"
        self.state.mkdir()
        lines = [
            f"TELEGRAM_BOT_TOKEN={server.token}",
            f"TELEGRAM_API_BASE={server.base_url}",
            f"LISTEN_ADDRESS=127.0.0.1:{free_port()}",
            "LOG_LEVEL=INFO",
        ]
        self.settings.write_text("\n".join(lines) + "\n")
        systemctl = folder / "bin" / "systemctl"
        systemctl.parent.mkdir()
        systemctl.write_text(_SYSTEMCTL.format(home=self.home, settings=self.settings, folder=folder))
        systemctl.chmod(0o755)
        self.put(self.home, "1.0")
        (self.home / ".venv").symlink_to(Path(sys.prefix))

    @property
    def environment(self) -> dict[str, str]:
        return {
            "PATH": f"{self.folder / 'bin'}:/usr/bin:/bin",
            "PEEL_HOME": str(self.home),
            "PEEL_STATE": str(self.state),
            "PEEL_ENV": str(self.settings),
            "PEEL_USER": getpass.getuser(),
            "PEEL_VENV": sys.prefix,
            "PEEL_CHECK_SECONDS": "60",
        }

    @staticmethod
    def put(place: Path, version: str) -> None:
        """Put a version of the program there."""
        for name in ("bot", "storage", "deploy"):
            shutil.copytree(_ROOT / name, place / name, ignore=shutil.ignore_patterns("__pycache__"))
        named = place / "bot" / "__init__.py"
        named.write_text(re.sub(r'__version__ = ".*"', f'__version__ = "{version}"', named.read_text()))

    async def run(self, *words: str) -> tuple[int, str]:
        process = await asyncio.create_subprocess_exec(
            *words,
            env=self.environment,
            cwd=self.folder,
            stdout=asyncio.subprocess.PIPE,
            stderr=asyncio.subprocess.STDOUT,
        )
        said, _none = await asyncio.wait_for(process.communicate(), 300)
        return process.returncode or 0, said.decode()

    @property
    def version(self) -> str:
        found = re.search(r'__version__ = "(.*)"', (self.home / "bot" / "__init__.py").read_text())
        return "" if found is None else found[1]

    def revision(self) -> str | None:
        store = Store(f"sqlite:///{self.state / 'peel-ledger.sqlite'}")
        try:
            return migrate.current(store)
        finally:
            store.close()


@pytest.fixture
def machine(api: Server, tmp_path: Path) -> Iterator[Machine]:
    made = Machine(tmp_path, api)
    yield made
    pid = tmp_path / "pid"
    if pid.exists():
        with suppress(ProcessLookupError):
            os.kill(int(pid.read_text()), signal.SIGKILL)


def _later(revisions: int) -> str:
    """The number of a revision after the newest one."""
    return f"{int(migrate.head()) + revisions:04}"


def _release(folder: Path, version: str, migrations: int) -> Path:
    """A release with so many more migrations, which make a table each."""
    Machine.put(folder, version)
    for more in range(1, migrations + 1):
        (folder / "storage/migrations/versions" / f"{_later(more)}_later.py").write_text(
            f'revision = "{_later(more)}"\ndown_revision = "{_later(more - 1)}"\n'
            "branch_labels = depends_on = None\nfrom alembic import op\n\ndef upgrade():\n"
            f'    op.execute("CREATE TABLE later_{more} (a INTEGER)")\n'
        )
    return folder


@pytest.mark.long
async def test_an_upgrade_and_the_way_back(machine: Machine, api: Server, tmp_path: Path) -> None:
    settings = machine.settings.read_text()
    assert (await machine.run("systemctl", "start", "peel-ledger"))[0] == 0
    ana = api.person("Ana")
    for said in ("/start", *SET_UP, "waste 3 limes mouldy"):
        await ana.says(said, within=60)
    assert machine.revision() == _later(0)

    good = _release(tmp_path / "good", "2.0", 1)
    code, said = await machine.run("sh", str(good / "deploy" / "upgrade.sh"))
    assert code == 0, said
    assert machine.version == "2.0"
    assert machine.revision() == _later(1)
    assert "lime" in (await ana.says("week", within=60)).text

    # One that migrates and then does not run.
    bad = _release(tmp_path / "bad", "3.0", 2)
    channel = bad / "bot/channels/telegram/channel.py"
    channel.write_text(channel.read_text() + "\nraise SystemExit(7)\n")
    await ana.says("waste 2 limes mouldy", within=60)
    code, said = await machine.run("sh", str(bad / "deploy" / "upgrade.sh"))
    assert code == 1, said
    assert "The old version runs again" in said
    assert machine.version == "2.0"
    assert machine.revision() == _later(1)
    week = (await ana.says("week", within=60)).text
    assert re.search(r"lime +5 ", week), week
    assert machine.settings.read_text() == settings
    assert (await machine.run("systemctl", "stop", "peel-ledger"))[0] == 0
