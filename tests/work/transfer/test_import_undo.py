"""Tests of undoing an import with one entry, except for rows used since, and of importing it again."""

from __future__ import annotations

import json

import pytest

from storage.tables import Entry
from tests.demo_bar import EVENING, demo_bar
from tests.house import House, Person, first_lines, text
from tests.work.transfer.files import Sends, answers, exported

_WASTE = b"day,fruit,pieces,reason\n2026-11-24,orange,6,mouldy\n2026-11-25,lime,2,\n"
_MIST = (
    "formula;preparation;ingredient;strength_percent;amount;unit\n"
    "Lime mist;aroma mist;lime oil;;{oil};ml\n"
    "Lime mist;aroma mist;neutral spirit;96;90;ml\n"
)


@pytest.fixture(scope="session")
def export(tmp_path_factory: pytest.TempPathFactory) -> bytes:
    """The export of the demo bar, with fewer rows of the kinds that have hundreds."""
    with demo_bar(tmp_path_factory.mktemp("demo")) as robin:
        found = json.loads(exported(robin)["peel-ledger.json"])
    for kind in ("waste", "deliveries", "drinks", "counts", "batches"):
        found[kind] = found[kind][-40:]
    return json.dumps(found).encode()


@pytest.fixture
def kim(house: House) -> Person:
    """The owner of a bar with an empty book, on the demo's evening."""
    house.clock.set(EVENING)
    return house.open_bar("Kim")


def test_a_table_of_waste_goes_and_comes_again(house: House, kim: Person) -> None:
    sends = Sends(house, kim)
    empty = text(kim.says("week"))
    sends.and_takes_in("waste.csv", _WASTE)
    full = text(kim.says("week"))
    assert "orange" in full
    said = text(kim.taps("Undo"))
    assert said.startswith("Undone: import of waste.csv\nIt had added 2 rows.")
    assert "stay" not in said
    assert text(kim.says("week")) == empty
    assert "imported waste.csv (undone by" in text(kim.says("log"))
    assert first_lines(kim.says("undo"))[0] != said.splitlines()[0]  # once only
    sends.and_takes_in("waste.csv", _WASTE)
    assert text(kim.says("week")) == full
    assert "here already" in sends("waste.csv", _WASTE).first_line


def test_a_whole_bar_goes_and_comes_again_with_the_sameanswers(
    house: House, kim: Person, export: bytes
) -> None:
    asked = ("week", "week last week", "cost grapefruit mist to 8 x 50 ml", "stock", "plan", "peeled", "bar")
    sends = Sends(house, kim)
    before = answers(kim, ("week", "stock", "plan", "formulas", "bar", "price oranges"))
    sends.and_takes_in("peel-ledger.json", export)
    full = answers(kim, asked)
    assert "stay" not in text(kim.taps("Undo"))
    assert answers(kim, tuple(before)) == before
    assert "The book is empty" not in text(kim.says("batches"))
    said = sends("peel-ledger.json", export)
    told = text([said])
    assert "get new numbers, because theirs are taken: 1 becomes" in told
    kim.taps_line(said.buttons[0][0].line)
    assert answers(kim, asked) == full
    assert "here already" in sends("peel-ledger.json", export).first_line
    # And once more: the remains of the first import do not interfere.
    assert "stay" not in text(kim.says("undo"))
    assert answers(kim, tuple(before)) == before


def test_a_mended_file_brings_what_it_says_after_the_undo(house: House, kim: Person) -> None:
    sends = Sends(house, kim)
    sends.and_takes_in("formulas.csv", _MIST.format(oil=100).encode())
    kim.taps("Undo")
    assert "Lime mist" not in str(kim.says("formulas"))
    sends.and_takes_in("formulas.csv", _MIST.format(oil=10).encode())
    said = text(kim.says("formula lime mist"))
    assert "10 ml" in said
    assert "100 ml" in said  # makes
    assert "190 ml" not in said


def test_what_was_used_since_stays_and_is_named(house: House, kim: Person) -> None:
    Sends(house, kim).and_takes_in("formulas.csv", _MIST.format(oil=10).encode())
    kim.says("batch lime mist x1")
    kim.says("new formula Lime water\nlime oil 1 ml\nwater 99 ml\nkind syrup")
    number = next(line for line in text(kim.says("log")).splitlines() if "imported" in line).split()[0]
    said = text(kim.says(f"undo {number[1:]}"))
    assert "These stay, because you use them: Lime mist, lime oil, neutral spirit" in said
    assert "Lime mist" in str(kim.says("formulas"))
    assert "Lime mist" in text(kim.says("batches"))


def test_what_has_a_par_of_its_own_since_stays(house: House, kim: Person) -> None:
    Sends(house, kim).and_takes_in("formulas.csv", _MIST.format(oil=10).encode())
    kim.says("par lime oil 20 ml")
    number = next(line for line in text(kim.says("log")).splitlines() if "imported" in line).split()[0]
    assert "because you use them: lime oil" in text(kim.says(f"undo {number[1:]}"))


def test_a_reason_given_later_goes_with_its_line(house: House, kim: Person) -> None:
    empty = text(kim.says("week"))
    Sends(house, kim).and_takes_in("waste.csv", _WASTE)
    kim.says("reason 2 dried out")
    assert "dried out" in text(kim.says("week"))
    kim.says(f"undo {_number_of_the_import(kim)}")
    assert text(kim.says("week")) == empty


def test_settings_go_too_and_a_batch_taken_back_reminds_of_nothing(
    house: House, kim: Person, export: bytes
) -> None:
    found = json.loads(export)
    found["bar"]["settings"]["loss_percent"] = "7"
    before = text(kim.says("bar loss"))
    Sends(house, kim).and_takes_in("peel-ledger.json", json.dumps(found).encode())
    assert "7" in text(kim.says("bar loss"))
    kim.taps("Undo")
    assert text(kim.says("bar loss")) == before
    house.clock.turn(days=400)
    assert {one.due.kind for one in house.reminders()} <= {"close"}


def test_peeled_fruit_comes_with_its_clock_and_goes_again(house: House, kim: Person, export: bytes) -> None:
    found = json.loads(export)
    only = {name: found[name] for name in ("format", "version", "peeled")}
    content = json.dumps(only).encode()
    sends = Sends(house, kim)

    def shown() -> str:
        said = text(kim.says("peeled"))
        kim.says("cancel")
        return said

    assert "orange" not in shown()
    sends.and_takes_in("peeled.json", content)
    assert "1 orange  Thu, 26 Nov 00:05" in shown()
    assert "here already" in sends("peeled.json", content).first_line
    kim.says(f"undo {_number_of_the_import(kim)}")
    assert "orange" not in shown()
    sends.and_takes_in("again.json", content)
    house.clock.turn(hours=5)
    assert "peeled" in [one.due.kind for one in house.reminders()]
    only["peeled"][0]["pieces"] = "10001"
    only["peeled"][0]["ref"] = "elsewhere:peeled:1"
    assert "peeled fruit, row 1: pieces “10001” is not a number that fits" in text(
        [sends("broken.json", json.dumps(only).encode())]
    )


def _number_of_the_import(kim: Person) -> str:
    line = next(line for line in text(kim.says("log")).splitlines() if "imported" in line)
    return line.split()[0][1:]


def test_a_strength_that_the_file_brought_goes_unless_it_was_changed_since(house: House, kim: Person) -> None:
    kim.says("price neutral spirit 1 l 24")
    Sends(house, kim).and_takes_in("formulas.csv", _MIST.format(oil=10).encode())
    assert "96 %" in text(kim.says("strength neutral spirit"))
    kim.taps("Undo")
    assert "96 %" not in text(kim.says("strength neutral spirit"))


def test_only_in_time_and_only_by_who_may(house: House, kim: Person) -> None:
    Sends(house, kim).and_takes_in("waste.csv", _WASTE)
    line = next(
        button.line
        for one in house.room(None, kim).shown[-1:]
        for row in one.reply.buttons
        for button in row
        if button.label == "Undo"
    )
    ben = house.joins("Ben", "Kim")
    assert "manager" in text(ben.says(line))
    house.clock.turn(hours=25)
    assert "24 hours" in text(kim.says(line))


def test_an_import_of_which_nobody_noted_what_it_brought_stays(house: House, kim: Person) -> None:
    Sends(house, kim).and_takes_in("waste.csv", _WASTE)
    with house.store.writing() as unit:
        for row in unit.session.query(Entry).filter(Entry.what == "import"):
            row.details = {"file": "waste.csv", "rows": {"waste": 2}}
    assert "Undone" not in text(kim.taps("Undo"))
    assert "orange" in text(kim.says("week"))
