"""Tests of strength by conversation: dilution, strengthening, mixing, proof, the strength of a formula."""

from __future__ import annotations

import re

import pytest
from hypothesis import HealthCheck, given
from hypothesis import strategies as st

from bot.trade.liquids.strength import dilute
from tests.chat.features.liquids.mixes import MIST, SYRUP, bar_with, said, tapped
from tests.examples import examples
from tests.house import House

pytestmark = pytest.mark.parametrize("database", ["sqlite"], indirect=True)


def test_watering_down_says_water_by_volume_by_weight_and_what_is_lost(house: House) -> None:
    ana = bar_with(house)
    answer = said(ana, "strength 500 ml 96 to 70")
    assert answer.startswith("500 ml of 96 % to 70 % vol: add 203.9 ml of water.")
    for row in ("Water by volume | 203.9 ml", "Water by weight | 203.5 g", "Makes | 685.7 ml", "18.2 ml"):
        assert row in answer
    assert "OIML R 22" in answer
    assert "Caution: Put out every flame" in answer


def test_the_wanted_strength_first_means_so_much_of_the_weaker_spirit(house: House) -> None:
    ana = bar_with(house)
    answer = said(ana, "strength 500 ml 70 from 96")
    assert answer.startswith("500 ml of 70 %: 364.6 ml of 96 % and 148.7 ml of water.")
    assert said(ana, "strength make 500 ml of 70 from 96") == answer


def test_a_warm_bar_pours_less_water_for_the_same_volume(house: House) -> None:
    ana = bar_with(house)
    warm = said(ana, "strength 500 ml 96 to 70 at 27 C")
    assert "add 202.7 ml of water" in warm
    assert "Poured at 27 °C" in warm
    assert said(ana, "strength 500 ml 96 to 70 at 80.6 F") == warm
    ana.says("bar temperature 27 C")
    assert said(ana, "strength 500 ml 96 to 70") == warm


@examples(6, HealthCheck.function_scoped_fixture)
@given(st.integers(50, 2000), st.integers(60, 96), st.integers(20, 59))
def test_what_is_said_is_what_the_rule_gives(house: House, volume: int, strong: int, weak: int) -> None:
    ana = house.person("Ana")
    if ana.says("bar")[0].first_line != "The Copper Gull":
        bar_with(house)
    answer = said(ana, f"strength {volume} ml {strong} to {weak}")
    shown = re.search(r"Water by weight \| ([\d,.]+) (g|kg)", answer)
    assert shown is not None, answer
    grams = float(shown[1].replace(",", "")) * (1000 if shown[2] == "kg" else 1)
    assert grams == pytest.approx(dilute(volume, strong, weak).water_g, rel=1e-3, abs=0.06)


def test_weak_spirit_swells_a_little_when_watered(house: House) -> None:
    ana = bar_with(house)
    assert "Swells by | 1.17 ml" in said(ana, "strength 500 ml 20 to 10")


def test_two_spirits_shrink_together(house: House) -> None:
    ana = bar_with(house)
    answer = said(ana, "strength 50 ml 96 + 50 ml water")
    assert answer.startswith("Together 97 ml at 49.5 % vol.")
    assert "Contraction | 3.04 ml" in answer


def test_a_stronger_spirit_is_asked_for_to_bring_one_up(house: House) -> None:
    ana = bar_with(house, MIST)
    asked = ana.says("strength 300 ml 40 to 60")
    assert asked[0].first_line == "40 % vol to 60 % vol needs a stronger spirit. Which one?"
    assert tapped(ana, "96 %").startswith("300 ml of 40 % to 60 % vol: add 158.5 ml of 96 %.")


def test_a_formula_says_what_adds_as_an_ideal_volume(house: House) -> None:
    ana = bar_with(house, MIST)
    answer = said(ana, "strength grapefruit mist")
    assert answer.startswith("Grapefruit mist: 62 % vol")
    assert "ideal volumes: grapefruit oil, propylene glycol." in answer
    assert "highly flammable" in answer


def test_what_is_weighed_in_takes_room(house: House) -> None:
    ana = bar_with(house, SYRUP)
    assert "Makes | 815 ml" in said(ana, "strength house syrup")
    assert "Makes 815 ml" in said(ana, "formula house syrup")


def test_a_batch_keeps_the_strength_it_was_made_with(house: House) -> None:
    ana = bar_with(house, MIST)
    ana.says("batch grapefruit mist to 400 ml")
    before = said(ana, "strength batch 1")
    ana.says("strength neutral spirit 80")
    assert said(ana, "strength batch 1") == before
    assert said(ana, "strength grapefruit mist").startswith("Grapefruit mist: 51.7 % vol")


def test_setting_a_spirits_strength_counts_at_once_and_can_be_taken_back(house: House) -> None:
    ana = bar_with(house, MIST)
    answer = said(ana, "strength neutral spirit 95.5")
    assert answer.startswith("neutral spirit: 95.5 % vol")
    assert "It counts at once in: Grapefruit mist." in answer
    assert tapped(ana, "Undo").startswith("Undone: strength of neutral spirit, ")
    assert said(ana, "strength neutral spirit").startswith("neutral spirit: 96 % vol")


def test_a_plain_member_sees_a_strength_but_does_not_set_it(house: House) -> None:
    bar_with(house, MIST)
    caio = house.joins("Caio")
    assert said(caio, "strength neutral spirit").startswith("neutral spirit: 96 % vol")
    assert said(caio, "strength neutral spirit 80").startswith("Only a manager can do that.")
    assert said(caio, "strength neutral spirit").startswith("neutral spirit: 96 % vol")


def test_a_spirit_of_unknown_strength_is_asked_about_where_it_is_needed(house: House) -> None:
    ana = bar_with(house, "new formula Mystery\northodox gin 50 ml\norange oil 1 ml\nkind tincture")
    for line in ("strength mystery", "clear mystery", "dose mystery with 5 ml in 90 ml", "swap mystery 70 %"):
        assert said(ana, line).startswith("How strong is orthodox gin?"), line
    assert tapped(ana, "40 %").startswith("orthodox gin: 40 % vol")
    assert said(ana, "strength mystery").startswith("Mystery: 39.2 % vol")


def test_proof_is_us_proof_only_where_the_bar_follows_us_rules(house: House) -> None:
    ana = bar_with(house)
    refused = ana.says("strength 500 ml 190 proof to 70")
    # 27 CFR 5.1: proof is twice the per cent by volume (from memory; the proof gallon of 19.1 was read).
    assert refused[0].first_line == "190 US proof is 95 % vol."
    assert tapped(ana, "Use 95 % vol").startswith("500 ml of 95 % to 70 % vol")
    ana.says("bar rules US")
    assert said(ana, "strength 500 ml 190 proof to 70").startswith("500 ml of 95 % to 70 % vol")
    assert said(ana, "strength 96").startswith("96 % vol (192 proof)")
    assert said(ana, "strength 80 proof").startswith("40 % vol (80 proof)")


@pytest.mark.parametrize("line", ["strength 80 proof", "what does 80 proof mean?", "what is 80 proof"])
def test_eighty_proof_is_forty_percent(house: House, line: str) -> None:
    # 27 CFR 5.1, as above.
    ana = bar_with(house)
    assert said(ana, line).startswith("80 US proof is 40 % vol.")
    assert tapped(ana, "Use 40 % vol").startswith("40 % vol")


def test_a_label_that_differs_by_less_than_its_tolerance_is_no_other_spirit(house: House) -> None:
    # Regulation (EU) No 1169/2011, Annex XII: 0.3 % vol (from memory).
    ana = bar_with(house, "new formula Gin thing\northodox gin 40.1 % 50 ml\nkind tincture")
    assert "Another spirit" not in said(ana, "new formula Gin other\northodox gin 40 % 60 ml\nkind tincture")
    assert said(ana, "strength orthodox gin").startswith("orthodox gin: 40.1 % vol")


_LITRE_OF_75 = "1,000 ml of 75 %: 781.2 ml of 96 % and 242.4 ml of water."


# By the tables of OIML R 22 (computed apart): 781.25 ml of 96 % hold the ethanol of a litre of 75 %.
@pytest.mark.parametrize(
    ("line", "answer"),
    [
        ("how much 96% for 1 litre of 75%", _LITRE_OF_75),
        ("water down 96% to 75% for 1 litre", _LITRE_OF_75),
        ("cuánto alcohol de 96% para 1 litro de 75%", _LITRE_OF_75),
        ("make 500 ml of 70% from 96%", "500 ml of 70 %: 364.6 ml of 96 % and 148.7 ml of water."),
        ("I want 1 l at 40% from 96%", "1,000 ml of 40 %: 416.7 ml of 96 % and 612.7 ml of water."),
        ("mix 200 ml of 96% and 100 ml of 40%", "Together 296.6 ml at 78.2 % vol."),
        ("mix 40% and 96% to get 70%, 300 ml", "300 ml of 70 % vol: 145.6 ml of 40 % and 158.1 ml of 96 %."),
        ("mix 300 ml of 70% from 96% and 40%", "300 ml of 70 % vol: 145.6 ml of 40 % and 158.1 ml of 96 %."),
        ("mix 40% and 50% to get 70%, 300 ml", "70 % vol is not between 40 % and 50 %."),
    ],
)
def test_what_is_wanted_and_what_there_is_keep_their_sides(house: House, line: str, answer: str) -> None:
    ana = bar_with(house)
    if line.startswith("cu"):
        ana.says("language español")
        numbers = [word for word in answer.split() if word[0].isdigit()]
        found = said(ana, line).replace("1.000", "1,000").replace("781,2", "781.2").replace("242,4", "242.4")
        assert all(number.rstrip(":") in found for number in numbers)
    else:
        assert said(ana, line).startswith(answer)


def test_a_strength_above_all_spirits_offers_the_other_way_round(house: House) -> None:
    ana = bar_with(house)
    assert said(ana, "strength 500 ml 70 to 96").startswith("Nothing here is stronger than 96 % vol.")
    assert tapped(ana, "500 ml of 70 % from 96 %").startswith("500 ml of 70 %: 364.6 ml of 96 %")


def test_the_guide_asks_for_volume_then_strength_then_where_to(house: House) -> None:
    ana = bar_with(house, MIST)
    ana.says("strength")
    ana.taps("500 ml")
    ana.taps("neutral spirit 96 %")
    assert tapped(ana, "70 %") == said(ana, "strength 500 ml 96 to 70")


@pytest.mark.parametrize(
    ("line", "first"),
    [
        ("strength 500 ml 30 from 20", "30 % vol cannot be made from 20 % vol with water."),
        ("strength 500 ml 120 to 30", "A strength from 0 to 100 % vol, please."),
        ("strength 0 ml 96 to 30", "An amount above zero, please, such as 500 ml."),
        ("strength 500 ml 96 to 70 at 60 C", "A temperature from 0 °C to 40 °C, please."),
        ("strength grapefruit oil 12", "grapefruit oil is no spirit here but citrus oil."),
        ("strength netural spirit", "I know no formula or ingredient called “netural spirit”."),
        ("strength batch 9", "There is no batch 9 in this bar."),
    ],
)
def test_what_cannot_be_is_said_plainly(house: House, line: str, first: str) -> None:
    ana = bar_with(house, MIST)
    assert ana.says(line)[0].first_line == first


def test_a_hydrometer_is_read_at_the_temperature_of_the_glass(house: House) -> None:
    ana = bar_with(house)
    assert said(ana, "strength reading 62 at 27 C").startswith("A reading of 62 % at 27 °C is 59.6 % vol.")


def test_what_to_dilute_to_is_asked_with_what_is_there_in_mind(house: House) -> None:
    ana = bar_with(house)
    assert said(ana, "strength 500 ml 40") == "From 40 % to what strength?"
