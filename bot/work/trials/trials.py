"""Read trials: the variants of a formula, tasters, and scores side by side."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import datetime
from enum import StrEnum
from fractions import Fraction

from bot.trade.formulas.measures import Quantity
from bot.trade.trials import triangle
from bot.trade.trials.tasting import Aspect, Score, SideBySide, side_by_side
from bot.trade.trials.triangle import Answer, Serving
from bot.work.context import Context
from bot.work.errors import NotThereError
from bot.work.formulas import formulas, ingredients
from bot.work.formulas.formulas import FormulaLineView, FormulaView, in_base
from bot.work.standing import stands
from storage.tables import Entry, Member, Trial, TrialScore, TrialVariant

BASE = 0  # the number of the variant that is the current formula
_SHOWS_KEY = ("close trial", "promote")  # entries that end a trial
Taster = tuple[int, int]  # the person, and 0 or the number of a taster whose scores the person imported


class TrialState(StrEnum):
    """Whether a trial is running. The values are stored."""

    OPEN = "open"
    CLOSED = "closed"
    UNDONE = "undone"


@dataclass(frozen=True, slots=True)
class Variant:
    """One variant: its code on the bottle, its change (empty for the base), its lines and its batch."""

    number: int
    code: str
    changed: str
    lines: tuple[FormulaLineView, ...]
    batch_id: int | None


class TrialKind(StrEnum):
    """How a trial is tasted. The values are stored."""

    SCORES = "scores"
    TRIANGLE = "triangle"


@dataclass(frozen=True, slots=True)
class Triangle:
    """A triangle test so far: whether each tasting was right, the people, the answer, and the next glasses.

    `serving` is the number of the next serving, the first is 0; `poured_by` are the people who know it.
    """

    right: tuple[bool, ...]
    people: int
    answer: Answer
    serving: int
    glasses: Serving
    poured_by: frozenset[int]


@dataclass(frozen=True, slots=True)
class TrialView:
    """One trial with its variants. `hidden`: it is a running blind trial, so the codes are secret.

    `tasted` holds the variants scored by each member; `table` the scores side by side by code, None before
    the first one. `looked` names the people who looked up the codes during the tasting, by number: their
    scores are not in the table. `ended` names those who ended it, which shows the codes, even if that was
    undone; `known`: somebody saw them in the bar it was imported from. `triangle` is set in a triangle test,
    which has no table and is closed once its answer is in.
    """

    id: int
    formula: FormulaView
    blind: bool
    total_ml: Fraction
    state: TrialState
    promoted: int | None
    at: datetime
    variants: tuple[Variant, ...]
    tasted: Mapping[Taster, frozenset[int]]
    table: SideBySide | None
    looked: Mapping[int, str]
    ended: Mapping[int, str]
    triangle: Triangle | None = None
    known: bool = False

    @property
    def hidden(self) -> bool:
        """Whether the codes are secret."""
        return self.blind and self.state is TrialState.OPEN

    @property
    def reopened(self) -> bool:
        """Whether it runs although it was over before."""
        return self.hidden and bool(self.ended)

    @property
    def seen_by(self) -> Mapping[int, str]:
        """The names of the people who have seen the codes, by number."""
        return {**self.looked, **self.ended}

    @property
    def not_counted(self) -> tuple[str, ...]:
        """The names of the tasters whose scores do not count because they looked up the codes."""
        return tuple(name for person, name in self.looked.items() if self.tasted_by(person))

    @property
    def begun(self) -> bool:
        """Whether bottles are filled or tasted, or the codes looked up: then the codes stay."""
        filled = any(one.batch_id is not None for one in self.variants)
        return filled or bool(self.tasted or self.looked or self.known)

    def by_code(self, code: str) -> Variant:
        """Return the variant of this code. Raises NotThereError."""
        for one in self.variants:
            if one.code == code.strip().upper():
                return one
        raise NotThereError("variant", code[:10])

    def tasted_by(self, person_id: int) -> frozenset[int]:
        """Return the numbers of the variants that a member of this bar has scored."""
        return self.tasted.get((person_id, 0), frozenset())

    def done_by(self, person_id: int) -> bool:
        """Whether a member of this bar has tasted all of it."""
        return self.tasted_by(person_id) >= {one.number for one in self.variants}


def row_of(context: Context, trial_id: int) -> Trial:
    """Return the row of a trial that was not undone. Raises NotThereError."""
    row = context.book.get(Trial, trial_id)
    if row is None or row.state == TrialState.UNDONE:
        raise NotThereError("trial", str(trial_id))
    return row


def get(context: Context, trial_id: int) -> TrialView:
    """Return one trial. Raises NotThereError."""
    row = row_of(context, trial_id)
    # In the order of the letters: the order of insertion would reveal the base formula.
    variants = tuple(
        sorted((_variant(context, one) for one in variant_rows(context, trial_id)), key=lambda one: one.code)
    )
    scores, looked = scores_of(context, trial_id), _who_did(context, trial_id, "trial key")
    codes = {one.number: one.code for one in variants}
    test = _triangle(context, row, scores) if row.kind == TrialKind.TRIANGLE else None
    state = TrialState(row.state)
    if test is not None and test.answer is not Answer.OPEN:
        state = TrialState.CLOSED
    tasted: dict[Taster, set[int]] = {}
    for score in scores:
        tasted.setdefault(taster_of(score), set()).add(score.variant)
    return TrialView(
        row.id,
        formulas.get(context, row.formula_id, row.version),
        row.blind,
        row.total_ml,
        state,
        row.promoted,
        row.at,
        variants,
        {taster: frozenset(numbers) for taster, numbers in tasted.items()},
        None if test is not None else _table(blind_scores(scores, looked), codes),
        looked,
        {} if test is not None else _who_did(context, trial_id, *_SHOWS_KEY),
        test,
        row.known,
    )


def _triangle(context: Context, row: Trial, scores: Sequence[TrialScore]) -> Triangle:
    every = context.book.all(TrialScore, TrialScore.trial_id == row.id)
    number = max((int(one.given["serving"]) + 1 for one in every), default=0)
    right = tuple(
        triangle.serving(row.seed, int(one.given["serving"])).odd == int(one.given["picked"])
        for one in scores
    )
    poured = context.book.all(Entry, Entry.what == "trial pour")
    return Triangle(
        right,
        len(set(map(taster_of, scores))),
        triangle.judge(right),
        number,
        triangle.serving(row.seed, number),
        frozenset(
            one.by for one in poured if (one.details["trial"], one.details["serving"]) == (row.id, number)
        ),
    )


def hides(context: Context, trial_id: int) -> bool:
    """Whether a trial is a running blind one, so that the content of its bottles is secret."""
    row = context.book.get(Trial, trial_id)
    return row is not None and row.blind and row.state == TrialState.OPEN


def running_blind(context: Context) -> list[int]:
    """Return the numbers of the running blind trials."""
    rows = context.book.all(Trial, Trial.blind.is_(True), Trial.state == TrialState.OPEN, order=Trial.id)
    return [row.id for row in rows if get(context, row.id).hidden]


def taster_of(row: TrialScore) -> Taster:
    """Return who tasted."""
    return row.person_id, row.taster


def variant_rows(context: Context, trial_id: int) -> Sequence[TrialVariant]:
    """Return the rows of the valid variants, in the order they were added."""
    return context.book.all(
        TrialVariant,
        TrialVariant.trial_id == trial_id,
        TrialVariant.void.is_(False),
        order=TrialVariant.number,
    )


def _variant(context: Context, row: TrialVariant) -> Variant:
    lines = tuple(
        _line(context, int(number), Quantity(Fraction(amount), unit)) for number, amount, unit in row.lines
    )
    return Variant(row.number, row.code or "?", row.changed, lines, row.batch_id)


def _line(context: Context, ingredient_id: int, quantity: Quantity) -> FormulaLineView:
    return FormulaLineView(ingredients.get(context, ingredient_id), quantity, *in_base(context.bar, quantity))


def scores_of(context: Context, trial_id: int) -> list[TrialScore]:
    """Return the rows of the valid scores, oldest first."""
    return list(
        context.book.all(
            TrialScore, TrialScore.trial_id == trial_id, stands(TrialScore), order=TrialScore.first
        )
    )


def blind_scores(scores: Sequence[TrialScore], looked: Mapping[int, str]) -> list[TrialScore]:
    """Return the scores without those of the people who looked up the codes."""
    return [one for one in scores if one.taster or one.person_id not in looked]


def _table(rows: Sequence[TrialScore], codes: Mapping[int, str]) -> SideBySide | None:
    scores = [
        Score(
            str(taster_of(row)),
            codes[row.variant],
            {Aspect(name): int(given) for name, given in row.given.items()},
        )
        for row in sorted(rows, key=lambda row: codes.get(row.variant, ""))
        if row.variant in codes
    ]
    if not scores:
        return None
    base = codes[BASE]
    return side_by_side(scores, base if any(one.variant == base for one in scores) else None)


def _who_did(context: Context, trial_id: int, *what: str) -> dict[int, str]:
    """Return the names of the people who logged one of these about a trial, also if it was undone."""
    rows = context.book.all(Entry, Entry.what.in_(what))
    people = {row.by for row in rows if row.details.get("trial") == trial_id}
    members = context.book.all(Member, Member.person_id.in_(people), order=Member.name) if people else ()
    return {row.person_id: row.name for row in members}


def listed(context: Context, everything: bool = False) -> list[TrialView]:
    """Return the running trials, newest first; or the last twenty of all."""
    where = Trial.state != TrialState.UNDONE if everything else Trial.state == TrialState.OPEN
    rows = context.book.all(Trial, where, order=Trial.id.desc())
    found = [get(context, row.id) for row in rows[:20]]
    return [one for one in found if everything or one.state is TrialState.OPEN]


def open_of(context: Context, formula_id: int, kind: TrialKind = TrialKind.SCORES) -> TrialView | None:
    """Return the running trial of a formula's variants, or its triangle test; or None."""
    row = context.book.one(
        Trial,
        Trial.formula_id == formula_id,
        Trial.state == TrialState.OPEN,
        Trial.kind == kind,
        order=Trial.id.desc(),
    )
    found = None if row is None else get(context, row.id)
    return found if found is not None and found.state is TrialState.OPEN else None
