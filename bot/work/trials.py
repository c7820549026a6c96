"""Trials: variants of a formula made as small batches, tasted by several, and the best one promoted."""

from __future__ import annotations

import hashlib
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from datetime import datetime
from enum import StrEnum
from fractions import Fraction
from typing import Any

from bot.trade.amounts import ByTotal
from bot.trade.measures import Quantity
from bot.trade.tasting import Aspect, Score, SideBySide, blind_codes, side_by_side
from bot.work import batch_life, formulas, ingredients, scaling
from bot.work.batch_life import NewBatch
from bot.work.desk import Desk
from bot.work.errors import AlreadyThereError, BadValueError, NotAllowedError, NotThereError
from bot.work.formulas import DraftLine, FormulaLineView, FormulaView, in_base
from storage.tables import Entry, Member, Trial, TrialScore, TrialVariant
from storage.types import exact_text

MOST_VARIANTS = 8
BASE = 0  # the number of the variant that is the formula as it stands in the book


class TrialState(StrEnum):
    """Whether a trial goes on. The values are stored."""

    OPEN = "open"
    CLOSED = "closed"
    UNDONE = "undone"


@dataclass(frozen=True, slots=True)
class Variant:
    """One variant: its code on the bottle, what was changed (empty for the base), its lines and its batch."""

    number: int
    code: str
    changed: str
    lines: tuple[FormulaLineView, ...]
    batch_id: int | None


@dataclass(frozen=True, slots=True)
class TrialView:
    """One trial with its variants. `hidden`: it is blind and goes on, so nobody is told what is which.

    `tasted` is which variants each member has scored; `table` the scores side by side by code, None
    before the first one. `looked` names who looked up the codes while tasting.
    """

    id: int
    formula: FormulaView
    blind: bool
    total_ml: Fraction
    state: TrialState
    promoted: int | None
    at: datetime
    variants: tuple[Variant, ...]
    tasted: Mapping[int, frozenset[int]]
    table: SideBySide | None
    looked: tuple[str, ...]

    @property
    def hidden(self) -> bool:
        """Whether what is which has to stay unsaid."""
        return self.blind and self.state is TrialState.OPEN

    def by_code(self, code: str) -> Variant:
        """Return the variant of this code. Raises NotThereError."""
        for one in self.variants:
            if one.code == code.strip().upper():
                return one
        raise NotThereError("variant", code[:10])

    def done_by(self, person_id: int) -> bool:
        """Whether somebody has tasted all of it."""
        return self.tasted.get(person_id, frozenset()) >= {one.number for one in self.variants}


# -- reading ----------------------------------------------------------------------------------


def _row(desk: Desk, trial_id: int) -> Trial:
    row = desk.book.get(Trial, trial_id)
    if row is None or row.state == TrialState.UNDONE:
        raise NotThereError("trial", str(trial_id))
    return row


def get(desk: Desk, trial_id: int) -> TrialView:
    """Return one trial. Raises NotThereError."""
    row = _row(desk, trial_id)
    # By their letters: the order in which they were written would tell which is the formula itself.
    variants = tuple(
        sorted((_variant(desk, one) for one in _variant_rows(desk, trial_id)), key=lambda one: one.code)
    )
    scores = _scores(desk, trial_id)
    codes = {one.number: one.code for one in variants}
    tasted: dict[int, set[int]] = {}
    for score in scores:
        tasted.setdefault(score.person_id, set()).add(score.variant)
    return TrialView(
        row.id,
        formulas.get(desk, row.formula_id, row.version),
        row.blind,
        row.total_ml,
        TrialState(row.state),
        row.promoted,
        row.at,
        variants,
        {person: frozenset(numbers) for person, numbers in tasted.items()},
        _table(scores, codes),
        _looked(desk, trial_id),
    )


def hides(desk: Desk, trial_id: int) -> bool:
    """Whether a trial is blind and goes on, so that what is in its bottles has to stay unsaid."""
    row = desk.book.get(Trial, trial_id)
    return row is not None and row.blind and row.state == TrialState.OPEN


def _variant_rows(desk: Desk, trial_id: int) -> Sequence[TrialVariant]:
    return desk.book.all(
        TrialVariant,
        TrialVariant.trial_id == trial_id,
        TrialVariant.void.is_(False),
        order=TrialVariant.number,
    )


def _variant(desk: Desk, row: TrialVariant) -> Variant:
    lines = tuple(
        _line(desk, int(number), Quantity(Fraction(amount), unit)) for number, amount, unit in row.lines
    )
    return Variant(row.number, row.code or "?", row.changed, lines, row.batch_id)


def _line(desk: Desk, ingredient_id: int, quantity: Quantity) -> FormulaLineView:
    return FormulaLineView(ingredients.get(desk, ingredient_id), quantity, *in_base(desk.bar, quantity))


def _scores(desk: Desk, trial_id: int) -> list[TrialScore]:
    rows = desk.book.all(TrialScore, TrialScore.trial_id == trial_id, order=TrialScore.id)
    voided = {row.corrects for row in rows if row.void}
    return [row for row in rows if not row.void and row.id not in voided]


def _table(rows: Sequence[TrialScore], codes: Mapping[int, str]) -> SideBySide | None:
    scores = [
        Score(
            str(row.person_id),
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


def _looked(desk: Desk, trial_id: int) -> tuple[str, ...]:
    rows = desk.book.all(Entry, Entry.what == "trial key", order=Entry.id)
    people = {row.by for row in rows if row.details.get("trial") == trial_id}
    return tuple(sorted(row.name for row in desk.book.all(Member) if row.person_id in people))


def listed(desk: Desk, everything: bool = False) -> list[TrialView]:
    """Return the trials that go on, newest first; or the last twenty of all."""
    where = Trial.state != TrialState.UNDONE if everything else Trial.state == TrialState.OPEN
    rows = desk.book.all(Trial, where, order=Trial.id.desc())
    return [get(desk, row.id) for row in rows[:20]]


def open_of(desk: Desk, formula_id: int) -> TrialView | None:
    """Return the trial of a formula that goes on, or None."""
    row = desk.book.one(
        Trial, Trial.formula_id == formula_id, Trial.state == TrialState.OPEN, order=Trial.id.desc()
    )
    return None if row is None else get(desk, row.id)


# -- starting and adding ------------------------------------------------------------------------


def start(
    desk: Desk,
    formula_id: int,
    lines: Sequence[DraftLine],
    changed: str,
    total_ml: Fraction,
    blind: bool,
) -> TrialView:
    """Begin a trial of a formula against one variant of it. Raises NotThereError, BadValueError."""
    view = formulas.get(desk, formula_id)
    if not 0 < total_ml <= 100_000:
        raise BadValueError("amount", str(float(total_ml)))
    row = desk.book.add(
        Trial(
            formula_id=view.id,
            version=view.version,
            blind=blind,
            total_ml=total_ml,
            state=TrialState.OPEN,
            seed=_seed(desk),
            at=desk.now,
            by=desk.person_id,
        )
    )
    _write(desk, row, BASE, formulas.draft_of(view).lines, "")
    _write(desk, row, BASE + 1, lines, changed)
    _give_codes(desk, row)
    desk.log("trial", trial=row.id, name=view.name)
    return get(desk, row.id)


def _seed(desk: Desk) -> int:
    """Return a number that nobody can guess from the outside, and the same for the same message."""
    said = f"{desk.bar.id} {desk.source} {desk.now.timestamp()}"
    return int.from_bytes(hashlib.sha256(said.encode()).digest()[:6])


def add(desk: Desk, trial_id: int, lines: Sequence[DraftLine], changed: str) -> TrialView:
    """Add a variant to a trial that goes on. Raises NotThereError, BadValueError."""
    row = _open(desk, trial_id)
    numbers = [one.number for one in desk.book.all(TrialVariant, TrialVariant.trial_id == trial_id)]
    if len(_variant_rows(desk, trial_id)) >= MOST_VARIANTS:
        raise BadValueError("number of variants", str(len(numbers)))
    number = max(numbers) + 1
    _write(desk, row, number, lines, changed)
    _give_codes(desk, row)
    desk.log("trial variant", trial=row.id, number=number)
    return get(desk, row.id)


def _open(desk: Desk, trial_id: int) -> Trial:
    row = _row(desk, trial_id)
    if row.state != TrialState.OPEN:
        raise NotThereError("trial", str(trial_id))
    return row


def _write(desk: Desk, row: Trial, number: int, lines: Sequence[DraftLine], changed: str) -> None:
    written: list[list[str | int]] = []
    for line in lines:
        if line.quantity.number <= 0:
            raise BadValueError("amount", str(float(line.quantity.number)))
        if isinstance(line.ingredient, str):
            item = ingredients.add(desk, line.ingredient, strength_percent=line.strength_percent).id
        else:
            item = line.ingredient
        written.append([item, exact_text(line.quantity.number), line.quantity.unit])
    if not written:
        raise BadValueError("ingredients", "")
    taken = [one.lines for one in _variant_rows(desk, row.id)]
    if written in taken:
        raise AlreadyThereError("variant", changed[:80])
    desk.book.add(TrialVariant(trial_id=row.id, number=number, changed=changed[:500], lines=written))


def _give_codes(desk: Desk, row: Trial) -> None:
    """Give every variant its letter: in order, or shuffled where it is blind.

    Once bottles are filled or somebody has tasted, the letters stay and a new variant gets the next one.
    """
    rows = _variant_rows(desk, row.id)
    begun = any(one.batch_id is not None for one in rows) or bool(_scores(desk, row.id))
    everything = desk.book.all(TrialVariant, TrialVariant.trial_id == row.id)
    if begun:
        used = {one.code for one in everything}
        for one in rows:
            if one.code is None:
                one.code = next(code for code in _letters() if code not in used)
                used.add(one.code)
        desk.book.session.flush()
        return
    for one in everything:
        one.code = None
    desk.book.session.flush()  # a letter has to be free before another variant can have it
    by_number = {str(one.number): one for one in rows}
    if row.blind:
        for code, number in blind_codes(list(by_number), row.seed).items():
            by_number[number].code = code
    else:
        for code, one in zip(_letters(), rows, strict=False):
            one.code = code
    desk.book.session.flush()


def _letters() -> list[str]:
    return [chr(ord("A") + place) for place in range(26)]


# -- making -------------------------------------------------------------------------------------


def variant_view(trial: TrialView, variant: Variant) -> FormulaView:
    """Return the formula as this variant has it, named for the label on its bottle."""
    name = f"{trial.formula.name} {trial.id}{variant.code}"
    return replace(trial.formula, name=name, lines=variant.lines)


def make(desk: Desk, trial_id: int) -> TrialView:
    """Log a small batch of every variant that has none yet; each carries its code, not what it is."""
    _open(desk, trial_id)
    trial = get(desk, trial_id)
    made = []
    for variant in trial.variants:
        if variant.batch_id is not None:
            continue
        view = variant_view(trial, variant)
        answer = scaling.scale_formula(desk, view, ByTotal(trial.total_ml))
        batch = batch_life.make(desk, NewBatch(answer, trial=(trial.id, variant.number))).batch.number
        row = desk.book.get(TrialVariant, trial_id, variant.number)
        if row is not None:
            row.batch_id = batch
        made.append(batch)
    desk.book.session.flush()
    desk.log("trial batches", trial=trial_id, batches=made)
    return get(desk, trial_id)


def look_up(desk: Desk, trial_id: int) -> TrialView:
    """Tell what is which, for whoever fills the bottles; who looked is kept."""
    trial = get(desk, trial_id)
    if trial.hidden:
        desk.log("trial key", trial=trial_id)
    return get(desk, trial_id)


# -- tasting ------------------------------------------------------------------------------------


def score(desk: Desk, trial_id: int, code: str, given: Mapping[Aspect, int]) -> TrialView:
    """Note what somebody tasted; the last word of each member on each variant counts.

    Raises NotThereError, OutOfRangeError outside 1 to 5.
    """
    _open(desk, trial_id)
    trial = get(desk, trial_id)
    variant = trial.by_code(code)
    Score(str(desk.person_id), variant.code, given)
    row = desk.book.add(
        TrialScore(
            trial_id=trial_id,
            variant=variant.number,
            person_id=desk.person_id,
            given={aspect.value: number for aspect, number in given.items()},
            at=desk.now,
        )
    )
    desk.log("taste", row=row.id, code=variant.code)
    return get(desk, trial_id)


def close(desk: Desk, trial_id: int) -> TrialView:
    """End a trial without promoting anything: what is which may be said from now on."""
    row = _open(desk, trial_id)
    row.state = TrialState.CLOSED
    desk.book.session.flush()
    desk.log("close trial", trial=trial_id)
    return get(desk, trial_id)


def promote(desk: Desk, trial_id: int, code: str) -> FormulaView:
    """Make a variant the formula's next version and end the trial.

    Raises NotAllowedError for a plain member, NotThereError, BadValueError for the base itself.
    """
    if not desk.role.manages:
        raise NotAllowedError("manager")
    row = _row(desk, trial_id)
    trial = get(desk, trial_id)
    variant = trial.by_code(code)
    if variant.number == BASE:
        raise BadValueError("variant", code)
    now = formulas.get(desk, row.formula_id)
    lines = tuple(DraftLine(line.ingredient.id, line.quantity) for line in variant.lines)
    note = variant.changed if not now.note else f"{now.note}\n{variant.changed}"
    before, was = row.promoted, row.state
    view = formulas.change(desk, row.formula_id, replace(formulas.draft_of(now), lines=lines, note=note))
    changed = desk.entry
    row.state, row.promoted = TrialState.CLOSED, variant.number
    desk.book.session.flush()
    desk.log(
        "promote",
        trial=trial_id,
        formula=view.id,
        name=view.name,
        before=now.version,
        promoted=before,
        state=was,
        change=changed,
    )
    return view


# -- taking back ----------------------------------------------------------------------------------


def take_back_start(desk: Desk, details: dict[str, Any]) -> None:
    """Undo a trial, as if never begun; batches that were logged for it stay."""
    _set_state(desk, details["trial"], TrialState.UNDONE)


def take_back_close(desk: Desk, details: dict[str, Any]) -> None:
    """Undo the end of a trial."""
    _set_state(desk, details["trial"], TrialState.OPEN)


def _set_state(desk: Desk, trial_id: int, state: TrialState) -> None:
    row = desk.book.get(Trial, trial_id)
    if row is not None:
        row.state = state
        desk.book.session.flush()


def take_back_variant(desk: Desk, details: dict[str, Any]) -> None:
    """Undo an added variant; its scores go with it."""
    row = desk.book.get(TrialVariant, details["trial"], details["number"])
    if row is not None:
        row.void = True
        desk.book.session.flush()


def take_back_score(desk: Desk, details: dict[str, Any]) -> None:
    """Undo a score: a void row that points to it."""
    row = desk.book.get(TrialScore, details["row"])
    if row is not None:
        desk.book.add(
            TrialScore(
                trial_id=row.trial_id,
                variant=row.variant,
                person_id=row.person_id,
                given=row.given,
                at=desk.now,
                corrects=row.id,
                void=True,
            )
        )


def take_back_batches(desk: Desk, details: dict[str, Any]) -> None:
    """Undo the small batches of a trial."""
    for number in details["batches"]:
        batch_life.take_back_making(desk, {"batch": number})
    for row in desk.book.all(TrialVariant, TrialVariant.trial_id == details["trial"]):
        if row.batch_id in details["batches"]:
            row.batch_id = None
    desk.book.session.flush()


def take_back_promotion(desk: Desk, details: dict[str, Any]) -> None:
    """Undo a promotion: the formula is as it was, as a new version, and the trial goes on."""
    formulas.take_back_change(desk, details)
    row = desk.book.get(Trial, details["trial"])
    if row is not None:
        row.state, row.promoted = details["state"], details["promoted"]
        desk.book.session.flush()
    if details["change"] is not None and desk.book.one(Entry, Entry.undo_of == details["change"]) is None:
        # The change of the formula has a line of its own in the log: it is taken back with this one.
        desk.log("undo", undo_of=details["change"], undone="change formula")
