"""Tests of stock: counts, deliveries, use by batches, pars, and producible formulas."""

from __future__ import annotations

from fractions import Fraction

import pytest

from bot.trade.formulas.measures import Dimension
from bot.work.context import Context
from bot.work.formulas import ingredients
from bot.work.people import people
from bot.work.reminders.delivery import Outcome
from bot.work.stock import on_hand as stock
from tests.house import CHANNEL, House, first_lines, text

BRINE = "new formula Brine\nsalt 20 g\nwater 80 ml\nkind saline\nrest 2 h"
TINCTURE = "new formula Lime drops\nlime oil 10 ml\nneutral spirit 96 % 90 ml\nkind tincture\nrest 14 days"


def _on_hand(house: House, name: str) -> tuple[Fraction, Dimension] | None:
    with house.store.reading() as unit:
        context = people.find(unit, CHANNEL, "ana", "private ana", True).context(
            unit, house.clock.now(), "test"
        )
        found = stock.on_hand(context, [_id(context, name)])
        one = found.get(_id(context, name))
        return None if one is None else (one.book, one.dimension)


def _id(context: Context, name: str) -> int:
    view = ingredients.by_name(context, name)
    assert view is not None
    return view.id


def test_a_batch_takes_what_it_needs_and_gives_it_back_when_undone(house: House) -> None:
    ana = house.open_bar(said=[TINCTURE])
    assert _on_hand(house, "neutral spirit") is None
    ana.says("stock neutral spirit 1.4 l")
    ana.says("batch lime drops to 200 ml")
    (taken, _measure) = _on_hand(house, "neutral spirit") or (None, None)
    assert taken is not None
    assert Fraction(1200) < taken < Fraction(1230)  # nine tenths of 200 mL, slightly more for contraction
    ana.taps("Undo")
    assert _on_hand(house, "neutral spirit") == (Fraction(1400), Dimension.VOLUME)


def test_a_count_within_the_same_second_counts_after_what_came_before_it(house: House) -> None:
    ana = house.open_bar(said=[TINCTURE])
    ana.says("stock bought neutral spirit 3 x 1 l 24 each")
    ana.says("batch lime drops to 100 ml")
    ana.says("stock neutral spirit 2 l")
    assert _on_hand(house, "neutral spirit") == (Fraction(2000), Dimension.VOLUME)
    ana.says("stock bought neutral spirit 70 cl")
    assert _on_hand(house, "neutral spirit") == (Fraction(2700), Dimension.VOLUME)


def test_a_purchase_sets_the_price_and_undo_takes_both_back(house: House) -> None:
    ana = house.open_bar(said=[TINCTURE])
    ana.says("price neutral spirit 1 l 20")
    (bought,) = ana.says("stock bought neutral spirit 3 x 1 l 24 each")
    assert bought.first_line == "Bought: 3,000 ml neutral spirit, €72.00."
    assert first_lines(ana.says("price neutral spirit")) == ["neutral spirit: €24.00 for 1 l"]
    ana.says("undo")
    assert first_lines(ana.says("price neutral spirit")) == ["neutral spirit: €20.00 for 1 l"]
    assert _on_hand(house, "neutral spirit") is None


def test_an_undone_count_lets_the_one_before_hold_again(house: House) -> None:
    ana = house.open_bar(said=[BRINE])
    ana.says("stock salt 500 g")
    ana.says("stock salt 900 g")
    ana.says("undo")
    assert _on_hand(house, "salt") == (Fraction(500), Dimension.MASS)


def test_what_is_not_accounted_for_is_said(house: House) -> None:
    ana = house.open_bar(said=[BRINE])
    ana.says("stock salt 500 g")
    said = text(ana.says("stock salt 420 g"))
    assert "It should be 500 g: 80 g missing, and not logged." in said
    said = text(ana.says("stock salt 430 g"))
    assert "10 g more than logged" in said


def test_a_volume_is_taken_off_a_mass_by_density(house: House) -> None:
    ana = house.open_bar(said=[TINCTURE])
    ana.says("stock lime oil 100 g")
    ana.says("batch lime drops to 100 ml")
    left, measure = _on_hand(house, "lime oil") or (None, None)
    assert measure is Dimension.MASS
    assert left is not None
    assert Fraction(90) < left < Fraction(92)  # 10 mL of an oil lighter than water


def test_a_fall_below_par_is_said_once_and_again_after_the_next_fall(house: House) -> None:
    ana = house.open_bar(said=[TINCTURE])
    ana.says("stock neutral spirit 1.1 l")
    ana.says("par neutral spirit 1 l")
    assert house.reminders() == []
    ana.says("batch lime drops to 200 ml")
    (one,) = house.reminders()
    assert one.due.kind == "low stock"
    assert one.reply.first_line.startswith("neutral spirit runs low: ")
    ana.says("batch lime drops to 100 ml")
    assert house.reminders() == []
    ana.says("stock bought neutral spirit 1 l")
    ana.says("stock neutral spirit 900 ml")
    (again,) = house.reminders()
    assert "900 ml left, par 1,000 ml" in again.reply.first_line


def test_nothing_is_said_when_there_is_enough_again_before_it_was_sent(house: House) -> None:
    ana = house.open_bar(said=[TINCTURE])
    ana.says("stock neutral spirit 1.1 l")
    ana.says("par neutral spirit 1 l")
    ana.says("batch lime drops to 200 ml")
    ana.taps("Undo")
    assert house.reminders() == []
    # The undone batch is no longer resting either: the next fall is a new one.
    ana.says("stock neutral spirit 0.5 l")
    assert [one.due.kind for one in house.reminders()] == ["low stock"]


def test_a_low_stock_reminder_waits_for_the_end_of_the_quiet_hours(house: House) -> None:
    ana = house.open_bar(said=[TINCTURE])
    house.clock.turn(hours=12)  # 06:00
    ana.says("stock neutral spirit 100 ml")
    ana.says("par neutral spirit 1 l")
    assert "low stock" not in {one.due.kind for one in house.reminders(Outcome.SENT)}
    house.clock.turn(hours=6)
    assert "low stock" in {one.due.kind for one in house.reminders(Outcome.SENT)}


def test_only_a_manager_sets_a_par_but_anybody_counts(house: House) -> None:
    house.open_bar(said=[BRINE])
    ben = house.joins("Ben")
    assert "Only a manager" in first_lines(ben.says("par salt 1 kg"))[0]
    assert first_lines(ben.says("stock salt 500 g")) == ["salt: 500 g on hand."]


def test_an_undone_par_is_the_one_before(house: House) -> None:
    ana = house.open_bar(said=[BRINE])
    ana.says("par salt 1 kg")
    ana.says("par salt none")
    assert first_lines(ana.says("par")) == ["No ingredient has a par yet."]
    ana.says("undo")
    assert "1,000 g" in text(ana.says("par"))


def test_what_can_be_made_names_what_runs_out(house: House) -> None:
    ana = house.open_bar(said=[BRINE])
    ana.says(TINCTURE)
    ana.says("stock salt 100 g")
    ana.says("stock neutral spirit 1 l")
    ana.says("stock lime oil 0 ml")
    said = text(ana.says("what can i make?"))
    assert "You can make 1 formula now" in said
    assert "Brine: first to run out is salt" in said
    assert "Lime drops: no lime oil left" in said


@pytest.mark.parametrize("line", ["stock neutral spirit 3", "stock neutral spirit -1 l"])
def test_a_liquid_without_a_unit_or_below_nothing_is_not_taken(house: House, line: str) -> None:
    ana = house.open_bar(said=[TINCTURE])
    ana.says(line)
    assert _on_hand(house, "neutral spirit") is None


def test_one_bar_does_not_see_anothers_stock(house: House) -> None:
    ana = house.open_bar(said=[BRINE])
    ana.says("stock salt 500 g")
    eve = house.open_bar("Eve", "The Grey Gull")
    assert first_lines(eve.says("stock")) == ["Nothing is counted yet."]


@pytest.mark.parametrize(
    "line",
    [
        "stock bought neutral spirit 0.0000001 x 1 l 24 each",
        "waste 0.0004 limes mouldy",
        "peeled 0.0004 limes",
    ],
)
def test_an_amount_that_rounds_to_nothing_is_refused(house: House, line: str) -> None:
    ana = house.open_bar(said=[TINCTURE])
    before = text(ana.says("log"))
    assert first_lines(ana.says(line))[-1].endswith("will not do as amount.")
    assert text(ana.says("log")) == before
