"""python -m tests.bench [--write]: run and print all measurements; about six minutes on two idle cores."""

from __future__ import annotations

import argparse
import sys
import tempfile
from pathlib import Path

from tests.bench import imports, week
from tests.bench.databases import Databases
from tests.bench.filling import open_bars
from tests.bench.measure import Contender, Figures, Plan, measure, server_capacity
from tests.bench.soak import measure_soak
from tests.bench.start import measure_starts, tell_starts
from tests.bench.telling import Found, draw, tell, write, write_starts
from tests.bench.ticks import Ticks, measure_ticks

ECHO = Contender(
    name="echo",
    command=(sys.executable, "-m", "tests.bench.echo", "{port}"),
    messages=("scale demo mist to 8 x 50 ml", "waste 6 oranges mouldy"),
)
_SCALE, _WASTE = "scale demo mist to 8 x 50 ml", "waste 6 oranges mouldy"
_SECRET = "only-the-loopback-server-knows-it"  # noqa: S105


def peel_ledger(name: str, message: str, database: str, processes: int = 0) -> Contender:
    """The program on a database; with `processes` behind a webhook, else polling."""
    env = {
        "TELEGRAM_BOT_TOKEN": "{token}",
        "TELEGRAM_API_BASE": "http://127.0.0.1:{port}/bot",
        "DATABASE_URL": "{database}",
        "TELEGRAM_SENDS_PER_SECOND": "0",
        "MESSAGES_PER_MINUTE": "0",
        "XDG_DATA_HOME": "{folder}",
        "LOG_LEVEL": "WARNING",
    }
    if processes:
        env |= {
            "TELEGRAM_WEBHOOK_URL": "http://{listen}/telegram",
            "TELEGRAM_WEBHOOK_SECRET": _SECRET,
            "LISTEN_ADDRESS": "{listen}",
        }
    return Contender(
        name=name,
        command=(sys.executable, "-m", "bot", "run"),
        messages=(message,),
        env=env,
        database=database,
        prepare=open_bars,
        processes=max(1, processes),
        webhook=bool(processes),
    )


CONTENDERS = (
    ECHO,
    peel_ledger("scale, SQLite", _SCALE, "sqlite"),
    peel_ledger("waste, SQLite", _WASTE, "sqlite"),
    peel_ledger("scale, PostgreSQL", _SCALE, "postgresql"),
    peel_ledger("waste, PostgreSQL", _WASTE, "postgresql"),
    peel_ledger("waste, webhook, one process", _WASTE, "postgresql", 1),
    peel_ledger("waste, webhook, two processes", _WASTE, "postgresql", 2),
)


def _ticks(databases: Databases, folder: Path, chats: int) -> dict[str, tuple[Ticks, Ticks]]:
    def made(kind: str) -> str:
        return databases.filled(kind, folder, open_bars, range(1001, 1001 + max(chats, 100)))

    return {
        "SQLite": measure_ticks(lambda: made("sqlite")),
        "PostgreSQL": measure_ticks(lambda: made("postgresql")),
    }


def measure_all(plan: Plan, hourly: int, words: str, *, rows: int = week.ALL_ROWS) -> Found:
    """Run the measurements whose names contain these words, or all without words."""
    found = Found()
    with Databases() as databases, tempfile.TemporaryDirectory() as name:
        folder = Path(name)
        contenders: dict[str, Figures] = {}
        for contender in CONTENDERS:
            if contender is ECHO or words in contender.name:
                print(f"measuring {contender.name}", file=sys.stderr)
                beside = None if contender is ECHO else ECHO
                contenders[contender.name] = measure(contender, plan, databases, beside)
        found.contenders = contenders
        if words in "reminders":
            print("measuring reminders", file=sys.stderr)
            found.ticks = _ticks(databases, folder, plan.chats)
        if words in "million rows":
            print("measuring a million rows", file=sys.stderr)
            found.week = week.compare(week.OWN_ROWS, rows, 100, "week")
        if words in "imports":
            print("measuring others beside an import", file=sys.stderr)
            found.imports = imports.measure_imports()
        if words in "soak":
            print("measuring the soak", file=sys.stderr)
            found.soak = measure_soak(CONTENDERS[1], plan.chats, hourly, databases)
    return found


def main() -> None:
    """Measure and print, or write to README.md."""
    parser = argparse.ArgumentParser(prog="python -m tests.bench", description=__doc__)
    parser.add_argument("words", nargs="?", default="", help="only what these words stand in the name of")
    parser.add_argument("--sequential", type=int, default=Plan.sequential, help="messages in one chat")
    parser.add_argument("--chats", type=int, default=Plan.chats, help="chats at once")
    parser.add_argument("--each", type=int, default=Plan.each, help="messages in each of them")
    parser.add_argument("--starts", type=int, default=Plan.starts, help="cold starts")
    parser.add_argument("--hourly", type=int, default=36, help="messages of each chat in the soak's hour")
    parser.add_argument("--write", action="store_true", help="put tables and picture into README.md")
    wanted = parser.parse_args()
    plan = Plan(wanted.sequential, wanted.chats, wanted.each, wanted.starts)
    if wanted.words in {"", "start"}:
        print("measuring starts", file=sys.stderr)
        starts = measure_starts(CONTENDERS[1], 3 * plan.starts)
        if wanted.write:
            write_starts(starts)
        else:
            print("\n".join(tell_starts(starts)))
        if wanted.words:
            return
    capacity = server_capacity()
    found = measure_all(plan, wanted.hourly, wanted.words)
    lines = tell(found, plan, capacity)
    if wanted.write:
        write(lines)
        draw(found)
    else:
        print("\n".join(lines))


if __name__ == "__main__":
    main()
