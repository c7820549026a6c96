"""Tests of the ternary map: text on the card, kinds told apart without colour, regions in their places."""

from __future__ import annotations

import pytest

from bot.documents.charts.canvas import Sheet
from bot.documents.charts.ternary import Corner, Mark, Triangle, ternary
from tests.documents.charts.test_charts import texts_inside

_STEPS = 16
_KINDS = ("clear", "borderline", "splits")
_SEEN = ("seen clear", "seen hazy", "seen split")


def _kind(oil: int, glycol: int) -> int:
    return 0 if oil + glycol < 5 else 2 if oil > 6 else 1


def _map(name: str = "grapefruit oil", dark: bool = False, marks: int = 3) -> Sheet:
    kinds = [[_kind(i, j) for j in range(_STEPS + 1 - i)] for i in range(_STEPS + 1)]
    corners = (Corner(f"up to 60 % {name}", 60), Corner(f"up to 60 % {name}", 60), Corner(name, 100))
    return ternary(
        f"Map of {name}",
        "% of the volume",
        Triangle(kinds, corners),
        _KINDS,
        ((4.0, 5.0), "your formula"),
        [((2.0, 5.0), "less oil: 8 ml"), ((3.5, 1.0), f"less {name}")],
        [Mark((kind * 3.0, 4.0), kind, f"{kind + 1}, 12, 14") for kind in range(marks)],
        _SEEN,
        dark=dark,
    )


@pytest.mark.parametrize("dark", [False, True])
@pytest.mark.parametrize(
    "name", ["oil", "cold-pressed pink grapefruit oil from the second supplier of the bar"]
)
def test_every_word_stays_on_the_card(name: str, dark: bool) -> None:
    texts = texts_inside(_map(name, dark))
    assert {*_KINDS, *_SEEN, "your formula", "1", "2", "1, 12, 14"} <= set(texts)


def test_the_key_names_only_what_is_there() -> None:
    texts = texts_inside(_map(marks=1))
    assert "seen clear" in texts
    assert "seen split" not in texts


def test_regions_differ_by_their_hatch() -> None:
    from matplotlib.patches import PathPatch  # noqa: PLC0415

    hatches = {patch.get_hatch() for patch in _map().figure().findobj(PathPatch)}
    assert len(hatches) == len(_KINDS)


def test_a_region_is_drawn_where_its_nodes_lie() -> None:
    from matplotlib.patches import PathPatch  # noqa: PLC0415

    patches = _map().figure().findobj(PathPatch)
    split = next(one for one in patches if one.get_hatch() == "////")
    box = split.get_path().get_extents()
    # The splitting corner is the left one, at the bottom of the triangle.
    assert box.x0 == pytest.approx(34, abs=1)
    assert box.x1 < 380 - 100


def test_the_same_map_is_the_same_picture() -> None:
    assert _map().png() == _map().png()
