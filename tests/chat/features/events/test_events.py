"""Tests of events in conversations: stock, earlier events, changes, the packing list, usual nights, files."""

from __future__ import annotations

import io
import json

import pypdfium2
import pytest

from bot.chat.reply.message import Reply
from tests.chat.features.liquids.mixes import MIST
from tests.house import House, Person
from tests.house import text as house_text
from tests.work.transfer.files import Sends, exported

# The clock of a house begins on Wed, 25 Nov 2026.
SPRAYED = MIST + "\nsprays 2-3"
ORANGE = SPRAYED.replace("Grapefruit", "Orange").replace("grapefruit", "orange")


def _text(replies: list[Reply]) -> str:
    """Return replies without line breaks, which depend on the width."""
    return " ".join(house_text(replies).split())


def _bar(house: House, *lines: str) -> Person:
    ana = house.open_bar()
    for line in (SPRAYED, *lines):
        ana.says(line)
    return ana


def _planned(person: Person) -> str:
    return _text(person.says("reminders"))


def test_a_batch_on_hand_is_taken_once_for_two_events(house: House) -> None:
    ana = _bar(house, "batch grapefruit mist to 4 x 50 ml")
    first = _text(ana.says("event 300 guests 5 Dec, 2 drinks each, grapefruit mist"))
    assert "155 ml in batch 1, good until" in first
    assert "Nothing to make" in first
    second = _text(ana.says("event 300 guests 12 Dec, 2 drinks each, grapefruit mist"))
    assert "45 ml in batch 1, good until" in second
    assert "Make by Wed, 9 Dec, with time for the rest and a second try: Grapefruit mist 3 x 50 ml" in second
    # The other event gets all of it once the first is cancelled.
    ana.says("cancel event 1")
    assert "155 ml in batch 1, good until" in _text(ana.says("events 2"))


def test_the_usual_use_until_an_event_stays_with_the_bar(house: House) -> None:
    ana = _bar(house, "bar drinks a week 1400", "batch grapefruit mist to 6 x 50 ml")
    said = _text(ana.says("event 300 guests 5 Dec, 2 drinks each, grapefruit mist"))
    assert "in batch 1" not in said  # the bar uses more than 300 ml until then
    assert "4 x 50 ml" in said


def test_the_plan_leaves_alone_what_an_event_takes(house: House) -> None:
    ana = _bar(house, "bar drinks a week 70", "batch grapefruit mist to 8 x 50 ml")
    before = _text(ana.says("plan grapefruit mist"))
    ana.says("event 300 guests 5 Dec, 2 drinks each, grapefruit mist")
    after = _text(ana.says("plan grapefruit mist"))
    assert "Kept for the event on Sat, 5 Dec: 155 ml of batch 1" in after
    assert before.split(" Grapefruit mist on ")[1][:12] != after.split(" Grapefruit mist on ")[1][:12]


def test_a_batch_made_for_an_event_is_kept_for_it_until_it_is_undone(house: House) -> None:
    ana = _bar(house, "event 300 guests 5 Dec, 2 drinks each, grapefruit mist")
    made = _text(ana.says("batch grapefruit mist to 4 x 50 ml for event 1"))
    assert "For the event on Sat, 5 Dec." in made
    ana.says("event 300 guests 4 Dec, 2 drinks each, grapefruit mist")
    assert "batch 1" not in _text(ana.says("events 2"))
    assert "155 ml in batch 1, made for this event" in _text(ana.says("events 1"))
    ana.says("undo")
    ana.says("undo")
    assert "batch 1" not in _text(ana.says("events 1"))


def test_moving_an_event_moves_its_reminders_and_undo_moves_them_back(house: House) -> None:
    ana = _bar(house, "event 300 guests 5 Dec, 2 drinks each, grapefruit mist")
    assert "Fri, 4 Dec 16:00: Pack for the event on Sat, 5 Dec" in _planned(ana)
    ana.says("move event 1 to 12 Dec")
    moved = _planned(ana)
    assert "Fri, 11 Dec 16:00: Pack for the event on Sat, 12 Dec" in moved
    assert "5 Dec" not in moved
    ana.says("undo")
    back = _planned(ana)
    assert "Fri, 4 Dec 16:00: Pack for the event on Sat, 5 Dec" in back
    assert "12 Dec" not in back
    ana.says("put back")
    assert _planned(ana) == moved


@pytest.mark.parametrize(
    "line",
    ["event 300 -> 280 guests", "change event 1 280 guests", "change event 300 to 280 guests"],
)
def test_guests_change_however_it_is_said(house: House, line: str) -> None:
    ana = _bar(house, "event 300 guests 5 Dec, 2 drinks each, grapefruit mist")
    assert "Sat, 5 Dec: 280 guests, about 560 drinks" in _text(ana.says(line))
    assert "changed event 1: 280 guests on Sat, 5 Dec" in _text(ana.says("log"))


@pytest.mark.parametrize(
    ("came_back", "learned", "bottles"),
    [
        # 50 ml used, times exp(1.533 * 0.09975 * sqrt(2)), by hand.
        pytest.param(
            "150 ml",
            "Grapefruit mist: 62 ml, by what 1 earlier event used. By the sprays alone: 156 ml.",
            "2 x 50 ml",
            id="feeds the next event",
        ),
        pytest.param(
            "0 ml of 50 ml",
            "nothing came back at an earlier event",
            "4 x 50 ml",
            id="may have run out, so never lowers the amount",
        ),
    ],
)
def test_what_came_back_counts_for_the_next_event(
    house: House, came_back: str, learned: str, bottles: str
) -> None:
    ana = _bar(house, "event 300 guests 5 Dec, 2 drinks each, grapefruit mist")
    house.clock.turn(days=11)
    ana.says(f"came back 1 {came_back} grapefruit mist")
    said = _text(ana.says("event 300 guests 20 Dec, 2 drinks each, grapefruit mist"))
    assert learned in said
    assert bottles in said


def test_what_came_back_is_asked_for_each_preparation(house: House) -> None:
    ana = _bar(house, ORANGE, "event 300 guests 5 Dec, 2 drinks each, orange mist and grapefruit mist")
    house.clock.turn(days=11)
    assert "How much Orange mist came back, of 2 x 50 ml?" in _text(ana.says("came back"))
    assert "How much Grapefruit mist came back" in _text(ana.taps("Half came back"))
    said = _text(ana.taps("All used"))
    assert "Orange mist: used 50 ml of 100 ml" in said
    assert "Grapefruit mist: used 100 ml of 100 ml" in said
    assert "Undone: what came back from event 1" in _text(ana.says("undo"))


def test_bottles_are_counted_for_each_preparation(house: House) -> None:
    ana = _bar(house, ORANGE, "event 900 guests 5 Dec, 2 drinks each, orange mist and grapefruit mist")
    house.clock.turn(days=11)
    ana.says("came back")
    ana.says("1")
    said = _text(ana.says("2"))
    assert "Orange mist: used 250 ml of 300 ml" in said
    assert "Grapefruit mist: used 200 ml of 300 ml" in said


def test_what_cannot_be_made_in_time_is_not_asked_for(house: House) -> None:
    ana = _bar(house)
    said = _text(ana.says("event 300 guests today, 2 drinks each, grapefruit mist"))
    assert "Too late to make and rest before the event: Grapefruit mist" in said
    assert "to buy" not in said
    assert "Make" not in _text(ana.says("today"))


def test_an_event_night_is_no_usual_night(house: House) -> None:
    ana = _bar(house, *(f"drinks 40 grapefruit mist 2026-11-{day}" for day in range(16, 25)))
    house.clock.turn(days=10)
    ana.says("event 300 guests 5 Dec, 2 drinks each, grapefruit mist")
    before = _text(ana.says("plan grapefruit mist"))
    ana.says("drinks 600 grapefruit mist")
    after = _text(ana.says("plan grapefruit mist"))
    assert "An event, so no usual night: Sat, 5 Dec" in after
    assert "From 9 nights counted" in before
    assert "From 9 nights counted" in after
    week = _text(ana.says("week"))
    assert "Apart, the event on Sat, 5 Dec: 300 guests; what came back is not noted" in week
    assert "600" not in week


def test_an_event_night_is_no_usual_night_for_the_morning_par(house: House) -> None:
    ana = _bar(house, "price oranges 0.60 each, 1 garnish each", "drinks 40 orange 2026-11-21")
    house.clock.turn(days=10)
    ana.says("event 300 guests 5 Dec, 2 drinks each, grapefruit mist")
    ana.says("drinks 600 orange")
    said = _text(ana.says("fruit par orange"))
    assert "An event, so no usual night: Sat, 5 Dec" in said
    assert "Sat 40" in said


@pytest.mark.parametrize(("city", "size"), [("Lisbon", (595, 842)), ("Chicago", (612, 792))])
@pytest.mark.long
def test_the_packing_list_is_one_page_of_the_paper_of_the_country(
    house: House, city: str, size: tuple[int, int]
) -> None:
    ana = house.open_bar(city=city)
    names = [f"Long name of a mist number {number} for a grand evening" for number in range(1, 9)]
    for name in names:
        ana.says(SPRAYED.replace("Grapefruit mist", name))
    (said,) = ana.says(f"event 900 guests 2026-12-05, 2 drinks each, {', '.join(names)}")
    (page,) = [file for file in said.files if not file.picture]
    document = pypdfium2.PdfDocument(io.BytesIO(page.content))
    assert len(document) == 1
    assert tuple(round(side) for side in document[0].get_size()) == size
    written = document[0].get_textpage().get_text_range()
    assert all(name in written for name in names)


def test_events_come_out_again_as_they_went_in(house: House) -> None:
    ana = _bar(
        house,
        "event 300 guests 5 Dec, 2 drinks each, grapefruit mist",
        "event 100 guests 20 Dec, 2 drinks each, grapefruit mist",
        "batch grapefruit mist to 4 x 50 ml for event 2",
    )
    house.clock.turn(days=11)
    ana.says("came back 1 120 ml of 250 ml grapefruit mist")
    first = json.loads(exported(ana)["peel-ledger.json"])
    eve = house.open_bar("Eve", "The Grey Gull")
    Sends(house, eve).and_takes_in("bar.json", json.dumps(first).encode())
    second = json.loads(exported(eve)["peel-ledger.json"])
    assert [one["taken"] for one in first["events"]] == [{"Grapefruit mist": "250"}, {}]
    assert first["events"] == second["events"]
    eve.says("move event 2 to 22 Dec")
    assert "20 Dec" not in _planned(eve)


# -- what came from stock --------------------------------------------------------------------------------

_EVENT = "event 300 guests 5 Dec, 2 drinks each, grapefruit mist"


def _over(house: House, *lines: str) -> Person:
    """Return who runs a bar on the day after its event."""
    ana = _bar(house, *lines)
    house.clock.turn(days=11)
    return ana


def _lines(replies: list[Reply]) -> list[str]:
    """Return the lines of the buttons that take something off a batch."""
    buttons = (button for one in replies for row in one.buttons for button in row)
    return [button.line for button in buttons if button.line.startswith("used ")]


def test_what_an_event_used_of_stock_is_offered_and_only_the_tap_writes_it(house: House) -> None:
    ana = _over(house, "batch grapefruit mist to 8 x 50 ml", "bottled 1 8 x 50 ml", _EVENT)
    assert "Note first what Grapefruit mist came back" in _text(ana.says("used 1 80 ml for event 1"))
    offered = ana.says("came back 1 120 ml of 200 ml grapefruit mist")
    assert "80 ml Grapefruit mist came from stock" in _text(offered)
    assert _lines(offered) == ["used 1 80 ml for event 1"]
    assert "8 of 8 x 50 ml unopened" in _text(ana.says("batch 1"))
    for amount in ("300 ml", "82 ml"):
        assert "Only 80 ml of what the event on Sat, 5 Dec used" in _text(
            ana.says(f"used 1 {amount} for event 1")
        )
    taken = ana.says("used 1 80 ml for event 1")
    left = "6 of 8 x 50 ml unopened, 22 ml not bottled, 80 ml used at events"
    assert left in _text(taken)
    assert _lines(ana.says("events 1")) == []
    assert "is off its batches" in _text(ana.says("used 80 ml of 1 for event 1"))
    assert "#6 Sun, 6 Dec 18:00, Ana: 80 ml of batch 1 used at event 1" in _text(ana.says("log"))
    ana.says("undo")
    assert "8 of 8 x 50 ml unopened, 2 ml not bottled " in _text(ana.says("batch 1"))
    assert _lines(ana.says("events 1")) == ["used 1 80 ml for event 1"]
    ana.says("put back")
    assert left in _text(ana.says("batch 1"))
    assert _lines(ana.says("events 1")) == []


def test_more_used_than_was_noted_first_is_offered_once(house: House) -> None:
    ana = _over(house, "batch grapefruit mist to 8 x 50 ml", _EVENT)
    ana.says("came back 1 120 ml of 200 ml grapefruit mist")
    ana.says("used 1 80 ml for event 1")
    assert _lines(ana.says("came back 1 100 ml of 200 ml grapefruit mist")) == ["used 1 20 ml for event 1"]
    corrected = ana.says("came back 1 150 ml of 200 ml grapefruit mist")
    assert "30 ml Grapefruit mist too much is off its batches" in _text(corrected)
    assert _lines(corrected) == []
    assert "All that the event on Sat, 5 Dec used" in _text(ana.says("used 1 20 ml for event 1"))


def test_of_several_batches_the_bar_says_which(house: House) -> None:
    ana = _over(
        house,
        "batch grapefruit mist to 50 ml",
        "batch grapefruit mist to 8 x 50 ml",
        "batch grapefruit mist to 50 ml",
        "discard 3 50 ml, split",
        _EVENT,
    )
    ana.says("batch grapefruit mist to 100 ml")  # made after the event
    offered = ana.says("came back 1 120 ml of 200 ml grapefruit mist")
    assert _lines(offered) == ["used 1 50 ml for event 1", "used 2 80 ml for event 1"]
    taken = ana.says("used 1 50 ml for event 1")
    assert _lines(taken) == ["used up 1", "used 2 30 ml for event 1"]
    assert _lines(ana.says("used 2 30 ml for event 1")) == []


def test_a_batch_made_for_the_event_is_not_taken_off_twice(house: House) -> None:
    ana = _over(
        house, _EVENT, "batch grapefruit mist to 3 x 50 ml for event 1", "batch grapefruit mist to 400 ml"
    )
    offered = ana.says("came back 1 100 ml of 200 ml grapefruit mist")
    assert _lines(offered) == ["used 2 25 ml for event 1"]  # by hand: 100 x (200 - 150.5) / 200
    assert "what came back counts for it already" in _text(ana.says("used 1 25 ml for event 1"))


def test_a_later_event_takes_what_came_back_from_an_earlier_one(house: House) -> None:
    ana = _over(house, _EVENT, "batch grapefruit mist to 4 x 50 ml for event 1")
    ana.says("came back 1 100 ml of 200 ml grapefruit mist")
    ana.says("event 300 guests 7 Dec, 2 drinks each, grapefruit mist")
    house.clock.turn(days=2)
    assert _lines(ana.says("came back 2 40 ml of 100 ml grapefruit mist")) == ["used 1 60 ml for event 2"]
    ana.says("used 1 60 ml for event 2")
    left = _text(ana.says("event 300 guests 20 Dec, 2 drinks each, grapefruit mist"))
    assert "40 ml in batch 1" in left  # by hand: 201 x 100 / 200 - 60, not (201 - 60) x 100 / 200


def test_a_batch_that_an_event_used_is_no_usual_use(house: House) -> None:
    ana = _over(house, "batch grapefruit mist to 100 ml", "batch grapefruit mist to 100 ml", _EVENT)
    before = _text(ana.says("plan grapefruit mist"))
    ana.says("came back 1 0 ml of 100 ml grapefruit mist")
    ana.says("used 1 100 ml for event 1")
    ana.says("used up 1")
    assert "I don't know how much Grapefruit mist you use" in before
    assert "bottle" not in _text(ana.says("plan grapefruit mist"))


def test_what_an_event_used_of_stock_comes_out_again_as_it_went_in(house: House) -> None:
    ana = _over(house, "batch grapefruit mist to 8 x 50 ml", "bottled 1 8 x 50 ml", _EVENT)
    ana.says("came back 1 120 ml of 200 ml grapefruit mist")
    ana.says("used 1 80 ml for event 1")
    first = json.loads(exported(ana)["peel-ledger.json"])
    eve = house.open_bar("Eve", "The Grey Gull")
    eve.says("new formula House syrup\nsugar 1 kg\nwater 1 l\nkind syrup")
    eve.says("batch house syrup x1")  # so that the batch gets another number
    Sends(house, eve).and_takes_in("bar.json", json.dumps(first).encode())
    second = json.loads(exported(eve)["peel-ledger.json"])
    assert list(first["events"][0]["drawn"].values()) == ["80"]
    assert first["events"] == second["events"]
    assert "6 of 8 x 50 ml unopened, 22 ml not bottled, 80 ml used at events" in _text(eve.says("batch 2"))
    assert _lines(eve.says("events 1")) == []
