"""Tests of the ingredients that hold a substance which food law limits, against the texts named."""

from __future__ import annotations

import pytest

from bot.trade.formulas.kinds import IngredientKind as K
from bot.trade.safety.caution import Contents, Step
from bot.trade.safety.cautions import cautions_for
from bot.trade.safety.grade import FoodGrade, GradedIngredient, GradeReason, question_for
from bot.trade.safety.held_substances import HELD_SUBSTANCES, held_in
from bot.trade.safety.jurisdiction import Jurisdiction
from bot.trade.sources import HowKnown


@pytest.mark.parametrize(
    ("name", "substance"),
    [
        # Bitter almond: 21 CFR 182.20 lists it only free from prussic acid (read in a copy of 2015).
        ("bitter almond oil", "hydrogen-cyanide"),
        ("almond oil, bitter", "hydrogen-cyanide"),
        ("aceite esencial de almendras amargas", "hydrogen-cyanide"),
        ("apricot kernels", "hydrogen-cyanide"),
        # 21 CFR 189.130: coumarin "is found in tonka beans and extract of tonka beans" (read).
        ("tonka beans", "coumarin"),
        ("haba tonka", "coumarin"),
        # 21 CFR 172.510: Artemisia (wormwood), finished food thujone free (read).
        ("wormwood", "thujone"),
        ("ajenjo", "thujone"),
        # The rest from memory.
        ("corteza de quina", "quinine"),
        ("cinchona bark", "quinine"),
        ("quassia chips", "quassin"),
        ("sasafrás", "safrole"),
        ("calamus root", "beta-asarone"),
        ("pennyroyal", "pulegone"),
    ],
)
def test_a_name_tells_what_an_ingredient_holds(name: str, substance: str) -> None:
    assert [one.id for one in held_in([name])] == [substance]


@pytest.mark.parametrize(
    "name",
    [
        *("almond oil", "almonds", "orgeat", "bitter orange oil", "clary sage oil", "grapefruit oil"),
        *("bitter almond oil FFPA", "bitter almond oil (free from prussic acid)"),
        "aceite de almendra amarga sin ácido prúsico",
    ],
)
def test_other_names_hold_none(name: str) -> None:
    assert held_in([name]) == []


def test_natural_bitter_almond_oil_stops_a_formula_until_its_papers_were_seen() -> None:
    # 21 CFR 182.20: "Almond, bitter (free from prussic acid)", read in a copy of 2015.
    question = question_for(GradedIngredient("bitter almond oil", K.CARRIER_OIL))
    assert question is not None
    assert (question.reason, question.stop) == (GradeReason.HOLDS_POISON, True)
    assert question_for(GradedIngredient("bitter almond oil", K.CARRIER_OIL, FoodGrade.CONFIRMED)) is None
    free = question_for(GradedIngredient("bitter almond oil FFPA", K.CARRIER_OIL))
    assert free is not None
    assert not free.stop


@pytest.mark.parametrize(
    ("substance", "jurisdiction", "figure"),
    [
        # Regulation (EC) No 1334/2008, Annex III, Part B; figures of the proposal, read in the trade press:
        # alcoholic drinks: beta-asarone 1, quassin 1.5, teucrin A 2, hydrocyanic acid 35, thujone 10 or 35.
        ("hydrogen-cyanide", Jurisdiction.EU, "35 mg/kg"),
        ("thujone", Jurisdiction.UK, "10 mg/kg, 35"),
        ("quassin", Jurisdiction.EU, "1.5 mg/kg"),
        ("beta-asarone", Jurisdiction.EU, "1 mg/kg"),
        ("teucrin-a", Jurisdiction.EU, "2 mg/kg"),
        # 21 CFR 172.575: quinine "not to exceed 83 parts per million" (read).
        ("quinine", Jurisdiction.US, "83 parts per million"),
        # 21 CFR 189.130 (read).
        ("coumarin", Jurisdiction.US, "adulterated"),
    ],
)
def test_the_published_rules(substance: str, jurisdiction: Jurisdiction, figure: str) -> None:
    held = next(one for one in HELD_SUBSTANCES if one.id == substance)
    assert any(figure in rule.text for rule in held.rules_in(jurisdiction))


def test_what_was_not_read_says_so() -> None:
    remembered = [rule for one in HELD_SUBSTANCES for rule in one.rules if rule.source.seen is None]
    assert all(rule.source.how_known is HowKnown.MEMORY for rule in remembered)


@pytest.mark.parametrize("step", [Step.ADDING, Step.MIXING, Step.SERVING])
def test_the_substance_comes_before_every_other_caution(step: Step) -> None:
    contents = Contents(frozenset({K.SPIRIT, K.OTHER}), 50.0, 24.0, 50.0, names=("spirit", "tonka beans"))
    assert cautions_for(step, contents, Jurisdiction.US, None)[0].id == "coumarin"
