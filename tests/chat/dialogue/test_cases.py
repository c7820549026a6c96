"""Tests of cases: half a case is half of what a case holds, by the prices or as answered."""

from __future__ import annotations

import pytest

from tests.house import House, Person, first_lines, lines, text


@pytest.fixture
def ana(house: House) -> Person:
    """The owner of a bar whose oranges cost 30 for a case of 88, and whose lemons 25 for 10 kg."""
    return house.open_bar(said=["price oranges 88 for 30", "price lemons 10 kg 25", "price limes 1 kg 3"])


@pytest.mark.parametrize(
    ("line", "first"),
    [
        ("waste half a case of oranges mouldy", "Logged: 44 oranges, mouldy, €15.00."),
        ("waste 1/2 case oranges mouldy", "Logged: 44 oranges, mouldy, €15.00."),
        ("waste oranges half a case mouldy", "Logged: 44 oranges, mouldy, €15.00."),
        ("waste 2 boxes of oranges mouldy", "Logged: 176 oranges, mouldy, €60.00."),
        ("waste half a case of lemons", "Logged: 5 kg lemons, €12.50."),
        ("count half a case of oranges", "Counted: 44 oranges."),
        ("count oranges half a case", "Counted: 44 oranges."),
        ("stock half a case of oranges", "orange: 44 pieces on hand."),
        ("stock oranges half a case", "orange: 44 pieces on hand."),
        ("bought half a case of oranges", "Bought: 44 oranges (0.5 packs of 88)."),
        ("bought 2 cases oranges 80 each", "Bought: 160 oranges (2 packs of 80)."),
    ],
)
def test_the_price_says_what_a_case_holds(ana: Person, line: str, first: str) -> None:
    said = text(ana.says(line))
    assert said.splitlines()[0] == first
    if not line.startswith("bought"):
        assert "A case is 10 kg." in said or "A case is 88 oranges." in said


@pytest.mark.parametrize("line", ["waste half a case of limes", "count half a case of limes"])
def test_it_is_asked_where_no_price_says_it(ana: Person, line: str) -> None:
    assert first_lines(ana.says(line)) == ["How much is in each case of limes? Such as: 80, or 5 kg"]
    said = text(ana.says("54"))
    if line.startswith("waste"):
        assert said == "Why?"  # as where the number was asked
        said = text(ana.says("mouldy"))
    assert "27 limes" in said
    assert "A case is" not in said  # it was just said


def test_a_delivery_without_a_known_case_takes_a_bare_number(ana: Person) -> None:
    assert first_lines(ana.says("bought half a case of limes")) == [
        "How much is in one? Such as: 80 each, or 5 kg"
    ]
    ana.says("54")
    assert first_lines(ana.taps("Not known")) == ["Bought: 27 limes (0.5 packs of 54)."]


def test_among_several_lines_it_changes_nothing_where_it_is_not_known(ana: Person) -> None:
    said = ana.says("waste 3 oranges, half a case of limes")
    assert first_lines(said) == ["How much is in each case of limes? Such as: 80, or 5 kg"]
    assert first_lines(ana.says("week")) == ["No waste logged"]
    said = ana.says("waste 3 lemons mouldy, half a case of oranges mouldy")
    assert any(line.split()[:2] == ["44", "oranges"] for line in lines(said[0], phone=False))


def test_a_case_of_drink_is_no_bottle(ana: Person) -> None:
    ana.says("price gin 700 ml 20")
    assert first_lines(ana.says("count half a case of gin")) == [
        "How much is in one? Such as: 70 cl, or 1 kg"
    ]
    assert "In which unit? Such as: gin 500 ml" in text(ana.says("6"))
    assert "Counted: 350 ml" in text(ana.says("700 ml"))


def test_a_free_line_keeps_the_case(ana: Person) -> None:
    (read,) = ana.says("half a case of oranges mouldy")
    assert read.buttons[0][0].label == "waste 0.5 case oranges mouldy"
    assert first_lines(ana.taps("waste 0.5 case oranges mouldy")) == ["Logged: 44 oranges, mouldy, €15.00."]


def test_half_a_case_in_spanish(house: House) -> None:
    ana = house.open_bar(said=["language español", "precio naranjas 88 para 30"])
    said = text(ana.says("merma media caja de naranjas con moho"))
    assert said.splitlines()[:2] == ["Anotado: 44 naranjas, con moho, 15,00 €.", "Una caja son 88 naranjas."]
    (read,) = ana.says("media caja de naranjas con moho")
    assert read.buttons[0][0].label == "merma 0,5 caja naranjas con moho"
