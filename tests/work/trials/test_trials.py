"""Tests of trials: secret codes, scores that count once, and a promotion that can be undone."""

from __future__ import annotations

import json
import re

import pytest

from bot.work.people import people
from bot.work.trials import trials
from bot.work.trials.trials import TrialView
from tests.house import CHANNEL, House, Person, first_lines, text
from tests.work.transfer.files import Sends, exported

BRINE = "new formula Brine\nsalt 20 g\nwater 80 ml\nkind saline\nrest 2 h"


def _begin(ana: Person, blind: bool = False, line: str = "salt 25 g") -> None:
    ana.says(f"trial brine: {line}")
    ana.taps("50 ml")
    ana.taps("Blind" if blind else "Open")


def _trial(house: House, number: int = 1) -> TrialView:
    with house.store.reading() as unit:
        context = people.find(unit, CHANNEL, "ana", "private ana", True).context(
            unit, house.clock.now(), "test"
        )
        return trials.get(context, number)


def test_an_open_trial_says_what_is_which(house: House) -> None:
    ana = house.open_bar(said=[BRINE])
    _begin(ana)
    codes = {one.code: one.changed for one in _trial(house).variants}
    assert codes == {"A": "", "B": "salt 25 g"}
    assert "13.7 g" in text(ana.says("trials 1"))  # 25 g to 80 ml, in a bottle of 50 ml


def test_a_blind_one_gives_nothing_away_until_it_ends(house: House) -> None:
    ana = house.open_bar(said=[BRINE])
    _begin(ana, blind=True)
    shown = text(ana.says("trials 1")) + text(ana.says("taste A 3 3 3 3")) + text(ana.says("trials 1"))
    assert " g" not in shown
    assert "book" not in shown
    ended = text(ana.taps("End it"))
    assert "13.7 g" in ended


def test_blind_codes_do_not_always_put_the_formula_first(house: House) -> None:
    ana = house.open_bar(said=[BRINE])
    codes = set()
    for number in range(1, 13):
        _begin(ana, blind=True)
        codes.add(next(one.code for one in _trial(house, number).variants if not one.changed))
        ana.says(f"trial close {number}")
    assert codes == {"A", "B"}


def test_who_looks_the_letters_up_is_told_to_the_others(house: House) -> None:
    ana = house.open_bar()
    ben = house.joins("Ben")
    ana.says(BRINE)
    _begin(ana, blind=True)
    assert "Looked up" not in text(ana.says("trials 1"))
    ben.says("trial key 1")
    assert "Looked up the letters: Ben" in text(ana.says("trials 1"))


def test_letters_stay_once_bottles_are_filled(house: House) -> None:
    ana = house.open_bar(said=[BRINE])
    _begin(ana)
    ana.says("trial made 1")
    before = {one.number: one.code for one in _trial(house).variants}
    ana.says("trial brine: salt 30 g")
    after = {one.number: one.code for one in _trial(house).variants}
    assert after == {**before, 2: "C"}
    assert first_lines(ana.says("trial made 1")) == ["1 small batch is logged."]
    assert first_lines(ana.says("trial made 1")) == ["Every variant has its batch already."]


def test_a_late_letter_of_a_blind_trial_would_tell_so_there_is_none(house: House) -> None:
    ana = house.open_bar(said=[BRINE])
    _begin(ana, blind=True)
    ana.says("trial brine: salt 30 g")
    assert len(_trial(house).variants) == 3  # before any bottle is filled, all letters are dealt anew
    ana.says("trial made 1")
    assert "is blind and its letters are given out" in text(ana.says("trial brine: salt 35 g"))
    assert len(_trial(house).variants) == 3


def test_promoting_tells_nothing_while_a_blind_trial_runs(house: House) -> None:
    ana = house.open_bar(said=[BRINE])
    _begin(ana, blind=True)
    for line in ("taste A 5 5 5 5", "taste B 1 1 1 1"):
        ana.says(line)
    answers = {text(ana.says(f"promote {code}")) for code in "AB"}
    assert len(answers) == 1
    assert "nothing is promoted by its letter" in answers.pop()
    assert "version 1" in text(ana.says("formula brine"))


def test_amounts_are_shown_at_the_size_that_is_made(house: House) -> None:
    ana = house.open_bar(said=[BRINE])
    _begin(ana)
    said = text(ana.says("trials 1"))
    assert re.search(r"water +[34]\d(\.\d)? ml", said), said
    assert "80 ml" not in said


def test_a_variant_that_nobody_told_apart_is_promoted_with_a_remark(house: House) -> None:
    ana = house.open_bar(said=[BRINE])
    _begin(ana)
    ana.says("taste A 3 3 3 3")
    ana.says("taste B 4 3 3 3")
    assert "No tasting told it from the formula as it was." in text(ana.says("promote B"))


def _pours_and_tastes(ben: Person, ana: Person, right: bool = True) -> str:
    poured = re.findall(r"^ +(\d{3})  +(.+)$", text(ben.says("trial pour 1")), re.MULTILINE)
    contents = [name for _code, name in poured]
    odd = next(code for code, name in poured if contents.count(name) == 1)
    return text(ana.says(f"taste #1 {odd if right else next(code for code, _name in poured if code != odd)}"))


def test_a_triangle_test_ends_itself_and_opens_again_when_its_last_tap_is_undone(house: House) -> None:
    ana = house.open_bar(said=[f"{BRINE}\nreplaces lemon"])
    ben = house.joins("Ben")
    ana.says("trial brine against fresh")
    for _number in range(3):
        assert "Noted" in _pours_and_tastes(ben, ana, right=False)
    assert "They can't tell, as far as this shows: 0 of 4" in _pours_and_tastes(ben, ana, right=False)
    ana.says("undo")
    assert "3 tastings so far" in text(ana.says("trials 1"))
    assert "Noted" in _pours_and_tastes(ben, ana)
    assert "Stopped before the answer was in: 1 of 4" in text(ana.says("trial close 1"))


def test_small_batches_are_labelled_by_letter_and_undone_together(house: House) -> None:
    ana = house.open_bar(said=[BRINE])
    _begin(ana)
    ana.says("trial made 1")
    said = text(ana.says("batches"))
    assert re.search(r"1 Brine 1A", said)
    assert re.search(r"2 Brine 1B", said)
    ana.says("undo")
    assert first_lines(ana.says("batches")) == ["No batch is resting or in use."]
    assert all(one.batch_id is None for one in _trial(house).variants)


def test_a_bottle_from_another_bar_is_none_of_the_trial_with_its_number(house: House) -> None:
    ana = house.open_bar(said=[BRINE])
    _begin(ana, blind=True)
    ana.says("trial made 1")
    assert "Blind trial 1" in text(ana.says("batch 1"))
    found = json.loads(exported(ana)["peel-ledger.json"])
    bottle = {**found["batches"][0], "ref": "0123456789ab:batch:1", "number": 9}
    content = {"format": found["format"], "version": found["version"], "batches": [bottle]}
    Sends(house, ana).and_takes_in("another.json", json.dumps(content).encode())
    said = text(ana.says("batch 9"))
    assert "Blind trial" not in said
    assert "salt" in said


def test_only_the_last_score_of_each_member_counts(house: House) -> None:
    ana = house.open_bar(said=[BRINE])
    _begin(ana)
    ana.says("taste B 1 1 1 1")
    ana.says("taste B 5 4 3 2")
    table = _trial(house).table
    assert table is not None
    assert [cells["B"].mean for cells in table.cells.values() if cells["B"]] == [5, 4, 3, 2]
    ana.says("undo")
    table = _trial(house).table
    assert table is not None
    assert {cells["B"].mean for cells in table.cells.values() if cells["B"]} == {1}


@pytest.mark.parametrize(
    "line", ["taste A 0 3 3 3", "taste A 3 3 3 6", "taste A 3 3 3.5 3", "taste Z 3 3 3 3"]
)
def test_a_score_beyond_five_or_of_no_bottle_is_refused(house: House, line: str) -> None:
    ana = house.open_bar(said=[BRINE])
    _begin(ana)
    ana.says(line)
    assert _trial(house).table is None


def test_promoting_makes_the_next_version_and_undo_goes_back(house: House) -> None:
    ana = house.open_bar(said=[BRINE])
    _begin(ana)
    ana.says("taste A 3 3 3 3")
    assert first_lines(ana.says("promote B")) == ["Brine is now version 2: salt 25 g."]
    assert "25 g" in text(ana.says("formula brine"))
    assert first_lines(ana.taps("Undo")) == ["Undone: new version of Brine from trial 1"]
    assert "20 g" in text(ana.says("formula brine"))
    # The change of the formula is undone with it and not once more.
    ana.says("undo")
    assert "20 g" in text(ana.says("formula brine"))


def test_the_formula_itself_cannot_be_promoted_nor_by_a_member(house: House) -> None:
    ana = house.open_bar()
    ben = house.joins("Ben")
    ana.says(BRINE)
    _begin(ana)
    assert "nothing to promote" in first_lines(ana.says("promote A"))[0]
    assert "Only a manager" in first_lines(ben.says("promote B"))[0]
    assert "version 1" in text(ana.says("formula brine"))


def test_with_two_trials_going_on_it_is_asked_which(house: House) -> None:
    ana = house.open_bar(said=[BRINE])
    ana.says("new formula Sugar water\nsugar 100 g\nwater 100 ml\nkind syrup\nrest 0 h")
    _begin(ana)
    ana.says("trial sugar water: sugar 120 g")
    ana.taps("50 ml")
    ana.taps("Open")
    asked = ana.says("taste A 3 3 3 3")
    assert first_lines(asked) == ["Which trial?"]
    ana.taps("Trial 2, Sugar water: A, B")
    assert _trial(house, 1).table is None
    assert _trial(house, 2).table is not None


def test_two_variants_alike_are_one_too_many(house: House) -> None:
    ana = house.open_bar(said=[BRINE])
    _begin(ana)
    ana.says("trial brine: salt 25 g")
    assert len(_trial(house).variants) == 2


def test_one_bar_does_not_taste_anothers_trial(house: House) -> None:
    ana = house.open_bar(said=[BRINE])
    _begin(ana)
    eve = house.open_bar("Eve", "The Grey Gull")
    for line in (
        "trials 1",
        "trial key 1",
        "trial made 1",
        "taste #1 A 3 3 3 3",
        "promote #1 B",
        "trial close 1",
    ):
        assert "There is no trial 1 in this bar." in first_lines(eve.says(line))[0], line
