"""Release of the oil's aroma from a film of the spray, compared with the same oil in a carrier oil.

The figure is the partial pressure of limonene over the liquid as a fraction of that over neat limonene: mole
fraction times activity coefficient (UNIFAC). It explains why carriers differ and promises nothing: it does
not cover drying speed, other aroma substances, or perception.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache

from bot.trade.errors import OutOfRangeError
from bot.trade.liquids.clearing import phases
from bot.trade.liquids.clearing.estimate import MOST_OUTSIDE_SHARE
from bot.trade.liquids.clearing.mend import Band
from bot.trade.liquids.clearing.mixture import Mixture
from bot.trade.liquids.clearing.substances import ETHANOL, LIMONENE, SUBSTANCES, Model

# Shares of the ethanol remaining: as sprayed, half gone, nine tenths gone.
ETHANOL_LEFT: tuple[float, ...] = (1.0, 0.5, 0.1)

_OIL, _ETHANOL = SUBSTANCES.index(LIMONENE), SUBSTANCES.index(ETHANOL)


@dataclass(frozen=True, slots=True)
class Stage:
    """The film with this share of its ethanol left (0 to 1), everything else unchanged.

    `pressure` is limonene's partial pressure relative to neat limonene by each model; `against_carrier` its
    ratio to the pressure over the carrier oil; `original_parted` and `dortmund_parted` say whether the film
    has split by that model, so that it contains free drops of oil.
    """

    ethanol_left: float
    pressure: Band
    against_carrier: Band
    original_parted: bool
    dortmund_parted: bool


@dataclass(frozen=True, slots=True)
class Release:
    """The stages of a drying film, and the same share of oil in medium-chain triglyceride for comparison.

    `oil_percent` is the share of oil in % of the summed volumes. `outside` names ingredients unknown to the
    model; with more than a trace of them there are no stages.
    """

    mixture: Mixture
    temperature_c: float
    oil_percent: float
    carrier_pressure: Band
    stages: tuple[Stage, ...]
    outside: tuple[str, ...]


def _pressure(model: Model, moles: tuple[float, ...], temperature_c: float) -> tuple[float, bool]:
    """Return limonene's relative partial pressure over a liquid, and whether that liquid has split.

    Both layers of a split liquid have the same pressure; the layer richer in oil gives it with less rounding.
    """
    import numpy as np  # noqa: PLC0415 - only when first used

    unifac = phases.bar_model(model, temperature_c)
    feed = np.array(moles) / sum(moles)
    share, first, second = unifac.split(feed)
    oily = max(first, second, key=lambda phase: float(phase[_OIL]))
    ln_gamma = unifac.ln_gamma(oily[None, :])[0]
    return float(oily[_OIL] * np.exp(ln_gamma[_OIL])), share > 0.0


def _band(values: dict[Model, float]) -> Band:
    return Band(values[Model.ORIGINAL], values[Model.DORTMUND])


def release(mixture: Mixture, temperature_c: float = 20.0) -> Release:
    """Return the relative partial pressure of limonene over the film as the ethanol leaves, by both models.

    Assumes that only ethanol evaporates; water, glycols and oil stay. Results are cached. Raises
    OutOfRangeError for a mixture without oil, or outside 0 to 40 °C.
    """
    if mixture.oil_ml <= 0.0:
        raise OutOfRangeError("oil", mixture.oil_ml, 0.0, None, "mL")
    return _release(mixture.rounded(), round(temperature_c, 1))


@lru_cache(maxsize=256)
def _release(mixture: Mixture, temperature_c: float) -> Release:
    share = mixture.oil_ml / mixture.total_ml
    in_carrier = Mixture(oil_ml=share, carrier_ml=1.0 - share)
    carrier = {model: _pressure(model, in_carrier.moles(), temperature_c)[0] for model in Model}
    stages: list[Stage] = []
    if mixture.outside_ml / mixture.total_ml <= MOST_OUTSIDE_SHARE:
        stages = [_stage(mixture, left, carrier, temperature_c) for left in ETHANOL_LEFT]
    return Release(
        mixture=mixture,
        temperature_c=temperature_c,
        oil_percent=100.0 * share,
        carrier_pressure=_band(carrier),
        stages=tuple(stages),
        outside=mixture.outside,
    )


def _stage(mixture: Mixture, left: float, carrier: dict[Model, float], temperature_c: float) -> Stage:
    moles = list(mixture.moles())
    moles[_ETHANOL] *= left
    found = {model: _pressure(model, tuple(moles), temperature_c) for model in Model}
    pressures = {model: pressure for model, (pressure, _) in found.items()}
    return Stage(
        ethanol_left=left,
        pressure=_band(pressures),
        against_carrier=_band({model: pressures[model] / carrier[model] for model in Model}),
        original_parted=found[Model.ORIGINAL][1],
        dortmund_parted=found[Model.DORTMUND][1],
    )
