from __future__ import annotations

from datetime import UTC, date, datetime, timedelta
from zoneinfo import ZoneInfo

import pytest
from hypothesis import given
from hypothesis import strategies as st

from bot.trade.batches.keeping import Made, usual_time
from bot.trade.batches.shelf import (
    FoodCodeCover,
    IngredientDate,
    NaiveTimeError,
    OilBottle,
    ShelfQuestion,
    ShelfRule,
    food_code_cover,
    oil_discard_on,
    shelf_plan,
)
from bot.trade.errors import OutOfRangeError
from bot.trade.formulas.kinds import PREPARATION_DEFAULTS, IngredientKind, Preparation
from bot.trade.safety.jurisdiction import Jurisdiction

K = IngredientKind
P = Preparation
MADE = datetime(2026, 3, 10, 18, 0, tzinfo=ZoneInfo("Europe/London"))

_days = st.integers(0, 400)


def _ask(preparation: Preparation = P.AROMA_MIST, **more: object) -> ShelfQuestion:
    given_ = {"made_at": MADE, "jurisdiction": Jurisdiction.EU, **more}
    return ShelfQuestion(preparation, **given_)  # type: ignore[arg-type]


def test_a_mist_by_its_kind() -> None:
    plan = shelf_plan(_ask())
    assert plan.rest_until == MADE + timedelta(hours=24)
    assert plan.recheck_on == date(2026, 4, 9)
    assert plan.discard_on == date(2026, 9, 6)
    assert plan.winner.rule is ShelfRule.KIND
    assert not plan.ask_inspector
    assert not plan.longer_than_usual


def test_the_formulas_own_time_takes_the_place_of_the_kinds() -> None:
    plan = shelf_plan(_ask(discard_days=365, rest_hours=48, recheck_days=10))
    assert plan.winner.rule is ShelfRule.FORMULA
    assert plan.discard_on == date(2027, 3, 10)
    assert plan.rest_until == MADE + timedelta(hours=48)
    assert plan.recheck_on == date(2026, 3, 20)
    assert plan.longer_than_usual
    assert all(candidate.rule is not ShelfRule.KIND for candidate in plan.candidates)


def test_a_formula_saved_with_the_usual_time_names_the_kind() -> None:
    assert shelf_plan(_ask(discard_days=180)).winner.rule is ShelfRule.KIND
    assert shelf_plan(_ask(discard_days=179)).winner.rule is ShelfRule.FORMULA


def test_opening_starts_its_own_clock() -> None:
    opened = shelf_plan(_ask(opened_on=date(2026, 4, 1)))
    assert opened.winner.rule is ShelfRule.OPENED
    assert opened.discard_on == date(2026, 4, 1) + timedelta(days=90)
    late = shelf_plan(_ask(opened_on=date(2026, 9, 1)))
    assert late.winner.rule is ShelfRule.KIND
    own = shelf_plan(_ask(opened_on=date(2026, 4, 1), opened_days=5))
    assert own.discard_on == date(2026, 4, 6)


def test_the_oldest_oil_can_win_and_is_named() -> None:
    oils = (
        OilBottle("lime oil", opened_on=date(2026, 3, 1), kept_cold=True),
        OilBottle("lemon oil", date(2025, 12, 1)),
    )
    plan = shelf_plan(_ask(oils=oils))
    assert plan.winner.rule is ShelfRule.OIL
    assert plan.winner.subject == "lemon oil"
    assert plan.discard_on == date(2025, 12, 1) + timedelta(days=182)


def test_an_oil_already_past_says_so() -> None:
    plan = shelf_plan(_ask(oils=(OilBottle("old oil", best_before=date(2026, 1, 1)),)))
    assert plan.past_when_made
    assert plan.recheck_on is None


def test_an_oil_of_unknown_age_has_no_date() -> None:
    assert oil_discard_on(OilBottle("oil")) is None
    assert oil_discard_on(OilBottle("oil", date(2026, 1, 1), date(2026, 2, 1), kept_cold=True)) == date(
        2026, 2, 1
    )
    assert shelf_plan(_ask(oils=(OilBottle("oil"),))).winner.rule is ShelfRule.KIND


def test_covered_food_in_the_united_states_gets_seven_days_with_the_first_as_one() -> None:
    plan = shelf_plan(_ask(P.SYRUP, jurisdiction=Jurisdiction.US, made=Made((("watermelon", K.FRUIT),))))
    assert plan.winner.rule is ShelfRule.FOOD_CODE
    assert plan.winner.certain
    assert plan.discard_on == date(2026, 3, 16)
    assert not plan.ask_inspector
    elsewhere = shelf_plan(_ask(P.SYRUP, made=Made((("watermelon", K.FRUIT),))))
    assert elsewhere.winner.rule is ShelfRule.KIND
    assert elsewhere.ask_inspector


def test_citrus_juice_gets_the_seven_days_as_an_uncertain_outer_bound() -> None:
    plan = shelf_plan(_ask(P.JUICE, jurisdiction=Jurisdiction.US, discard_days=20))
    assert plan.winner.rule is ShelfRule.FOOD_CODE
    assert not plan.winner.certain
    assert plan.ask_inspector
    assert shelf_plan(_ask(P.JUICE, jurisdiction=Jurisdiction.US)).winner.rule is ShelfRule.KIND
    assert shelf_plan(_ask(P.JUICE)).ask_inspector


@pytest.mark.parametrize(
    ("preparation", "name", "kind", "cover"),
    [
        (P.CORDIAL, "lime juice", K.JUICE, FoodCodeCover.NOT_NAMED),
        (P.CORDIAL, "cream", K.OTHER, FoodCodeCover.COVERED),
        (P.SYRUP, "cream of tartar", K.OTHER, FoodCodeCover.NOT_CONCERNED),
        (P.SYRUP, "sugar", K.SUGAR, FoodCodeCover.NOT_CONCERNED),
        (P.INFUSION, "melon", K.FRUIT, FoodCodeCover.NOT_NAMED),
        (P.INFUSION, "orange peel", K.FRUIT, FoodCodeCover.NOT_CONCERNED),
        (P.OTHER, "garlic in oil", K.OTHER, FoodCodeCover.COVERED),
    ],
)
def test_what_date_marking_reaches(
    preparation: Preparation, name: str, kind: IngredientKind, cover: FoodCodeCover
) -> None:
    assert food_code_cover(preparation, ((name, kind),)) is cover


def test_a_mixture_takes_its_earliest_ingredients_date() -> None:
    dates = (IngredientDate("lime juice", date(2026, 3, 12)), IngredientDate("syrup", date(2026, 3, 20)))
    plan = shelf_plan(_ask(P.CORDIAL, ingredient_dates=dates))
    assert (plan.winner.rule, plan.winner.subject) == (ShelfRule.INGREDIENT, "lime juice")


def test_of_two_rules_on_one_day_the_food_code_is_told() -> None:
    plan = shelf_plan(
        _ask(P.SYRUP, jurisdiction=Jurisdiction.US, discard_days=6, made=Made((("melon", K.FRUIT),)))
    )
    assert [c.discard_on for c in plan.candidates[:2]] == [date(2026, 3, 16)] * 2
    assert plan.winner.rule is ShelfRule.FOOD_CODE


@pytest.mark.parametrize(
    ("zone", "made", "rested"),
    [
        ("Europe/London", "2026-03-28T18:00", "2026-03-29T19:00"),
        ("Europe/London", "2026-10-24T18:00", "2026-10-25T17:00"),
        ("America/New_York", "2026-03-07T18:00", "2026-03-08T19:00"),
        ("Asia/Tokyo", "2026-03-28T18:00", "2026-03-29T18:00"),
    ],
)
def test_rest_counts_hours_that_pass(zone: str, made: str, rested: str) -> None:
    place = ZoneInfo(zone)
    plan = shelf_plan(_ask(made_at=datetime.fromisoformat(made).replace(tzinfo=place)))
    assert plan.rest_until.tzinfo is place
    assert plan.rest_until.replace(tzinfo=None) == datetime.fromisoformat(rested)


def test_the_business_day_may_differ_from_the_clock() -> None:
    after_midnight = datetime(2026, 3, 11, 1, 30, tzinfo=UTC)
    plan = shelf_plan(_ask(P.JUICE, made_at=after_midnight, made_on=date(2026, 3, 10)))
    assert plan.discard_on == date(2026, 3, 11)


def test_refuses_times_that_cannot_be() -> None:
    with pytest.raises(NaiveTimeError):
        _ask(made_at=datetime(2026, 3, 10, 18, 0))  # noqa: DTZ001 - the point of the test
    for bad in ({"rest_hours": -1}, {"discard_days": -1}, {"recheck_days": 4000}, {"opened_days": -2}):
        with pytest.raises(OutOfRangeError):
            _ask(P.SYRUP, **bad)


@given(
    st.sampled_from(Preparation),
    st.sampled_from(Jurisdiction),
    st.one_of(st.none(), _days),
    st.one_of(st.none(), _days),
    st.lists(st.tuples(_days, st.booleans()), max_size=3),
)
def test_the_earliest_candidate_wins_and_nothing_lengthens_it(
    preparation: Preparation,
    place: Jurisdiction,
    own: int | None,
    opened: int | None,
    oils: list[tuple[int, bool]],
) -> None:
    made = MADE.date()
    bottles = tuple(OilBottle("oil", made - timedelta(days=ago), None, cold) for ago, cold in oils)
    opened_on = None if opened is None else made + timedelta(days=opened)
    base = shelf_plan(_ask(preparation, jurisdiction=place, discard_days=own))
    plan = shelf_plan(
        _ask(preparation, jurisdiction=place, discard_days=own, opened_on=opened_on, oils=bottles)
    )
    assert plan.discard_on == min(candidate.discard_on for candidate in plan.candidates)
    assert plan.discard_on <= base.discard_on
    usual = PREPARATION_DEFAULTS[preparation].discard_days if own is None else own
    assert plan.discard_on <= made + timedelta(days=usual)
    assert plan.recheck_on is None or plan.recheck_on < plan.discard_on


def test_strength_and_what_is_in_it_decide_the_usual_time() -> None:
    gin = ("gin", K.SPIRIT)
    assert usual_time(P.TINCTURE, Made((gin,), 60.0, 0.4)).days == 365
    assert usual_time(P.TINCTURE, Made((gin,), 4.6, 0.9)).days == 6
    assert usual_time(P.INFUSION, Made((gin, ("orange peel", K.FRUIT)), 60.0, 0.4)).days == 30
    assert usual_time(P.INFUSION, Made((gin, ("dried orange peel", K.FRUIT)), 60.0, 0.4)).days == 90
    assert usual_time(P.INFUSION, Made((gin, ("lime juice", K.JUICE)), 30.0, 0.7)).days == 6
    assert usual_time(P.TINCTURE, Made((gin,), 5.0, 0.9, sugar_g_per_l=620.0)).days == 14
    # Oil in glycol has no water for anything to grow in.
    assert usual_time(P.AROMA_MIST, Made((("lime oil", K.CITRUS_OIL),), 0.0, 0.0)).days == 180
    # Nothing is longer than its kind.
    assert usual_time(P.JUICE, Made((("milk", K.OTHER),), 0.0, 1.0)).days == 1


def test_a_shortened_time_is_cold_named_and_left_to_the_inspector() -> None:
    plan = shelf_plan(_ask(P.INFUSION, discard_days=90, made=Made((("gin", K.SPIRIT),), 3.6, 0.96)))
    assert plan.winner.rule is ShelfRule.SHORTENED
    assert plan.discard_on == date(2026, 3, 16)
    assert plan.keep_cold
    assert plan.ask_inspector
    own = shelf_plan(_ask(P.INFUSION, discard_days=60, made=Made((("gin", K.SPIRIT),), 3.6, 0.96)))
    assert own.winner.rule is ShelfRule.FORMULA
    assert own.longer_than_usual
    assert own.ask_inspector


@given(st.sampled_from(P), st.floats(0, 100), st.floats(0, 1), st.sampled_from(K))
def test_no_content_lengthens_a_usual_time(preparation: P, percent: float, water: float, kind: K) -> None:
    bare = usual_time(preparation, Made((), percent, water))
    more = usual_time(preparation, Made((("lime", kind), ("cream", K.OTHER)), percent, water))
    assert more.days <= bare.days <= PREPARATION_DEFAULTS[preparation].discard_days
