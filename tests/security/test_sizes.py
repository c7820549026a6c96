"""Tests of file limits: size, rows, columns and depth are bounded before memory is allocated."""

from __future__ import annotations

import contextlib
import io
import tracemalloc
import zipfile

import pytest

from bot.work.transfer import import_references
from bot.work.transfer.import_rows import MOST_ROWS, MOST_SINGLE, read_file
from bot.work.transfer.problems import MOST_BYTES, UnreadableFileError
from tests.api import Fault
from tests.channels.telegram.conftest import MIST, Telephone
from tests.house import House, text
from tests.security.two_bars import sends_file

_JSON = b'{"format":"peel-ledger","version":1,"waste":'
# The memory for reading 5 MB: the service's own limit is 512 MB, and others work at the same time.
_MOST_HELD = 120 * 1024 * 1024


def _bomb() -> bytes:
    packed = io.BytesIO()
    with zipfile.ZipFile(packed, "w", zipfile.ZIP_DEFLATED) as archive:
        archive.writestr("waste.csv", b"2026-11-24,lime,1\n" * 2_000_000)
    return packed.getvalue()


@pytest.mark.parametrize(
    ("name", "content", "why"),
    [
        ("rows.csv", b"day,fruit\n" + b"a\n" * 150_000, "too large"),
        ("columns.csv", b"," * 5_000_000, "too large"),
        ("line.csv", b"day,fruit\n" + b"x" * 5_000_000, "not a table"),
        ("quoted.csv", b'day,fruit\n"' + b"x" * 5_000_000, "not a table"),
        ("deep.json", _JSON + b"[" * 5_000_000, "too large"),
        ("deep enough.json", _JSON + b"[" * 300_000, "not valid JSON"),
        ("deep objects.json", _JSON + b'{"a":' * 300_000, "not valid JSON"),
        ("lists.json", _JSON + b"[" + b"[]," * 1_600_000 + b"0]}", "too large"),
        ("objects.json", _JSON + b"[" + b"{}," * 1_600_000 + b"0]}", "too large"),
        ("numbers.json", _JSON + b"[" + b"0," * 400_000 + b"0]}", "too large"),
        ("digits.json", _JSON + b"1" * 4_900_000 + b"}", "not valid JSON"),
        ("archive.zip", _bomb(), "not a table"),
    ],
)
def test_a_file_made_to_hurt_is_refused_in_words(house: House, name: str, content: bytes, why: str) -> None:
    assert len(content) <= MOST_BYTES  # it would be downloaded
    replies = sends_file(house, house.open_bar(), name, content)
    assert why in text(replies), replies
    assert not replies[0].buttons


@pytest.mark.parametrize(
    "content",
    [
        pytest.param(b"day,fruit\n" + b"a\n" * 400_000, marks=pytest.mark.long),
        b"," * 5_000_000,
        b"day,fruit\n" + b"," * 5_000_000,
        _JSON + b"[" + b"{}," * 1_600_000 + b"0]}",
        _JSON + b"[" + b"0," * 800_000 + b"0]}",
    ],
    ids=["rows", "columns", "cells", "objects", "numbers"],
)
def test_no_file_takes_much_memory_while_it_is_read(content: bytes) -> None:
    tracemalloc.start()
    try:
        with contextlib.suppress(UnreadableFileError):
            read_file("x", content, ("peel-ledger", 1))
        held = tracemalloc.get_traced_memory()[1]
    finally:
        tracemalloc.stop()
    assert held < _MOST_HELD


def test_what_is_written_row_by_row_has_a_limit_of_its_own(house: House) -> None:
    ana = house.open_bar()
    prices = b"ingredient,pack_amount,pack_unit,price\n" + b"salt,1,kg,1\n" * (MOST_SINGLE + 1)
    assert "too large" in text(sends_file(house, ana, "prices.csv", prices))
    pars = b'{"format":"peel-ledger","version":1,"pars":[' + b"0," * MOST_SINGLE + b"0]}"
    assert "too large" in text(sends_file(house, ana, "pars.json", pars))
    assert MOST_SINGLE < MOST_ROWS


def test_a_file_does_not_bring_more_names_than_a_bar_can_use(
    house: House, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(import_references, "MOST_NAMES", 20)
    ana = house.open_bar()
    listed = b",".join(b'{"name":"salt %d","kind":"other"}' % number for number in range(21))
    content = b'{"format":"peel-ledger","version":1,"ingredients":[' + listed + b"]}"
    assert "too many names" in text(sends_file(house, ana, "names.json", content))
    table = b"day,fruit,pieces\n" + b"".join(b"2026-11-24,fruit%d,1\n" % number for number in range(21))
    assert "too many names" in text(sends_file(house, ana, "names.csv", table))


@pytest.mark.parametrize("ref", ["²", "9" * 60, "٣", "-1", "0x1", ""])
def test_a_reference_that_only_looks_like_one_of_ours(house: House, ref: str) -> None:
    ana = house.open_bar()
    ana.says("waste 6 oranges mouldy")
    (said,) = ana.says("export")
    content = next(file.content for file in said.files if file.name.endswith(".json")).decode()
    assert ":waste:1" in content
    replies = sends_file(house, ana, "again.json", content.replace(":waste:1", f":waste:{ref}").encode())
    assert "would add" in text(replies)


async def test_a_photo_is_never_fetched(telephone: Telephone) -> None:
    """Of a photo only the chat's own id is stored: its size costs nothing here."""
    ana = await telephone.opened_bar()
    await ana.says(MIST)
    await ana.says("batch grapefruit mist to 200 ml")
    telephone.server.fail_next("getFile", Fault.http(500), times=9)  # would break the answer
    assert "hazy" in (await ana.sends_photo("check 1 hazy")).text
    assert telephone.server.faults.left == 9


async def test_a_file_in_a_group_is_not_even_looked_at(telephone: Telephone) -> None:
    ana = await telephone.opened_bar()
    group = telephone.server.group("Back bar", [ana])
    await ana.says("/start@peel_ledger_test_bot", chat=group)
    telephone.server.fail_next("getFile", Fault.http(500), times=9)
    await ana.sends_document("waste.csv", b"day,fruit\n2026-11-24,lime\n", chat=group, expects=0)
    assert telephone.server.faults.left == 9


async def test_the_size_that_was_told_beforehand_is_not_believed(telephone: Telephone) -> None:
    ana = await telephone.opened_bar()
    file_id, unique = telephone.server.world.store_file(b"x" * (MOST_BYTES + 1), "document", "big.csv")
    told = {"file_id": file_id, "file_unique_id": unique, "file_name": "big.csv", "file_size": 10}
    mark = telephone.server.mark()
    ana.sends({"document": told}, shown="<file big.csv>", file_id=file_id)
    assert "too large" in (await telephone.server.follow(ana, mark)).text
