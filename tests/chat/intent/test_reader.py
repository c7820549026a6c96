"""Free lines: read, offered, confirmed, and left alone."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from bot.chat.grammar.lexer import Vocabulary
from bot.chat.i18n.language import Tongue, speaking
from bot.chat.intent.reading.pieces import pieces_of
from bot.chat.intent.reading.tokens import tokens_of
from tests.house import House, Person, first_lines, lines, text

_WORDS = """a an 4 x 50 ml / % $ - last week this half fifties oranges 🍊 A2231 2 bottles of euros ct 8:30
today""".split()  # noqa: SIM905
_BUNGED = "we bunged {count} limes in the trash they were furry"


@pytest.fixture
def ana(house: House) -> Person:
    """The owner of a bar with one formula."""
    ana = house.open_bar()
    ana.says(
        "new formula Grapefruit mist\ngrapefruit oil 12 ml\nneutral spirit 96 % 60 ml\nkind aroma mist"
        "\nrest 1 day\ndiscard 180 days\n2 to 3 sprays"
    )
    return ana


def _logged(ana: Person) -> str:
    return text(ana.says("log"))


@pytest.mark.parametrize(
    ("line", "read"),
    [
        ("could you tell me how much i need to fill six 50 ml bottles of grapefruit mist", "6 x 50 ml"),
        ("pls what did we chuck out last week", "week"),
        ("waste numbers for the month", "month"),
        ("what goes into the grapefruit mist", "formula Grapefruit mist"),
        ("whats the abv on the grapefruit one", "strength Grapefruit mist"),
    ],
)
def test_a_line_that_only_asks_is_answered_with_how_it_was_read(ana: Person, line: str, read: str) -> None:
    (reply, *_rest) = ana.says(line)
    assert reply.first_line.startswith("Read as: ")
    assert read in reply.first_line


@pytest.mark.parametrize(
    ("line", "read"),
    [
        ("remind me what goes in the grapefruit mist", "Read as: formula Grapefruit mist"),
        ("received: 50 lemons, 20 limes", "Read as: bought 50 lemons; 20 limes"),
        ("change the name on grapefruit mist to sunrise mist", "Read as: rename Grapefruit mist"),
    ],
)
def test_a_sentence_where_any_words_may_stand_is_read_by_its_meaning(
    ana: Person, line: str, read: str
) -> None:
    before = _logged(ana), text(ana.says("bar"))
    assert ana.says(line)[0].first_line.startswith(read)
    assert (_logged(ana), text(ana.says("bar"))) == before


@pytest.mark.parametrize(
    ("line", "asks"),
    [
        ("why did it split into two layers", True),
        ("why did it split into 2 layers", True),
        ("why has batch two layers", False),
        ("why is two hazy", False),
    ],
)
def test_a_number_that_counts_something_names_no_batch(ana: Person, line: str, asks: bool) -> None:
    for _number in range(2):
        ana.says("batch grapefruit mist x1")
    (reply, *_rest) = ana.says(line)
    assert reply.first_line == ("Read as: why" if asks else "Read as: why 2")


def test_a_line_that_writes_waits_for_a_tap(ana: Person) -> None:
    before = _logged(ana)
    (reply,) = ana.says(_BUNGED.format(count=3))
    assert lines(reply)[:2] == ["Read as: waste 3 limes", "Nothing is logged yet. Tap if that is right."]
    assert _logged(ana) == before
    ana.says(_BUNGED.format(count=3))
    assert first_lines(ana.taps("waste 3 limes")) == ["Logged: 3 limes."]


def test_a_confirmed_wording_logs_at_once_until_it_is_forgotten(ana: Person) -> None:
    ana.says(_BUNGED.format(count=3))
    ana.taps("waste 3 limes")
    (reply,) = ana.says(_BUNGED.format(count=5))
    assert lines(reply)[:2] == ["Read as: waste 5 limes", "Logged: 5 limes."]
    assert first_lines(ana.taps("Undo"))[0].startswith("Undone")
    (page,) = ana.says("bar wordings")
    assert "we bunged (number) (fruit) in the trash they were furry" in " ".join(lines(page))
    ana.taps("Forget 1")
    assert first_lines(ana.says("bar wordings")) == ["No wordings confirmed yet."]
    assert "Nothing is logged yet. Tap if that is right." in text(ana.says(_BUNGED.format(count=5)))


def test_a_wording_is_the_bars_own(house: House, ana: Person) -> None:
    ana.says(_BUNGED.format(count=3))
    ana.taps("waste 3 limes")
    ben = house.open_bar("Ben", name="Elsewhere")
    assert "Nothing is logged yet. Tap if that is right." in text(ben.says(_BUNGED.format(count=3)))


@pytest.mark.parametrize(
    "line",
    [
        "should I bin 5 soft lemons?",
        "if we don't sell it we'll be throwing out 20 limes",
        "he said he binned 6 lemons but who knows",
        "maybe we should make 2 litres of grapefruit mist tomorrow",
        "toss 4 limes?",
        "the guy at table 4 spilled 2 drinks",
    ],
)
def test_what_only_looks_like_an_entry_is_none(ana: Person, line: str) -> None:
    before = _logged(ana)
    ana.says(line)
    assert _logged(ana) == before
    # Even after a tap such a line is no wording: it does not log the next time.
    labels = [button.label for row in ana.house.room(None, ana).shown[-1].reply.buttons for button in row]
    if any(label.startswith("waste") for label in labels):
        ana.taps(next(label for label in labels if label.startswith("waste")))
        before = _logged(ana)
        ana.says(line)
        assert _logged(ana) == before


def test_two_wishes_in_one_line_are_both_offered(ana: Person) -> None:
    (reply,) = ana.says("binned 3 limes and also what did we waste last week")
    labels = [button.label for row in reply.buttons for button in row]
    assert [label.split()[0] for label in labels] == ["waste", "week"]


def test_a_group_hears_nothing_about_talk(house: House, ana: Person) -> None:
    house.joins("Ben")
    assert house.person("Ben").says("did you see the game last night", "bar") == []


def test_a_line_of_any_length_is_answered(ana: Person) -> None:
    assert ana.says("limes and " * 400)


def test_wordings_go_with_export_and_import(house: House, ana: Person) -> None:
    ana.says(_BUNGED.format(count=3))
    ana.taps("waste 3 limes")
    (reply, *_rest) = ana.says("export")
    files = [file for one in (reply, *_rest) for file in one.files if file.name.endswith(".json")]
    assert b"we bunged <number> <fruit> in the trash they were furry" in files[0].content


@given(
    st.text(alphabet=st.characters(codec="utf-8"), max_size=120)
    | st.lists(st.sampled_from(_WORDS)).map(" ".join)
)
@settings(max_examples=150, deadline=None)
def test_any_text_has_pieces(said: str) -> None:
    """No text makes the reader stumble, wherever its numbers, articles and signs stand."""
    with speaking(Tongue("en")):
        vocabulary = Vocabulary("en")
        pieces_of(said, vocabulary)
        tokens_of(said, vocabulary)
