"""Tests of reminders under random failures: each is sent once, or says that it may be a repeat."""

from __future__ import annotations

from collections.abc import Callable
from datetime import datetime, timedelta

from hypothesis import HealthCheck, settings
from hypothesis import strategies as st
from hypothesis.stateful import (
    RuleBasedStateMachine,
    initialize,
    invariant,
    precondition,
    rule,
    run_state_machine_as_test,
)

from bot.chat.features.reminders.due import worded_reminder
from bot.work.reminders import delivery, rooms
from bot.work.reminders.delivery import DueReminder, Outcome, Sent
from bot.work.reminders.planning import ReminderState
from storage.tables import Batch, Reminder
from tests.examples import examples
from tests.house import CHANNEL, House, first_lines

_TEAM = "Team"
_FINAL = {
    ReminderState.SENT,
    ReminderState.DONE,
    ReminderState.CANCELLED,
    ReminderState.SKIPPED,
}
_ENDED = {"used up", "discarded", "undone"}


class Reminding(RuleBasedStateMachine):
    """A bar, its batches, and a network and a process that fail at any moment."""

    build: Callable[[], House]

    def __init__(self) -> None:
        super().__init__()
        self.house = type(self).build()
        self.said: dict[tuple[int, datetime], int] = {}
        self.batches = 0
        self.moved = 0
        self.team = ""

    @initialize()
    def open(self) -> None:
        self.house.open_bar("Ana")
        self.house.joins("Ben")
        ana = self.house.person("Ana")
        ana.says("new formula Brine\nsalt 20 g\nwater 80 ml\nkind saline\nrest 6 h\ndiscard 5 days")
        ana.says("bar quiet hours 05:00-11:00")

    # -- people's actions ----------------------------------------------------------------

    @rule(who=st.sampled_from(["Ana", "Ben"]))
    def make(self, who: str) -> None:
        self.house.person(who).says("batch brine x1")
        self.batches += 1

    @precondition(lambda self: self.batches)
    @rule(
        data=st.data(),
        what=st.sampled_from(["check {} clear", "check {} hazy", "used {}", "discard {}, spilt", "undo"]),
    )
    def look_after(self, data: st.DataObject, what: str) -> None:
        number = data.draw(st.integers(1, self.batches))
        self.house.person("Ana").says(what.format(number))

    @precondition(lambda self: self.said)
    @rule(
        data=st.data(),
        what=st.sampled_from(["later {} 2 hours", "later {} 1 day", "later {} 12:00", "done {}"]),
    )
    def answer(self, data: st.DataObject, what: str) -> None:
        number = data.draw(st.sampled_from(sorted({number for number, _due in self.said})))
        self.house.person("Ben").says(what.format(number))

    @rule(
        line=st.sampled_from(
            ["bar service days tue-sat", "bar service days every day", "bar close reminder off"]
        )
    )
    def set_up(self, line: str) -> None:
        self.house.person("Ana").says(line)

    @precondition(lambda self: not self.team)
    @rule()
    def meet_in_a_group(self) -> None:
        self.house.person("Ana").says("/start", _TEAM)
        self.team = _TEAM

    @precondition(lambda self: self.team)
    @rule(twice=st.booleans())
    def group_becomes_a_supergroup(self, twice: bool) -> None:
        self.moved += 1
        new = f"{_TEAM}{self.moved}"
        for _time in range(2 if twice else 1):
            rooms.room_moved(self.house.store, CHANNEL, self.team, new)
        self.team = new

    # -- failures -----------------------------------------------------------------------

    @rule(hours=st.sampled_from([0.25, 1, 3, 6, 11, 24, 72]))
    def time_goes_by(self, hours: float) -> None:
        self.house.clock.turn(hours=hours)

    @rule()
    def restart(self) -> None:
        self.house.restart()

    def _claim(self) -> list[DueReminder]:
        return delivery.claim(self.house.store, CHANNEL, self.house.clock.now())

    def _say(self, due: DueReminder) -> None:
        now = self.house.clock.now()
        reply = worded_reminder(due, now, self.house.store)
        assert reply.first_line
        assert due.first_due_at <= now
        key = (due.id, due.first_due_at)
        before = self.said.get(key, 0)
        # What a person may have seen before the team had a chat is repeated to that person.
        begun = due.unsure or any(number == due.id for number, _due in self.said)
        if self.team and due.destination.outside_id != self.team and not begun:
            raise AssertionError(f"said in {due.destination.outside_id}, not in {self.team}")
        assert not before or due.unsure, f"{due.kind} {due.id} was said {before + 1} times without a word"
        self.said[key] = before + 1

    def _settle(self, due: DueReminder, outcome: Outcome) -> None:
        delivery.settle(self.house.store, due, Sent(outcome), self.house.clock.now())

    @rule()
    def tick(self) -> None:
        for due in self._claim():
            self._say(due)
            self._settle(due, Outcome.SENT)

    @rule()
    def tick_without_network(self) -> None:
        for due in self._claim():
            self._settle(due, Outcome.NOT_SENT)

    @rule(arrives=st.booleans())
    def tick_with_a_time_out(self, arrives: bool) -> None:
        for due in self._claim():
            if arrives:
                self._say(due)
            self._settle(due, Outcome.UNSURE)

    @rule()
    def every_chat_refuses(self) -> None:
        for _round in range(4):
            for due in self._claim():
                self._settle(due, Outcome.REFUSED)

    @rule(settled=st.integers(0, 2), said=st.booleans())
    def killed_in_the_middle(self, settled: int, said: bool) -> None:
        for number, due in enumerate(self._claim()):
            if number < settled:
                self._say(due)
                self._settle(due, Outcome.SENT)
            elif number == settled and said:
                self._say(due)
        self.house.restart()

    @rule()
    def two_at_once(self) -> None:
        first = self._claim()
        assert self._claim() == []
        for due in first:
            self._say(due)
            self._settle(due, Outcome.SENT)

    # -- invariants ---------------------------------------------------------------------

    def _rows(self) -> list[Reminder]:
        with self.house.store.reading() as unit:
            return list(unit.bar(1).all(Reminder))

    @invariant()
    def a_batch_that_is_gone_is_not_asked_about(self) -> None:
        with self.house.store.reading() as unit:
            book = unit.bar(1)
            gone = {row.id for row in book.all(Batch) if row.state in _ENDED}
            asked = list(book.all(Reminder, Reminder.state == ReminderState.WAITING))
        for row in asked:
            assert row.batch_id not in gone, f"{row.key} still waits"

    @invariant()
    def at_most_one_prompt_waits_for_each_night(self) -> None:
        waiting = [
            row.key for row in self._rows() if row.kind == "close" and row.state == ReminderState.WAITING
        ]
        assert len(waiting) == len(set(waiting))

    def teardown(self) -> None:
        """Finally, with the network back, every due reminder is sent."""
        try:
            self._everything_is_sent()
        finally:
            self.house.close()

    def _everything_is_sent(self) -> None:
        clock = self.house.clock
        for _again in range(12):
            clock.turn(hours=12)
            self.tick()
        for row in self._rows():
            late = row.state == ReminderState.WAITING and row.due_at <= clock.now()
            assert row.state in _FINAL or (row.state == ReminderState.WAITING and not late), (
                row.key,
                row.state,
            )
        assert first_lines(self.house.person("Ana").says("week"))


def test_reminders(another_house: Callable[[], House]) -> None:
    machine = type("Reminding", (Reminding,), {"build": staticmethod(another_house)})
    run_state_machine_as_test(
        machine,
        settings=settings(
            examples(6, HealthCheck.too_slow, HealthCheck.function_scoped_fixture), stateful_step_count=16
        ),
    )


def test_no_network_for_days_loses_no_reminder(house: House) -> None:
    ana = house.open_bar()
    ana.says("new formula Brine\nsalt 20 g\nwater 80 ml\nkind saline\nrest 6 h\ndiscard 30 days")
    ana.says("bar close reminder off")
    ana.says("batch brine x1")
    for _hour in range(72):
        house.clock.turn(hours=1)
        house.reminders(Outcome.NOT_SENT)
    house.clock.turn(hours=2)
    (sent,) = house.reminders()
    assert sent.due.kind == "rested"
    assert sent.due.late_by(house.clock.now()) is not None
    assert sent.due.late_by(house.clock.now()) > timedelta(days=2)  # type: ignore[operator]
