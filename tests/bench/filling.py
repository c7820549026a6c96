"""Fill databases with bars directly: opening two hundred by messages would take too long."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import UTC, datetime

from sqlalchemy import insert, text

from bot.chat.conversation.conversation import Conversation
from bot.chat.reply.message import Message, Place, Sender
from bot.trade.safety.jurisdiction import Jurisdiction
from bot.work.context import BarView
from bot.work.people import bars, people
from bot.work.people.people import Presence
from bot.work.reminders.planning import ReminderState
from storage import migrate
from storage.store import Store
from storage.tables import Reminder
from storage.unit import Unit

NOW = datetime(2026, 11, 26, 18, tzinfo=UTC)
CHANNEL = "telegram"
_BLOCK = 10_000
_WORDS = (
    "settle sure\nnew formula Demo mist\ngrapefruit oil 12 ml\npropylene glycol 22 ml\n"
    "neutral spirit 96 % 62 ml\nkind aroma mist",
    "price oranges 0.60 each",
    # The benchmark measures one answer per message; the extra picture is drawn after that.
    "bar week picture off",
    # A reminder that could not be sent comes with the next answer.
    "bar close reminder off",
)


class Stopped:
    """A clock that does not advance."""

    def __init__(self, at: datetime = NOW) -> None:
        self._at = at

    def now(self) -> datetime:
        """Return the same instant each time."""
        return self._at


def open_bars(url: str, numbers: Sequence[int]) -> list[int]:
    """Give each person a bar with a formula and a price; return the bars' ids."""
    store = Store(url)
    try:
        migrate.upgrade(store)
        return [_open(store, number) for number in numbers]
    finally:
        store.close()


def open_bar(unit: Unit, who: Presence, person: str, number: int, now: datetime) -> BarView:
    """Create a bar of this number with the proposed settings."""
    return bars.open_bar(
        unit,
        who,
        person,
        True,
        now,
        name=f"Bar {number}",
        zone="Europe/Lisbon",
        jurisdiction=Jurisdiction.EU,
        currency="EUR",
        units="metric",
    )


def _open(store: Store, number: int) -> int:
    outside = str(number)
    with store.writing() as unit:
        who = people.meet(unit, CHANNEL, outside, f"P{number}", "en", outside, True, "")
        view = open_bar(unit, who, f"P{number}", number, NOW)
    _say(store, number)
    return view.id


def _say(store: Store, number: int) -> None:
    conversation = Conversation(store, Stopped())
    for said in _WORDS:
        sender, place = Sender(str(number), f"P{number}", "en"), Place(str(number), True)
        conversation.answer(Message(CHANNEL, sender, place, said, key=f"{number} {said[:9]}", sent_at=NOW))


def plan_reminders(url: str, bar_ids: Sequence[int], count: int, due: datetime) -> None:
    """Plan this many reminders over these bars, in turn, all due at one instant."""
    store = Store(url)
    try:
        for begin in range(0, count, _BLOCK):
            rows = [
                _reminder(bar_ids[number % len(bar_ids)], number, due)
                for number in range(begin, min(begin + _BLOCK, count))
            ]
            with store.writing() as unit:
                unit.session.execute(insert(Reminder), rows)
        with store.engine.begin() as connection:
            connection.execute(text("ANALYZE"))
    finally:
        store.close()


def _reminder(bar_id: int, number: int, due: datetime) -> dict[str, object]:
    return {
        "bar_id": bar_id,
        "id": 1_000_000 + number,
        "channel": CHANNEL,
        "key": f"bench:{number}",
        "kind": "low stock",
        "details": {"name": "lime", "ingredient": 1, "amount": "1", "par": "2", "dimension": "count"},
        "first_due_at": due,
        "due_at": due,
        "state": ReminderState.WAITING,
    }
