"""Tests that each step of the work shows its caution, and that every caution can be read."""

from __future__ import annotations

import pytest

from bot.chat.i18n.language import Tongue, _, speaking
from bot.chat.reply.message import Caution as CautionBlock
from bot.chat.reply.message import Reply
from bot.trade.safety.caution import Step
from bot.trade.safety.cautions import CAUTIONS
from bot.trade.safety.jurisdiction import Jurisdiction
from tests.chat.features.liquids.mixes import CLEAR_MIX, bar_with, whole
from tests.house import House, Person

pytestmark = pytest.mark.parametrize("database", ["sqlite"], indirect=True)

_AT = {step: {one.text for one in CAUTIONS if one.rank_at(step) is not None} for step in Step}
_BIG = (
    "new formula Everything\norange oil 40 ml\npropylene glycol 100 ml\nneutral spirit 96 % 2000 ml\n"
    "citric acid 10 g\ncaster sugar 100 g\nlime juice 50 ml\nlemon peel 20 g\nhoney 10 ml\nmilk 20 ml\n"
    "kind {kind}"
)


def _all_pages(person: Person, line: str) -> str:
    """Say a line and tap More until the last page."""
    replies = person.says(line)
    pages = [whole(person, replies)]
    while following := _lines_of(replies, "More"):
        replies = person.taps_line(following[0])
        pages.append(whole(person, replies))
    return "\n".join(pages)


def _lines_of(replies: list[Reply], label: str) -> list[str]:
    return [one.line for reply in replies for row in reply.buttons for one in row if one.label == label]


def _cautions(replies: list[Reply]) -> list[str]:
    return [block.text for one in replies for block in one.blocks if isinstance(block, CautionBlock)]


def test_each_step_shows_a_caution_of_its_own(house: House) -> None:
    ana = bar_with(house, CLEAR_MIX)
    ana.says("grade orange oil yes")
    steps = {
        Step.ADDING: ["formula clear mist"],
        Step.MIXING: ["scale clear mist to 400 ml"],
        Step.RESTING: ["batch clear mist to 400 ml", "batch 1"],
        Step.BOTTLING: ["check 1 clear"],
        Step.STORING: ["batch 1"],
        Step.SPRAYING: ["open 1", "batch 1"],
        Step.SERVING: ["dose clear mist in 90 ml"],
        Step.DISCARDING: ["discard 1 40 ml"],
    }
    for step, lines in steps.items():
        if step is Step.BOTTLING:
            house.clock.turn(days=2)
        for line in lines:
            shown = _cautions(ana.says(line))
            assert shown, f"{step}: {line} shows none"
            assert set(shown) <= _AT[step], f"{step}: {line}"


def test_neat_oil_and_unconfirmed_grade_come_first_while_something_is_added(house: House) -> None:
    ana = bar_with(house)
    shown = _cautions(ana.says(CLEAR_MIX))
    assert shown[0] == "Food grade not confirmed: orange oil"


_HOLDING = (
    *(
        "bitter almonds",
        "tonka",
        "wormwood",
        "cinchona",
        "quassia",
        "sassafras",
        "tarragon oil",
        "pennyroyal",
    ),
    *("calamus", "germander", "tobacco"),
)


def test_every_caution_of_every_place_can_be_read_for_some_formula(house: House) -> None:
    ana = bar_with(house, *(_BIG.format(kind=kind).replace("Everything", kind) for kind in _KINDS))
    seen: set[str] = set()
    for rules in Jurisdiction:
        ana.says(f"bar rules {rules}")
        for kind in _KINDS:
            answer = _all_pages(ana, f"cautions {kind}")
            with speaking(Tongue("en", "en_US" if rules is Jurisdiction.US else "en_GB")):
                seen |= {one.id for one in CAUTIONS if _(one.text) in answer}
    ana.says("bar rules other")
    for name in _HOLDING:
        seen |= {one.id for one in CAUTIONS if one.text in whole(ana, ana.says(f"cautions {name}"))}
    assert seen == {one.id for one in CAUTIONS}


_KINDS = ("aroma mist", "tincture", "infusion", "syrup", "juice", "acid-adjusted juice", "other")


def test_the_full_list_is_one_tap_away_with_sources(house: House) -> None:
    ana = bar_with(house)
    answer = _all_pages(ana, "cautions")
    for one in CAUTIONS:
        assert one.text in answer, one.id
    assert "Local codes and licensed practice come first; this list is not complete." in answer
