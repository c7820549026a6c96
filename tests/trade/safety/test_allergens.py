from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from bot.trade.safety.allergens import Allergen, Standing, allergen_lines, to_declare
from bot.trade.safety.jurisdiction import Jurisdiction

A = Allergen


def _found(name: str, jurisdiction: Jurisdiction = Jurisdiction.EU) -> set[Allergen]:
    return {line.allergen for line in allergen_lines([name], jurisdiction)}


@pytest.mark.parametrize(
    ("name", "allergens"),
    [
        ("egg white", {A.EGGS}),
        ("double cream", {A.MILK}),
        ("eggnog", {A.EGGS, A.MILK}),
        ("orgeat", {A.TREE_NUTS}),
        ("almond milk", {A.TREE_NUTS}),
        ("walnut bitters", {A.TREE_NUTS}),
        ("peanut butter", {A.PEANUTS}),
        ("ground nuts", {A.PEANUTS}),
        ("soya milk", {A.SOYBEANS}),
        ("oat milk", {A.OTHER_GLUTEN}),
        ("stout", {A.OTHER_GLUTEN}),
        ("wheat beer", {A.WHEAT, A.OTHER_GLUTEN}),
        ("dry vermouth", {A.SULPHITES}),
        ("celery bitters", {A.CELERY}),
        ("coconut cream", {A.COCONUT}),
        ("MCT oil", {A.COCONUT}),
        ("pine nuts", {A.PINE_NUTS}),
        ("chestnut puree", {A.CHESTNUT}),
        ("grapefruit oil", {A.CITRUS}),
        ("oyster", {A.MOLLUSCS}),
        ("tahini", {A.SESAME}),
    ],
)
def test_ordinary_words_point_to_allergens(name: str, allergens: set[Allergen]) -> None:
    assert _found(name) == allergens


@pytest.mark.parametrize(
    "name",
    [
        "nutmeg", "butternut squash", "butterfly pea flower", "cream of tartar", "cocoa butter", "crab apple",
        "ginger beer", "rye whiskey", "malt whisky", "buckwheat honey", "pineapple", "eggplant", "passport",
        "cream soda", "oyster mushroom", "neutral spirit", "propylene glycol",
    ],
)  # fmt: skip
def test_words_that_only_look_like_it_are_spared(name: str) -> None:
    assert _found(name) == set()


def test_what_is_only_often_made_with_it_is_not_certain() -> None:
    orgeat, almond = (allergen_lines([name], Jurisdiction.UK)[0] for name in ("orgeat", "almond syrup"))
    assert not orgeat.certain
    assert orgeat.note
    assert almond.certain


@pytest.mark.parametrize(
    ("name", "eu", "us"),
    [
        ("coconut cream", Standing.WORTH_SAYING, Standing.WORTH_SAYING),
        ("pine nuts", Standing.WORTH_SAYING, Standing.LISTED),
        ("celery", Standing.LISTED, Standing.WORTH_SAYING),
        ("barley", Standing.LISTED, Standing.WORTH_SAYING),
        ("wheat", Standing.LISTED, Standing.LISTED),
        ("sulphites", Standing.LISTED, Standing.LISTED_APART),
        ("lemon oil", Standing.WORTH_SAYING, Standing.WORTH_SAYING),
    ],
)
def test_standing_differs_by_the_list(name: str, eu: Standing, us: Standing) -> None:
    assert allergen_lines([name], Jurisdiction.EU)[0].standing is eu
    assert allergen_lines([name], Jurisdiction.UK)[0].standing is eu
    assert allergen_lines([name], Jurisdiction.US)[0].standing is us
    assert allergen_lines([name], Jurisdiction.OTHER)[0].standing is Standing.WORTH_SAYING


def test_listed_and_certain_lines_come_first() -> None:
    lines = allergen_lines(["lemon oil", "orgeat", "egg white", "coconut"], Jurisdiction.EU)
    assert [line.allergen for line in lines] == [A.EGGS, A.TREE_NUTS, A.CITRUS, A.COCONUT]


def test_what_to_declare_names_each_once() -> None:
    lines = allergen_lines(["egg white", "egg yolk", "cream", "coconut"], Jurisdiction.US)
    assert to_declare(lines) == [A.EGGS, A.MILK]
    assert to_declare([]) == []


@given(st.lists(st.text(max_size=40), max_size=5), st.sampled_from(Jurisdiction))
def test_lines_name_only_what_was_given(names: list[str], jurisdiction: Jurisdiction) -> None:
    lines = allergen_lines(names, jurisdiction)
    assert {line.ingredient for line in lines} <= set(names)
    assert all(line.source.title for line in lines)
