"""Tests of people's own tables sent to the chat: reading, questions, trial run, import, cached answers."""

from __future__ import annotations

import io
from datetime import date
from typing import Any

import pytest
from openpyxl import Workbook

from bot.channels.rendering import plain_lines
from bot.chat.reply.message import Reply
from tests.house import House, Person
from tests.work.transfer.files import Sends


@pytest.fixture
def ana(house: House) -> Person:
    """The owner of a bar that knows oranges and limes."""
    person = house.open_bar("Ana")
    for line in ("price oranges 0.50 each", "price limes 0.25 each"):
        person.says(line)
    return person


def _workbook(*rows: tuple[Any, ...]) -> bytes:
    book = Workbook()
    sheet = book.active
    assert sheet is not None
    for row in rows:
        sheet.append(row)
    kept = io.BytesIO()
    book.save(kept)
    return kept.getvalue()


def _words(reply: Reply) -> str:
    return "\n".join(plain_lines(reply))


def _labels(reply: Reply) -> list[str]:
    return [button.label for row in reply.buttons for button in row]


def _tap(person: Person, reply: Reply, label: str) -> Reply:
    line = next(button.line for row in reply.buttons for button in row if button.label == label)
    (said,) = person.taps_line(line)
    return said


def _week(person: Person) -> str:
    return "\n".join(_words(one) for one in person.says("week last week") + person.says("week"))


def test_a_list_of_item_quantity_and_cost_asks_what_it_is_and_nothing_is_logged_before_yes(
    house: House, ana: Person
) -> None:
    send = Sends(house, ana)
    shown = send("list.csv", b"Item,Qty,Cost\nOranges,24,$12.00\nLimes,40,$9.60\n")
    assert "What is in this table?" in _words(shown)
    asked = _tap(ana, shown, "waste")
    assert "Which day is it for?" in _words(asked)
    ready = _tap(ana, asked, _labels(asked)[0])
    assert "24 oranges" in _words(ready)
    tried = _tap(ana, ready, "Try it")
    assert "would add 2 new rows" in _words(tried)
    assert "24" not in _week(ana)
    assert "2 rows of list.csv are in" in _words(_tap(ana, tried, "Import it"))
    assert "24" in _week(ana)


def test_a_workbook_of_waste_needs_no_question_and_comes_in_once(house: House, ana: Person) -> None:
    send = Sends(house, ana)
    content = _workbook(
        ("Waste week 48",), ("Date", "Fruit", "Count", "Why"), (date(2026, 11, 24), "Oranges", 6, "mouldy")
    )
    shown = send("waste.xlsx", content)
    assert _labels(shown) == ["Try it", "Change columns"]
    _tap(ana, _tap(ana, shown, "Try it"), "Import it")
    again = _tap(ana, send("waste.xlsx", content), "Try it")
    assert "everything in it is here already" in _words(again)


def test_what_was_said_of_a_table_is_kept_for_the_next_of_its_shape(house: House, ana: Person) -> None:
    send = Sends(house, ana)
    first = send("a.csv", b"Day,What,Number of\n3/11/2026,Limes,2\n")
    assert "What is in this table?" in _words(first)
    asked = _tap(ana, first, "waste")
    assert "Which column says how many?" in _words(asked)
    asked = _tap(ana, asked, "Number of")
    assert "Which comes first in its dates?" in _words(asked)
    assert "Try it" in _labels(_tap(ana, asked, "the day"))
    assert _labels(send("b.csv", b"Day,What,Number of\n4/11/2026,Limes,3\n")) == ["Try it", "Change columns"]


def test_a_column_is_changed_by_taps(house: House, ana: Person) -> None:
    send = Sends(house, ana)
    shown = send("delivery.csv", b"Date,Product,Qty,Price\n2026-11-24,Limes,40,9.60\n")
    columns = _tap(ana, shown, "Change columns")
    meanings = _tap(ana, columns, "Price: price of one")
    changed = _tap(ana, meanings, "total cost")
    assert "9.60" in _words(changed)


def test_new_names_are_said_before_anything_is_made(house: House, ana: Person) -> None:
    shown = Sends(house, ana)("waste.csv", b"Date,Fruit,Count\n2026-11-24,Kumquats,6\n")
    assert "New names: Kumquats" in _words(shown)
    assert "kumquat" not in _words(ana.says("stock")[0])


def test_empty_tables_are_sent(ana: Person) -> None:
    (said,) = ana.says("template")
    assert [file.name for file in said.files] == ["waste.csv", "delivery.csv", "prices.csv", "inventory.csv"]
