"""python -m tests.bench.week: measure `week` with a million rows of other bars in the database.

One bar has ten thousand lines of waste over three years. The query runs in a database with only these, and in
one with a million interleaved lines of a hundred bars. The target is that the other bars' lines do not slow
it down: a ratio of 2 at most.
"""

from __future__ import annotations

import argparse
import statistics
import tempfile
import time
from datetime import UTC, date, datetime, timedelta
from decimal import Decimal
from fractions import Fraction
from pathlib import Path

from sqlalchemy import func, insert, select, text

from bot.chat.conversation.conversation import Conversation
from bot.chat.reply.message import Message, Place, Sender
from bot.trade.formulas.kinds import IngredientKind
from bot.trade.formulas.measures import Quantity
from bot.work.context import DEFAULT_REASONS, Context, Role
from bot.work.formulas import ingredients
from bot.work.money import prices
from bot.work.people import people
from bot.work.savings import savings
from storage import migrate
from storage.store import Store
from storage.tables import Waste
from tests.bench.filling import Stopped, open_bar

OWN_ROWS = 10_000
ALL_ROWS = 1_000_000
_NOW = datetime(2026, 11, 26, 23, tzinfo=UTC)
_TODAY = date(2026, 11, 26)
_FRUIT = ("orange", "grapefruit", "lemon", "lime")
_DAYS = 3 * 365
_BLOCK = 20_000


def _open(store: Store, number: int) -> int:
    """Create one bar with four priced fruit, one of them sprayed; return its id."""
    with store.writing() as unit:
        who = people.meet(unit, "bench", f"p{number}", "Ana", "en", f"r{number}", True, "")
        view = open_bar(unit, who, "Ana", number, _NOW)
        assert who.person_id is not None
        assert who.room_id is not None
        context = Context(
            unit.bar(view.id), view, who.person_id, "Ana", Role.OWNER, who.room_id, _NOW, "bench"
        )
        for place, name in enumerate(_FRUIT):
            fruit = ingredients.add(context, name, IngredientKind.FRUIT)
            prices.set_price(context, fruit.id, Quantity(Fraction(1), "each"), Decimal(40 + 10 * place) / 100)
        savings.set_since(context, 1, _TODAY - timedelta(days=200))
        return view.id


def _row(bar_id: int, number: int, rows: int) -> dict[str, object]:
    day = _TODAY - timedelta(days=_DAYS - 1 - number * _DAYS // rows)
    pieces = 1 + number % 7
    return {
        "bar_id": bar_id,
        "id": number + 1,
        "ingredient_id": 1 + number % 4,
        "count_milli": pieces * 1000,
        "grams_milli": None,
        "reason": DEFAULT_REASONS[number // 4 % len(DEFAULT_REASONS)],
        "business_day": day,
        "cost_minor": pieces * (40 + 10 * (number % 4)),
        "price_id": 1 + number % 4,
        "at": datetime(day.year, day.month, day.day, 23, tzinfo=UTC),
        "by": 1,
        "corrects": None,
        "source": f"bench {number}",
        "line": 1,
        "late": number % 3 > 0,
    }


def fill(store: Store, bar_count: int, rows: int) -> None:
    """Insert `rows` lines of waste for each of this many bars, interleaved."""
    ids = [_open(store, number) for number in range(1, bar_count + 1)]
    block: list[dict[str, object]] = []
    with store.writing() as unit:
        for number in range(rows):
            block += [_row(bar_id, number, rows) for bar_id in ids]
            if len(block) >= _BLOCK or number == rows - 1:
                unit.session.execute(insert(Waste), block)
                block = []
    with store.engine.begin() as connection:
        connection.execute(text("ANALYZE"))


def seconds(store: Store, said: str, times: int) -> list[float]:
    """Answer a message this many times as the person of the first bar; return the duration of each."""
    conversation = Conversation(store, Stopped(_NOW))
    taken = []
    for number in range(times + 3):
        message = Message(
            "bench", Sender("p1", "Ana", "en"), Place("r1", True), said, key=str(number), sent_at=_NOW
        )
        begun = time.perf_counter()
        (answer,) = conversation.answer(message)
        taken.append(time.perf_counter() - begun)
        if not answer.first_line.startswith("Waste: "):
            raise AssertionError(f"no summary: {answer.first_line}")
    return taken[3:]  # the first ones load the bar's names


def _measured(file: Path, bar_count: int, own: int, said: str, times: int) -> tuple[int, float, float]:
    store = Store(f"sqlite:///{file}")
    try:
        migrate.upgrade(store)
        fill(store, bar_count, own)
        with store.reading() as unit:
            rows = int(unit.session.scalar(select(func.count()).select_from(Waste)) or 0)
        taken = seconds(store, said, times)
        return rows, statistics.median(taken) * 1000, statistics.quantiles(taken, n=20)[-1] * 1000
    finally:
        store.close()


def compare(own: int, rows: int, times: int, said: str) -> list[tuple[int, float, float]]:
    """Rows in all, median and 95th percentile in milliseconds: one bar alone, then among others."""
    bar_count = max(1, rows // own)
    with tempfile.TemporaryDirectory() as name:
        folder = Path(name)
        return [
            _measured(folder / f"{place}.sqlite", count, own, said, times)
            for place, count in enumerate((1, bar_count))
        ]


def main() -> None:
    """Measure and print."""
    parser = argparse.ArgumentParser(prog="python -m tests.bench.week", description=__doc__)
    parser.add_argument("--own", type=int, default=OWN_ROWS, help="rows of the bar that asks")
    parser.add_argument("--rows", type=int, default=ALL_ROWS, help="rows of all bars together")
    parser.add_argument("--times", type=int, default=200, help="answers measured")
    parser.add_argument("--say", default="week", help="what is asked")
    plan = parser.parse_args()
    results = compare(plan.own, plan.rows, plan.times, plan.say)
    print(f"“{plan.say}” of one bar with {plan.own} rows of its own, {plan.times} answers each, SQLite")
    for rows, middle, most in results:
        print(f"{rows:>9} rows in all: p50 {middle:6.2f} ms, p95 {most:6.2f} ms")
    print(f"ratio of the medians: {results[1][1] / results[0][1]:.2f}")


if __name__ == "__main__":
    main()
