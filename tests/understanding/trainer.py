"""Train the ranker of a language from the phrasebooks, and write its weights."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path
from random import Random
from typing import Any

import numpy as np
from scipy.sparse import csr_matrix, vstack
from sklearn.model_selection import StratifiedKFold
from sklearn.svm import LinearSVC

from bot.chat.grammar.vocabulary import vocabulary_for
from bot.chat.i18n.language import speaking
from bot.chat.i18n.locale_choice import tongue_of
from bot.chat.intent.reading.ranker import BUCKETS, Groups, features, groups_of
from bot.chat.intent.reading.tokens import tokens_of
from bot.work.people import people
from tests.house import CHANNEL
from tests.understanding.bars import bar_speaking, with_other_names
from tests.understanding.phrasebooks import ROOT, Phrase, training

MODELS = ROOT / "bot/chat/intent/reading/models"
_FOLDS = 4
_SEED = 2026
_WRONG = 0.006  # of all lines may run although they meant something else
_SHORTEST_MISSPELT = 4  # letters
_STRICTNESS = 0.5  # the C of the support vector machine

Matrix = Any  # scipy publishes no types


def matrix_of(lines: Sequence[Sequence[str]], groups: Groups) -> Matrix:
    """Return the features of lines of tokens, a row each."""
    starts, columns, values = [0], [], []
    for tokens in lines:
        for bucket, value in features(tokens, groups):
            columns.append(bucket)
            values.append(value)
        starts.append(len(columns))
    return csr_matrix((values, columns, starts), shape=(len(lines), BUCKETS), dtype=np.float32)


def fit(rows: Matrix, names: Any) -> LinearSVC:
    """Return a linear model of the rows."""
    return LinearSVC(C=_STRICTNESS, random_state=_SEED).fit(rows, names)


def tokenised(language: str, phrases: Sequence[Phrase]) -> tuple[list[list[str]], list[list[str]]]:
    """Return the tokens of phrases as the demo bar reads them, and as a bar does that knows all the names."""
    with bar_speaking(language) as robin, robin.house.store.reading() as unit:
        presence = people.find(unit, CHANNEL, robin.sender.outside_id, f"{CHANNEL} robin", True)
        with speaking(tongue_of(presence)):
            own = vocabulary_for(unit, presence.bar, language)
            wide = with_other_names(own, language)
            plain = [tokens_of(phrase.text, own) for phrase in phrases]
            return plain, [tokens_of(phrase.text, wide) for phrase in phrases]


def misspelt(tokens: Sequence[str], chance: Random) -> list[str]:
    """Return the tokens with a slip in one longer word of four: letters swapped, left out or doubled."""
    words = list(tokens)
    longer = [at for at, word in enumerate(words) if word.isalpha() and len(word) >= _SHORTEST_MISSPELT]
    for at in chance.sample(longer, min(len(longer), 1 + len(longer) // 4)):
        word, slip = words[at], chance.randrange(1, len(words[at]) - 1)
        one, other = word[slip], word[slip + 1]
        wrong = chance.choice([other + one, other + one, other, one + one + other])
        words[at] = word[:slip] + wrong + word[slip + 2 :]
    return words


def train(language: str) -> None:
    """Write the model of a language."""
    phrases = training(language)
    plain, wide = tokenised(language, phrases)
    names = np.array([phrase.wish for phrase in phrases])
    groups = groups_of(language)
    own_rows, wide_rows = matrix_of(plain, groups), matrix_of(wide, groups)
    chance = Random(_SEED)
    # Phones are thumbed: half of the lines are learnt with slips as well.
    slips = sorted(chance.sample(range(len(names)), len(names) // 2))
    slip_rows = matrix_of([misspelt(plain[at], chance) for at in slips], groups)
    sharpness, sure = _calibrated(own_rows, wide_rows, names)
    model = fit(*_stacked((own_rows, names), (wide_rows, names), (slip_rows, names[slips])))
    write(MODELS / f"{language}.npz", model, sharpness, sure)
    print(f"{language}: {len(phrases)} lines, {len(model.classes_)} wishes, sure from {sure:.2f}")


def _stacked(*parts: tuple[Matrix, Any]) -> tuple[Matrix, Any]:
    """Return the rows of several parts below one another, and their names."""
    rows, names = zip(*parts, strict=True)
    return vstack(rows).tocsr(), np.concatenate(names)


def _calibrated(own: Matrix, wide: Matrix, names: Any) -> tuple[float, float]:
    """Return how sharply scores become probabilities, and the probability from which a reading is sure.

    Both come from lines that the models of this function did not see.
    """
    scores: list[Any] = []
    meant: list[Any] = []
    classes = np.unique(names)
    for seen, unseen in StratifiedKFold(_FOLDS, shuffle=True, random_state=_SEED).split(own, names):
        model = fit(*_stacked((own[seen], names[seen]), (wide[seen], names[seen])))
        scores.append(model.decision_function(own[unseen]))
        meant.append(np.searchsorted(classes, names[unseen]))
    score, right = np.concatenate(scores), np.concatenate(meant)
    sharpness = sharpness_of(score, right)
    odds = odds_of(score * sharpness)
    order = np.argsort(-odds.max(axis=1))
    wrong = np.cumsum(odds.argmax(axis=1)[order] != right[order]) / len(right)
    last = int(np.searchsorted(wrong, _WRONG, side="right")) - 1
    first = np.mean(odds.argmax(axis=1) == right)
    print(
        f"cross-validated: first {first:.3f}, sharpness {sharpness}, sure of {last / len(right):.2f} of lines"
    )
    return sharpness, float(odds.max(axis=1)[order][max(last, 0)])


def sharpness_of(score: Any, right: Any) -> float:
    """Return the factor that turns scores into the best probabilities of the right classes."""
    return float(max(np.arange(1.0, 12.0, 0.5), key=lambda by: _likelihood(score * by, right)))


def odds_of(scores: Any) -> Any:
    """Return the probabilities of scores, row by row."""
    odds = np.exp(scores - scores.max(axis=1, keepdims=True))
    return odds / odds.sum(axis=1, keepdims=True)


def _likelihood(scores: Any, right: Any) -> float:
    return float(np.mean(np.log(odds_of(scores)[np.arange(len(right)), right] + 1e-12)))


def write(file: Path, model: LinearSVC, sharpness: float, sure: float) -> None:
    """Write a model in eight bits a weight."""
    weights = (model.coef_ * sharpness).T.astype(np.float32)
    scale = np.abs(weights).max(axis=0, keepdims=True) / 127
    file.parent.mkdir(exist_ok=True)
    np.savez_compressed(
        file,
        names=np.array(model.classes_, dtype=str),
        weights=np.rint(weights / scale).astype(np.int8),
        scale=scale,
        bias=(model.intercept_ * sharpness).astype(np.float32),
        sure=np.float32(sure),
    )
