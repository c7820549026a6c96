"""Trials tasted by several members: blind codes, means with spread, and variants side by side.

Scores are whole numbers from 1 to 5. For the first three aspects more is better; bitterness measures only the
amount.
"""

from __future__ import annotations

import math
import random
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from enum import StrEnum
from statistics import fmean, stdev

from bot.trade.errors import OutOfRangeError, TradeError
from bot.trade.numbers.ranges import Range
from bot.trade.numbers.student_t import two_sided_quantile
from bot.trade.words import N_

LOWEST, HIGHEST = 1, 5

# Standard deviation of the difference of two numbers that are each rounded to the nearest integer: sqrt(2 /
# 12).
_ROUNDING = math.sqrt(1 / 6)


class Aspect(StrEnum):
    """A scored aspect; the values are stored and shown to people."""

    AROMA = N_("aroma")
    BRIGHTNESS = N_("brightness")
    LASTING = N_("how long it lasts")
    BITTERNESS = N_("bitterness")


@dataclass
class UnknownVariantError(TradeError):
    """This variant has no scores; `known` lists those that have one."""

    variant: str
    known: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Score:
    """One member's scores of one variant; an aspect may be left out.

    Raises OutOfRangeError outside 1 to 5.
    """

    member: str
    variant: str
    given: Mapping[Aspect, int]

    def __post_init__(self) -> None:
        for aspect, score in self.given.items():
            if not LOWEST <= score <= HIGHEST:
                raise OutOfRangeError(aspect.value, score, LOWEST, HIGHEST, "")


@dataclass(frozen=True, slots=True)
class Summary:
    """Scores of one aspect of one variant: mean, standard deviation (None for one taster), and count."""

    mean: float
    spread: float | None
    count: int


@dataclass(frozen=True, slots=True)
class Difference:
    """One variant less another in one aspect, by members who scored both.

    `interval` holds the true mean difference with 95 % confidence, None for fewer than two members. `clear`
    means that it excludes 0: with a handful of tasters few differences do.
    """

    mean: float
    count: int
    interval: Range[float] | None

    @property
    def clear(self) -> bool:
        """Whether the difference is larger than the tasters' disagreement."""
        return self.interval is not None and not self.interval.low <= 0 <= self.interval.high


@dataclass(frozen=True, slots=True)
class SideBySide:
    """A table of variants against aspects.

    `cells[aspect][variant]` is None without a score; `against_base[aspect][variant]` is the difference from
    the base, None if no member scored both.
    """

    variants: tuple[str, ...]
    base: str
    cells: dict[Aspect, dict[str, Summary | None]]
    against_base: dict[Aspect, dict[str, Difference | None]]


def blind_codes(variants: Sequence[str], seed: int) -> dict[str, str]:
    """Return a code letter for each variant, A first, in an order that depends only on `seed`.

    The same variants, in any order, and the same seed give the same codes. After Z comes AA.
    """
    shuffled = sorted(set(variants))
    random.Random(seed).shuffle(shuffled)  # noqa: S311 - hides an order, keeps no secret
    return {_letters(place): variant for place, variant in enumerate(shuffled)}


def latest(scores: Sequence[Score]) -> tuple[Score, ...]:
    """Return the last score of each member for each variant, in the order given: tasters change scores."""
    kept: dict[tuple[str, str], Score] = {}
    for score in scores:
        kept.pop((score.member, score.variant), None)
        kept[score.member, score.variant] = score
    return tuple(kept.values())


def summarise(scores: Sequence[Score], variant: str, aspect: Aspect) -> Summary | None:
    """Return mean, spread and count of a variant's scores in one aspect; None when there are none.

    Only a member's last score counts.
    """
    found = [
        float(score.given[aspect])
        for score in latest(scores)
        if score.variant == variant and aspect in score.given
    ]
    if not found:
        return None
    return Summary(fmean(found), stdev(found) if len(found) > 1 else None, len(found))


def difference(scores: Sequence[Score], variant: str, base: str, aspect: Aspect) -> Difference | None:
    """Return how much higher `variant` scores than `base`, paired by member.

    Pairing removes the habit of a member to score high. The interval is Student's for paired differences,
    with a spread of at least that of rounding to whole scores, so that agreement between two tasters does not
    settle it. None if nobody scored both.
    """
    last = {(score.member, score.variant): score.given for score in latest(scores)}
    members = {score.member for score in scores}
    pairs = [
        last[member, variant][aspect] - last[member, base][aspect]
        for member in sorted(members)
        if aspect in last.get((member, variant), {}) and aspect in last.get((member, base), {})
    ]
    if not pairs:
        return None
    mean = fmean(pairs)
    if len(pairs) == 1:
        return Difference(mean, 1, None)
    spread = max(stdev(pairs), _ROUNDING)
    half = two_sided_quantile(0.95, len(pairs) - 1) * spread / math.sqrt(len(pairs))
    return Difference(mean, len(pairs), Range(mean - half, mean + half))


def side_by_side(scores: Sequence[Score], base: str | None = None) -> SideBySide:
    """Return all variants side by side.

    Differences are from `base`, by default the first variant scored.

    Raises UnknownVariantError when the base, or anything at all, has no score.
    """
    variants = tuple(dict.fromkeys(score.variant for score in scores))
    chosen = base if base is not None else next(iter(variants), "")
    if chosen not in variants:
        raise UnknownVariantError(chosen, variants)
    return SideBySide(
        variants,
        chosen,
        {aspect: {one: summarise(scores, one, aspect) for one in variants} for aspect in Aspect},
        {
            aspect: {one: difference(scores, one, chosen, aspect) for one in variants if one != chosen}
            for aspect in Aspect
        },
    )


def _letters(place: int) -> str:
    letters = ""
    place += 1
    while place:
        place, letter = divmod(place - 1, 26)
        letters = chr(ord("A") + letter) + letters
    return letters
