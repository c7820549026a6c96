"""Tests of files over Telegram: an export arrives as documents, and an uploaded one is imported."""

from __future__ import annotations

import json

import pytest

from bot.chat.dialogue import progress
from bot.work.transfer.problems import MOST_BYTES
from tests.api import Fault
from tests.channels.telegram.conftest import Telephone

_WASTE = b"day,fruit,pieces,reason\n2026-11-24,orange,6,mouldy\n2026-11-24,lime,2,dried out\n"


async def test_a_sent_table_is_tried_first_and_taken_in_by_a_tap(telephone: Telephone) -> None:
    ana = await telephone.opened_bar()
    tried = await ana.sends_document("waste.csv", _WASTE)
    assert "waste.csv would add 2 new rows. Nothing is added yet." in tried.text
    assert "No waste logged" in (await ana.says("week")).text
    taken = await ana.taps("Import it", message=tried.last)
    assert "2 rows of waste.csv are in." in taken.text
    assert "orange" in (await ana.says("week")).text
    again = await ana.sends_document("waste.csv", _WASTE)
    assert "everything in it is here already" in again.text


async def test_long_work_says_how_far_it_is_in_the_message_that_becomes_the_answer(
    telephone: Telephone, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(progress, "FIRST_SECONDS", 0.0)
    monkeypatch.setattr(progress, "EVERY_SECONDS", 0.0)
    ana = await telephone.opened_bar()
    many = b"day,fruit,pieces\n" + b"2026-11-24,orange,6\n" * 400
    tried = await ana.sends_document("waste.csv", many)
    shown = {one.message_id for one in tried}
    assert tried[0].text.startswith("Trying the file: ")
    assert "of 400 rows" in tried[0].text
    assert len(shown) == 1
    assert "would add 400 new rows" in tried.last.text
    assert tried.last.labels == ["Import it"]
    taken = await ana.taps("Import it", message=tried.last)
    assert {one.message_id for one in taken} == shown
    assert taken[0].text.startswith("Importing: ")
    assert "400 rows of waste.csv are in." in taken.last.text
    undone = await ana.taps("Undo", message=taken.last)
    assert undone[0].text.startswith("Taking back: 400 of 400 rows")
    assert "Undone: import of waste.csv" in undone.last.text


async def test_word_of_long_work_that_cannot_be_sent_keeps_no_answer_back(
    telephone: Telephone, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(progress, "FIRST_SECONDS", 0.0)
    ana = await telephone.opened_bar()
    telephone.server.fail_next("sendMessage", Fault.http(500))
    tried = await ana.sends_document("waste.csv", b"day,fruit,pieces\n" + b"2026-11-24,orange,6\n" * 200)
    assert [one.text.splitlines()[0] for one in tried] == [
        "waste.csv would add 200 new rows. Nothing is added yet."
    ]


async def test_what_is_quick_says_only_its_answer(telephone: Telephone) -> None:
    ana = await telephone.opened_bar()
    assert len(await ana.sends_document("waste.csv", _WASTE)) == 1


async def test_an_export_comes_as_files(telephone: Telephone) -> None:
    ana = await telephone.opened_bar()
    await ana.says("waste 6 oranges mouldy")
    sent = await ana.says("export", expects=6)
    files = {one.file_name: one.document for one in sent if one.document is not None}
    assert set(files) == {"formulas.csv", "prices.csv", "waste.csv", "batches.csv", "peel-ledger.json"}
    content = files["peel-ledger.json"]
    assert content is not None
    assert json.loads(content)["waste"][0]["fruit"] == "orange"


async def test_a_fetch_that_fails_is_tried_again(telephone: Telephone) -> None:
    ana = await telephone.opened_bar()
    telephone.server.fail_next("getFile", Fault.http(502))
    assert "2 new rows" in (await ana.sends_document("waste.csv", _WASTE)).text


async def test_a_file_that_is_too_large_is_refused_unfetched(telephone: Telephone) -> None:
    ana = await telephone.opened_bar()
    telephone.server.fail_next("getFile", Fault.http(500))  # would break the answer if requested
    said = await ana.sends_document("big.csv", b"x" * (MOST_BYTES + 1))
    assert "too large" in said.text


async def test_what_is_no_table_is_refused_in_words(telephone: Telephone) -> None:
    ana = await telephone.opened_bar()
    said = await ana.sends_document("menu.pdf", b"%PDF-1.7\x00\xff\xfe")
    assert "I can't import menu.pdf." in said.text
    # Nothing was kept: the bar is unchanged.
    assert "No waste logged" in (await ana.says("week")).text
