from __future__ import annotations

import importlib
import pkgutil
import re
from collections.abc import Iterable
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

import bot.trade
from bot.trade.batches import shelf
from bot.trade.errors import OutOfRangeError
from bot.trade.formulas import kinds
from bot.trade.formulas.kinds import IngredientKind, Preparation
from bot.trade.liquids.flash import flash_point
from bot.trade.safety import allergens, grade, limits
from bot.trade.safety.cautions import CAUTIONS, Contents, Step, caution_by_id, cautions_for
from bot.trade.safety.jurisdiction import Jurisdiction
from bot.trade.sources import HowKnown

K = IngredientKind
MIST = (K.CITRUS_OIL, K.SPIRIT, K.PROPYLENE_GLYCOL)

_kinds = st.frozensets(st.sampled_from(IngredientKind))
_steps = st.sampled_from(Step)
_places = st.sampled_from(Jurisdiction)
_preparations = st.one_of(st.none(), st.sampled_from(Preparation))
_strengths = st.one_of(st.none(), st.floats(0, 100))


def _spirit(
    ingredients: Iterable[IngredientKind],
    strength: float | None,
    volume_ml: float | None = None,
    strongest: float | None = None,
    names: tuple[str, ...] | None = (),
) -> Contents:
    """The facts about a mix of spirit and water; nothing stronger is poured unless said."""
    flash = None if strength is None else flash_point(strength).low_c
    most = strength if strongest is None else strongest
    return Contents(frozenset(ingredients), strength, flash, most, volume_ml, names)


def _ids(
    step: Step,
    ingredients: tuple[IngredientKind, ...] = MIST,
    strength: float | None = 60.0,
    place: Jurisdiction = Jurisdiction.EU,
    preparation: Preparation | None = Preparation.AROMA_MIST,
    volume_ml: float | None = 500.0,
    strongest: float | None = None,
    names: tuple[str, ...] | None = (),
) -> list[str]:
    contents = _spirit(ingredients, strength, volume_ml, strongest, names)
    return [caution.id for caution in cautions_for(step, contents, place, preparation)]


@pytest.mark.parametrize(
    ("step", "first"),
    [
        (Step.ADDING, "food-grade"),
        (Step.MIXING, "no-flame"),
        (Step.RESTING, "sealed-storage"),
        (Step.BOTTLING, "no-flame"),
        (Step.SPRAYING, "flame-at-spray"),
        (Step.STORING, "sealed-storage"),
        (Step.LABELLING, "flammable-label"),
        (Step.SERVING, "flame-after-spray"),
        (Step.DISCARDING, "oily-rags"),
    ],
)
def test_what_matters_most_for_a_mist_comes_first(step: Step, first: str) -> None:
    assert _ids(step)[0] == first


def test_the_flash_point_decides_on_flames() -> None:
    assert "no-flame" not in _ids(Step.MIXING, strength=25.0)
    assert "no-flame" in _ids(Step.MIXING, strength=40.0)
    assert "no-heat" in _ids(Step.MIXING, strength=15.0)
    assert "no-flame" in _ids(Step.MIXING, strength=None)
    assert "flammable-label" in _ids(Step.LABELLING, strength=20.0)
    assert "flammable-label" not in _ids(Step.LABELLING, strength=8.0)
    assert "transport" in _ids(Step.LABELLING, strength=62.0)
    assert "transport" not in _ids(Step.LABELLING, strength=5.0)


def test_the_strongest_thing_poured_counts_until_it_is_mixed() -> None:
    # 148 ml of 96 % in a weak mist: at the bench it is the neat spirit that lights.
    assert _ids(Step.MIXING, strength=20.0, strongest=96.0)[0] == "no-flame"
    assert "no-flame" not in _ids(Step.STORING, strength=20.0, strongest=96.0)
    assert "no-heat" in _ids(Step.MIXING, strength=5.0, strongest=40.0)


def test_fat_egg_milk_and_garlic_have_their_own_caution() -> None:
    for name in ("brown butter", "egg white", "whole milk", "garlic", "duck fat", "leche"):
        found = _ids(Step.RESTING, names=(name,), preparation=Preparation.INFUSION)
        assert found[0] == "fat-egg-milk-garlic", name
    for name in ("cocoa butter", "eggplant", "milk thistle", "vodka"):
        assert "fat-egg-milk-garlic" not in _ids(Step.RESTING, names=(name,)), name


def test_amount_decides_on_the_large_batch() -> None:
    assert "large-batch" not in _ids(Step.MIXING, volume_ml=999.0)
    assert "large-batch" in _ids(Step.MIXING, volume_ml=1000.0)
    assert "large-batch" in _ids(Step.MIXING, volume_ml=None)


@pytest.mark.parametrize(
    ("place", "only"),
    [
        (Jurisdiction.US, "advance-mixing-us"),
        (Jurisdiction.UK, "compounding-uk"),
        (Jurisdiction.EU, "excise-eu"),
    ],
)
def test_licensing_goes_by_jurisdiction(place: Jurisdiction, only: str) -> None:
    special = {"advance-mixing-us", "compounding-uk", "excise-eu"}
    assert special & set(_ids(Step.MIXING, place=place)) == {only}
    assert not special & set(_ids(Step.MIXING, place=Jurisdiction.OTHER))


def test_juice_keeps_its_own_cautions() -> None:
    juice = _ids(Step.STORING, (K.JUICE,), None, Jurisdiction.US, Preparation.JUICE)
    assert juice == ["keep-cold", "food-code-juice"]
    elsewhere = _ids(Step.STORING, (K.JUICE,), None, Jurisdiction.EU, Preparation.JUICE)
    assert elsewhere == ["keep-cold", "ask-inspector"]


def test_water_and_salt_bring_no_fire() -> None:
    found = _ids(Step.MIXING, (K.WATER, K.OTHER), 0.0, Jurisdiction.UK, Preparation.SALINE)
    assert not {"no-flame", "no-heat", "ventilation", "neat-oil-contact", "house-licence"} & set(found)


def test_refuses_a_strength_that_cannot_be() -> None:
    with pytest.raises(OutOfRangeError):
        Contents(frozenset(MIST), 101.0)


@given(_steps, _kinds, _strengths, _places, _preparations)
def test_each_caution_comes_once_in_order_of_rank(
    step: Step,
    ingredients: frozenset[IngredientKind],
    strength: float | None,
    place: Jurisdiction,
    preparation: Preparation | None,
) -> None:
    found = cautions_for(step, _spirit(ingredients, strength), place, preparation)
    ranks = [caution.rank_at(step) for caution in found]
    assert None not in ranks
    assert ranks == sorted(ranks, key=lambda rank: rank or 0)
    assert len({caution.id for caution in found}) == len(found)


@given(_steps, _kinds, st.floats(0, 100), _places, st.sampled_from(Preparation), st.floats(0, 5000))
def test_not_knowing_never_hides_a_caution(
    step: Step,
    ingredients: frozenset[IngredientKind],
    strength: float,
    place: Jurisdiction,
    preparation: Preparation,
    volume: float,
) -> None:
    known = cautions_for(step, _spirit(ingredients, strength, volume), place, preparation)
    unknown = cautions_for(step, _spirit(ingredients, None, names=None), place, None)
    assert set(known) <= set(unknown)


@given(_steps, _kinds, st.floats(0, 99), st.floats(0, 1), _places, _preparations)
def test_a_stronger_mix_never_has_fewer_cautions(
    step: Step,
    ingredients: frozenset[IngredientKind],
    strength: float,
    more: float,
    place: Jurisdiction,
    preparation: Preparation | None,
) -> None:
    weak = cautions_for(step, _spirit(ingredients, strength), place, preparation)
    strong = cautions_for(step, _spirit(ingredients, strength + more), place, preparation)
    assert set(weak) <= set(strong)


def test_every_caution_can_come_up_and_every_step_has_some() -> None:
    seen = {
        caution.id
        for step in Step
        for place in Jurisdiction
        for caution in cautions_for(step, _spirit(IngredientKind, None, names=None), place, None)
    }
    assert seen == {caution.id for caution in CAUTIONS}
    assert len(seen) == len(CAUTIONS)
    assert all(_ids(step) for step in Step)


def test_ids_lead_back_to_their_caution() -> None:
    assert all(caution_by_id(caution.id) is caution for caution in CAUTIONS)
    with pytest.raises(KeyError):
        caution_by_id("none such")


def test_each_caution_is_one_sentence_with_its_source() -> None:
    for caution in CAUTIONS:
        assert caution.text.endswith("."), caution.id
        assert len(re.findall(r"[.!?](?:\s|$)", caution.text)) == 1, caution.id
        assert len(caution.text) < 200, caution.id
        assert caution.source.title
        seen = caution.source.seen is not None
        assert seen == (caution.source.how_known not in {HowKnown.MEMORY, HowKnown.PRACTICE}), caution.id


def _texts() -> list[str]:
    found = [caution.text for caution in CAUTIONS]
    found += [text for limit in limits.LIMITS for text in (limit.text, limit.note)]
    found += [limits.LIMONENE_NOTE, limits.NO_LIMIT_ON_FILE, grade.GRADE_MARK]
    found += [*grade.GRADE_TEXTS.values(), *shelf.RULE_TEXTS.values(), *allergens.Allergen]
    found += [line for defaults in kinds.PREPARATION_DEFAULTS.values() for line in defaults.label_lines]
    names = ["orgeat", "coconut", "MCT oil", "sulphites", "lecithin", "falernum"]
    found += [line.note for line in allergens.allergen_lines(names, Jurisdiction.US)]
    return found


def test_nothing_is_called_safe_or_legal() -> None:
    for text in _texts():
        assert not re.search(r"\b(?:safe|safely|safety|legal|legally|harmless)\b", text, re.IGNORECASE), text


def test_the_rules_import_nothing_slow() -> None:
    # The console must start without the chemistry libraries.
    names = [module.name for module in pkgutil.walk_packages(bot.trade.__path__, "bot.trade.")]
    ours = {
        "bot.trade.safety.cautions",
        "bot.trade.safety.caution_list",
        "bot.trade.spray.dose",
        "bot.trade.safety.grade",
        "bot.trade.safety.allergens",
        "bot.trade.liquids.flash",
        "bot.trade.safety.limits",
        "bot.trade.spray.sprayers",
        "bot.trade.batches.shelf",
        "bot.trade.numbers.student_t",
    }
    assert ours <= set(names)
    for name in ours:
        file = importlib.import_module(name).__file__
        assert file is not None
        assert not re.search(
            r"^(?:import|from) (?:thermo|scipy|numpy|pint)", Path(file).read_text("utf-8"), re.M
        )
