"""Tests of planning: use by bottles and drinks, the next batch, shopping, and the fruit par."""

from __future__ import annotations

from datetime import date
from fractions import Fraction

from bot.work.formulas import formulas
from bot.work.people import people
from bot.work.planning import plan
from bot.work.planning.plan import FormulaPlan
from bot.work.spray import drinks
from tests.house import CHANNEL, House, Person, first_lines, text

MIST = (
    "new formula Grapefruit mist\ngrapefruit oil 12 ml\npropylene glycol 22 ml\n"
    "neutral spirit 96 % 62 ml\nkind aroma mist\nreplaces grapefruit"
)
JUICE = (
    "new formula Sour orange\norange juice 1 l\ncitric acid 30 g\nkind acid-adjusted juice\n"
    "rest 0 h\ndiscard 2 days"
)


def _plan(house: House, name: str) -> FormulaPlan:
    with house.store.reading() as unit:
        context = people.find(unit, CHANNEL, "ana", "private ana", True).context(
            unit, house.clock.now(), "test"
        )
        number = next(one.id for one in formulas.listed(context) if one.name == name)
        return plan.plan_for(context, formulas.get(context, number))


def _bottle(house: House, ana: Person, line: str, days: int) -> int:
    """Make a batch, open it when it has rested, use it up this many days later; return its number."""
    (made,) = ana.says(line)
    number = int(made.first_line.split(":")[0].removeprefix("Batch "))
    house.clock.turn(hours=25)
    ana.says(f"open {number}")
    house.clock.turn(days=days)
    ana.says(f"used {number}")
    return number


def test_nothing_is_planned_while_nothing_says_what_is_poured(house: House) -> None:
    ana = house.open_bar(said=[MIST])
    assert first_lines(ana.says("plan")) == ["I can't plan yet: I don't know how much you use."]
    assert first_lines(ana.says("plan grapefruit mist")) == ["I don't know how much Grapefruit mist you use."]


def test_a_bottle_emptied_within_a_minute_tells_nothing(house: House) -> None:
    """It once made a plan for 3,700 mL although 300 drinks a week were said."""
    ana = house.open_bar(said=[MIST])
    ana.says("bar drinks a week 300")
    _bottle(house, ana, "batch grapefruit mist to 200 ml", days=0)
    found = _plan(house, "Grapefruit mist")
    assert found.use is not None
    # 300 drinks of 2.5 sprays of 1/12 mL; for four weeks no more than nine weeks in ten would use
    assert abs(found.use.a_week - 300 * 2.5 / 12) < 1e-9
    assert found.size_ml is not None
    assert found.size_ml <= 4 * 300 * Fraction(5, 24) * Fraction(3, 5)
    said = text(ana.says("plan grapefruit mist"))
    assert "From what you said: 300 drinks a week." in said
    assert "Batch 1 was empty within 4 hours: not counted." in said


def test_a_bottle_far_quicker_than_said_is_asked_about_and_not_planned(house: House) -> None:
    ana = house.open_bar(said=[MIST])
    ana.says("bar drinks a week 300")
    _bottle(house, ana, "batch grapefruit mist to 200 ml", days=2)
    ana.says("drinks 1,600 grapefruit mist")
    found = _plan(house, "Grapefruit mist")
    assert found.use is not None
    assert abs(found.use.a_week - 300 * 2.5 / 12) < 1e-9
    (told,) = ana.says("plan grapefruit mist")
    assert "Batch 1: used 8 times as fast as you said, not counted." in text([told])
    assert "1,600 drinks: 37 times what you said, not counted." in text([told])
    assert "What should drinks a week be?" in text(ana.taps("Drinks a week"))


def test_bottles_used_up_tell_from_three_on(house: House) -> None:
    ana = house.open_bar(said=[MIST])
    for number in range(1, 4):
        assert _plan(house, "Grapefruit mist").use is None
        _bottle(house, ana, "batch grapefruit mist to 200 ml", days=9)
        assert f"{min(number, 2)} of 3" not in text(ana.says("plan"))
    found = _plan(house, "Grapefruit mist")
    assert found.use is not None
    assert found.evidence.bottles is not None
    assert found.evidence.bottles.days == 30
    assert abs(found.use.a_week / 7 - 20) < 0.2
    assert found.use.a_day.high > 5 * found.use.a_day.low
    assert "From 3 batches used up: 9 in 10 between" in text(ana.says("plan grapefruit mist"))


def test_nights_counted_move_what_was_said(house: House) -> None:
    ana = house.open_bar(said=[MIST])
    ana.says("bar drinks a week 300")
    before = _plan(house, "Grapefruit mist").use
    for poured in (90, 80, 85, 95):
        ana.says(f"drinks {poured} grapefruit mist")
        house.clock.turn(days=1)
    after = _plan(house, "Grapefruit mist").use
    assert before is not None
    assert after is not None
    assert before.a_week < after.a_week < 7 * 90 * 2.5 / 12
    said = text(ana.says("plan grapefruit mist"))
    assert "From what you said (300 drinks a week) and 4 nights counted: 9 in 10 between" in said


def test_what_was_said_is_shared_by_the_sprayed_formulas_in_use(house: House) -> None:
    ana = house.open_bar(said=[MIST])
    ana.says(MIST.replace("Grapefruit mist", "Second mist"))
    ana.says("bar drinks a week 300")
    ana.says("batch grapefruit mist to 100 ml")
    ana.says("batch second mist to 100 ml")
    use = _plan(house, "Grapefruit mist").use
    assert use is not None
    assert abs(use.a_week - 150 * 2.5 / 12) < 1e-9
    assert "300 drinks a week, shared by 2 formulas" in text(ana.says("plan second mist"))


def test_drinks_counted_in_all_give_the_bottle_its_weekdays(house: House) -> None:
    ana = house.open_bar()  # a Wednesday
    ana.says(MIST)
    (made,) = ana.says("batch grapefruit mist to 300 ml")
    assert made.first_line.startswith("Batch 1")
    house.clock.turn(hours=25)
    ana.says("open 1")  # Thursday
    for poured in (100, 300, 100):
        ana.says(f"drinks {poured}")
        house.clock.turn(days=1)
    house.clock.turn(days=-1)
    ana.says("used 1")
    by_day = {day.weekday(): float(ml) for day, ml in _plan(house, "Grapefruit mist").evidence.nights}
    assert abs(by_day[4] / by_day[3] - 3) < 1e-9


def test_drinks_with_a_formula_count_more_than_its_bottle(house: House) -> None:
    ana = house.open_bar(said=[MIST])
    ana.says("drinks 60 grapefruit mist")
    found = _plan(house, "Grapefruit mist")
    # 60 drinks of 2 to 3 sprays of 1/15 to 1/10 mL: 60 * 2.5 * 1/12.
    assert [float(ml) for _day, ml in found.evidence.nights] == [60 * 2.5 / 12]


def test_never_more_than_is_poured_before_it_must_go(house: House) -> None:
    ana = house.open_bar(said=[JUICE])
    for _week in range(3):
        (made,) = ana.says("batch sour orange to 900 ml")
        number = made.first_line.split(":")[0].removeprefix("Batch ")
        ana.says(f"open {number}")
        house.clock.turn(days=2)
        ana.says(f"used {number}")
    found = _plan(house, "Sour orange")
    assert found.batch is not None
    assert found.size_ml is not None
    # 300 mL a day or more, but it keeps for only two days and the day it is made.
    assert found.size_ml <= Fraction(3 * 900)
    assert found.size_ml <= Fraction(found.batch.largest)
    assert (found.batch.discard_on - found.batch.make_on).days == 3


def test_the_rest_is_lead_time(house: House) -> None:
    ana = house.open_bar(said=[MIST])
    ana.says("bar drinks a week 300")
    ana.says("batch grapefruit mist to 100 ml")  # eleven days' worth, rests one day
    found = _plan(house, "Grapefruit mist")
    assert found.batch is not None
    assert (found.batch.ready_on - found.batch.make_on).days == 1
    assert found.batch.ready_on == found.batch.run_out_on
    assert "Make " in first_lines(ana.says("plan grapefruit mist"))[0]


def test_a_trial_is_no_use_of_the_formula(house: House) -> None:
    ana = house.open_bar(said=[MIST])
    ana.says("trial grapefruit mist: grapefruit oil 14 ml")
    ana.taps("50 ml")
    ana.taps("Open")
    ana.taps("Log the batches")
    house.clock.turn(hours=25)
    ana.says("open 1")
    house.clock.turn(days=3)
    ana.says("used 1")
    assert _plan(house, "Grapefruit mist").use is None


def test_shopping_is_in_whole_packs_against_what_is_there(house: House) -> None:
    ana = house.open_bar(said=[MIST])
    ana.says("price neutral spirit 1 l 24")
    ana.says("price grapefruit oil 10 ml 7.90")
    ana.says("bar drinks a week 600")
    ana.says("stock neutral spirit 50 ml")
    ana.says("stock propylene glycol 1 l")
    said = text(ana.says("shopping"))
    found = _plan(house, "Grapefruit mist")
    assert found.size_ml is not None
    oil = -(-found.size_ml * Fraction(12, 96) // 10)  # packs of 10 mL, none in stock
    assert f"{oil} x 10 ml" in said
    assert "1 x 1 l" in said
    assert "propylene glycol" not in said
    assert "Never counted, so I assume none: grapefruit oil" in said


def test_a_par_is_shopped_for_without_any_batch(house: House) -> None:
    ana = house.open_bar(said=[MIST])
    ana.says("price neutral spirit 1 l 24")
    ana.says("stock neutral spirit 300 ml")
    ana.says("par neutral spirit 2 l")
    said = text(ana.says("shopping"))
    assert "2 x 1 l" in said
    assert "€48.00" in first_lines(ana.says("plan shopping"))[0]


def test_the_last_word_on_a_nights_drinks_holds_and_undo_brings_the_one_before_back(house: House) -> None:
    ana = house.open_bar()
    ana.says("drinks 140 yesterday")
    assert "It was 140 before." in text(ana.says("drinks 150 yesterday"))
    assert "150" in text(ana.says("drinks"))
    ana.says("undo")
    assert "140" in text(ana.says("drinks"))


def test_a_night_to_come_has_no_drinks_yet(house: House) -> None:
    ana = house.open_bar()
    assert "still to come" in first_lines(ana.says("drinks 140 2026-11-26"))[0]
    assert "no day of the calendar" in first_lines(ana.says("drinks 140 2026-11-31"))[0]


def test_the_fruit_par_follows_counted_garnishes_and_says_how_little_it_knows(house: House) -> None:
    ana = house.open_bar()
    ana.says("price oranges 0.60 each, 5 garnishes each")
    assert "cannot say yet" in first_lines(ana.says("fruit par"))[0]
    for poured in (40, 45, 50, 60):
        ana.says(f"drinks {poured} orange")
        house.clock.turn(days=7)
    said = text(ana.says("fruit par orange"))
    assert "Wed" in said
    assert "Some weeks of data" in said
    # Enough with a probability of two in three: the third of 8, 9, 10 and 12 oranges.
    row = next(line.split() for line in said.splitlines() if line.strip().startswith("Wed"))
    assert row[1] == "10"
    assert "I assume all of it is lost" in said


def test_a_night_that_ran_out_may_have_wanted_more(house: House) -> None:
    ana = house.open_bar()
    ana.says("price oranges 0.60 each, 5 garnishes each")
    ana.says("drinks 40 orange ran out")
    said = text(ana.says("fruit par orange"))
    assert "8+" in said
    assert "Few weeks of data" in said


def test_fruit_counted_at_close_tells_what_was_used_and_what_spoils(house: House) -> None:
    ana = house.open_bar()
    ana.says("price oranges 0.60 each")
    ana.says("count oranges 40")
    house.clock.turn(days=1)
    ana.says("waste 4 oranges mouldy")
    ana.says("count oranges 26")
    said = text(ana.says("fruit par orange"))
    row = next(line.split() for line in said.splitlines() if line.strip().startswith("Thu"))
    assert row[1] == "10"  # 40 less 4 thrown out less 26 left
    assert "what was used between counts" in said
    assert "10 % are thrown out" in said  # 4 of the 40 that were left at close the night before


def test_dates_are_business_days(house: House) -> None:
    ana = house.open_bar()
    house.clock.turn(hours=8)  # 02:00: still Wednesday's business day
    ana.says("drinks 140")
    assert "Wed" in text(ana.says("drinks"))
    with house.store.reading() as unit:
        context = people.find(unit, CHANNEL, "ana", "private ana", True).context(
            unit, house.clock.now(), "test"
        )
        assert [one.day for one in drinks.lately(context)] == [date(2026, 11, 25)]
