"""Tests of what a label says of its batch."""

from __future__ import annotations

import pytest

from bot.documents.labels.labels import MOST_COPIES
from bot.work.errors import BadValueError
from bot.work.labels import labels
from bot.work.labels.labels import LabelFacts
from tests.documents.labels.label_texts import PLAIN
from tests.house import House
from tests.work.acting import acting

MIST = "new formula Mist\norange oil 2 ml\nneutral spirit 96 % 398 ml\nkind tincture\nrest 24 h"


def _facts(house: House, number: int = 1) -> LabelFacts:
    with acting(house) as context:
        return labels.facts_of(context, number)


def test_a_label_says_clear_only_after_the_last_look_was_clear(house: House) -> None:
    ana = house.open_bar(said=[MIST])
    ana.says("batch mist x1")
    assert _facts(house).checked_clear_on is None
    house.clock.turn(hours=24)
    ana.says("check 1 clear")
    first = _facts(house)
    assert first.checked_clear_on is not None
    assert first.made_on < first.checked_clear_on
    house.clock.turn(hours=24)
    ana.says("check 1 hazy")
    assert _facts(house).checked_clear_on is None
    house.clock.turn(hours=24)
    ana.says("check 1 clear")
    last = _facts(house)
    assert last.checked_clear_on is not None
    assert last.checked_clear_on > first.checked_clear_on
    ana.taps("Undo")
    assert _facts(house).checked_clear_on is None


def test_a_label_follows_what_is_added_to_its_batch(house: House) -> None:
    ana = house.open_bar(said=[MIST, "new formula Brine\nsalt 20 g\nwater 80 ml\nkind saline"])
    ana.says("batch mist x1")
    house.clock.turn(hours=25)
    ana.says("check 1 clear")
    before = _facts(house)
    ana.says("batch 1 add 4 l water")
    after = _facts(house)
    # The oil parts as a layer, and limonene flashes at 45 to 48 °C (NFPA 497, DIPPR).
    assert (before.flammable, after.flammable) == (True, True)
    assert (before.ingredients[0], after.ingredients[0]) == ("neutral spirit", "water")
    assert after.strength is not None
    assert after.strength.high < 10
    assert before.checked_clear_on is not None
    assert after.checked_clear_on is None


def test_a_label_without_oil_follows_the_strength_alone(house: House) -> None:
    ana = house.open_bar(said=["new formula Drops\nneutral spirit 96 % 60 ml\nwater 20 ml\nkind tincture"])
    ana.says("batch drops x1")
    before = _facts(house)
    ana.says("batch 1 add 700 ml water")
    assert (before.flammable, _facts(house).flammable) == (True, False)


def test_the_bottles_size_and_number_are_those_that_were_filled(house: House) -> None:
    ana = house.open_bar(said=[MIST])
    ana.says("batch mist to 8 x 50 ml")
    facts = _facts(house)
    assert facts.bottle_ml == 50
    assert facts.bottles == 8
    ana.says("batch mist to 200 ml")
    facts = _facts(house, 2)
    assert (facts.bottle_ml, facts.bottles) == (None, 1)


def test_strong_spirit_is_flammable_and_ingredients_go_by_amount(house: House) -> None:
    ana = house.open_bar(said=[MIST])
    ana.says("batch mist x1")
    facts = _facts(house)
    assert facts.flammable
    assert facts.ingredients == ("neutral spirit", "orange oil")
    assert facts.more_ingredients == 0
    assert facts.strength is not None
    assert 95 < facts.strength.low <= facts.strength.high < 96
    assert facts.blind is None


@pytest.mark.parametrize(("copies", "start"), [(0, 1), (MOST_COPIES + 1, 1), (1, 0), (1, 15)])
def test_a_sheet_that_cannot_be_printed_is_refused(house: House, copies: int, start: int) -> None:
    house.open_bar()
    stock = labels.ALL_STOCKS["a4-2x7 99x38"]
    with pytest.raises(BadValueError):
        labels.print_labels(PLAIN, stock, copies, start)
    assert labels.print_labels(PLAIN, stock, 1, 14).sheet.pdf
