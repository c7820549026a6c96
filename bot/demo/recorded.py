"""Load the recorded rows of the demo's story, one recording per weekday, with current dates.

Playing the story through the use cases takes seconds, and its rows are always the same: only the days move
with the last night, and the weekday of that night decides which nights are open. So `record` plays it for
seven nights in a row and stores the rows; a test compares them with the story on any day.

In a recording days count from the last night, and a moment is a wall time on a day, so that each keeps its
hour across clock changes.
"""

from __future__ import annotations

import json
import re
import zlib
from collections.abc import Sequence
from datetime import UTC, date, datetime, timedelta
from functools import cache
from pathlib import Path
from typing import Any, Final

from sqlalchemy import Table, TableClause, column, delete, insert, table
from sqlalchemy.types import TypeDecorator, TypeEngine

from bot.demo import book
from bot.demo.stage import Stage
from bot.trade.days import instant_of, local_time
from bot.work.context import BarView
from storage.tables import Bar, Base, Counter, Reminder
from storage.types import JsonObject

FOLDER: Final = Path(__file__).with_name("recordings")

Rows = dict[str, list[JsonObject]]
"""Rows by table, in database form."""

WHOLE: Final = frozenset({Counter.__tablename__, Reminder.__tablename__})
"""Tables with rows from opening the bar that the story changes, so that all their rows are recorded."""

CHANNEL: Final = "console"
"""The owner's address during the recording."""

_MINUTE = 60
_DAY = re.compile(r"\d{4}-\d\d-\d\d")
# "@m-3+1510" is 01:10 in the night of the third day before the last; "@m-3+1510+90" is 90 minutes later,
# whatever the wall time. "@d-3@" is the day itself, "@p2" the cast's third person, "@c" the owner's channel.
_MARK = re.compile(r'"@m(-?\d+)\+(\d+)(?:\+(\d+))?"|@d(-?\d+)@|"@p(\d)"|"@c"')


class Marks:
    """Writes days, moments and people as marks relative to the last night and the cast."""

    def __init__(self, last_day: date, cast: Sequence[int]) -> None:
        self._last_day = last_day
        self._cast = cast

    def day(self, text: str) -> str:
        """Mark each day in a text."""
        return _DAY.sub(lambda found: f"@d{self._days(date.fromisoformat(found[0]))}@", text)

    def moment(self, seconds: int, after: int | None = None) -> str:
        """Mark a moment by its wall time, or by its distance from another marked moment."""
        begun = seconds if after is None else after
        wall = local_time(datetime.fromtimestamp(begun, UTC), book.ZONE)
        if wall.second or (seconds - begun) % _MINUTE:
            raise ValueError(seconds)
        mark = f"@m{self._days(wall.date())}+{wall.hour * 60 + wall.minute}"
        return mark if after is None else f"{mark}+{(seconds - begun) // _MINUTE}"

    def person(self, number: int | None) -> str | None:
        """Mark a member of the cast."""
        return None if number is None else f"@p{self._cast.index(number)}"

    def _days(self, day: date) -> int:
        return (day - self._last_day).days


def path_for(last_day: date) -> Path:
    """Return the recording file for the weekday of this last night."""
    return FOLDER / f"{last_day.isoweekday()}.json.z"


def write(path: Path, rows: Rows) -> None:
    """Store rows with marked days, moments and people."""
    text = json.dumps(rows, ensure_ascii=False, separators=(",", ":"))
    path.write_bytes(zlib.compress(text.encode(), 9))


def read(last_day: date, cast: Sequence[int], channel: str) -> Rows:
    """Return the rows of the recording, adapted to this last night and these people."""

    @cache
    def moment(days: str, minute: str) -> int:
        day = last_day + timedelta(days=int(days))
        return int(instant_of(day, int(minute), book.ZONE).timestamp())

    def value(found: re.Match[str]) -> str:
        if found[1] is not None:
            return str(moment(found[1], found[2]) + _MINUTE * int(found[3] or 0))
        if found[4] is not None:
            return (last_day + timedelta(days=int(found[4]))).isoformat()
        return json.dumps(channel) if found[5] is None else str(cast[int(found[5])])

    text = zlib.decompress(path_for(last_day).read_bytes()).decode()
    rows: Rows = json.loads(_MARK.sub(value, text))
    return rows


def tables() -> list[Table]:
    """Return the tables with rows of one bar each."""
    return [one for one in Base.metadata.sorted_tables if "bar_id" in one.primary_key.columns]


def plain(of: Table) -> TableClause:
    """Return a table with values in database form, JSON as values."""
    return table(of.name, *(column(one.name, _kept_as(one.type)) for one in of.columns))


def _kept_as(kind: TypeEngine[Any]) -> TypeEngine[Any]:
    return kind.impl_instance if isinstance(kind, TypeDecorator) else kind


def put(stage: Stage) -> BarView:
    """Insert the recorded rows into the opened bar; return the bar at the end."""
    bar_id = stage.opened.id
    rows = read(stage.last_day, stage.people, stage.channel)
    bar = stage.unit.session.get_one(Bar, bar_id)
    for name, value in rows["bar"][0].items():
        setattr(bar, name, value)
    stage.acts = rows["stage"][0]["acts"]
    stage.unit.flush()
    connection = stage.unit.connection
    for one in tables():
        if one.name in WHOLE:
            connection.execute(delete(one).where(one.c.bar_id == bar_id))
        if one.name in rows:
            connection.execute(insert(plain(one)), [{"bar_id": bar_id, **row} for row in rows[one.name]])
    return BarView.of(bar)
