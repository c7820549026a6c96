"""Rank the commands that a free line may mean, by a linear model over its words and letters."""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from functools import cache
from pathlib import Path
from typing import TYPE_CHECKING
from zlib import crc32

from bot.chat.i18n.languages import ENGLISH, understood

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

BUCKETS = 1 << 16  # features are hashed into this many rows of weights
MOST_TOKENS = 60  # later words of a longer line do not decide what it means
_LONGEST_TOKEN = 24
_SKIP = 4  # how many places apart the words of a pair may stand
_SHORTEST_GRAM, _LONGEST_GRAM = 2, 5


@dataclass(frozen=True, slots=True)
class Ranked:
    """A command's name and the probability that the line means it."""

    name: str
    probability: float


Groups = Mapping[str, tuple[str, ...]]
"""The groups of words that mean much the same, by word."""


def features(tokens: Sequence[str], groups: Groups) -> Iterator[tuple[int, float]]:
    """Yield the hashed features of a line with their weight within it.

    The blocks are words and neighbours, pairs of words a few places apart, letters within words, groups of
    words, and pairs of groups. Each is scaled to length one, so that long lines and short ones compare.
    """
    told = [token[:_LONGEST_TOKEN] for token in tokens[:MOST_TOKENS]]
    words = ["^", *told, "$"]
    named = [
        group for token in told for group in ((token,) if token.startswith("<") else groups.get(token, ()))
    ]
    blocks = (
        (1.0, _neighbours(words)),
        (0.7, _pairs(words)),
        (1.0, _letters(told)),
        (0.5, (f"k {group}" for group in named)),
        (0.35, _together(sorted(set(named)))),
    )
    for weight, block in blocks:
        counts: dict[int, int] = {}
        for feature in block:
            bucket = crc32(feature.encode()) % BUCKETS
            counts[bucket] = counts.get(bucket, 0) + 1
        values = {bucket: 1 + math.log(count) for bucket, count in counts.items()}
        norm = math.sqrt(sum(value * value for value in values.values())) or 1.0
        for bucket, value in values.items():
            yield bucket, weight * value / norm


def groups_of(language: str) -> Groups:
    """Return the groups of a language's words."""
    found: dict[str, list[str]] = {}
    for name, words in understood(language)[0].concepts.items():
        for word in words.split():
            found.setdefault(word, []).append(f"~{name}")
    return {word: tuple(names) for word, names in found.items()}


def _together(groups: Sequence[str]) -> Iterator[str]:
    for at, one in enumerate(groups):
        for other in groups[at + 1 :]:
            yield f"t {one} {other}"


def _neighbours(words: Sequence[str]) -> Iterator[str]:
    for at, word in enumerate(words):
        if 0 < at < len(words) - 1:
            yield f"w {word}"
        if at + 1 < len(words):
            yield f"n {word} {words[at + 1]}"


def _pairs(words: Sequence[str]) -> Iterator[str]:
    for at, word in enumerate(words):
        for other in words[at + 1 : at + 1 + _SKIP]:
            yield f"p {word} {other}"


def _letters(words: Sequence[str]) -> Iterator[str]:
    for word in words:
        if word.startswith("<"):
            continue
        marked = f" {word} "
        for size in range(_SHORTEST_GRAM, _LONGEST_GRAM + 1):
            for at in range(len(marked) - size + 1):
                yield f"c {marked[at : at + size]}"


class Ranker:
    """A trained model: commands by name and one row of weights for each feature."""

    def __init__(
        self,
        names: Sequence[str],
        weights: NDArray[np.int8],
        scale: NDArray[np.float32],
        bias: NDArray[np.float32],
        groups: Groups,
        sure: float = 1.0,
    ) -> None:
        self.names = tuple(names)
        self.sure = sure  # the probability from which a line that only shows something runs at once
        self._weights = weights
        self._scale = scale[0]
        self._bias = bias
        self._groups = groups

    @classmethod
    def load(cls, file: Path, groups: Groups) -> Ranker:
        """Read a model that `python -m tests.understanding --train` wrote."""
        import numpy as np  # noqa: PLC0415 - the console starts without it

        with np.load(file, allow_pickle=False) as kept:
            names = [str(name) for name in kept["names"]]
            return cls(names, kept["weights"], kept["scale"], kept["bias"], groups, float(kept["sure"]))

    def rank(self, tokens: Sequence[str]) -> list[Ranked]:
        """Return the commands, the likeliest first, with probabilities that add up to one."""
        import numpy as np  # noqa: PLC0415 - see load

        found = list(features(tokens, self._groups))
        rows = self._weights[[bucket for bucket, _value in found]].astype(np.float32)
        values = np.asarray([value for _bucket, value in found], dtype=np.float32)
        scores = values @ rows * self._scale + self._bias if found else self._bias
        odds = np.exp(scores - scores.max())
        odds /= odds.sum()
        order = np.argsort(-odds, kind="stable")
        return [Ranked(self.names[at], float(odds[at])) for at in order]


@cache
def ranker_for(language: str) -> Ranker:
    """Return the model of a language, read when first asked for; a language without one uses English."""
    file = Path(__file__).with_name("models") / f"{language}.npz"
    return Ranker.load(file, groups_of(language)) if file.exists() else ranker_for(ENGLISH)
