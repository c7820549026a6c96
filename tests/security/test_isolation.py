"""Tests that no message or tap of a member of one bar shows or changes a row of another bar.

The owner of bar B, a former member of bar A, tries every command, every button of each reply, and every
button of the replies to those. SQLite itself refuses any change of a row of A, and every text of A carries a
mark.
"""

from __future__ import annotations

import re
import shutil
from collections.abc import Iterator
from dataclasses import dataclass, field
from pathlib import Path

import pytest
from sqlalchemy import select
from sqlalchemy.exc import IntegrityError

from bot.chat.dialogue.registry import all_commands
from bot.chat.reply.message import Message, Reply
from storage.store import Store
from storage.unit import Book
from tests.conftest import WEDNESDAY
from tests.examples import in_long_part
from tests.fuzz.lines import SAID
from tests.house import CHANNEL, Hands, House
from tests.security import two_bars
from tests.security.rewinding import RewindingStore, guard

# The text after a command's word: nothing, or a number that both bars have.
_AFTER = ("", " #1")
_DEEPEST = 3 if in_long_part() else 2
_NUMBER = re.compile(r"(?<=^[=~] )[0-9]+ ")


@pytest.fixture(scope="module")
def filled(tmp_path_factory: pytest.TempPathFactory, _migrated_file: Path) -> tuple[Path, list[str]]:
    """A file with both bars, A's rows marked and guarded, and the lines behind A's buttons."""
    path = tmp_path_factory.mktemp("two") / "bars.sqlite"
    shutil.copy(_migrated_file, path)
    house = House(Store(f"sqlite:///{path}"), Hands(WEDNESDAY))
    lines = two_bars.fill(house)
    for bar in (two_bars.A, two_bars.B):
        assert two_bars.empty_tables(house.store, bar) == []  # a table without rows would prove nothing
    assert two_bars.plant(house.store) > 130
    guard(house.store, two_bars.A)
    house.close()
    return path, lines


@dataclass
class Walk:
    """One person who tries everything, each line from the same state."""

    house: House
    store: RewindingStore
    person: str
    room: str | None = None
    tried: set[str] = field(default_factory=set)
    problems: list[str] = field(default_factory=list)
    taps: int = 0

    def says(self, line: str, tapped: bool = False) -> list[Reply]:
        """Send or tap a line; errors in the answer are recorded."""
        who = self.house.person(self.person)
        here = self.house.room(self.room, who)
        message = Message(
            CHANNEL,
            who.sender,
            here.place,
            line,
            key=self.house.next_key(here),
            sent_at=self.house.clock.now(),
            tapped="1" if tapped else None,
        )
        try:
            replies = self.house.conversation.answer(message)
        except Exception as error:
            self.problems.append(f"{line!r}: {error!r}"[:300])
            return []
        self.problems += [f"{line!r} shows {one!r}"[:300] for one in two_bars.leaks(replies)]
        return replies

    def root(self, line: str) -> None:
        """Send a line and tap everything that it leads to."""
        with self.store.trial():
            self._buttons(self.says(line), 1)

    def _buttons(self, replies: list[Reply], depth: int) -> None:
        for one in replies:
            asked = one.first_line if one.choosing else ""
            for row in one.buttons:
                for button in row:
                    # A question's number differs each time; its content does not.
                    name = f"{asked} {_NUMBER.sub('', button.line)}"
                    if button.line.startswith("label "):
                        name = "label"  # drawing a sheet takes seconds, and all are drawn in the same way
                    if name not in self.tried and depth < _DEEPEST:
                        self.tried.add(name)
                        self.taps += 1
                        with self.store.trial():
                            self._buttons(self.says(button.line, tapped=True), depth + 1)


@pytest.fixture
def walk(filled: tuple[Path, list[str]], tmp_path: Path) -> Iterator[Walk]:
    """A walk by Ana, in her private chat."""
    path = tmp_path / "walk.sqlite"
    shutil.copy(filled[0], path)
    store = RewindingStore(f"sqlite:///{path}")
    house = House(store, Hands(WEDNESDAY))
    house.clock.turn(hours=26)
    house.said = 10_000  # the messages that filled the bars have lower numbers
    yield Walk(house, store, "Ana")
    store.close()


def _forms() -> list[str]:
    """Every command alone, in its examples, and with the numbers that both bars have."""
    lines = list(SAID)
    for command in all_commands().values():
        after = _AFTER[:1] if command.name == "label" else _AFTER
        lines += [f"{command.name}{one}" for one in after] + list(command.examples)
    return [line for line in dict.fromkeys(lines) if not line.startswith("label ") or line == "label 1"]


def test_nothing_that_a_member_of_another_bar_says_or_taps_reaches_a_row(walk: Walk) -> None:
    before = two_bars.rows_of(walk.store, two_bars.A)
    for line in _forms() if in_long_part() else _forms()[::3]:
        walk.root(line)
    # People may see and erase what a bar that they left keeps of them (test_former.py).
    own = ("'export me'", "'forget me")
    assert [problem for problem in walk.problems if not problem.startswith(own)] == []
    assert two_bars.changed(before, two_bars.rows_of(walk.store, two_bars.A)) == []
    assert walk.taps > (300 if in_long_part() else 50)


def test_the_buttons_of_the_other_bar_lead_nowhere_in_it(walk: Walk, filled: tuple[Path, list[str]]) -> None:
    assert any(line.startswith("@1 ") for line in filled[1])  # those of reminders name their bar
    for line in filled[1]:
        with walk.store.trial():
            walk.says(line, tapped=True)
    assert walk.problems == []


@pytest.mark.parametrize(
    ("person", "room"),
    [("Ana", two_bars.A_GROUP), ("Eve", None), pytest.param("Ben", None, marks=pytest.mark.long)],
)
def test_nor_in_the_other_bars_group_nor_as_a_member_nor_as_a_stranger(
    walk: Walk, filled: tuple[Path, list[str]], person: str, room: str | None
) -> None:
    walk.person, walk.room = person, room
    for name in all_commands():
        for line in (f"/{name} #1", f"/{name} 1"):
            with walk.store.trial():
                walk.says(line)
    for line in filled[1]:
        with walk.store.trial():
            walk.says(line, tapped=True)
    assert walk.problems == []


def test_a_question_of_the_others_is_not_answered_by_somebody_else(walk: Walk) -> None:
    """In A's group, Ana (removed) and Cleo (never a member) tap the buttons of Bea's question."""
    walk.person, walk.room = "Bea", two_bars.A_GROUP
    # Bea may see A's rows, and asking writes no row of a bar.
    asked = walk.says("/waste")
    walk.problems.clear()
    lines = [button.line for one in asked for row in one.buttons for button in row]
    assert any(line.startswith("= ") for line in lines)
    for walk.person in ("Ana", "Cleo"):
        for line in lines:
            replies = walk.says(line, tapped=True)
            assert replies, line
    assert walk.problems == []


# -- the walk itself ----------------------------------------------------------------------------


def test_the_walk_sees_what_a_member_sees(walk: Walk) -> None:
    walk.person = "Bea"
    for line in ("formulas", "batch 1", "team", "export", "week", "/bar"):
        walk.problems.clear()
        walk.says(line)
        # A marked word is shown, or a marked code is unknown: either way a row of A was read.
        assert any(two_bars.MARK in one for one in walk.problems), (line, walk.problems)


def test_the_guard_refuses_what_a_member_changes(walk: Walk) -> None:
    walk.person = "Bea"
    walk.says("waste 3 limes mouldy")
    assert any("a row of bar 1" in one for one in walk.problems), walk.problems
    with pytest.raises(IntegrityError, match="a row of bar 1"), walk.store.writing() as unit:
        unit.bar(two_bars.A).touched()


def test_a_look_up_that_forgets_its_bar_is_seen(walk: Walk, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(Book, "select", lambda self, table: select(table))
    walk.root("formulas")
    walk.root("log")
    assert any(two_bars.MARK in one for one in walk.problems), walk.problems
