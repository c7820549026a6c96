"""Read what the story of the demo wrote, as recorded once for each weekday, with the days of today.

Playing the story through the use cases takes seconds, its rows are always the same: only the days move
with the last night, and with the weekday of that night which nights are served. So `record` plays it for
seven nights in a row and keeps the rows; a test holds them to what the story writes on any day.

In a recording days count from the last night, and a moment is what the wall clock shows on a day, so that
each falls on its hour wherever the clocks change in between.
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

FOLDER: Final = Path(__file__).with_name("recordings")

Rows = dict[str, list[dict[str, Any]]]
"""Rows by table, as the database keeps them."""

WHOLE: Final = frozenset({Counter.__tablename__, Reminder.__tablename__})
"""Tables whose rows from the opening of the bar are changed by the story, so that all are recorded."""

CHANNEL: Final = "console"
"""Where the owner is while it is recorded."""

_MINUTE = 60
_DAY = re.compile(r"\d{4}-\d\d-\d\d")
# "@m-3+1510" is ten past one in the night of the third day before the last; "@m-3+1510+90" is 90 minutes
# later, whatever the wall clock shows then. "@d-3@" is the day itself, "@p2" the cast's third person, "@c"
# the channel that the owner is reached by.
_MARK = re.compile(r'"@m(-?\d+)\+(\d+)(?:\+(\d+))?"|@d(-?\d+)@|"@p(\d)"|"@c"')


class Marks:
    """Writes days, moments and people as marks that count from the last night and within the cast."""

    def __init__(self, last_day: date, cast: Sequence[int]) -> None:
        self._last_day = last_day
        self._cast = cast

    def day(self, text: str) -> str:
        """Mark each day that stands in a text."""
        return _DAY.sub(lambda found: f"@d{self._days(date.fromisoformat(found[0]))}@", text)

    def moment(self, seconds: int, after: int | None = None) -> str:
        """Mark a moment by the wall clock, or as so long after another that is marked by it."""
        begun = seconds if after is None else after
        wall = local_time(datetime.fromtimestamp(begun, UTC), book.ZONE)
        if wall.second or (seconds - begun) % _MINUTE:
            raise ValueError(seconds)
        mark = f"@m{self._days(wall.date())}+{wall.hour * 60 + wall.minute}"
        return mark if after is None else f"{mark}+{(seconds - begun) // _MINUTE}"

    def person(self, number: int | None) -> str | None:
        """Mark one of the cast."""
        return None if number is None else f"@p{self._cast.index(number)}"

    def _days(self, day: date) -> int:
        return (day - self._last_day).days


def path_for(last_day: date) -> Path:
    """Return the file of the recording whose last night fell on the same weekday."""
    return FOLDER / f"{last_day.isoweekday()}.json.z"


def write(path: Path, rows: Rows) -> None:
    """Keep rows whose days, moments and people are marked."""
    text = json.dumps(rows, ensure_ascii=False, separators=(",", ":"))
    path.write_bytes(zlib.compress(text.encode(), 9))


def read(last_day: date, cast: Sequence[int], channel: str) -> Rows:
    """Return the rows of the recording as if its last night had been this one, done by these people."""

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
    """Return the tables of which each row belongs to a bar."""
    return [one for one in Base.metadata.sorted_tables if "bar_id" in one.primary_key.columns]


def plain(of: Table) -> TableClause:
    """Return a table whose values are read and written as the database keeps them, JSON as values."""
    return table(of.name, *(column(one.name, _kept_as(one.type)) for one in of.columns))


def _kept_as(kind: TypeEngine[Any]) -> TypeEngine[Any]:
    return kind.impl_instance if isinstance(kind, TypeDecorator) else kind


def put(stage: Stage) -> BarView:
    """Write the recording's rows into the bar that was opened; return the bar as it is in the end."""
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
