"""Tests of tastings: secret codes, scores that add up, and differences beyond disagreement."""

from __future__ import annotations

from collections import Counter
from statistics import mean, stdev

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy import stats

from bot.trade.errors import OutOfRangeError
from bot.trade.trials.tasting import (
    Aspect,
    Score,
    UnknownVariantError,
    blind_codes,
    difference,
    latest,
    side_by_side,
    summarise,
)


def _scores(variant: str, aroma: list[int]) -> list[Score]:
    return [Score(f"member {number}", variant, {Aspect.AROMA: score}) for number, score in enumerate(aroma)]


def test_every_order_of_the_letters_is_equally_likely() -> None:
    """Chi-square of 2,000 seeds over 6 orders; 20.5 is its 99.9 % point at 5 degrees of freedom (NIST)."""
    orders = Counter(tuple(blind_codes(["0", "1", "2"], seed).values()) for seed in range(2_000))
    expected = 2_000 / 6
    assert len(orders) == 6
    assert sum((found - expected) ** 2 / expected for found in orders.values()) < 20.5


def test_codes_are_letters_in_an_order_that_the_seed_decides() -> None:
    variants = ["more oil", "less glycol", "as it is"]
    codes = blind_codes(variants, seed=4)
    assert list(codes) == ["A", "B", "C"]
    assert sorted(codes.values()) == sorted(variants)
    assert codes == blind_codes(list(reversed(variants)), seed=4)
    orders = {tuple(blind_codes(variants, seed).values()) for seed in range(200)}
    assert len(orders) == 6


def test_codes_go_on_after_z() -> None:
    codes = list(blind_codes([f"variant {number:02}" for number in range(54)], seed=1))
    assert codes[25:28] == ["Z", "AA", "AB"]
    assert codes[51:] == ["AZ", "BA", "BB"]


def test_only_the_last_score_of_a_member_counts() -> None:
    first, second = Score("ana", "new", {Aspect.AROMA: 2}), Score("ana", "new", {Aspect.AROMA: 5})
    other = Score("ben", "new", {Aspect.AROMA: 3})
    assert latest([first, other, second]) == (other, second)
    summary = summarise([first, other, second], "new", Aspect.AROMA)
    assert summary is not None
    assert (summary.mean, summary.count) == (4, 2)


@given(st.lists(st.integers(1, 5), min_size=1, max_size=12))
def test_mean_and_spread_are_those_of_the_scores(aroma: list[int]) -> None:
    summary = summarise(_scores("new", aroma), "new", Aspect.AROMA)
    assert summary is not None
    assert summary.mean == pytest.approx(mean(aroma))
    assert summary.count == len(aroma)
    if len(aroma) == 1:
        assert summary.spread is None
    else:
        assert summary.spread == pytest.approx(stdev(aroma))


@given(st.lists(st.tuples(st.integers(1, 5), st.integers(1, 5)), min_size=2, max_size=12))
def test_differences_are_paired(pairs: list[tuple[int, int]]) -> None:
    new, old = [pair[0] for pair in pairs], [pair[1] for pair in pairs]
    found = difference(_scores("new", new) + _scores("old", old), "new", "old", Aspect.AROMA)
    assert found is not None
    assert found.interval is not None
    assert found.mean == pytest.approx(mean(new) - mean(old))
    gaps = [a - b for a, b in pairs]
    if stdev(gaps) < (1 / 6) ** 0.5:
        exact = stats.t(len(gaps) - 1, loc=mean(gaps), scale=(1 / 6 / len(gaps)) ** 0.5).interval(0.95)
        assert (found.interval.low, found.interval.high) == pytest.approx(exact)
        return
    exact = stats.ttest_1samp(gaps, 0).confidence_interval(0.95)
    assert found.interval.low == pytest.approx(exact.low, abs=1e-9)
    assert found.interval.high == pytest.approx(exact.high, abs=1e-9)


def test_members_who_tasted_only_one_do_not_count_in_the_difference() -> None:
    scores = [*_scores("new", [5, 5, 5]), *_scores("old", [4])]
    found = difference(scores, "new", "old", Aspect.AROMA)
    assert found is not None
    assert found.count == 1
    assert found.interval is None
    assert not found.clear
    assert difference(scores, "new", "old", Aspect.BITTERNESS) is None


def test_two_who_agree_do_not_settle_it() -> None:
    found = difference(_scores("new", [4, 4]) + _scores("old", [3, 3]), "new", "old", Aspect.AROMA)
    assert found is not None
    assert not found.clear


def test_agreement_is_clear_and_disagreement_is_not() -> None:
    clear = difference(
        _scores("new", [5, 4, 5, 5]) + _scores("old", [2, 2, 2, 3]), "new", "old", Aspect.AROMA
    )
    unclear = difference(
        _scores("new", [5, 2, 4, 1]) + _scores("old", [2, 4, 2, 3]), "new", "old", Aspect.AROMA
    )
    assert clear is not None
    assert clear.clear
    assert unclear is not None
    assert not unclear.clear


def test_ten_who_all_give_one_more_settle_it() -> None:
    found = difference(_scores("new", [4] * 10) + _scores("old", [3] * 10), "new", "old", Aspect.AROMA)
    assert found is not None
    assert found.interval is not None
    assert found.interval.low > 0.5
    assert found.clear
    even = difference(_scores("new", [4] * 10) + _scores("old", [4] * 10), "new", "old", Aspect.AROMA)
    assert even is not None
    assert not even.clear


def test_side_by_side_has_every_aspect_of_every_variant() -> None:
    table = side_by_side(_scores("old", [3, 4]) + _scores("new", [4, 5]))
    assert table.variants == ("old", "new")
    assert table.base == "old"
    assert set(table.cells) == set(Aspect)
    new = table.against_base[Aspect.AROMA]["new"]
    assert new is not None
    assert new.mean == 1
    assert table.cells[Aspect.LASTING]["old"] is None
    assert "old" not in table.against_base[Aspect.AROMA]


def test_unknown_variants_and_wild_scores_are_refused() -> None:
    with pytest.raises(UnknownVariantError) as error:
        side_by_side(_scores("old", [3]), base="new")
    assert error.value.known == ("old",)
    with pytest.raises(UnknownVariantError):
        side_by_side([])
    for wild in (0, 6):
        with pytest.raises(OutOfRangeError):
            Score("ana", "new", {Aspect.AROMA: wild})
