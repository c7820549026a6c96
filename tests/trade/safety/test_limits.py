from __future__ import annotations

import pytest

from bot.trade.safety.jurisdiction import Jurisdiction
from bot.trade.safety.limits import LIMITS, LimitKind, find_limit, has_composition_limit, limits_for
from bot.trade.sources import HowKnown


def test_each_limit_says_where_it_comes_from_and_when_it_was_seen() -> None:
    for limit in LIMITS:
        assert limit.source.title
        assert limit.source.seen is not None or limit.source.how_known is HowKnown.MEMORY
        assert limit.note
        assert limit.value > 0


@pytest.mark.parametrize(
    ("jurisdiction", "alcoholic", "ids"),
    [
        (Jurisdiction.EU, True, ["eu-e1520-beverages", "adi-propylene-glycol"]),
        (Jurisdiction.UK, False, ["eu-e1520-beverages", "adi-propylene-glycol"]),
        (Jurisdiction.US, True, ["us-184.1666-alcoholic", "adi-propylene-glycol"]),
        (Jurisdiction.US, False, ["us-184.1666-other", "adi-propylene-glycol"]),
        (Jurisdiction.OTHER, True, ["adi-propylene-glycol"]),
    ],
)
def test_limits_by_jurisdiction(jurisdiction: Jurisdiction, alcoholic: bool, ids: list[str]) -> None:
    assert [limit.id for limit in limits_for(jurisdiction, alcoholic=alcoholic)] == ids


def test_only_other_rules_have_no_composition_limit() -> None:
    without = [place for place in Jurisdiction if not has_composition_limit(place)]
    assert without == [Jurisdiction.OTHER]


def test_the_two_kinds_are_kept_apart() -> None:
    assert find_limit("eu-e1520-beverages").kind is LimitKind.COMPOSITION
    assert "not a toxic dose" in find_limit("eu-e1520-beverages").note
    assert find_limit("adi-propylene-glycol").kind is LimitKind.INTAKE


def test_an_unknown_id_is_an_error() -> None:
    with pytest.raises(KeyError):
        find_limit("no such limit")
