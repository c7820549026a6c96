"""The recording of the demo: what the story writes, in few statements."""

from __future__ import annotations

from datetime import UTC, datetime, timedelta
from typing import Any

import pytest
from sqlalchemy import event, select

from bot.demo import book as demo_book
from bot.demo import filling, record, recorded
from storage.store import Store
from tests.demo.conftest import AUTUMN, CHANGES, MOMENTS, OWNER, Filler
from tests.house import CHANNEL, Hands


def _statements(store: Store, work: filling.Work) -> int:
    """Fill the demo; return the number of statements."""
    count = 0

    def counted(*_arguments: Any) -> None:
        nonlocal count
        count += 1

    event.listen(store.engine, "before_cursor_execute", counted)
    filling.fill(store, Hands(AUTUMN), CHANNEL, OWNER, work)
    return count


@pytest.mark.long
def test_it_is_filled_with_few_statements(filler: Filler) -> None:
    """A guard for the time of filling: statements can be counted on a busy machine."""
    assert _statements(filler.at(None), recorded.put) < 150
    assert _statements(filler.at(None), record.play) < 7000


# The night when clocks go forward has no time from 01:00 to 02:00: the story's events of that hour happen at
# one moment, in another order than on other nights, so their rows have other numbers.
_NUMBERED_BY_ORDER = {
    "entry": ("at", "by", "what"),
    "waste": (
        "ingredient_id",
        "count_milli",
        "grams_milli",
        "reason",
        "business_day",
        "cost_minor",
        "at",
        "by",
    ),
}


def _comparable(store: Store, forward: bool) -> dict[str, list[Any]]:
    """Return all rows of the bar without secrets and random values."""
    found = {}
    with store.reading() as unit:
        for table in recorded.tables():
            drawn = {"seed", "code", "code_hash", *(("id", "first") if table.name == "trial_score" else ())}
            names = [one.name for one in table.columns if one.name not in drawn]
            if forward:
                names = list(_NUMBERED_BY_ORDER.get(table.name, names))
            kept = recorded.plain(table).columns
            rows = unit.connection.execute(select(*(kept[name] for name in names)))
            found[table.name] = sorted(map(repr, rows))
    return found


_OTHER_DAYS = [pytest.param(now, marks=pytest.mark.long) for now in (*MOMENTS, *CHANGES[1:])]


@pytest.mark.parametrize("now", [CHANGES[0], *_OTHER_DAYS], ids=str)
@pytest.mark.long
def test_the_recording_is_what_the_story_writes(filler: Filler, now: datetime) -> None:
    """Fails after a change to the story, or to the rows of its use cases: run python -m bot.demo.record."""
    played = filler.at(None)
    filling.fill(played, Hands(now), CHANNEL, OWNER, record.play)
    begun = now - timedelta(weeks=demo_book.WEEKS + 1)
    forward = begun < datetime(now.year, 3, 28, 2, tzinfo=UTC) < now
    assert _comparable(filler.at(now), forward) == _comparable(played, forward)
