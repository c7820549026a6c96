"""Tests of waste reports: by shift, compared with purchases and with the time before the spray."""

from __future__ import annotations

from datetime import UTC, datetime
from io import BytesIO

import pytest
from PIL import Image

from tests.house import House, Person, first_lines, lines, text


@pytest.fixture
def ana(house: House) -> Person:
    """The owner of a bar that prices oranges and limes, on the last day of October, at 15:00 in Lisbon."""
    house.clock.set(datetime(2026, 10, 31, 15, tzinfo=UTC))
    return house.open_bar(said=["price oranges 0.50 each, 6 garnishes each", "price limes 0.20 each"])


def test_a_month_is_set_against_the_month_before(house: House, ana: Person) -> None:
    house.clock.set(datetime(2026, 10, 25, 15, tzinfo=UTC))
    ana.says("waste 4 oranges mouldy")
    house.clock.set(datetime(2026, 10, 31, 15, tzinfo=UTC))
    ana.says("waste 6 oranges mouldy")
    house.clock.set(datetime(2026, 11, 30, 20, tzinfo=UTC))
    ana.says("waste 4 oranges mouldy")
    said = text(ana.says("month"))
    assert said.startswith("Waste: €2.00\nSun, 1 Nov to Mon, 30 Nov")
    assert "The month before: €5.00, 60 % less now" in said
    assert text(ana.says("month 2026-10")).startswith("Waste: €5.00\nThu, 1 Oct to Sat, 31 Oct")
    assert text(ana.taps("Last month")).startswith("Waste: €5.00")
    assert first_lines(ana.says("month 2026-13")) == ["There is no month 2026-13."]


def test_one_night_of_the_month_before_says_nothing(house: House, ana: Person) -> None:
    """Regression: it said "91 % less now" from the last night of a month."""
    ana.says("waste 10 oranges mouldy")
    house.clock.set(datetime(2026, 11, 30, 20, tzinfo=UTC))
    ana.says("waste 4 oranges mouldy")
    said = text(ana.says("month"))
    assert "The month before: €5.00, too few nights to say" in said
    assert "less" not in said


def test_a_running_month_is_set_against_as_many_days(house: House, ana: Person) -> None:
    house.clock.set(datetime(2026, 11, 1, 20, tzinfo=UTC))
    ana.says("waste 10 oranges mouldy")
    house.clock.set(datetime(2026, 11, 8, 20, tzinfo=UTC))
    ana.says("waste 10 oranges mouldy")
    house.clock.set(datetime(2026, 12, 3, 20, tzinfo=UTC))
    ana.says("waste 4 oranges mouldy")
    assert "First 3 days of the month before: €5.00, too few nights to say" in text(ana.says("month"))
    house.clock.set(datetime(2026, 12, 8, 20, tzinfo=UTC))
    assert "First 7 days of the month before: €5.00, 60 % less now" in text(ana.says("month"))


@pytest.mark.parametrize("line", ["waste report 2026-10-30 to 2026-11-02", "week 2026-11-02 to 2026-10-30"])
def test_any_days(house: House, ana: Person, line: str) -> None:
    ana.says("waste 10 oranges mouldy")
    house.clock.set(datetime(2026, 11, 3, 20, tzinfo=UTC))
    ana.says("waste 1 orange")
    said = text(ana.says(line))
    assert said.startswith("Waste: €5.00\nFri, 30 Oct to Mon, 2 Nov")
    assert "Nothing logged to compare with: Mon, 26 Oct to Thu, 29 Oct." in said


def test_days_that_no_calendar_has_are_asked_again(ana: Person) -> None:
    assert "“2026-02-30” is no day of the calendar." in text(
        ana.says("waste report 2026-02-30 to 2026-03-02")
    )
    assert "“0” is no day of the calendar." in text(ana.says("report 0 to 15 Nov"))
    assert "Sun, 29 Nov is still to come." in text(ana.says("report from 2026-11-29 to 2026-12-03"))
    assert "more than ten years" in text(ana.says("waste report 1990-01-01 to 2026-03-02"))
    (asked,) = ana.says("waste report")
    assert asked.choosing
    assert first_lines(ana.says("2026-10-01 to 2026-10-02")) == ["No waste logged"]


@pytest.mark.parametrize(
    ("line", "days"),
    [
        ("report from 1 Nov to 15 Nov", "Sun, 1 Nov to Sun, 15 Nov"),
        ("report 1/11 to 15/11", "Sun, 1 Nov to Sun, 15 Nov"),
        ("report 1/2 to 15/2", "Sun, 1 Feb to Sun, 15 Feb"),  # halves are no days here
        ("report 1-15 Nov", "Sun, 1 Nov to Sun, 15 Nov"),
        ("report from the 1st to the 15th of November", "Sun, 1 Nov to Sun, 15 Nov"),
        ("report Nov 12 to 3", "Thu, 12 Nov to Thu, 3 Dec, still running"),
        ("report from 31 to 5 Nov", "Sat, 31 Oct to Thu, 5 Nov"),
        ("report from 1 March to 31 March", "Sun, 1 Mar to Tue, 31 Mar"),  # the last one, not the nearest
        ("report from 20 Dec to 5 Jan", "Sat 20 Dec 2025 to Mon, 5 Jan"),
        ("report monday to sunday", "Mon, 23 Nov to Sun, 29 Nov, still running"),
        ("report last two weeks", "Thu, 12 Nov to Wed, 25 Nov, still running"),
        ("report the last 10 days", "Mon, 16 Nov to Wed, 25 Nov, still running"),
        ("report since 1 Nov", "Sun, 1 Nov to Wed, 25 Nov, still running"),
        ("report from monday", "Mon, 23 Nov to Wed, 25 Nov, still running"),
        ("report for monday", "Mon, 23 Nov"),
        ("week 12 Nov", "Mon, 9 Nov to Sun, 15 Nov"),
    ],
)
def test_days_as_they_are_said(house: House, line: str, days: str) -> None:
    (said,) = house.open_bar().says(line)
    assert days in lines(said, phone=False)


def test_figures_of_days_follow_the_country(house: House) -> None:
    said = text(house.open_bar(city="Chicago").says("report 11/1 to 11/12"))
    assert "Sun, Nov 1 to Thu, Nov 12" in said


@pytest.mark.parametrize(
    ("line", "days"),
    [
        ("informe del 1 al 15 de noviembre", "dom, 1 nov a dom, 15 nov"),
        ("informe 1/11 al 15/11", "dom, 1 nov a dom, 15 nov"),
        ("informe de las últimas dos semanas", "jue, 12 nov al mié, 25 nov, aún sin terminar"),
        ("informe desde el 12 de noviembre", "jue, 12 nov al mié, 25 nov, aún sin terminar"),
        ("informe del 12 de noviembre", "jue, 12 nov"),
    ],
)
def test_days_as_they_are_said_in_spanish(house: House, line: str, days: str) -> None:
    ana = house.open_bar(city="Madrid")
    ana.says("language español")
    assert days in text(ana.says(line)).splitlines()


def test_shifts_part_where_the_bar_says(house: House, ana: Person) -> None:
    ana.says("waste 1 orange mouldy")  # 15:00
    house.clock.turn(hours=6, minutes=59)  # 21:59
    ana.says("waste 2 oranges mouldy")
    house.clock.turn(minutes=1)
    ana.says("waste 4 oranges mouldy")
    house.clock.turn(hours=4)  # two in the morning, the same business day
    ana.says("waste 8 oranges mouldy")
    shifts = [line.split() for line in lines(ana.says("week more")[0]) if "shift" in line]
    assert shifts == [["early", "shift", "3", "€1.50"], ["late", "shift", "12", "€6.00"]]


def test_a_line_taken_back_leaves_its_shift_as_it_was(house: House, ana: Person) -> None:
    ana.says("waste 6 oranges mouldy")
    (logged,) = ana.says("waste 2 oranges mouldy")
    undo = next(button.line for row in logged.buttons for button in row if button.label == "Undo")
    house.clock.turn(hours=9)
    ana.taps_line(undo)
    assert ["early", "shift", "6", "€3.00"] in [line.split() for line in lines(ana.says("week more")[0])]


def test_the_share_of_what_was_bought(ana: Person) -> None:
    ana.says("bought 40 oranges 20")
    ana.says("waste 6 oranges mouldy, 3 limes")
    assert "Of what was bought: orange 15 %" in text(ana.says("week"))


def _nights(house: House, ana: Person, pieces: list[int], first: datetime, fruit: str = "orange") -> None:
    for night, number in enumerate(pieces):
        house.clock.set(first.replace(day=first.day + night))
        if number:
            ana.says(f"waste {number} {fruit} peeled")


def test_against_the_time_before_the_spray(house: House, ana: Person) -> None:
    """Fourteen nights of 6 and 4 in turn, a mean of 5; then 1 in each of fourteen."""
    _nights(house, ana, [6, 4] * 7, datetime(2026, 11, 2, 20, tzinfo=UTC))
    _nights(house, ana, [1] * 14, datetime(2026, 11, 16, 20, tzinfo=UTC))
    assert "spray" not in text(ana.says("week"))
    assert first_lines(ana.says("spraying orange since 2026-11-16")) == ["orange: sprayed since 16 Nov 2026."]
    # One whole week since is too little; the running one does not count.
    house.clock.set(datetime(2026, 11, 29, 20, tzinfo=UTC))
    said = " ".join(text(ana.says("week")).split())
    assert "Sun, 29 Nov, still running" in said
    assert (
        "no verdict yet. In whole weeks 14 nights were logged before and 7 since; it takes 14 each." in said
    )
    house.clock.set(datetime(2026, 11, 30, 20, tzinfo=UTC))
    said = " ".join(text(ana.says("week last week")).split())
    assert "Since the spray: orange 79 % less (29 to 94 %)" in said
    assert "nothing unsprayed is logged beside it" in said


def test_other_fruit_that_falls_as_much_takes_the_claim_away(house: House, ana: Person) -> None:
    _nights(house, ana, [6, 4] * 7, datetime(2026, 11, 2, 20, tzinfo=UTC))
    _nights(house, ana, [6, 4] * 7, datetime(2026, 11, 2, 20, tzinfo=UTC), "lime")
    _nights(house, ana, [1] * 14, datetime(2026, 11, 16, 20, tzinfo=UTC))
    _nights(house, ana, [1] * 14, datetime(2026, 11, 16, 20, tzinfo=UTC), "lime")
    ana.says("spraying orange since 2026-11-16")
    house.clock.set(datetime(2026, 11, 30, 20, tzinfo=UTC))
    said = " ".join(text(ana.says("week last week")).split())
    assert "Since the spray, beside lime: orange" in said
    assert "may be chance" in said
    assert "so it shows nothing yet" in said


def test_the_first_batch_that_replaces_a_garnish_tells_it(house: House, ana: Person) -> None:
    ana.says("new formula Mist\norange oil 8 ml\nneutral spirit 96 % 92 ml\nkind aroma mist\nreplaces orange")
    assert first_lines(ana.says("spraying")) == ["No garnish is sprayed yet, as far as I know."]
    ana.says("batch mist x1")
    house.clock.turn(days=3)
    ana.says("check 1 clear")
    ana.says("open 1")
    assert "orange  3 Nov 2026  first opened" in text(ana.says("spraying"))
    ana.says("spraying orange since 2026-10-20")
    assert "orange  20 Oct 2026  as said" in text(ana.says("spraying"))
    ana.says("undo")
    assert "first opened" in text(ana.says("spraying"))
    ana.says("spraying orange never")
    assert first_lines(ana.says("spraying")) == ["No garnish is sprayed yet, as far as I know."]
    assert "still to come" in text(ana.says("spraying orange since 2030-01-01"))


@pytest.mark.parametrize("look", ["light", "dark"])
def test_the_picture_fits_a_phone_on_either_ground(ana: Person, look: str) -> None:
    ana.says("waste 6 oranges mouldy, 3 limes")
    ana.says(f"bar pictures {look}")
    ana.says("week")
    (sent,) = ana.taps("Picture")
    (file,) = sent.files
    assert file.picture
    image = Image.open(BytesIO(file.content)).convert("L")
    assert image.width == 1140
    ground = set(image.crop((0, 0, 10, 10)).tobytes())
    assert len(ground) == 1
    assert max(ground) > 240 if look == "light" else max(ground) < 60


def test_without_prices_there_is_nothing_to_draw(house: House) -> None:
    ana = house.open_bar()
    ana.says("waste 6 pears")
    ana.says("waste 6 lemons")
    assert "No waste with a price" in text(ana.says("week picture"))


def test_the_answer_fits_a_phone(ana: Person) -> None:
    fruit = ("oranges", "limes", "lemons", "grapefruits", "mandarins", "clementines")
    reasons = ("mouldy", "dried out", "peeled", "over-prepped", "damaged", "other")
    for number, name in enumerate(fruit):
        ana.says(f"price {name} 0.{number + 1}0 each")
        ana.says(f"bought 40 {name}")
        ana.says(f"waste {number + 2} {name} {reasons[number]}")
    (answer,) = ana.says("week")
    assert len([line for line in lines(answer, phone=False) if not line.startswith("[")]) <= 13
