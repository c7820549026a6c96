"""Tests of what is done to a batch after it was made: its strength, cost, dates, undo, and the file."""

from __future__ import annotations

import json
from collections.abc import Callable
from typing import Any

import pytest

from bot.trade.liquids.strength import Portion, mix
from tests.chat.features.liquids.mixes import MIST, bar_with, said
from tests.house import House, Person
from tests.work.transfer.files import Sends, exported


def _bar(house: House) -> Person:
    ana = bar_with(house, MIST)
    ana.says("price neutral spirit 700 ml 14.00")
    ana.says("batch grapefruit mist to 400 ml")
    house.clock.turn(days=2)
    return ana


def _kept(person: Person) -> dict[str, Any]:
    batch: dict[str, Any] = json.loads(exported(person)["peel-ledger.json"])["batches"][0]
    return batch


def test_an_addition_mixes_by_mass_and_an_undo_restores_every_part(house: House) -> None:
    ana = _bar(house)
    before = _kept(ana)
    # A mix of oil and glycol adds as ideal volumes: only the spirit counts.
    ethanol_ml = float(before["frozen"]["strength_percent"]) / 100 * 402
    answer = said(ana, "batch 1 add 40 ml spirit")
    after = _kept(ana)
    assert after["frozen"]["strength_percent"] == pytest.approx(100 * (ethanol_ml + 38.4) / 442, abs=0.15)
    assert float(after["total_ml"]) == pytest.approx(442, abs=0.6)
    assert "neutral spirit added, now 442 ml" in answer
    ana.says("undo")
    undone = _kept(ana)
    assert {**undone, "events": ()} == {**before, "events": ()}
    ana.says("put back")
    again = _kept(ana)
    assert {**again, "events": ()} == {**after, "events": ()}


def test_after_filtering_an_addition_counts_against_what_is_left(house: House) -> None:
    ana = _bar(house)
    ana.says("new formula Sour: lime juice 20 ml, water 20 ml, rest 1 h, infusion")
    ana.says("filtered 1, lost 201 ml")
    ana.says("batch 1 add 100 ml water")
    strength = _kept(ana)["frozen"]["strength_percent"]
    assert strength == pytest.approx(mix([Portion(201, 62.1), Portion(100, 0.0)]).strength_percent, abs=0.6)


def test_a_file_brings_additions_and_what_was_seen_before_them(
    house: House, another_house: Callable[[], House]
) -> None:
    ana = _bar(house)
    ana.says("check 1 split at 5 C")
    ana.says("filtered 1, lost 12 ml")
    ana.says("batch 1 add 40 ml spirit")
    ana.says("check 1 clear")
    content = exported(ana)["peel-ledger.json"]
    there_house = another_house()
    kim = there_house.open_bar("Kim")
    Sends(there_house, kim).and_takes_in("peel-ledger.json", content)
    assert [_seen(one) for one in _kept(kim)["events"]] == [_seen(one) for one in _kept(ana)["events"]]
    chance = "By the models and 2 looks at this oil"
    there = [line for line in said(kim, "clear grapefruit mist").split("\n") if chance in line]
    here = [line for line in said(ana, "clear grapefruit mist").split("\n") if chance in line]
    assert there == here
    assert here


def _seen(event: dict[str, Any]) -> tuple[Any, ...]:
    before = event["mix_before"]
    amounts = None if before is None else [(one["name"], one["amount"], one.get("left")) for one in before]
    return event["what"], event["clarity"], event["note"], event["temperature_c"], amounts


def test_an_addition_of_juice_brings_the_discard_date_forward(house: House) -> None:
    ana = _bar(house)
    first = _kept(ana)["discard_on"]
    ana.says("new formula Sour: lime juice 20 ml, water 20 ml, rest 1 h, infusion")
    answer = said(ana, "batch 1 add 1 l lime juice")
    assert "Discard" in answer
    assert _kept(ana)["discard_on"] < first
    ana.taps("Undo")
    assert _kept(ana)["discard_on"] == first


def test_a_later_look_or_straining_keeps_an_addition_from_being_undone(house: House) -> None:
    ana = _bar(house)
    (added,) = ana.says("batch 1 add 10 ml spirit")
    undo = next(button for row in added.buttons for button in row if button.label == "Undo")
    ana.says("check 1 clear")
    assert not ana.taps_line(undo.line)[0].first_line.startswith("Undone")


def test_a_blind_bottle_tells_neither_its_strength_nor_its_spirit(house: House) -> None:
    ana = bar_with(house, MIST)
    for line in ("trial grapefruit mist: grapefruit oil 14 ml", "50 ml", "blind"):
        ana.says(line)
    ana.taps("Log the batches")
    house.clock.turn(days=2)
    assert "Weigh" not in "".join(said(ana, f"why 1 {number}") for number in range(1, 7))
    assert "% vol" not in said(ana, "batch 1 add 2 ml spirit")
