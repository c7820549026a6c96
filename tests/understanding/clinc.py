"""The features and the trainer of the reader on open data: CLINC150 (see open_data/README.md)."""

from __future__ import annotations

import json
from collections import defaultdict
from dataclasses import dataclass
from pathlib import Path
from typing import Any

import numpy as np

from bot.chat.grammar.lexer import Vocabulary
from bot.chat.i18n.language import Tongue, speaking
from bot.chat.intent.reading.tokens import tokens_of
from tests.understanding.trainer import fit, matrix_of, odds_of, sharpness_of

SAMPLE = Path(__file__).parent / "open_data" / "clinc150_sample.tsv"
_LIKELY = 0.5  # a line whose likeliest intent has less is refused
_CALIBRATED = 5  # every fifth training line decides how sharply scores become probabilities

Lines = dict[str, list[tuple[str, str]]]


@dataclass(frozen=True, slots=True)
class Judged:
    """Shares of test lines: right at first, right in three; kept in scope, and refused out of scope."""

    intents: int
    first: float
    three: float
    kept: float
    refused: float


def sample() -> Lines:
    """Return the sample in the repository: text and intent by part."""
    found: Lines = defaultdict(list)
    for line in SAMPLE.read_text("utf-8").splitlines():
        part, intent, text = line.split("\t")
        found[part].append((text, intent))
    return found


def whole(file: Path) -> Lines:
    """Return a file of the published format."""
    parts: dict[str, list[list[str]]] = json.loads(file.read_text("utf-8"))
    return {part: [(text, intent) for text, intent in rows] for part, rows in parts.items()}


def judge(lines: Lines) -> Judged:
    """Train on the training lines and judge the test lines."""
    rows, names = _rows(lines["train"]), np.array([intent for _text, intent in lines["train"]])
    seen = np.arange(len(names)) % _CALIBRATED > 0
    model = fit(rows[seen], names[seen])
    sharpness = sharpness_of(
        model.decision_function(rows[~seen]), np.searchsorted(model.classes_, names[~seen])
    )
    model = fit(rows, names)
    odds = odds_of(model.decision_function(_rows(lines["test"])) * sharpness)
    outside = odds_of(model.decision_function(_rows(lines["oos_test"])) * sharpness)
    right = np.searchsorted(model.classes_, [intent for _text, intent in lines["test"]])
    order = np.argsort(-odds, axis=1)
    return Judged(
        len(model.classes_),
        float(np.mean(order[:, 0] == right)),
        float(np.mean((order[:, :3] == right[:, None]).any(axis=1))),
        float(np.mean(odds.max(axis=1) >= _LIKELY)),
        float(np.mean(outside.max(axis=1) < _LIKELY)),
    )


def _rows(lines: list[tuple[str, str]]) -> Any:
    with speaking(Tongue("en")):
        vocabulary = Vocabulary("en")
        return matrix_of([tokens_of(text, vocabulary) for text, _intent in lines], {})


def tell(judged: Judged, name: str) -> str:
    """Word the result as a row of a table."""
    shares = (judged.first, judged.three, judged.kept, judged.refused)
    return f"| {name} | {judged.intents} | {' | '.join(f'{one:.3f}' for one in shares)} |"
