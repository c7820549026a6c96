"""The stage of one fault: a Bot API server, a database, bars with their people, and the running program."""

from __future__ import annotations

import asyncio
import re
import signal
import time
from collections import Counter
from collections.abc import AsyncIterator
from contextlib import asynccontextmanager
from datetime import UTC, datetime, timedelta
from pathlib import Path
from typing import Any

from sqlalchemy import func, select, update

from bot.work.inbox.inbox import MailState
from bot.work.reminders.planning import ReminderState
from storage.store import Store
from storage.tables import Bar, Inbox, Reminder, Waste
from storage.trouble import AwayError
from storage.unit import Unit
from tests.api import Person, Server
from tests.faults.program import Loaded, Program
from tests.faults.tally import REPEAT, Tally, repeated_unlabelled
from tests.postgres import Private

_SET_UP = ("/start", "Bar {name}", "Europe/Lisbon", "looks right", "price oranges 0.60 each")
_FIRST = 11  # amounts of entries, which identify them: this many oranges
_LOGGED = re.compile(r"Logged: ([\d,]+) oranges")
_LOW = re.compile(r"(lime \d+) runs low")
_WEEK = re.compile(r"Waste: |No waste logged")
_EXCUSE = "I cannot reach my notebook"
_BROKE = "Something broke here"
PATIENCE = 60.0


class Scene:
    """The stage of one fault; use `writes` and `reminds`, then `settled`, then `tally`."""

    def __init__(self, loaded: Loaded, server: Server, url: str, folder: Path) -> None:
        self.loaded = loaded
        self.server = server
        self.url = url
        self.folder = folder
        self.postgres: Private | None = None  # if the database server may be stopped and started
        self.people: list[Person] = []
        self.programs: list[Program] = []
        self.env = {
            "TELEGRAM_BOT_TOKEN": server.token,
            "TELEGRAM_API_BASE": server.base_url,
            "DATABASE_URL": url,
            "TELEGRAM_SENDS_PER_SECOND": "0",
            "MESSAGES_PER_MINUTE": "0",
            "TICK_SECONDS": "1",
            "XDG_DATA_HOME": str(folder),
            "LOG_LEVEL": "WARNING",
        }
        self.every = 1  # a fault of each step is tried at every so many of them
        self.steps: list[str] = []  # where a program died, as it reports it
        self._sent: list[tuple[Person, int]] = []
        self._asked: dict[int, int] = {}
        self._planned: list[str] = []
        self._looked_at = 0
        self._shown: dict[int, list[str]] = {}

    # -- the program ----------------------------------------------------------------------------

    @property
    def output(self) -> Path:
        """The output of the programs."""
        return self.folder / "output.txt"

    def start(self, steps: dict[str, Any] | None = None, **env: str) -> Program:
        """Start a program in addition to the running ones."""
        program = self.loaded.start({**self.env, **env}, self.output, steps)
        self.programs.append(program)
        return program

    async def listening(self) -> None:
        """Wait until a program requests updates."""
        polls = self.server.world.updates.polls
        before = len(polls)
        if not await self.server.world.until(lambda: len(polls) > before, PATIENCE):
            raise AssertionError(f"nothing listens:\n{self._said()}")

    async def restart(self) -> None:
        """Kill the running programs and start one again, with all leases expired."""
        await self.kill()
        self.age_leases()
        self.start()

    async def kill(self) -> None:
        """Kill every program immediately."""
        while self.programs:
            await self.programs.pop().kill()

    async def stop(self) -> None:
        """Ask every program to end."""
        while self.programs:
            await self.programs.pop().stop()

    def _said(self) -> str:
        return self.output.read_text(errors="replace")[-3000:] if self.output.exists() else ""

    # -- people's actions -----------------------------------------------------------------------

    async def open_bars(self, count: int) -> None:
        """Add this many people, each with a bar of their own."""
        for number in range(count):
            person = self.server.person(f"P{number}")
            for answers, said in enumerate(_SET_UP):
                person.writes(said.format(name=number))
                if not await self.server.world.until(lambda: self._answers(person) > answers, PATIENCE):  # noqa: B023
                    raise AssertionError(f"no answer to {said}:\n{self._said()}")
            self.people.append(person)

    def _answers(self, person: Person) -> int:
        """The number of answers to a person, without progress messages."""
        return sum(not seen.text.startswith(_EXCUSE) for seen in self.server.messages(person))

    def next_amount(self, whose: int) -> int:
        """The number of oranges that identifies the next entry of a person."""
        person = self.people[whose % len(self.people)]
        return _FIRST + sum(1 for who, _amount in self._sent if who is person)

    def writes(self, whose: int = 0) -> int:
        """Write the next entry of one person; return the number of oranges that identifies it."""
        person = self.people[whose % len(self.people)]
        amount = self.next_amount(whose)
        self._sent.append((person, amount))
        person.writes(f"waste {amount} oranges mouldy")
        return amount

    def asks(self, whose: int = 0) -> None:
        """Ask for the week as one person, which changes nothing."""
        person = self.people[whose % len(self.people)]
        self._asked[person.id] = self._asked.get(person.id, 0) + 1
        person.writes("week")

    async def write(self, count: int, pause: float = 0.0) -> None:
        """Write this many entries, by people in turn, without waiting for answers."""
        for number in range(count):
            self.writes(number)
            await asyncio.sleep(pause)

    def reminds(self, count: int, later: float = 0.0) -> list[str]:
        """Plan this many reminders over the bars, due in this many seconds; return their subjects."""
        begin = len(self._planned)
        names = [f"lime {number}" for number in range(begin, begin + count)]
        self._planned += names
        due = datetime.now(UTC).replace(microsecond=0) + timedelta(seconds=later)

        def plan(unit: Unit) -> None:
            bars = unit.session.scalars(select(Bar.id).order_by(Bar.id)).all()
            for number, name in enumerate(names):
                unit.bar(bars[number % len(bars)]).add(_low_stock(name, due))

        self.change(plan)
        return names

    # -- the database ---------------------------------------------------------------------------

    def change(self, what: Any) -> None:
        """Change the database from outside, waiting until the program allows it."""
        store = Store(self.url)
        end = time.monotonic() + PATIENCE
        try:
            while True:
                try:
                    with store.writing() as unit:
                        what(unit)
                except AwayError:
                    if time.monotonic() > end:
                        raise
                else:
                    return
        finally:
            store.close()

    def read(self, what: Any) -> Any:
        """Read the database from outside."""
        store = Store(self.url)
        try:
            with store.reading() as unit:
                return what(unit)
        finally:
            store.close()

    def age_leases(self, of_all: bool = False) -> None:
        """Expire all leases without waiting, as happens two minutes after a process is gone.

        For updates only if no program runs, because it would renew them, or with `of_all`.
        """
        over = datetime.now(UTC) - timedelta(seconds=1)

        def age(unit: Unit) -> None:
            taken = select(Reminder.id).where(Reminder.state == ReminderState.SENDING)
            found = unit.session.scalars(taken.with_for_update(skip_locked=True)).all()
            sending = update(Reminder).where(Reminder.id.in_(found), Reminder.state == ReminderState.SENDING)
            unit.session.execute(sending.values(lease_until=over))
            if self.programs and not of_all:
                return
            # Rows locked by a stalled process are skipped, as other processes do.
            free = select(Inbox.update_id).where(Inbox.lease_until.is_not(None))
            found = unit.session.scalars(free.with_for_update(skip_locked=True)).all()
            held = update(Inbox).where(Inbox.update_id.in_(found))
            unit.session.execute(held.values(lease_until=over))

        self.change(age)

    # -- results --------------------------------------------------------------------------------

    def look(self) -> None:
        """Read the phones' new messages since the last look."""
        events = self.server.world.events
        for event in events[self._looked_at :]:
            if event.kind == "message" and event.seen is not None:
                self._shown.setdefault(event.chat_id, []).append(event.seen.text)
        self._looked_at = len(events)

    def forget_messages(self) -> None:
        """Count the answers anew: the chats of a new bot are empty."""
        self._looked_at = len(self.server.world.events)

    def answered(self, whose: int, amount: int) -> bool:
        """Whether an entry was acknowledged."""
        self.look()
        return str(amount) in self._about(self.people[whose % len(self.people)], _LOGGED)

    def _about(self, person: Person, what: re.Pattern[str]) -> dict[str, None]:
        found = (what.match(text) for text in self._shown.get(person.id, []))
        return {one[1].replace(",", ""): None for one in found if one is not None}

    def _open(self) -> list[tuple[Person, int]]:
        """The unanswered messages: entries by their amount, questions as 0."""
        self.look()
        told = {person.id: self._about(person, _LOGGED) for person in self.people}
        waiting = [(who, amount) for who, amount in self._sent if str(amount) not in told[who.id]]
        for who in self.people:
            weeks = sum(_WEEK.match(text) is not None for text in self._shown.get(who.id, []))
            waiting += [(who, 0)] * (self._asked.get(who.id, 0) - weeks)
        return waiting

    @property
    def quiet(self) -> bool:
        """Whether every message was answered."""
        return not self._open()

    def _unsaid(self) -> list[str]:
        self.look()
        said = {name for person in self.people for name in self._about(person, _LOW)}
        return [name for name in self._planned if name not in said]

    def said(self, name: str) -> bool:
        """Whether a reminder was sent."""
        return name not in self._unsaid()

    def is_marked(self) -> bool:
        """Whether all updates are marked as answered."""
        query = select(func.count()).select_from(Inbox).where(Inbox.state < MailState.ANSWERED)
        return bool(self.read(lambda unit: unit.session.scalar(query)) == 0)

    async def marked(self) -> None:
        """Wait for the marks: otherwise a chat of a killed process would wait for a lease."""
        for _tenth in range(int(PATIENCE * 10)):
            if self.is_marked():
                return
            await asyncio.sleep(0.1)

    def is_settled(self, name: str) -> bool:
        """Whether a reminder is marked as sent."""
        query = select(Reminder.state).where(Reminder.key == f"low:{name}")
        return bool(self.read(lambda unit: unit.session.scalar(query)) == ReminderState.SENT)

    async def settled(self, within: float = PATIENCE, hurried: bool = False) -> None:
        """Wait until everything was answered and sent, at most this long; then until no more messages come.

        `hurried` brings the retry of a reminder forward, which would otherwise take minutes.
        """
        end = time.monotonic() + within
        while not await self.server.world.until(lambda: not self._open() and not self._unsaid(), 3):
            if time.monotonic() > end:
                break
            if hurried:
                self.hurry()
        await asyncio.sleep(0.3)

    def hurry(self) -> None:
        """Make the retry of every failed reminder due immediately."""
        self.change(
            lambda unit: unit.session.execute(
                update(Reminder)
                .where(Reminder.state == ReminderState.WAITING, Reminder.attempts > 0)
                .values(due_at=datetime.now(UTC))
            )
        )

    def tally(self, fault: str, tried: int) -> Tally:
        """Count the results."""
        rows = self.read(_waste)
        by_bar: dict[str, dict[int, int]] = {}
        for name, milli, times in rows:
            by_bar.setdefault(name, {})[milli // 1000] = times
        on_disk = {
            (person.id, amount): by_bar.get(f"Bar {number}", {}).get(amount, 0)
            for number, person in enumerate(self.people)
            for who, amount in self._sent
            if who is person
        }
        self.look()
        shown = [(person.id, text) for person in self.people for text in self._shown.get(person.id, [])]
        return Tally(
            fault=fault,
            database="SQLite" if self.url.startswith("sqlite") else "PostgreSQL",
            tried=tried,
            entries=len(self._sent),
            lost=sum(not times for times in on_disk.values()),
            doubled=sum(times for _name, _milli, times in rows)
            - sum(bool(times) for times in on_disk.values()),
            unanswered=len(self._open()),
            refused=sum(text.startswith(_BROKE) for _who, text in shown),
            reminders=len(self._planned),
            reminders_lost=len(self._unsaid()),
            unlabelled=self._unlabelled(shown),
        )

    def _unlabelled(self, shown: list[tuple[int, str]]) -> int:
        told = repeated_unlabelled(
            (f"{who} {found[0]}", text)
            for who, text in shown
            if (found := _LOGGED.match(text) or _LOW.match(text)) is not None
        )
        weeks = Counter(who for who, text in shown if _WEEK.match(text) and REPEAT not in text)
        return told + sum(max(0, weeks[who] - self._asked.get(who, 0)) for who in weeks)

    def why(self) -> str:
        """Diagnostics for a failing test."""
        talk = "\n".join(self.server.transcript(person)[-1500:] for person in self.people)
        return f"open: {[amount for _who, amount in self._open()]}\n{talk}\n{self._said()}"


def _low_stock(name: str, due: datetime) -> Reminder:
    details = {"name": name, "ingredient": 1, "amount": "1", "par": "2", "dimension": "count"}
    return Reminder(
        channel="telegram",
        key=f"low:{name}",
        kind="low stock",
        details=details,
        first_due_at=due,
        due_at=due,
        state=ReminderState.WAITING,
    )


def _waste(unit: Unit) -> list[Any]:
    query = select(Bar.name, Waste.count_milli, func.count()).join(Bar, Bar.id == Waste.bar_id)
    return [tuple(row) for row in unit.session.execute(query.group_by(Bar.name, Waste.count_milli))]


@asynccontextmanager
async def scene(loaded: Loaded, url: str, folder: Path, people: int = 2) -> AsyncIterator[Scene]:
    """A stage with a running program and people who have opened their bars; everything ends with it."""
    async with Server() as server:
        built = Scene(loaded, server, url, folder)
        try:
            built.start()
            await built.open_bars(people)
            yield built
            await built.stop()
        finally:
            for program in built.programs:
                program.send(signal.SIGKILL)
        violations = [one for one in server.violations if "never answered" not in one]
        if violations:
            raise AssertionError(f"refused by the server: {violations[:3]}")
