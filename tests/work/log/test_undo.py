"""Undo and put back of what was logged."""

from __future__ import annotations

from tests.house import House, first_lines, text


def test_an_undo_button_takes_back_its_own_line_and_not_the_newest(house: House) -> None:
    ana = house.open_bar()
    ana.says("price oranges 0.60 each")
    ana.says("price oranges 0.80 each")
    (priced,) = ana.says("price limes 0.20 each")
    ana.says("waste 3 limes")
    undo = next(button for row in priced.buttons for button in row if button.label == "Undo")
    ana.taps_line(undo.line)
    assert first_lines(ana.says("price limes")) == ["What does lime cost? Such as: 0.60 each"]
    assert "lime  3" in text(ana.says("week"))


def test_nothing_is_taken_back_twice(house: House) -> None:
    ana = house.open_bar()
    ana.says("waste 3 limes mouldy")
    assert first_lines(ana.taps("Undo")) == ["Undone: 3 limes, mouldy"]
    assert first_lines(ana.taps("Undo")) == ["You undid that at 18:00."]
    assert first_lines(ana.says("undo")) == ["There is nothing of yours to undo."]


def test_every_change_that_offers_undo_can_be_undone_by_its_button(house: House) -> None:
    ana = house.open_bar()
    ana.says("new formula Brine\nsalt 20 g\nwater 80 ml\nkind saline\nrest 2 h")
    for line in (
        "change brine: salt 25 g",
        "rename brine to Sea brine",
        "bar closing hour 04:00",
        "bar name The Grey Gull",
        "price salt 1 kg 2",
        "batch sea brine x2",
        "lot 1 salt S1",
        "check 1 hazy",
        "batch 1 add 5 ml water",
        "filtered 1, lost 2 ml",
        "open 1",
        "waste 1 kg limes",
        "discard 1 20 ml",
        "archive sea brine",
    ):
        (done,) = ana.says(line)
        assert "Undo" in [button.label for row in done.buttons for button in row], line
        (undone,) = ana.taps("Undo")
        assert undone.first_line.startswith("Undone: "), (line, undone.first_line)
        (again,) = ana.taps("Put it back")
        assert again.first_line == undone.first_line.replace("Undone", "Put back"), line


def test_after_a_day_it_stays_as_it_is(house: House) -> None:
    ana = house.open_bar()
    ana.says("waste 3 limes mouldy")
    house.clock.turn(hours=24)
    house.clock.turn(minutes=1)
    assert first_lines(ana.taps("Undo")) == ["That was logged more than 24 hours ago and stays as it is."]


def test_what_somebody_else_logged_takes_a_manager(house: House) -> None:
    ana = house.open_bar()
    ben = house.joins("Ben")
    cleo = house.joins("Cleo")
    (logged,) = ben.says("waste 3 limes mouldy")
    line = next(button.line for row in logged.buttons for button in row if button.label == "Undo")
    assert "manager" in cleo.taps_line(line)[0].first_line
    assert first_lines(ana.taps_line(line)) == ["Undone: 3 limes, mouldy"]


def test_every_value_of_an_ingredient_can_be_undone(house: House) -> None:
    ana = house.open_bar()
    ana.says("new formula Mist\norange oil 2 ml\ngin 398 ml\nkind tincture\nrest 24 h")
    for asked, told in (
        ("strength gin", "strength gin 47"),
        ("density gin", "density gin 0.93"),
        ("food grade orange oil", "food grade orange oil yes"),
    ):
        before = text(ana.says(asked))
        ana.says("cancel")
        ana.says(told)
        changed = text(ana.says(asked))
        ana.says("cancel")
        assert changed != before, told
        ana.says("undo")
        assert text(ana.says(asked)) == before, told
        ana.says("cancel")
