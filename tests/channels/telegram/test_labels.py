"""Tests of labels, their symbol, and the batch behind it, over real HTTP."""

from __future__ import annotations

import shutil
import subprocess
from pathlib import Path

import pytest

from tests.api import Person
from tests.channels.telegram.conftest import MIST, Telephone
from tests.documents.reading import read_pages, read_symbols

LONGEST = "Cold-pressed bergamot, pink grapefruit and folded lemon winter aroma mist no 22"


async def _with_batch(telephone: Telephone) -> Person:
    ana = await telephone.opened_bar()
    await ana.says(MIST)
    await ana.says("batch grapefruit mist to 8 x 50 ml")
    return ana


async def _label(ana: Person, line: str) -> tuple[str, bytes, bytes]:
    shown = await ana.says(line, expects=3)
    pictures = [one.photo for one in shown if one.photo is not None]
    files = [one.document for one in shown if one.document is not None]
    assert len(pictures) == len(files) == 1
    return shown.text, pictures[0], files[0]


async def test_a_label_by_three_taps(telephone: Telephone) -> None:
    ana = await _with_batch(telephone)
    await ana.taps("Show batch 1")
    asked = await ana.taps("Label")
    assert "Which labels" in asked.text
    asked = await ana.taps("A4, 14 labels of 99.1 x 38.1 mm")
    assert asked.last.edited
    assert asked.labels[0] == "8 (one per bottle)"
    printed = await ana.taps("8 (one per bottle)", expects=3)
    assert "8 labels for batch 1, Grapefruit mist" in printed.text
    assert [one.file_name for one in printed if one.document] == ["batch-1-labels.pdf"]


async def test_a_label_says_what_the_batch_knows_and_opens_it(telephone: Telephone) -> None:
    ana = await _with_batch(telephone)
    telephone.clock.turn(hours=25)
    await ana.says("check 1 clear")
    _text, _picture, pdf = await _label(ana, "label 1 a4-2x7 x8")
    page = read_pages(pdf, 16)[0]
    for words in (
        "Grapefruit mist",
        "Batch 1",
        "1 of 8",
        "50 ml",
        "% vol",
        "Made 25 Nov 2026",
        "Checked clear 26 Nov 2026",
        "Discard after 24 May 2027",
        "Flammable",
        "neutral spirit",
        "citrus",
        "Keep closed, cool and out of the light",
        "Made by Ana",
        "The Copper Gull",
        "Food grade not confirmed",
    ):
        assert words in " ".join(page.text.split()), words
    links = {symbol.text for symbol in read_symbols(page.picture)}
    assert len(links) == 1
    link = links.pop()
    assert link.startswith("https://t.me/")
    payload = link.partition("?start=")[2]
    assert "Batch 1: Grapefruit mist, ready" in (await ana.opens_link(payload)).text


async def test_a_stranger_learns_nothing_from_a_label(telephone: Telephone) -> None:
    await _with_batch(telephone)
    eve = telephone.server.person("Eve")
    there = await eve.opens_link("b_1_1")
    missing = await eve.opens_link("b_1_99")
    nowhere = await eve.opens_link("b_77_1")
    assert there.text == missing.text == nowhere.text
    assert "Grapefruit" not in there.text
    assert "Copper" not in there.text
    # Nor does the owner of another bar.
    ben = await telephone.opened_bar("Ben")
    assert (await ben.opens_link("b_1_1")).text == there.text


async def test_a_scan_says_the_likely_next_step(telephone: Telephone) -> None:
    ana = await _with_batch(telephone)
    telephone.clock.turn(hours=25)
    assert "Next: check how it looks." in (await ana.opens_link("b_1_1")).text
    await ana.taps("Clear")
    scanned = await ana.opens_link("b_1_1")
    assert "Next: label it, then open it." in scanned.text
    assert scanned.labels[0] == "Open it"
    await ana.taps("Open it")
    assert "Next: note when it is used up." in (await ana.opens_link("b_1_1")).text
    telephone.clock.turn(days=300)
    scanned = await ana.opens_link("b_1_1")
    assert "Next: discard it." in scanned.text
    assert scanned.labels[0] == "Discard"


async def test_a_label_of_a_bar_one_does_not_stand_in(telephone: Telephone) -> None:
    ana = await _with_batch(telephone)
    ben = await telephone.opened_bar("Ben")
    code = next(
        line for line in (await ana.says("team invite")).text.splitlines() if line.startswith("join ")
    )
    await ben.says(code)
    await ben.says("bars 2")
    shown = await ben.opens_link("b_1_1")
    assert "Batch 1: Grapefruit mist" in shown.text
    assert "You are now at The Copper Gull." in shown.text


@pytest.mark.long
async def test_the_longest_names_are_printed_whole(telephone: Telephone) -> None:
    ana = await telephone.opened_bar()
    await ana.says(MIST.replace("Grapefruit mist", LONGEST))
    await ana.says("batch #1 to 8 x 50 ml")
    for stock in ("a4-2x7", "a4-2x4", "roll-62", "letter-2x5", "roll-100x50"):
        _text, _picture, pdf = await _label(ana, f"label 1 {stock} x1")
        words = " ".join(" ".join(page.text.split()) for page in read_pages(pdf))
        assert LONGEST in words, stock


def _poppler(*command: str) -> str:
    return subprocess.run(command, capture_output=True, text=True, check=True).stdout


@pytest.mark.skipif(shutil.which("pdfinfo") is None, reason="poppler is not installed")
async def test_poppler_reads_the_same_page_and_words(telephone: Telephone, tmp_path: Path) -> None:
    ana = await _with_batch(telephone)
    await ana.says("bar rules US")
    _text, _picture, pdf = await _label(ana, "label 1 letter-2x5 x2")
    path = tmp_path / "labels.pdf"
    path.write_bytes(pdf)
    about = _poppler("pdfinfo", str(path))
    assert "612 x 792 pts (letter)" in about
    text = _poppler("pdftotext", str(path), "-")
    assert "Grapefruit mist" in text
    assert "2 of 2" in text


@pytest.mark.skipif(shutil.which("pdftotext") is None, reason="poppler is not installed")
@pytest.mark.long
async def test_the_bottles_of_a_blind_trial_look_alike(telephone: Telephone, tmp_path: Path) -> None:
    """One bottle can light and one can not, and one holds less oil: nobody can tell."""
    ana = await telephone.opened_bar()
    await ana.says(MIST)
    await ana.says("trial grapefruit mist: neutral spirit 0.2 ml, grapefruit oil 0.1 ml")
    await ana.taps("20 ml")
    await ana.taps("Blind")
    await ana.says("trial made 1")
    path = tmp_path / "labels.pdf"

    async def printed(number: int, code: str) -> str:
        said, _picture, pdf = await _label(ana, f"label {number} a4-2x4 x1")
        path.write_bytes(pdf)
        words = " ".join(_poppler("pdftotext", "-layout", str(path), "-").split())
        assert f"1{code}" in words
        together = f"{said} {words}".replace(f"1{code}", "1?").replace(f"Batch {number}", "Batch ?")
        return together.replace(f"batch {number}", "batch ?")

    first, second = await printed(1, "A"), await printed(2, "B")
    assert first == second
    assert "Flammable" in first
    assert "Blind trial 1: what went in stays hidden until it ends." in first
    for told in ("% vol", "neutral spirit"):
        assert told not in first
    cards = [(await ana.says(f"batch {number}")).text for number in (1, 2)]
    assert cards[0].replace("Batch 1", "").replace("1A", "") == cards[1].replace("Batch 2", "").replace(
        "1B", ""
    )
    await ana.says("trial close 1")
    first, second = await printed(1, "A"), await printed(2, "B")
    assert first != second
    assert "neutral spirit" in first
    assert "62.1 % vol" in f"{first} {second}"
    assert ("Flammable" in first) != ("Flammable" in second)


@pytest.mark.long
async def test_the_paper_is_set_once_for_the_bar(telephone: Telephone) -> None:
    ana = await _with_batch(telephone)
    await ana.says("label 1 roll-62 x1", expects=3)
    assert "roll 62 mm wide" in (await ana.taps("Always this paper", ana_last(telephone, ana))).text
    text, _picture, pdf = await _label(ana, "label 1 x1")
    assert "roll 62 mm wide" in text
    assert round(read_pages(pdf)[0].width_mm) == 62


def ana_last(telephone: Telephone, ana: Person) -> int:
    """The last message with this button: the files come after it."""
    return next(
        one.message_id
        for one in reversed(telephone.server.messages(ana))
        if "Always this paper" in one.labels
    )


async def test_impossible_numbers_are_refused(telephone: Telephone) -> None:
    ana = await _with_batch(telephone)
    assert "from 1 to 200" in (await ana.says("label 1 a4-2x7 x9999")).text
    assert "from 1 to 14" in (await ana.says("label 1 a4-2x7 x2 from 15")).text
    assert "There is no batch 7" in (await ana.says("label 7")).text
