"""Planning: use by bottles and drinks, the next batch, shopping, and the fruit to have."""

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
    """Make a batch, open it when it has rested, use it up so many days later; return its number."""
    (made,) = ana.says(line)
    number = int(made.first_line.split(":")[0].removeprefix("Batch "))
    house.clock.turn(hours=25)
    ana.says(f"open {number}")
    house.clock.turn(days=days)
    ana.says(f"used {number}")
    return number


def test_nothing_is_planned_while_nothing_says_what_is_poured(house: House) -> None:
    ana = house.open_bar(said=[MIST])
    assert first_lines(ana.says("plan")) == ["I cannot plan yet: the log does not say what is poured."]
    assert first_lines(ana.says("plan grapefruit mist")) == [
        "Nothing says how much Grapefruit mist is poured."
    ]


def test_a_bottle_used_up_is_spread_over_its_days(house: House) -> None:
    ana = house.open_bar(said=[MIST])
    _bottle(house, ana, "batch grapefruit mist to 200 ml", days=9)
    found = _plan(house, "Grapefruit mist")
    assert found.use is not None
    assert len(found.poured.days) == 10
    assert abs(sum(float(ml) for _day, ml in found.poured.days) - 200) < 2
    assert found.poured.bottles == 1


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
    by_day = {day.weekday(): float(ml) for day, ml in _plan(house, "Grapefruit mist").poured.days}
    assert abs(by_day[4] / by_day[3] - 3) < 1e-9


def test_drinks_with_a_formula_count_more_than_its_bottle(house: House) -> None:
    ana = house.open_bar(said=[MIST])
    ana.says("drinks 60 grapefruit mist")
    found = _plan(house, "Grapefruit mist")
    # 60 drinks of 2 to 3 sprays of 1/15 to 1/10 mL: 60 * 2.5 * 1/12.
    assert [float(ml) for _day, ml in found.poured.days] == [60 * 2.5 / 12]
    assert found.poured.counted_days == 1


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
    # 300 mL a day or more, but two days and the one it is made on are all it keeps.
    assert found.size_ml <= Fraction(3 * 900)
    assert found.size_ml <= Fraction(found.batch.largest)
    assert (found.batch.discard_on - found.batch.make_on).days == 3


def test_the_rest_is_lead_time(house: House) -> None:
    ana = house.open_bar(said=[MIST])
    _bottle(house, ana, "batch grapefruit mist to 200 ml", days=9)
    ana.says("batch grapefruit mist to 100 ml")  # five days' worth, rests one day
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
    _bottle(house, ana, "batch grapefruit mist to 200 ml", days=9)
    ana.says("stock neutral spirit 50 ml")
    ana.says("stock propylene glycol 1 l")
    said = text(ana.says("shopping"))
    found = _plan(house, "Grapefruit mist")
    assert found.size_ml is not None
    oil = -(-found.size_ml * Fraction(12, 96) // 10)  # packs of 10 mL, none there
    assert f"{oil} x 10 ml" in said
    assert "1 x 1 l" in said
    assert "propylene glycol" not in said
    assert "Never counted, so taken as none: grapefruit oil" in said


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
    assert "Before, it said 140." in text(ana.says("drinks 150 yesterday"))
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
    # Two chances in three that it is enough: of 8, 9, 10 and 12 oranges the third.
    row = next(line.split() for line in said.splitlines() if line.strip().startswith("Wed"))
    assert row[1] == "10"
    assert "all of it is taken to be lost" in said


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
    house.clock.turn(hours=8)  # two in the morning: still Wednesday's night
    ana.says("drinks 140")
    assert "Wed" in text(ana.says("drinks"))
    with house.store.reading() as unit:
        context = people.find(unit, CHANNEL, "ana", "private ana", True).context(
            unit, house.clock.now(), "test"
        )
        assert [one.day for one in drinks.lately(context)] == [date(2026, 11, 25)]
