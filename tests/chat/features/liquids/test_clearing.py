"""Tests of clearing by conversation: the estimate, its mends, the bar's own checks, aroma, swaps."""

from __future__ import annotations

import re

import pytest

from bot.work.liquids import clearing
from storage.memory import Memory
from tests.chat.features.liquids.mixes import (
    CLEAR_MIX,
    MIST,
    SYRUP,
    TRADE_MIX,
    bar_with,
    flat,
    labels,
    said,
    tapped,
    whole,
)
from tests.house import House, Person
from tests.work_done import at_most_calls

pytestmark = pytest.mark.parametrize("database", ["sqlite"], indirect=True)


def _batch(house: House, person: Person, name: str, *looks: tuple[int, str]) -> int:
    """Make a batch and check it after this number of days; return its number."""
    first = person.says(f"batch {name} x4")[0].first_line
    found = re.match(r"Batch (\d+)", first)
    assert found is not None
    for days, seen in looks:
        house.clock.turn(days=days)
        person.says(f"check {found[1]} {seen}")
    return int(found[1])


def test_the_answer_has_state_limits_mends_and_says_that_it_is_an_estimate(house: House) -> None:
    ana = bar_with(house, MIST)
    answer = said(ana, "clear grapefruit mist")
    assert answer.startswith("Grapefruit mist: borderline, it may cloud")
    assert "The hopeful model keeps it clear, the cautious one does not." in answer
    assert "Weakest spirit that clears it: 76 % by one model" in answer
    assert "Most oil that stays clear: 10 % to 23 % (yours 12.5 %)" in answer
    assert "less oil | 9.5 ml (−2.5 ml)" in answer
    assert "more spirit | 75 ml (+13 ml)" in answer
    assert "An estimate: real oils hold polar parts that help and waxes that drop out." in answer


def test_a_mend_is_put_into_the_formula_by_one_tap(house: House) -> None:
    ana = bar_with(house, MIST)
    ana.says("clear grapefruit mist")
    changed = tapped(ana, "Change to 75 ml neutral spirit")
    assert changed.startswith("Grapefruit mist is now version 2.")
    assert "Clearing: should stay clear, by estimate" in changed
    assert said(ana, "clear grapefruit mist").startswith("Grapefruit mist: should stay clear")


def test_amounts_to_mend_follow_the_size_asked_for(house: House) -> None:
    ana = bar_with(house, MIST)
    answer = said(ana, "clear grapefruit mist x10")
    assert "more spirit | 750 ml (+130 ml)" in answer


def test_the_trade_mix_is_not_said_to_split_but_is_with_weak_spirit(house: House) -> None:
    ana = bar_with(house, TRADE_MIX)
    assert "will split" not in said(ana, "clear house mist").splitlines()[0]
    for weak in ("75 %", "70 %"):
        assert said(ana, f"clear house mist with {weak} spirit").startswith("House mist: will split"), weak


def test_scale_and_card_carry_one_line_on_clearing(house: House) -> None:
    ana = bar_with(house, MIST, CLEAR_MIX, SYRUP)
    line = "Clearing: borderline, it may cloud, by estimate"
    assert line in said(ana, "scale grapefruit mist to 400 ml")
    assert line in said(ana, "formula grapefruit mist")
    assert "Clearing: should stay clear, by estimate" in said(ana, "scale clear mist to 400 ml")
    assert "Clearing" not in said(ana, "scale house syrup to 400 ml")


def test_three_clear_looks_make_it_clear_here(house: House) -> None:
    ana = bar_with(house, MIST)
    first = _batch(house, ana, "grapefruit mist", (2, "clear"))
    assert said(ana, "clear grapefruit mist").startswith("Grapefruit mist: borderline")
    assert f"Seen here: clear after 2 days (batch {first})." in said(ana, "clear grapefruit mist")
    _batch(house, ana, "grapefruit mist", (1, "clear"), (5, "clear"))
    answer = said(ana, "clear grapefruit mist")
    assert answer.startswith("Grapefruit mist: clear here, seen 3 times")
    # The result of the models is shown beside it.
    assert "The hopeful model keeps it clear" in answer
    assert "Clearing: clear here, seen 3 times" in said(ana, "scale grapefruit mist x1")


def test_one_batch_left_hazy_weighs_more_than_the_model(house: House) -> None:
    ana = bar_with(house, CLEAR_MIX)
    number = _batch(house, ana, "clear mist", (2, "hazy"))
    assert said(ana, "clear clear mist").startswith(
        f"Clear mist: hazy here when last looked at (batch {number})"
    )
    assert f"The models find it clear; the bottle counts more. See: why {number}" in said(
        ana, "clear clear mist"
    )
    ana.says(f"check {number} clear")
    assert said(ana, "clear clear mist").startswith("Clear mist: should stay clear")


def test_only_rested_looks_of_the_same_version_and_spirit_count(house: House) -> None:
    ana = bar_with(house, MIST)
    number = _batch(house, ana, "grapefruit mist", (2, "split"))
    assert "split here" in said(ana, "clear grapefruit mist")
    ana.says("strength neutral spirit 90")
    assert "split here" not in said(ana, "clear grapefruit mist")
    ana.says("strength neutral spirit 96")
    ana.says("undo")
    ana.says("undo")
    assert "split here" in said(ana, "clear grapefruit mist")
    ana.says("change grapefruit mist: grapefruit oil 11 ml")
    assert "split here" not in said(ana, "clear grapefruit mist")
    assert f"batch {number}" in said(ana, "clear #1.1")


def test_a_look_taken_back_or_before_the_rest_is_over_does_not_count(house: House) -> None:
    ana = bar_with(house, MIST)
    _batch(house, ana, "grapefruit mist", (0, "hazy"))
    assert "Seen here" not in said(ana, "clear grapefruit mist")
    house.clock.turn(days=2)
    ana.says("check 1 split")
    assert "split here" in said(ana, "clear grapefruit mist")
    ana.says("undo")
    assert "Seen here" not in said(ana, "clear grapefruit mist")


def test_what_the_models_do_not_know_is_named_and_the_answer_withheld(house: House) -> None:
    ana = bar_with(
        house, "new formula Sweet mist\norange oil 2 ml\nhoney 20 ml\nneutral spirit 96 % 60 ml\nkind other"
    )
    answer = said(ana, "clear sweet mist")
    assert answer.startswith("Sweet mist: clearing not known")
    assert "The models do not know honey, 24.4 % of it, so I give no answer." in answer
    assert "An estimate" not in answer
    assert "Clearing: not known, the models lack honey" in said(ana, "scale sweet mist x1")


def test_a_trace_of_something_unknown_makes_the_answer_partial(house: House) -> None:
    ana = bar_with(
        house, "new formula Near mist\norange oil 4 ml\nhoney 1 ml\nneutral spirit 96 % 95 ml\nkind other"
    )
    answer = said(ana, "clear near mist")
    assert "should stay clear" in answer.splitlines()[0]
    assert "Left out: honey." in answer


def test_a_carrier_oil_is_spoken_of_too_and_a_syrup_is_not(house: House) -> None:
    ana = bar_with(
        house, "new formula Soft mist\nMCT oil 30 ml\nneutral spirit 96 % 60 ml\nkind other", SYRUP
    )
    assert "Soft mist" in said(ana, "clear soft mist").splitlines()[0]
    assert said(ana, "clear house syrup").startswith("House syrup holds no oil, so nothing in it can part.")


def test_aroma_over_the_film_has_stages_a_meaning_and_limits(house: House) -> None:
    ana = bar_with(house, MIST)
    ana.says("clear grapefruit mist")
    answer = tapped(ana, "Aroma")
    assert answer.startswith("Grapefruit mist: aroma over the film as sprayed")
    for row in ("all | 64-92 % | 2.1-3.6×", "half |", "a tenth |", "in a carrier oil | 26-31 % | 1×"):
        assert row in answer
    assert answer.count("smells about 2.1-3.6× as strong at first") == 1
    assert answer.count("Limits:") == 1
    assert said(ana, "clear grapefruit mist more") == answer


def test_swapping_the_spirit_keeps_the_ethanol_and_says_what_becomes_of_it(house: House) -> None:
    ana = bar_with(house, CLEAR_MIX)
    answer = said(ana, "scale clear mist to 8 x 50 ml with 40 % spirit instead")
    assert answer.startswith("Clear mist: 8 x 50 ml")
    assert "neutral spirit at 40 %" in answer
    assert "Same ethanol from 40 % vol instead of 96 % vol: 2.4 times as much of it." in answer
    assert "Makes 402.5 ml at 39.3 % vol" in answer
    assert "Clearing: will split, by estimate (with the usual spirit: should stay clear)" in answer


def test_a_swap_by_one_line_by_guide_and_by_name_agree(house: House) -> None:
    ana = bar_with(house, MIST, "new formula Rum thing\noverproof rum 75.5 % 10 ml\nkind tincture")
    one_line = said(ana, "swap grapefruit mist 75.5 %")
    ana.says("swap grapefruit mist")
    assert tapped(ana, "75.5 %") == one_line
    named = said(ana, "swap grapefruit mist with overproof rum")
    assert "overproof rum at 75.5 %" in named
    assert one_line.replace("neutral spirit at", "overproof rum at") == named


def test_a_batch_made_with_another_spirit_keeps_its_strength(house: House) -> None:
    ana = bar_with(house, MIST)
    ana.says("scale grapefruit mist to 400 ml with 75.5 % spirit instead")
    made = tapped(ana, "Log this batch")
    assert made.startswith("Batch 1: Grapefruit mist, ")
    card = said(ana, "batch 1")
    assert "neutral spirit 75.5 % | " in card
    assert "52.8 % vol" in card


def test_a_swap_refuses_only_what_is_no_spirit(house: House) -> None:
    ana = bar_with(house, MIST, SYRUP)
    assert said(ana, "swap house syrup 40 %").startswith("House syrup holds no spirit")
    assert said(ana, "swap grapefruit mist 0 %").startswith("A spirit of 0 % holds no ethanol")
    assert "will split" in said(ana, "swap grapefruit mist 5 %")


def test_the_whole_answer_takes_bounded_work_and_again_far_less(
    house: House, monkeypatch: pytest.MonkeyPatch
) -> None:
    ana = bar_with(house, MIST)
    ana.says("formula grapefruit mist")  # the first use loads the chemistry
    monkeypatch.setattr(clearing, "_states", Memory(100))
    with at_most_calls(500_000):
        ana.says("clear grapefruit mist")
    with at_most_calls(40_000):
        ana.says("clear grapefruit mist")


def test_plain_members_get_no_button_that_changes_the_formula(house: House) -> None:
    bar_with(house, MIST)
    caio = house.joins("Caio")
    replies = caio.says("clear grapefruit mist")
    assert not [label for label in labels(replies) if label.startswith("Change")]
    assert flat(replies).startswith("Grapefruit mist: borderline")


def test_a_hazy_batch_is_told_one_test_and_then_what_to_add_to_all_of_it(house: House) -> None:
    ana = bar_with(house, MIST)
    ana.says("batch grapefruit mist to 400 ml")
    house.clock.turn(days=2)
    at_once = said(ana, "check 1 hazy")
    answer = tapped(ana, "What would mend it?")
    (test,) = (line for line in at_once.split("\n") if line.startswith("Filter a glass"))
    assert test in answer
    assert "Clear: add 67 ml to the batch." in said(ana, "why 1 6")
    assert "67 ml neutral spirit added, now 469 ml" in tapped(ana, "Add 67 ml neutral spirit")


def test_a_variant_of_a_trial_is_another_mix_than_its_formula(house: House) -> None:
    ana = bar_with(house, MIST)
    for line in ("trial grapefruit mist: grapefruit oil 25 ml", "50 ml"):
        ana.says(line)
    ana.taps("Open")
    ana.taps("Log the batches")
    house.clock.turn(days=2)
    ana.says("check 1 clear")
    ana.says("check 2 split")
    answer = said(ana, "clear grapefruit mist")
    assert "here when last looked at" not in answer
    assert "By the models and 2 looks at this oil" in answer


def test_a_swap_that_splits_says_so_before_the_amounts(house: House) -> None:
    # The oil's share is mass balance (common practice, no source): as much oil in more than twice the mix.
    ana = bar_with(house, MIST)
    lines = said(ana, "swap grapefruit mist with 40 %").splitlines()
    assert lines[1].startswith("Clearing: will split, by estimate")
    assert "Each spray carries less oil: " in whole(ana, ana.says("swap grapefruit mist with 40 %"))
