"""Tests of sprayers by conversation: weighing in runs, separation, use for drinks and cost, undo."""

from __future__ import annotations

import math
import re
import statistics
from itertools import pairwise

import pytest

from bot.trade.numbers.student_t import two_sided_quantile
from tests.chat.features.liquids.mixes import MIST, bar_with, labels, said, tapped
from tests.house import House

RUNS = (152.31, 150.55, 148.80, 147.02)


def _density(answer: str) -> float:
    """Return the density of the mix by the weigh sheet: total grams over finished mL."""
    total = re.search(r"^Total \| ([\d.]+) g$", answer, re.MULTILINE)
    assert total is not None
    return float(total[1]) / 96


def test_runs_give_mean_spread_and_interval_by_the_mixs_density(house: House) -> None:
    ana = bar_with(house, MIST)
    density = _density(said(ana, "scale grapefruit mist x1 in grams"))
    answer = said(ana, "weigh Blue 152.31 150.55 148.80 147.02 20 sprays with grapefruit mist")
    outputs = [(a - b) / (20 * density) for a, b in pairwise(RUNS)]
    mean, spread = statistics.fmean(outputs), statistics.stdev(outputs)
    # Runs, the scale's step of 0.01 g and the density, as squares.
    rounded = 1.96 * 0.01 / (20 * density) / 6**0.5 / 3**0.5
    half = math.hypot(two_sided_quantile(0.95, 2) * spread / 3**0.5, rounded, 1.96 * 0.005 * mean)
    title = re.match(r"Blue: ([\d.]+) ml a spray \(3 runs\)", answer)
    assert title is not None
    assert float(title[1]) == pytest.approx(mean, rel=1e-3)
    assert f"spread of runs | {spread:.4f} ml" in answer
    shown = re.search(r"95 % interval \| ([\d.]+)-([\d.]+) ml", answer)
    assert shown is not None
    assert float(shown[1]) == pytest.approx(mean - half, abs=2e-4)
    assert float(shown[2]) == pytest.approx(mean + half, abs=2e-4)


def test_the_guide_weighs_once_and_leads_to_the_next_run(house: House) -> None:
    ana = bar_with(house, MIST)
    ana.says("pump")
    ana.taps("Weigh a sprayer")
    ana.taps("New: Blue")
    ana.taps("20")
    ana.says("152.31")
    answer = said(ana, "150.55")
    assert "(1 run)" in answer.splitlines()[0]
    assert "With Grapefruit mist in it." in answer
    ana.taps("Next run from 150.55 g")
    assert "(2 runs)" in said(ana, "148.80")


def test_priming_is_put_aside(house: House) -> None:
    ana = bar_with(house, MIST)
    before = said(ana, "weigh Blue 152.31 150.55 148.80 147.02 20 sprays").splitlines()[0]
    primed = said(ana, "weigh Blue 160.10 159.90 6 sprays priming")
    assert primed.splitlines()[0] == before
    assert "Priming run: not counted." in primed
    assert "priming: not counted" in said(ana, "pump Blue")


def test_drinks_dose_and_cost_count_by_the_sprayer_once_it_is_chosen(house: House) -> None:
    ana = bar_with(house, MIST)
    ana.says("price grapefruit oil 10 ml 7.90")
    usual = said(ana, "scale grapefruit mist to 8 x 50 ml")
    cost = said(ana, "cost grapefruit mist to 8 x 50 ml")
    ana.says("weigh Blue 152.31 150.55 148.80 147.02 20 sprays with grapefruit mist")
    assert said(ana, "scale grapefruit mist to 8 x 50 ml") == usual
    ana.says("pump Blue")
    used = said(ana, "use Blue for grapefruit mist")
    assert used.startswith("Grapefruit mist: 0.09")
    weighed = said(ana, "scale grapefruit mist to 8 x 50 ml")
    drinks = re.search(r"Enough for ([\d,]+) to ([\d,]+) drinks", weighed)
    assert drinks is not None
    low, high = (int(one.replace(",", "")) for one in drinks.groups())
    assert 1200 <= low < high < 2100
    assert said(ana, "cost grapefruit mist to 8 x 50 ml") != cost
    assert "by Blue" in said(ana, "formula grapefruit mist more")
    assert "sprays by Blue" in said(ana, "dose grapefruit mist in 90 ml")
    ana.says("undo")
    assert said(ana, "scale grapefruit mist to 8 x 50 ml") == usual


def test_a_sprayer_for_all_counts_where_a_formula_has_none_of_its_own(house: House) -> None:
    ana = bar_with(house, MIST, MIST.replace("Grapefruit mist", "Other mist"))
    ana.says("weigh Blue 152.31 150.55 148.80 147.02 20 sprays with grapefruit mist")
    ana.says("weigh Red 152.31 151.00 149.70 148.40 20 sprays with grapefruit mist")
    ana.says("use Blue for all")
    ana.says("use Red for other mist")
    assert "by Blue" in said(ana, "formula grapefruit mist more")
    assert "by Red" in said(ana, "formula other mist more")
    ana.says("use none for other mist")
    assert "by Blue" in said(ana, "formula other mist more")
    ana.says("retire Blue")
    assert "by Blue" not in said(ana, "formula other mist more")
    ana.taps("Undo")
    assert "by Blue" in said(ana, "formula other mist more")


def test_undo_takes_a_weighing_back_and_keeps_the_others(house: House) -> None:
    ana = bar_with(house, MIST)
    first = said(ana, "weigh Blue 152.31 150.55 20 sprays").splitlines()[0]
    ana.says("weigh Blue 150.55 140.00 20 sprays")
    assert tapped(ana, "Undo").startswith("Undone: weighing of sprayer Blue")
    assert said(ana, "pump Blue").splitlines()[0] == first


def test_a_coarse_scale_is_told_how_many_sprays_would_do(house: House) -> None:
    ana = bar_with(house, MIST)
    answer = said(ana, "weigh Blue 152.3 150.5 20 sprays")
    assert "Your scale's last figure is 5.6 % of a run. Weigh 23 sprays a run instead." in answer
    assert "last figure" not in said(ana, "weigh Red 152.31 150.55 20 sprays")


@pytest.mark.parametrize(
    ("line", "first"),
    [
        ("weigh Blue 150.55 152.31 20 sprays", "The bottle cannot get heavier: 150.55 g, then 152.31 g."),
        ("weigh Bleu 152.31 150.55 20 sprays", "I know no sprayer called “Bleu”."),
        ("weigh Blue 152.31 150.55 5000 sprays", "From 1 to 1000 sprays, please."),
        ("use Green for all", "I know no sprayer called “Green”."),
        ("pump Green", "I know no sprayer called “Green”."),
    ],
)
def test_what_cannot_be_is_said_plainly(house: House, line: str, first: str) -> None:
    ana = bar_with(house, MIST)
    ana.says("weigh Blue 152.31 150.55 20 sprays")
    assert ana.says(line)[0].first_line.startswith(first)


def test_members_weigh_and_managers_choose(house: House) -> None:
    bar_with(house, MIST)
    caio = house.joins("Caio")
    replies = caio.says("weigh Blue 152.31 150.55 20 sprays")
    assert not [label for label in labels(replies) if label.startswith("Use it")]
    assert said(caio, "use Blue for all").startswith("Only a manager can do that.")


def test_another_bar_sees_nothing_of_it(house: House) -> None:
    ana = bar_with(house, MIST)
    ana.says("weigh Blue 152.31 150.55 20 sprays")
    bo = house.open_bar("Bo", "The Tin Heron")
    assert said(bo, "pump").startswith("No sprayer is weighed yet.")
    assert said(bo, "pump Blue").startswith("I know no sprayer called “Blue”.")
