"""Files over Telegram: an export comes as documents, and one sent back is fetched, tried and taken in."""

from __future__ import annotations

import json

from bot.work.file_rows import MOST_BYTES
from tests.api import Fault
from tests.channels.conftest import Telephone

_WASTE = b"day,fruit,pieces,reason\n2026-11-24,orange,6,mouldy\n2026-11-24,lime,2,dried out\n"


async def test_a_sent_table_is_tried_first_and_taken_in_by_a_tap(telephone: Telephone) -> None:
    ana = await telephone.opened_bar()
    tried = await ana.sends_document("waste.csv", _WASTE)
    assert "waste.csv would bring 2 new rows. Nothing is taken in yet." in tried.text
    assert "No waste logged" in (await ana.says("week")).text
    taken = await ana.taps("Take it in", message=tried.last)
    assert "2 rows of waste.csv are in." in taken.text
    assert "orange" in (await ana.says("week")).text
    again = await ana.sends_document("waste.csv", _WASTE)
    assert "everything in it is here already" in again.text


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
    telephone.server.fail_next("getFile", Fault.http(500))  # would break the answer if it were asked for
    said = await ana.sends_document("big.csv", b"x" * (MOST_BYTES + 1))
    assert "too large" in said.text


async def test_what_is_no_table_is_refused_in_words(telephone: Telephone) -> None:
    ana = await telephone.opened_bar()
    said = await ana.sends_document("menu.pdf", b"%PDF-1.7\x00\xff\xfe")
    assert "menu.pdf cannot be taken in." in said.text
    # Nothing of it was kept: the bar goes on as before.
    assert "No waste logged" in (await ana.says("week")).text
