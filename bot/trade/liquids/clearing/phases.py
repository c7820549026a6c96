"""Liquid-liquid stability: activity coefficients by UNIFAC and the tangent-plane-distance test.

Compositions are mole fractions, one row per mixture, so that a whole series is tested in one call. Numeric
libraries are imported when the first model is built, never before.
"""

from __future__ import annotations

from collections.abc import Sequence
from functools import lru_cache
from typing import TYPE_CHECKING

from bot.trade.liquids.clearing.substances import SUBSTANCES, Groups, Model
from bot.trade.liquids.clearing.unifac_groups import interaction, subgroup
from bot.trade.liquids.ethanol import check_range

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

    Array = NDArray[np.float64]

LOWEST_TEMPERATURE_C, HIGHEST_TEMPERATURE_C = 0.0, 40.0

# A tangent plane distance below this (in units of RT) is real, not rounding.
_UNSTABLE = -1e-9
# A trial phase this close to the feed in every mole fraction has converged to the feed.
_SAME = 1e-6
_MOST_STEPS = 400
_COORDINATION = 10.0  # UNIQUAC's lattice coordination number


class GroupModel:
    """One UNIFAC model for a list of substances at one temperature.

    Computes activity coefficients for many compositions at once. Raises MissingParameterError when the model
    lacks a pair of groups.
    """

    def __init__(self, model: Model, groups: Sequence[Groups], temperature_c: float) -> None:
        import numpy as np  # noqa: PLC0415 - only when first used

        self._np = np
        kelvin = temperature_c + 273.15
        used = sorted({number for one in groups for number in one})
        subgroups = [subgroup(model, number) for number in used]
        self.size = len(groups)
        self._psi: Array = np.array(
            [[interaction(model, one, other, kelvin) for other in used] for one in used]
        )
        self._surface: Array = np.array([one.surface for one in subgroups])
        self._counts: Array = np.array([[one.get(number, 0) for number in used] for one in groups], float)
        self._r: Array = self._counts @ np.array([one.volume for one in subgroups])
        self._q: Array = self._counts @ self._surface
        # The modified model raises volumes to the power 3/4 in its combinatorial part.
        self._r_modified: Array = self._r if model is Model.ORIGINAL else self._r**0.75
        self._pure: Array = (self._ln_group(self._counts) * self._counts).sum(axis=1)

    def _ln_group(self, amounts: Array) -> Array:
        """ln of the group activity coefficients for rows of group amounts."""
        np = self._np
        surface = amounts * self._surface
        surface = surface / surface.sum(axis=1, keepdims=True)
        sums = surface @ self._psi
        result: Array = self._surface * (1.0 - np.log(sums) - (surface / sums) @ self._psi.T)
        return result

    def ln_gamma(self, fractions: Array) -> Array:
        """Return the natural logs of the activity coefficients, one row for each row of mole fractions.

        Symmetric convention (1 for the pure liquid). UNIFAC: Fredenslund et al.
        1975; modified (Dortmund): Weidlich and Gmehling 1987.
        """
        np = self._np
        volume = self._r / (fractions @ self._r)[:, None]
        surface = self._q / (fractions @ self._q)[:, None]
        modified = self._r_modified / (fractions @ self._r_modified)[:, None]
        ratio = volume / surface
        combinatorial = (
            1.0 - modified + np.log(modified) - _COORDINATION / 2.0 * self._q * (1.0 - ratio + np.log(ratio))
        )
        result: Array = combinatorial + self._ln_group(fractions @ self._counts) @ self._counts.T - self._pure
        return result

    def _ln(self, fractions: Array) -> Array:
        """ln of mole fractions, with 0 for absent substances (masked where it matters)."""
        np = self._np
        result: Array = np.log(np.where(fractions > 0.0, fractions, 1.0))
        return result

    def _trial_phases(self, feeds: Array) -> Array:
        """Initial guesses for a second phase: each substance nearly pure, and each pair in equal halves.

        The pairs represent phases such as oil-rich ethanol or glycol with water.
        """
        np = self._np
        present = (feeds > 0.0).any(axis=0)
        corners = [row for row in np.eye(self.size) if present @ row]
        guesses = list(corners)
        for i, one in enumerate(corners):
            guesses.extend(0.5 * (one + other) for other in corners[i + 1 :])
        trials: Array = 0.95 * np.array(guesses)[None, :, :] + 0.05 * feeds[:, None, :]
        trials *= feeds[:, None, :] > 0.0
        trials /= trials.sum(axis=2, keepdims=True)
        return trials

    def second_phases(self, feeds: Array) -> tuple[Array, Array]:
        """Return the lowest tangent plane distance found for each feed, and its composition.

        In units of RT; below 0 the feed splits, at 0 (or just above) no trial phase was better than the feed.
        Michelsen's test (1982): successive substitution from every trial phase. A distance below 0 settles a
        feed, so the search stops there.
        """
        np = self._np
        target = self._ln(feeds) + self.ln_gamma(feeds)
        trials = self._trial_phases(feeds)
        number = trials.shape[1]
        owner = np.repeat(np.arange(len(feeds)), number)
        trials = trials.reshape(-1, self.size)
        lowest: Array = np.zeros(len(feeds))
        where: Array = feeds.copy()
        for _ in range(_MOST_STEPS):
            if not len(owner):
                break
            ln_gamma = self.ln_gamma(trials)
            goal = target[owner]
            distance = (trials * (self._ln(trials) + ln_gamma - goal)).sum(axis=1)
            better = distance < np.minimum(lowest[owner], _UNSTABLE)
            for row in np.flatnonzero(better):
                if distance[row] < lowest[owner[row]]:
                    lowest[owner[row]], where[owner[row]] = distance[row], trials[row]
            following = np.where(trials > 0.0, np.exp(goal - ln_gamma), 0.0)
            following /= following.sum(axis=1, keepdims=True)
            moving = np.abs(following - trials).max(axis=1) > _SAME / 10.0
            away = np.abs(following - feeds[owner]).max(axis=1) > _SAME
            open_ = moving & away & (lowest[owner] > _UNSTABLE)
            trials, owner = following[open_], owner[open_]
        return lowest, where

    def stable(self, feeds: Array) -> list[bool]:
        """Whether each row of mole fractions stays one liquid."""
        lowest, _ = self.second_phases(feeds)
        return [bool(distance > _UNSTABLE) for distance in lowest]

    def split(self, feed: Array) -> tuple[float, Array, Array]:
        """Return the share of the second phase in moles, and both phases' mole fractions.

        For a feed that stays one liquid the share is 0 and both rows are the feed. Successive substitution on
        the distribution ratios starts from the second phase of the tangent-plane test; the share comes from
        bisection of the Rachford-Rice equation.
        """
        np = self._np
        lowest, where = self.second_phases(feed[None, :])
        first, second = feed.copy(), where[0].copy()
        if lowest[0] > _UNSTABLE:
            return 0.0, first, second
        share = 0.0
        for _ in range(5000):
            ln_gamma = self.ln_gamma(np.array([first, second]))
            ratio = np.where(feed > 0.0, np.exp(ln_gamma[0] - ln_gamma[1]), 1.0)
            share = _second_phase_share(feed, ratio)
            first_next = feed / (1.0 + share * (ratio - 1.0))
            second_next = ratio * first_next
            first_next, second_next = first_next / first_next.sum(), second_next / second_next.sum()
            change = max(np.abs(first_next - first).max(), np.abs(second_next - second).max())
            first, second = first_next, second_next
            if change < 1e-10:
                break
        return share, first, second


def _second_phase_share(feed: Array, ratio: Array) -> float:
    """Return the molar share of the second phase, 0 to 1, for given distribution ratios."""
    low, high = 0.0, 1.0
    for _ in range(60):
        share = (low + high) / 2.0
        # The sum falls as the share grows.
        if (feed * (ratio - 1.0) / (1.0 + share * (ratio - 1.0))).sum() > 0.0:
            low = share
        else:
            high = share
    return (low + high) / 2.0


@lru_cache(maxsize=64)
def substance_model(model: Model, temperature_c: float) -> GroupModel:
    """Return `model` for the substances of `substances` at any temperature, for activity coefficients."""
    return GroupModel(model, [substance.groups(model) for substance in SUBSTANCES], temperature_c)


def bar_model(model: Model, temperature_c: float = 20.0) -> GroupModel:
    """Return `model` for the substances of `substances` at `temperature_c` (0 to 40 °C).

    Raises OutOfRangeError outside that range.
    """
    check_range("temperature", temperature_c, LOWEST_TEMPERATURE_C, HIGHEST_TEMPERATURE_C, "°C")
    return substance_model(model, temperature_c)
