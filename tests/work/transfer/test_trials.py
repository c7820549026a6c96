"""Tests that an export carries all kinds of trials, and that no file tells a key."""

from __future__ import annotations

import base64
import json
import re
from typing import Any

import pytest

from tests.examples import in_long_part
from tests.house import House, Person, first_lines, text
from tests.work.transfer.files import Sends, exported

_MIST = (
    "new formula Orange mist\norange oil 12 ml\npropylene glycol 22 ml\nneutral spirit 96 % 62 ml\n"
    "kind aroma mist\nreplaces orange\nsprays 2-3"
)


def _begins(person: Person, oil: int, blind: bool) -> None:
    person.says(f"trial orange mist: orange oil {oil} ml")
    person.taps("50 ml")
    person.taps("Blind" if blind else "Open")


def _pours_and_picks(pourer: Person, taster: Person, number: int) -> str:
    poured = re.findall(r"^ +(\d{3})  +(.+)$", text(pourer.says(f"trial pour {number}")), re.MULTILINE)
    contents = [name for _code, name in poured]
    odd = next(code for code, name in poured if contents.count(name) == 1)
    return text(taster.says(f"taste #{number} {odd}"))


@pytest.fixture
def ana(house: House) -> Person:
    """The owner of a bar with three trials: one promoted, and two running: a blind one and a triangle."""
    ana = house.open_bar(said=[_MIST])
    ben, cleo = house.joins("Ben"), house.joins("Cleo")
    _begins(ana, 14, blind=False)
    for taster, score in ((ana, 3), (ben, 4), (cleo, 5)):
        taster.says(f"taste #1 A {score} 3 3 3")
        taster.says(f"taste #1 B {score} 4 4 2")
    ana.says("promote #1 B")
    _begins(ana, 16, blind=True)
    ana.says("trial made 2")
    for taster, score in ((ana, 3), (ben, 4), (cleo, 5)):
        taster.says(f"taste #2 A {score} 3 3 3")
    ana.says("trial orange mist against fresh")
    for _number in range(2):
        assert "Noted" in _pours_and_picks(ben, cleo, 3)
    return ana


def _document(person: Person) -> dict[str, Any]:
    found: dict[str, Any] = json.loads(exported(person)["peel-ledger.json"])
    return found


def _opened(row: dict[str, Any]) -> dict[str, Any]:
    return {**row, **json.loads(base64.b64decode(row.get("sealed", b"e30="))), "sealed": None}


def _key(person: Person, number: int) -> str:
    """Return what stands beside each letter, for the person who fills the bottles."""
    said = person.says(f"trial key {number}")
    if "your scores don't count" in text(said):
        said = person.taps("Show me")
    return text(said).partition("Logged")[0]


def _without_who(row: dict[str, Any]) -> dict[str, Any]:
    """Return a trial without its people: they are not in the other bar."""
    scores = [{**one, "by": ""} for one in row["scores"]]
    return {**row, "by": "", "scores": scores}


def test_trials_read_the_same_in_another_bar_and_go_on_there(house: House, ana: Person) -> None:
    said = {number: text(ana.says(f"trials {number}")) for number in (1, 2, 3)}
    found = _document(ana)
    eve = house.open_bar("Eve", "The Grey Gull")
    told = Sends(house, eve).and_takes_in("bar.json", json.dumps(found).encode())
    assert re.search(r"trials +3 +0", text([told]))
    for number, before in said.items():
        shown = text(eve.says(f"trials {number}"))
        if number == 2:  # Ana has tasted, and sees the scores; Eve has not
            assert "3 have tasted. You see the scores once you have tasted." in shown
            assert shown.splitlines()[0] == before.splitlines()[0]
        else:
            assert shown == before
    trials = [_without_who(_opened(row)) for row in found["trials"]]
    assert [_without_who(_opened(row)) for row in _document(eve)["trials"]] == trials
    assert "Blind trial 2" in text(eve.says("batch 1"))
    assert "Tasters: A 4, B 1." in text(eve.says("taste #2 A 5 5 5 5")) + text(
        eve.says("taste #2 B 1 1 1 1")
    ) + text(eve.says("trials 2"))
    assert _key(eve, 2) == _key(ana, 2)
    fay = house.joins("Fay", by="Eve")
    for _number in range(3):
        last = _pours_and_picks(eve, fay, 3)
    assert "They can tell: 5 of 5" in last
    assert "2 people tasted" in last
    assert "over" in first_lines(eve.says("trial close 2"))[0]


def test_scores_of_who_looked_are_left_out_of_the_file_as_of_the_results(house: House, ana: Person) -> None:
    _key(ana, 2)
    shown = text(ana.says("trial close 2"))
    assert "Looked up the letters, so not counted: Ana" in shown
    content = json.dumps(_document(ana)).encode()
    eve = house.open_bar("Eve", "The Grey Gull")
    Sends(house, eve).and_takes_in("bar.json", content)
    there = text(eve.says("trials 2"))
    assert "Tasters: A 2, B 0." in there
    assert there == "\n".join(line for line in shown.splitlines() if "not counted" not in line)


def test_undoing_the_import_takes_the_trials_out_and_the_file_can_come_again(
    house: House, ana: Person
) -> None:
    content = json.dumps(_document(ana)).encode()
    eve = house.open_bar("Eve", "The Grey Gull")
    sends = Sends(house, eve)
    sends.and_takes_in("bar.json", content)
    undone = text(eve.taps("Undo"))
    assert "stay" not in undone
    assert first_lines(eve.says("trials")) == ["No trial is running."]
    assert "There is no trial 2" in text(eve.says("trials 2"))
    again = sends("bar.json", content)
    assert "3 trials get new numbers, because theirs are taken: 1 becomes 4" in text([again])
    eve.taps_line(again.buttons[0][0].line)
    assert "Orange mist 5" in text(eve.says("batches"))  # the bottles carry the trial's new number
    assert "Blind trial 5" in text(eve.says("batch 3"))
    assert "here already" in sends("bar.json", content).first_line


def test_a_taster_who_opens_the_file_sees_no_key(house: House, ana: Person) -> None:
    del house
    (said,) = ana.says("export")
    assert "Trial 2 is blind and running" in text([said])
    assert "Trial 3 is blind and running" in text([said])
    files = {file.name: file.content.decode() for file in said.files}
    found = json.loads(files["peel-ledger.json"])
    hidden = [row for row in found["trials"] if row["number"] in {2, 3}]
    bottles = [row for row in found["batches"] if row["trial"] == hidden[0]["ref"]]
    assert [set(row) for row in hidden] == [
        {"ref", "number", "formula", "kind", "blind", "state", "at", "sealed"}
    ] * 2
    assert [set(row) for row in bottles] == [{"ref", "number", "trial", "formula", "sealed"}] * 2
    assert "Orange mist 2" not in files["batches.csv"]
    ana.says("trial close 2")
    assert "Orange mist" in exported(ana)["batches.csv"].decode()
    assert "sealed" not in _document(ana)["trials"][1]


@pytest.mark.parametrize("content", ["", "no base64", "W10=", "e30=", 7, None])
def test_a_seal_that_cannot_be_opened_is_named(house: House, ana: Person, content: object) -> None:
    found = _document(ana)
    found["trials"][1]["sealed"] = content
    eve = house.open_bar("Eve", "The Grey Gull")
    said = Sends(house, eve)("bar.json", json.dumps(found).encode())
    assert "nothing is imported" in said.first_line


def test_tasters_who_are_members_taste_on_as_themselves(house: House, ana: Person) -> None:
    content = json.dumps(_document(ana)).encode()
    eve = house.open_bar("Eve", "The Grey Gull")
    house.persons.pop("Ben")
    ben = house.person("Ben")
    ben.sender = type(ben.sender)(outside_id="another ben", name="Ben", language="en")
    code = re.search(r"join \S+", text(eve.says("team invite")))
    assert code is not None
    ben.says(code[0])
    Sends(house, eve).and_takes_in("bar.json", content)
    assert "✓" in str(ben.says("taste #2"))
    ben.says("cancel")
    ben.says("taste #2 A 1 1 1 1")
    assert "3 have tasted" in text(eve.says("trials 2"))


_ODD: tuple[Any, ...] = (None, "", [], {}, [{}], -1, 10**30, True, "x" * 300, "\x00", "1e9")


def _places(found: Any, path: tuple[Any, ...] = ()) -> list[tuple[Any, ...]]:
    """Return every place in a trial, at most two rows of each list."""
    inside = (
        found.items() if isinstance(found, dict) else enumerate(found[:2]) if isinstance(found, list) else ()
    )
    deeper = [[(*path, name), *_places(value, (*path, name))] for name, value in inside]
    return [one for places in deeper for one in places]


def test_whatever_stands_in_a_trial_it_is_taken_in_or_refused_in_words(house: House, ana: Person) -> None:
    found = _document(ana)
    trials = [
        {name: value for name, value in _opened(row).items() if name != "sealed"} for row in found["trials"]
    ]
    eve = house.open_bar("Eve", "The Grey Gull")
    sends = Sends(house, eve)
    for at, trial in enumerate(trials):
        for number, path in list(enumerate(_places(trial)))[:: 1 if in_long_part() else 24]:
            odd = json.loads(json.dumps(trials))
            place = odd[at]
            for name in path[:-1]:
                place = place[name]
            place[path[-1]] = _ODD[(number + at) % len(_ODD)]
            said = sends("odd.json", json.dumps({**found, "trials": odd}).encode())
            assert said.first_line.startswith("odd.json"), (at, path)
