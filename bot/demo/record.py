"""Record the story: python -m bot.demo.record plays it for seven nights in a row and stores its rows.

Run it after a change to the story, or to the rows that a use case writes; a test in tests/demo fails until
then.
"""

from __future__ import annotations

import argparse
import tempfile
from datetime import UTC, date, datetime, timedelta
from pathlib import Path
from typing import Any

from sqlalchemy import Connection, Table, select

from bot.demo import book, counts, filling, fruit, recorded
from bot.demo.book import OWNER
from bot.demo.recorded import Marks, Rows
from bot.demo.stage import Stage
from bot.demo.story import PARTS
from bot.trade.days import instant_of, local_time
from bot.work.context import BarView
from bot.work.reminders.planning import RECHECK_AFTER
from storage import migrate
from storage.store import Store
from storage.tables import Bar
from storage.types import Instant, JsonObject
from storage.unit import Unit

# In winter, far from any clock change, so that a skipped or repeated hour cannot confuse a moment computed
# from another by hours with one read off the wall clock.
FIRST_LAST_DAY = date(2027, 2, 1)
PEOPLE = frozenset({"by", "made_by", "person_id", "done_by"})
_MOMENTS = range(10**9, 4 * 10**9)  # seconds since 1970; other numbers of the story are smaller or larger
_AFTER = {("batch", "rest_until"): "made_at", ("peeled_fruit", "lost_at"): "at"}


def record_all() -> None:
    """Record each weekday."""
    recorded.FOLDER.mkdir(exist_ok=True)
    for number in range(7):
        last_day = FIRST_LAST_DAY + timedelta(days=number)
        recorded.write(recorded.path_for(last_day), record(last_day))


def record(last_day: date) -> Rows:
    """Play the story with this last night; return its rows with marks."""
    with tempfile.TemporaryDirectory(prefix="peel-ledger-") as folder:
        store = Store(f"sqlite:///{Path(folder) / 'demo.sqlite'}")
        try:
            migrate.upgrade(store)
            with store.writing() as unit:
                return _recorded(unit, last_day)
        finally:
            store.close()


def _recorded(unit: Unit, last_day: date) -> Rows:
    now = instant_of(last_day + timedelta(days=1), book.CLOSING_MINUTE, book.ZONE)
    stage = Stage(unit, now, recorded.CHANNEL)
    stage.enter(OWNER, recorded.CHANNEL, "robin", "console robin", "Robin")
    filling.open_bar(stage, "Robin")
    before = _rows(unit)
    bar = play(stage)
    rows = _new(before, _rows(unit))
    marked = _Marking(rows, Marks(last_day, stage.people), bar.settings.quiet_to).marked()
    changed = {"settings": bar.settings.to_json(), "revision": bar.revision}
    return {"stage": [{"acts": stage.acts}], "bar": [changed], **marked}


def play(stage: Stage) -> BarView:
    """Play the story in the opened bar; return the bar at the end."""
    stage.play(act for part in (*PARTS, *fruit.PARTS, *counts.PARTS) for act in part(stage))
    context = stage.context(OWNER, stage.now)
    filling.settle_stale(context)
    return BarView.of(stage.unit.session.get_one(Bar, context.bar.id))


def _rows(unit: Unit) -> Rows:
    """Return every row of a bar's tables in database form, JSON as values."""
    return {table.name: _rows_of(unit.connection, table) for table in recorded.tables()}


def _rows_of(connection: Connection, table: Table) -> list[JsonObject]:
    plain = recorded.plain(table)
    found = connection.execute(select(plain).order_by(*(plain.c[one.name] for one in table.primary_key)))
    return [dict(row) for row in found.mappings()]


def _new(before: Rows, after: Rows) -> Rows:
    """Return the new rows. Raises ValueError for an existing row that changed unexpectedly."""
    found = {}
    for name, rows in after.items():
        old = [] if name in recorded.WHOLE else before[name]
        if any(row not in rows for row in old):
            raise ValueError(name)
        found[name] = [row for row in rows if row not in old]
    return {name: rows for name, rows in found.items() if rows}


class _Marking:
    """Marks rows: the content of a reminder depends on its subject."""

    def __init__(self, rows: Rows, marks: Marks, quiet_to: int) -> None:
        self._rows = rows
        self._marks = marks
        self._quiet_to = quiet_to
        self._tables = {table.name: table for table in recorded.tables()}

    def marked(self) -> Rows:
        """Return all rows with marks."""
        return {
            name: [self._row(self._tables[name], row) for row in rows] for name, rows in self._rows.items()
        }

    def _row(self, table: Table, row: JsonObject) -> JsonObject:
        return {
            column.name: self._value(table.name, column.name, column.type, row)
            for column in table.columns
            if column.name != "bar_id"
        }

    def _value(self, table: str, name: str, kind: object, row: JsonObject) -> Any:
        value = row[name]
        if value is None:
            return None
        if isinstance(kind, Instant):
            return self._marks.moment(value, self._begun(table, name, row))
        if name == "channel" and value == recorded.CHANNEL:
            return "@c"
        if name in PEOPLE:
            return self._marks.person(value)
        return self._within(value)

    def _within(self, value: Any) -> Any:
        """Mark the days and moments in a text or a JSON value."""
        if isinstance(value, str):
            return self._marks.day(value)
        if isinstance(value, dict):
            return {name: self._within(one) for name, one in value.items()}
        if isinstance(value, list):
            return [self._within(one) for one in value]
        if isinstance(value, int) and value in _MOMENTS:
            return self._marks.moment(value)
        return value

    def _begun(self, table: str, name: str, row: JsonObject) -> int | None:
        """Return the moment that this one was computed from by hours; None if read off the wall clock."""
        if (table, name) in _AFTER:
            return int(row[_AFTER[table, name]])
        if table == "reminder" and name in {"due_at", "first_due_at"}:
            return self._reminded_from(row)
        return None

    def _reminded_from(self, row: JsonObject) -> int | None:
        due = int(row["due_at"])
        if local_time(datetime.fromtimestamp(due, UTC), book.ZONE).hour * 60 == self._quiet_to:
            return None  # postponed to the end of the quiet hours
        if row["kind"] == "rested":
            return int(self._one("batch", row["batch_id"])["made_at"])
        if row["kind"] == "peeled":
            return int(self._one("peeled_fruit", row["details"]["peeled"])["at"])
        if row["key"].startswith("recheck:"):
            return due - int(RECHECK_AFTER.total_seconds())
        return None

    def _one(self, table: str, number: int) -> JsonObject:
        return next(row for row in self._rows[table] if row["id"] == number)


if __name__ == "__main__":
    argparse.ArgumentParser(prog="python -m bot.demo.record", description=__doc__).parse_args()
    record_all()
