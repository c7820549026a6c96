"""Tests of export and import: same answers in an empty database, each row once, nothing half-written."""

from __future__ import annotations

import csv
import io
import json
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Any

import pytest
from sqlalchemy import func, select

from bot.channels.console.console import Console
from bot.documents.tables import guarded, read_csv, unguarded, write_csv
from bot.work.transfer import rows
from bot.work.transfer.fields import Row
from bot.work.transfer.import_file import MOST_ROWS_OF_NEW
from storage.store import Store
from storage.tables import Base
from tests.chat.features.liquids.mixes import MIST
from tests.demo_bar import EVENING, demo_bar
from tests.examples import in_long_part
from tests.house import House, first_lines, text
from tests.work.transfer.files import Sends, answers, exported, waste_rows

ASKED = (
    "week",
    "week last week",
    "cost grapefruit mist to 8 x 50 ml",
    "cost saline",
    "batches",
    "batches all",
    "stock",
    "plan",
    "batch 12",
    "peeled",
)


@pytest.fixture(scope="module")
def demo_house(tmp_path_factory: pytest.TempPathFactory) -> Iterator[House]:
    """A house with the demo bar in it."""
    with demo_bar(tmp_path_factory.mktemp("demo")) as robin:
        yield robin.house


def _rows(store: Store) -> int:
    with store.reading() as unit:
        return sum(
            unit.session.scalar(select(func.count()).select_from(table)) or 0
            for table in Base.metadata.sorted_tables
            if table.name not in {"upload", "question", "counter", "bar", "entry"}
        )


def test_an_empty_database_answers_the_same_after_the_import(demo_house: House, house: House) -> None:
    robin = demo_house.person("Robin")
    before = answers(robin, ASKED)
    content = exported(robin)["peel-ledger.json"]
    house.clock.set(EVENING)
    kim = house.open_bar("Kim")
    taken = Sends(house, kim).and_takes_in("peel-ledger.json", content)
    assert "are in." in taken.first_line
    after = answers(kim, ASKED)
    for line, said in before.items():
        assert _anonymous(after[line]) == _anonymous(said), line
    first, second = (_frozen(one) for one in (content, exported(kim)["peel-ledger.json"]))
    assert first == second


def _frozen(content: bytes) -> list[dict[str, Any]]:
    """The copies stored with the batches, without the bar-specific ingredient numbers."""
    copies = [one["frozen"] for one in json.loads(content)["batches"]]
    for copy in copies:
        for line in copy["lines"]:
            del line["ingredient"]
    return copies


def _anonymous(said: str) -> str:
    """Remove the maker of a batch, who is the importing person."""
    for name in ("Robin", "Ines", "Caio", "Kim"):
        said = said.replace(f"by {name}", "by them").replace(f"({name})", "(them)")
    return said


def test_what_was_taken_in_can_be_exported_and_taken_in_again_without_a_change(
    demo_house: House, house: House
) -> None:
    content = exported(demo_house.person("Robin"))["peel-ledger.json"]
    house.clock.set(EVENING)
    kim = house.open_bar("Kim")
    sends = Sends(house, kim)
    sends.and_takes_in("peel-ledger.json", content)
    rows = _rows(house.store)
    assert "everything in it is here already" in sends("peel-ledger.json", content).first_line
    again = exported(kim)["peel-ledger.json"]
    assert "everything in it is here already" in sends("again.json", again).first_line
    assert _rows(house.store) == rows
    first, second = json.loads(content), json.loads(again)
    for kind in (
        *("ingredients", "formulas", "prices", "waste", "deliveries", "drinks", "counts", "peeled", "pars"),
    ):
        assert _without_who(first[kind]) == _without_who(second[kind]), kind


def _without_who(found: Any) -> Any:
    if isinstance(found, list):
        return [_without_who(one) for one in found]
    if isinstance(found, dict):
        return {name: _without_who(value) for name, value in found.items() if name != "by"}
    return found


def test_the_bar_itself_takes_nothing_of_its_own_export_in(demo_house: House) -> None:
    robin = demo_house.person("Robin")
    files = exported(robin)
    sends = Sends(demo_house, robin)
    for name in ("peel-ledger.json", "waste.csv", "prices.csv", "formulas.csv"):
        assert "everything in it is here already" in sends(name, files[name]).first_line


def test_a_trial_writes_nothing_and_a_bad_row_stops_all_of_it(house: House) -> None:
    ana = house.open_bar()
    rows = _rows(house.store)
    sends = Sends(house, ana)
    good = b"day,fruit,pieces,reason\n2026-11-24,orange,6,mouldy\n"
    sends("waste.csv", good)
    assert _rows(house.store) == rows
    bad = good + b"2026-13-24,lime,2,dried out\n2026-11-24,,3,\n2026-11-24,lime,minus two,\n"
    said = sends("waste.csv", bad)
    assert said.first_line == "waste.csv has 3 problems: nothing is imported."
    told = text([said])
    assert "waste, row 3: day “2026-13-24” is not a day" in told
    assert "waste, row 4: fruit is missing" in told
    assert "waste, row 5: pieces “minus two” is not a number" in told
    assert not said.buttons
    assert _rows(house.store) == rows


def test_rows_of_json_are_numbered_too(demo_house: House, house: House) -> None:
    found = json.loads(exported(demo_house.person("Robin"))["peel-ledger.json"])
    found["prices"][2]["price"] = "cheap"
    found["formulas"][1]["versions"][0]["lines"][0]["unit"] = "thimble"
    found["batches"][0]["formula"] = "Nobody's"
    house.clock.set(EVENING)
    rows = _rows(house.store)
    ana = house.open_bar()
    before = _rows(house.store)
    assert before > rows
    told = text([Sends(house, ana)("broken.json", json.dumps(found).encode())])
    assert "prices, row 3: price “cheap” is not a number that fits" in told
    assert "formulas, row 2: versions 1, lines 1, unit “thimble” is not a unit I know" in told
    assert "batches, row 1: formula “Nobody's” is not in the file" in told
    assert _rows(house.store) == before


def test_a_spreadsheet_finds_no_formula_in_any_cell(house: House) -> None:
    ana = house.open_bar()
    ana.says('new formula =HYPERLINK("x")\nsalt 20 g\nwater 80 ml\nkind saline\nrest 2 h')
    ana.says("batch #1 x1")
    ana.says("discard 1, @SUM(A1)")
    files = exported(ana)
    for name in ("formulas.csv", "prices.csv", "waste.csv", "batches.csv"):
        for row in csv.reader(io.StringIO(files[name].decode("utf-8-sig"), newline="")):
            assert not [cell for cell in row if cell[:1] in {"=", "+", "-", "@", "\t", "\r"}], row
    assert b"'=HYPERLINK" in files["formulas.csv"]
    assert '=HYPERLINK("x")' in json.loads(files["peel-ledger.json"])["formulas"][0]["name"]


@pytest.mark.parametrize("cell", ["=1+1", "+1", "-1", "@x", "\t=1", "'quoted", "'=x", "plain", "", "'"])
def test_a_cell_comes_back_as_it_was(cell: str) -> None:
    assert unguarded(guarded(cell)) == cell or cell.startswith("'")
    _columns, rows = read_csv(write_csv(["a", "b"], [{"a": cell, "b": "x"}]), 2, 1)
    assert rows[0][1]["b"] == "x"


def test_semicolons_and_tabs_are_read_as_well() -> None:
    for sign in ";\t":
        columns, rows = read_csv(f"day{sign}fruit\n2026-11-24{sign}orange\n".encode(), 2, 1)
        assert columns == ["day", "fruit"]
        assert rows == [(2, {"day": "2026-11-24", "fruit": "orange"})]


def test_equal_rows_of_a_table_are_two_and_come_in_once(house: House) -> None:
    ana = house.open_bar()
    ana.says("price oranges 0.60 each")
    sends = Sends(house, ana)
    content = b"day,fruit,pieces,reason\n2026-11-25,orange,2,mouldy\n2026-11-25,orange,2,mouldy\n"
    sends.and_takes_in("waste.csv", content)
    assert "€2.40" in text(ana.says("week"))
    assert "here already" in sends("waste.csv", content).first_line


def test_a_table_of_formulas_makes_formulas_that_work(house: House) -> None:
    ana = house.open_bar()
    content = (
        "formula;preparation;rest_hours;ingredient;strength_percent;amount;unit\n"
        "Lime drops;tincture;336;lime oil;;10;ml\n"
        "Lime drops;tincture;336;neutral spirit;96;90;ml\n"
        "Brine;saline;;salt;;20;g\n"
        "Brine;saline;;water;;80;ml\n"
    )
    Sends(house, ana).and_takes_in("formulas.csv", content.encode())
    said = text(ana.says("scale lime drops to 50 ml"))
    assert "neutral spirit" in said
    assert "86" in said  # 90 of 100 mL at 96 % vol
    assert "Brine" in str(ana.says("formulas")[0].buttons)


def test_another_currency_is_refused(house: House, demo_house: House) -> None:
    content = exported(demo_house.person("Robin"))["peel-ledger.json"]
    ana = house.open_bar()
    ana.says("price oranges 0.60 each")
    ana.says("bar currency USD")
    told = text([Sends(house, ana)("peel-ledger.json", content)])
    assert "It counts in EUR, this bar in USD." in told


def test_an_older_price_does_not_overtake_the_one_in_force(house: House) -> None:
    ana = house.open_bar()
    ana.says("price oranges 0.60 each")
    content = (
        b"ingredient,pack_amount,pack_unit,price,at\n"
        b"orange,1,each,0.40,2026-01-05\norange,1,each,0.70,2026-11-26\n"
    )
    said = Sends(house, ana).and_takes_in("prices.csv", content)
    assert "1 price is older" in text([said])
    assert first_lines(ana.says("price oranges")) == ["orange: €0.70 each"]


@pytest.mark.long
def test_a_new_bar_takes_in_fewer_rows(house: House) -> None:
    ana = house.open_bar()
    send, many = Sends(house, ana), waste_rows(MOST_ROWS_OF_NEW + 1)
    assert "In its first week a bar takes in at most 20,000 rows a file." in text([send("waste.csv", many)])
    house.clock.turn(days=8)
    assert "Nothing is added yet" in text([send("waste.csv", many)])


@pytest.mark.parametrize(
    ("name", "content", "why"),
    [
        ("a.json", b"{", "not valid JSON"),
        ("a.json", b"[" * 100_000, "not valid JSON"),
        ("a.json", b'{"format": "other"}', "not one of mine"),
        ("a.json", b'{"format": "peel-ledger", "version": 2}', "version 2"),
        ("a.json", b'{"format": "peel-ledger", "version": 1, "waste": {}}', "not one of mine"),
        ("a.csv", b"name\nx\n", "find no table"),
        ("a.csv", b"\xff\xfe\x00", "not a table in UTF-8"),
        ("batches.csv", b"number,formula,total_ml\n1,x,2\n", "only by the JSON file"),
        ("big.csv", b"x" * (5 * 1024 * 1024 + 1), "too large"),
    ],
)
def test_what_is_no_such_file_is_refused_in_words(house: House, name: str, content: bytes, why: str) -> None:
    ana = house.open_bar()
    said = Sends(house, ana)(name, content)
    assert said.first_line == f"I can't import {name}."
    assert why in text([said])


@pytest.mark.parametrize(
    "spoil",
    [
        lambda found: found["bar"]["settings"].update(temperature_c="hot"),
        lambda found: found["bar"]["settings"].update(service_days="all"),
        lambda found: found["bar"]["settings"].update(wage="12 10"),
        lambda found: found["bar"]["settings"].update(outlay="1e999999999"),  # with a billion digits
        lambda found: found["bar"].update(jurisdiction="Moon"),
        lambda found: found["bar"].update(zone="Nowhere/Here"),
    ],
)
def test_settings_that_cannot_be_read_stop_the_import(
    house: House, demo_house: House, spoil: Callable[[dict[str, Any]], None]
) -> None:
    found = json.loads(exported(demo_house.person("Robin"))["peel-ledger.json"])
    spoil(found)
    ana = house.open_bar()
    said = Sends(house, ana)("peel-ledger.json", json.dumps(found).encode())
    assert said.first_line == "I can't import peel-ledger.json."
    assert "open" in first_lines(ana.says("bar"))[0] or first_lines(ana.says("bar")) == ["The Copper Gull"]


def test_members_neither_export_nor_import(house: House) -> None:
    house.open_bar()
    ben = house.joins("Ben")
    assert "Only a manager" in first_lines(ben.says("export"))[0]
    assert "Only a manager" in Sends(house, ben)("waste.csv", b"day,fruit\n2026-11-24,orange\n").first_line


def test_numbers_do_not_leave_the_bar_by_a_group(house: House) -> None:
    ana = house.open_bar()
    ana.says("/start", "Team")
    (said,) = ana.says("/export", "Team")
    assert not said.files
    assert "private chat" in text([said])


def test_a_kept_file_of_another_bar_cannot_be_taken_in(house: House) -> None:
    ana, eve = house.open_bar(), house.open_bar("Eve", "The Grey Gull")
    tried = Sends(house, ana)("waste.csv", b"day,fruit,pieces\n2026-11-24,orange,6\n")
    line = tried.buttons[0][0].line
    assert "no longer have that file" in first_lines(eve.taps_line(line))[0]
    assert "is in" in first_lines(ana.taps_line(line))[0]
    assert "no longer have that file" in first_lines(ana.taps_line(line))[0]


def test_import_by_name_in_the_terminal(house: House, tmp_path: Path) -> None:
    path = tmp_path / "waste 2026.csv"
    path.write_bytes(b"day,fruit,pieces\n2026-11-24,orange,6\n")
    written: list[str] = []
    console = Console(house.store, house.clock, "Ana", written.append)
    for line in ("start", "The Copper Gull", "Lisbon", "1", "1", "1", "1"):
        console.say(line)
    (said,) = console.say(f"import {path}")
    assert said.first_line == "waste 2026.csv would add 1 new row. Nothing is added yet."
    (gone,) = console.say(f"import {tmp_path / 'nothing.csv'}")
    assert gone.first_line.startswith("I find no file")


_ODD: tuple[Any, ...] = (
    None,
    "",
    [],
    {},
    [[]],
    [{}],
    {"a": 1},
    -1,
    1e309,
    10**30,
    True,
    "x" * 300,
    "1e9",
    "\x00",
)


def _places(found: Any, path: tuple[Any, ...] = ()) -> Iterator[tuple[Any, ...]]:
    """Every place in a document, at most two rows of each list."""
    inside = (
        found.items() if isinstance(found, dict) else enumerate(found[:2]) if isinstance(found, list) else ()
    )
    for name, value in inside:
        yield (*path, name)
        yield from _places(value, (*path, name))


def test_whatever_stands_in_a_field_it_is_taken_in_or_refused_in_words(house: House) -> None:
    ana = house.open_bar()
    ana.says("new formula Brine\nsalt 20 g\nwater 80 ml\nkind saline\nrest 2 h")
    for line in (
        "price salt 1 kg 2",
        "waste 3 limes mouldy",
        "batch brine x2",
        "stock salt 1 kg",
        "par salt 1 kg",
        "drinks 40 brine",
        "stock bought salt 2 x 1 kg 2",
    ):
        ana.says(line)
    content = exported(ana)["peel-ledger.json"]
    eve = house.open_bar("Eve", "The Grey Gull")
    sends = Sends(house, eve)
    rows = _rows(house.store)
    paths = [path for path in _places(json.loads(content)) if path[0] not in {"exported_at"}]
    if not in_long_part():
        paths = paths[::20]
    for number, path in enumerate(paths):
        found = json.loads(content)
        place = found
        for name in path[:-1]:
            place = place[name]
        place[path[-1]] = _ODD[number % len(_ODD)]
        said = sends("odd.json", json.dumps(found).encode())
        assert said.first_line, path
        assert _rows(house.store) == rows, path


def test_the_format_is_described_field_by_field() -> None:
    described = Path(rows.__file__).with_name("FORMAT.md").read_text()
    models: dict[str, type[Row]] = {"bar": rows.BarRow, **rows.SECTIONS}
    for name, model in models.items():
        (line,) = (line for line in described.splitlines() if line.startswith(f"| `{name}` |"))
        fields = {field.alias or key for key, field in model.model_fields.items()} - {"at", "by"}
        for field in fields:
            start, _sign, end = field.rpartition("_")
            assert field in line or (start in line and f"/{end}" in line), (name, field)


def test_sprayers_costs_and_settings_come_out_again_as_they_went_in(house: House) -> None:
    ana = house.open_bar()
    ana.says(MIST)
    for line in (
        *("price grapefruit 0.80 each", "waste 2 grapefruits mouldy", "juiced 2 oranges 150 ml"),
        "weigh Blue 152.31 150.55 148.80 147.02 20 sprays with grapefruit mist",
        *("use Blue for grapefruit mist", "use Blue for all", "making grapefruit mist 60 min, label 0.10"),
        *("new formula Peel\norange peel 80 g\nneutral spirit 500 ml\nkind infusion", "batch peel x1"),
        "strained 1 430 ml",
        *("spraying grapefruit since 2026-11-01", "bar loss 2 %", "bar wage 10-12", "bar dash 0.8 ml"),
    ):
        ana.says(line)
    first = json.loads(exported(ana)["peel-ledger.json"])
    assert first["sprayers"][0]["runs"]
    eve = house.open_bar("Eve", "The Grey Gull")
    Sends(house, eve).and_takes_in("bar.json", json.dumps(first).encode())
    second = json.loads(exported(eve)["peel-ledger.json"])
    for name in ("settings", "spraying_since", "sprayer", "formula_costs"):
        assert second["bar"][name] == first["bar"][name] != {}
    assert "86 to 96 % vol" in text(eve.says("batch 1"))
    for kind in ("sprayers", "juicings", "formulas"):
        assert _without_who(second[kind]) == _without_who(first[kind])
