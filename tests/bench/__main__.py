"""python -m tests.bench: measures the contenders and prints a table, ratios to the first one."""

from __future__ import annotations

import argparse
import platform
import sys
from dataclasses import fields

from tests.api.remote import Remote
from tests.bench.measure import Contender, Figures, Plan, measure, server_capacity

ECHO = Contender(
    name="echo",
    command=(sys.executable, "-m", "tests.bench.echo", "{port}"),
    messages=("scale demo mist to 8 x 50 ml", "waste 6 oranges mouldy"),
)
_SET_UP = (
    "/start",
    "Bench bar",
    "Europe/Lisbon",
    "EU",
    "EUR",
    "metric",
    "05:00",
    "new formula Demo mist\ngrapefruit oil 12 ml\npropylene glycol 22 ml\n"
    "neutral spirit 96 % 62 ml\nkind aroma mist",
    "price oranges 0.60 each",
)


def _open_bar(remote: Remote, person: int) -> None:
    """Give one chat a bar with a formula and a price before it is measured."""
    for text in _SET_UP:
        remote.ask("says", person=person, text=text)


def _peel_ledger(name: str, *messages: str) -> Contender:
    return Contender(
        name=name,
        command=(sys.executable, "-m", "bot", "run"),
        messages=messages,
        env={
            "TELEGRAM_BOT_TOKEN": "{token}",
            "TELEGRAM_API_BASE": "http://127.0.0.1:{port}/bot",
            "DATABASE_URL": "sqlite:///{folder}/bench.sqlite",
            "TELEGRAM_SENDS_PER_SECOND": "0",
            "XDG_DATA_HOME": "{folder}",
            "LOG_LEVEL": "WARNING",
        },
        prepare=_open_bar,
    )


CONTENDERS = (
    ECHO,
    _peel_ledger("scale", "scale demo mist to 8 x 50 ml"),
    _peel_ledger("waste", "waste 6 oranges mouldy"),
)


def table(results: dict[str, Figures]) -> str:
    """One line a figure, one column a contender, each but the first with its ratio to the first."""
    names = list(results)
    lines = [f"{'':<20}" + "".join(f"{name:>22}" for name in names)]
    for figure in fields(Figures):
        values = [getattr(results[name], figure.name) for name in names]
        lines.append(f"{figure.name:<20}" + "".join(_cells(values)))
    return "\n".join(lines)


def _cells(values: list[float | None]) -> list[str]:
    first = values[0]
    cells = []
    for at, value in enumerate(values):
        shown = "-" if value is None else f"{value:.2f}"
        if at and value is not None and first:
            shown += f" (x{value / first:.2f})"
        cells.append(f"{shown:>22}")
    return cells


def main() -> None:
    """Measure and print."""
    parser = argparse.ArgumentParser(prog="python -m tests.bench", description=__doc__)
    parser.add_argument("--sequential", type=int, default=Plan.sequential, help="messages in one chat")
    parser.add_argument("--chats", type=int, default=Plan.chats, help="chats at once")
    parser.add_argument("--each", type=int, default=Plan.each, help="messages in each of them")
    parser.add_argument("--starts", type=int, default=Plan.starts, help="cold starts")
    plan = Plan(**vars(parser.parse_args()))
    print(f"Python {platform.python_version()} on {platform.system()} {platform.machine()}")
    print(f"the server alone answers {server_capacity():.0f} requests/s on one connection")
    print(table({contender.name: measure(contender, plan) for contender in CONTENDERS}))


if __name__ == "__main__":
    main()
