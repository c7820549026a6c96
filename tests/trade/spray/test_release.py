from __future__ import annotations

import pytest

from bot.trade.errors import OutOfRangeError
from bot.trade.liquids.clearing.mixture import Mixture
from bot.trade.spray.release import ETHANOL_LEFT, release

_MIST = Mixture(oil_ml=6, glycol_ml=14, spirit_ml=80, spirit_percent=96)


def test_the_film_gives_more_than_the_carrier_and_more_as_it_dries() -> None:
    found = release(_MIST)
    assert [stage.ethanol_left for stage in found.stages] == list(ETHANOL_LEFT)
    assert found.oil_percent == pytest.approx(6.0)
    for model in ("original", "dortmund"):
        pressures = [getattr(stage.pressure, model) for stage in found.stages]
        assert pressures == sorted(pressures)
        assert getattr(found.carrier_pressure, model) < pressures[0]
        ratios = [getattr(stage.against_carrier, model) for stage in found.stages]
        assert ratios[0] > 1.0
        assert ratios[-1] == pytest.approx(pressures[-1] / getattr(found.carrier_pressure, model))


def test_no_film_gives_more_than_neat_oil() -> None:
    for mixture in (
        _MIST,
        Mixture(oil_ml=30, glycol_ml=70),
        Mixture(oil_ml=10, spirit_ml=90, spirit_percent=50),
    ):
        for stage in release(mixture).stages:
            for pressure in (stage.pressure.original, stage.pressure.dortmund):
                assert pressure is not None
                assert 0.0 < pressure <= 1.0


def test_a_parted_film_says_so() -> None:
    dry = release(_MIST).stages[-1]
    assert dry.original_parted
    assert dry.dortmund_parted
    wet = release(Mixture(oil_ml=2, spirit_ml=98, spirit_percent=96)).stages[0]
    assert not wet.original_parted
    assert not wet.dortmund_parted


def test_oil_in_a_carrier_alone_is_its_own_comparison() -> None:
    for stage in release(Mixture(oil_ml=5, carrier_ml=95)).stages:
        assert stage.against_carrier.original == pytest.approx(1.0)
        assert stage.against_carrier.dortmund == pytest.approx(1.0)


def test_only_the_ratio_matters() -> None:
    double = Mixture(oil_ml=12, glycol_ml=28, spirit_ml=160, spirit_percent=96)
    for one, other in zip(release(_MIST).stages, release(double).stages, strict=True):
        assert one.pressure.original == pytest.approx(other.pressure.original, rel=1e-6)


def test_without_oil_there_is_nothing_to_release() -> None:
    with pytest.raises(OutOfRangeError):
        release(Mixture(spirit_ml=50, spirit_percent=96))


def test_what_the_model_does_not_know_leaves_no_stages() -> None:
    found = release(Mixture(oil_ml=5, spirit_ml=60, spirit_percent=96, outside=("juice",), outside_ml=20))
    assert found.stages == ()
    assert found.outside == ("juice",)
