"""The life cycle of a trial: start, add variants, make, taste, close or promote."""

from __future__ import annotations

import hashlib
from collections.abc import Mapping, Sequence
from dataclasses import replace
from datetime import date
from fractions import Fraction

from bot.trade.formulas.amounts import ByTotal
from bot.trade.trials.tasting import Aspect, Score, blind_codes
from bot.work.batches import batch_life, batches
from bot.work.batches.batch_life import NewBatch
from bot.work.context import Context
from bot.work.errors import (
    AlreadyThereError,
    BadValueError,
    BlindError,
    KeySeenError,
    NotAllowedError,
    NotThereError,
)
from bot.work.formulas import formulas, ingredients, scaling
from bot.work.formulas.formulas import DraftLine, FormulaView
from bot.work.reminders import planning
from bot.work.trials import trials
from bot.work.trials.trials import TrialKind, TrialState, TrialView, Triangle, Variant
from storage.tables import Batch, Trial, TrialScore, TrialVariant
from storage.types import exact_text

MOST_VARIANTS = 8


# -- starting and adding -------------------------------------------------------------------


def start(
    context: Context,
    formula_id: int,
    lines: Sequence[DraftLine],
    changed: str,
    total_ml: Fraction,
    blind: bool,
) -> TrialView:
    """Begin a trial of a formula against one variant of it. Raises NotThereError, BadValueError."""
    view = formulas.get(context, formula_id)
    if not 0 < total_ml <= 100_000:
        raise BadValueError("amount", str(float(total_ml)))
    row = context.book.add(
        Trial(
            formula_id=view.id,
            version=view.version,
            blind=blind,
            total_ml=total_ml,
            state=TrialState.OPEN,
            seed=_seed(context),
            at=context.now,
            by=context.person_id,
        )
    )
    _write(context, row, trials.BASE, formulas.draft_of(view).lines, "")
    _write(context, row, trials.BASE + 1, lines, changed)
    give_codes(context, row)
    context.log("trial", trial=row.id, name=view.name)
    return trials.get(context, row.id)


def start_triangle(context: Context, formula_id: int) -> TrialView:
    """Begin a triangle test of a sprayed formula against the fresh garnish that it replaces.

    Raises NotThereError without a garnish.
    """
    view = formulas.get(context, formula_id)
    if view.garnish is None:
        raise NotThereError("garnish", view.name)
    row = context.book.add(
        Trial(
            formula_id=view.id,
            version=view.version,
            blind=True,
            total_ml=Fraction(0),
            state=TrialState.OPEN,
            seed=_seed(context),
            at=context.now,
            by=context.person_id,
            kind=TrialKind.TRIANGLE,
        )
    )
    _write(context, row, trials.BASE, formulas.draft_of(view).lines, "")
    context.log("trial", trial=row.id, name=view.name)
    return trials.get(context, row.id)


def _seed(context: Context) -> int:
    """Return a seed that outsiders cannot guess, the same for the same message."""
    said = f"{context.bar.id} {context.source} {context.now.timestamp()}"
    return int.from_bytes(hashlib.sha256(said.encode()).digest()[:6])


def add(context: Context, trial_id: int, lines: Sequence[DraftLine], changed: str) -> TrialView:
    """Add a variant to a running trial. Raises NotThereError, BadValueError, BlindError."""
    row = _open(context, trial_id)
    refuse_telling(context, trial_id)
    numbers = [one.number for one in context.book.all(TrialVariant, TrialVariant.trial_id == trial_id)]
    if len(trials.variant_rows(context, trial_id)) >= MOST_VARIANTS:
        raise BadValueError("number of variants", str(len(numbers)))
    number = max(numbers) + 1
    _write(context, row, number, lines, changed)
    give_codes(context, row)
    context.log("trial variant", trial=row.id, number=number)
    return trials.get(context, row.id)


def _open(context: Context, trial_id: int) -> Trial:
    row = trials.row_of(context, trial_id)
    if row.state != TrialState.OPEN:
        raise NotThereError("trial", str(trial_id))
    return row


def _write(context: Context, row: Trial, number: int, lines: Sequence[DraftLine], changed: str) -> None:
    written: list[list[str | int]] = []
    for line in lines:
        if line.quantity.number <= 0:
            raise BadValueError("amount", str(float(line.quantity.number)))
        if isinstance(line.ingredient, str):
            item = ingredients.add(context, line.ingredient, strength_percent=line.strength_percent).id
        else:
            item = line.ingredient
        written.append([item, exact_text(line.quantity.number), line.quantity.unit])
    if not written:
        raise BadValueError("ingredients", "")
    taken = [one.lines for one in trials.variant_rows(context, row.id)]
    if written in taken:
        raise AlreadyThereError("variant", changed[:80])
    context.book.add(TrialVariant(trial_id=row.id, number=number, changed=changed[:500], lines=written))


def refuse_telling(context: Context, trial_id: int) -> None:
    """Raise BlindError where a variant that comes or goes would tell by its letter which one it is."""
    trial = trials.get(context, trial_id)
    if trial.hidden and trial.begun:
        raise BlindError(trial_id)


def give_codes(context: Context, row: Trial) -> None:
    """Assign a letter to each variant: in order, or shuffled if the trial is blind.

    Once they are in use they stay, and a new variant gets the next one.
    """
    rows = trials.variant_rows(context, row.id)
    everything = context.book.all(TrialVariant, TrialVariant.trial_id == row.id)
    if trials.get(context, row.id).begun:
        used = {one.code for one in everything}
        for one in rows:
            if one.code is None:
                one.code = next(code for code in _letters() if code not in used)
                used.add(one.code)
        context.book.session.flush()
        return
    for one in everything:
        one.code = None
    context.book.session.flush()  # a letter must be free before another variant can have it
    by_number = {str(one.number): one for one in rows}
    if row.blind:
        for code, number in blind_codes(list(by_number), row.seed).items():
            by_number[number].code = code
    else:
        for code, one in zip(_letters(), rows, strict=False):
            one.code = code
    context.book.session.flush()


def _letters() -> list[str]:
    return [chr(ord("A") + place) for place in range(26)]


# -- making --------------------------------------------------------------------------------


def variant_view(trial: TrialView, variant: Variant) -> FormulaView:
    """Return the formula of this variant, named for the label on its bottle."""
    name = f"{trial.formula.name} {trial.id}{variant.code}"
    return replace(trial.formula, name=name, lines=variant.lines)


def at_size(context: Context, trial: TrialView) -> TrialView:
    """Return a trial with the amounts that its small batches take, instead of the formula's own."""
    if trial.triangle is not None:
        return trial
    sized = [
        replace(
            variant,
            lines=scaling.scale_formula(
                context, variant_view(trial, variant), ByTotal(trial.total_ml)
            ).measured.lines,
        )
        for variant in trial.variants
    ]
    return replace(trial, variants=tuple(sized))


def make(context: Context, trial_id: int) -> TrialView:
    """Log a small batch of every variant without one; each carries its code, not its content."""
    _open(context, trial_id)
    trial = trials.get(context, trial_id)
    made = []
    for variant in trial.variants:
        if variant.batch_id is not None:
            continue
        view = variant_view(trial, variant)
        answer = scaling.scale_formula(context, view, ByTotal(trial.total_ml))
        batch = batch_life.make(context, NewBatch(answer, trial=(trial.id, variant.number))).batch.number
        row = context.book.get(TrialVariant, trial_id, variant.number)
        if row is not None:
            row.batch_id = batch
        made.append(batch)
    bottles = [batches.row_of(context, number) for number in made]
    if trial.blind:
        _make_alike(trial, bottles)
    for bottle in bottles:
        planning.plan_batch(context.book, context.bar, bottle, str(bottle.frozen["formula"]), context.now)
    context.book.session.flush()
    context.log("trial batches", trial=trial_id, batches=made)
    return trials.get(context, trial_id)


def _make_alike(trial: TrialView, rows: Sequence[Batch]) -> None:
    """Give the bottles of a blind trial the same volume and dates, which would tell them apart.

    The volumes differ by rounding and contraction only; the earliest date is right for all of them.
    """
    for name in ("discard_on", "recheck_on"):
        days = [row.frozen[name] for row in rows if row.frozen[name] is not None]
        for row in rows:
            row.frozen = {**row.frozen, name: min(days, default=None)}
    for row in rows:
        row.total_ml = trial.total_ml
        row.discard_on = date.fromisoformat(row.frozen["discard_on"])


def look_up(context: Context, trial_id: int) -> TrialView:
    """Reveal the codes to the person who fills the bottles and may then not taste, and record who looked."""
    trial = trials.get(context, trial_id)
    if trial.hidden:
        context.log("trial key", trial=trial_id)
    return trials.get(context, trial_id)


# -- tasting -------------------------------------------------------------------------------


def refuse_who_saw(context: Context, trial: TrialView) -> None:
    """Raise KeySeenError if this person has seen the codes of a running blind trial."""
    if trial.hidden and context.person_id in trial.seen_by:
        others = (name for person, name in trial.seen_by.items() if person != context.person_id)
        raise KeySeenError(trial.id, tuple(others))


def score(context: Context, trial_id: int, code: str, given: Mapping[Aspect, int]) -> TrialView:
    """Record a tasting; the last score of each member for each variant counts.

    Raises NotThereError, OutOfRangeError outside 1 to 5, KeySeenError.
    """
    _open(context, trial_id)
    trial = trials.get(context, trial_id)
    refuse_who_saw(context, trial)
    variant = trial.by_code(code)
    Score(str(context.person_id), variant.code, given)
    row = context.add(
        TrialScore(
            trial_id=trial_id,
            variant=variant.number,
            person_id=context.person_id,
            given={aspect.value: number for aspect, number in given.items()},
            at=context.now,
        )
    )
    context.log("taste", row=row.id, code=variant.code)
    return trials.get(context, trial_id)


def pour(context: Context, trial_id: int) -> TrialView:
    """Show the next glasses of a triangle test to the person who pours, who may then not taste them.

    Raises NotThereError.
    """
    test = _running_triangle(context, trial_id)
    context.log("trial pour", trial=trial_id, serving=test.serving)
    return trials.get(context, trial_id)


def pick(context: Context, trial_id: int, code: int) -> TrialView:
    """Record the glass that a taster takes for the odd one.

    Raises NotThereError, BadValueError for another glass, or for somebody who poured these.
    """
    test = _running_triangle(context, trial_id)
    if code not in test.glasses.codes or context.person_id in test.poured_by or not test.poured_by:
        raise BadValueError("glass", str(code))
    row = context.add(
        TrialScore(
            trial_id=trial_id,
            variant=trials.BASE,
            person_id=context.person_id,
            given={"serving": test.serving, "picked": test.glasses.codes.index(code)},
            at=context.now,
        )
    )
    context.log("triangle", row=row.id, trial=trial_id)
    return trials.get(context, trial_id)


def _running_triangle(context: Context, trial_id: int) -> Triangle:
    trial = trials.get(context, trial_id)
    if trial.triangle is None or trial.state is not TrialState.OPEN:
        raise NotThereError("trial", str(trial_id))
    return trial.triangle


def close(context: Context, trial_id: int) -> TrialView:
    """End a trial without promoting a variant; the codes are no longer secret."""
    row = _open(context, trial_id)
    row.state = TrialState.CLOSED
    context.book.session.flush()
    context.book.touched()  # the looks at its bottles count from now on
    context.log("close trial", trial=trial_id)
    return trials.get(context, trial_id)


def promote(context: Context, trial_id: int, code: str) -> FormulaView:
    """Make a variant the formula's next version and end the trial.

    Raises NotAllowedError for a plain member, NotThereError, BadValueError for the base itself, and for any
    variant of a blind trial that is not over.
    """
    if not context.role.manages:
        raise NotAllowedError("manager")
    row = trials.row_of(context, trial_id)
    trial = trials.get(context, trial_id)
    variant = trial.by_code(code)
    if variant.number == trials.BASE or trial.hidden:
        raise BadValueError("variant", code)
    now = formulas.get(context, row.formula_id)
    lines = tuple(DraftLine(line.ingredient.id, line.quantity) for line in variant.lines)
    note = variant.changed if not now.note else f"{now.note}\n{variant.changed}"
    before, was = row.promoted, row.state
    draft = replace(formulas.draft_of(now), lines=lines, note=note)
    view, changed = formulas.write_change(context, row.formula_id, draft)
    row.state, row.promoted = TrialState.CLOSED, variant.number
    context.book.session.flush()
    context.log(
        "promote",
        trial=trial_id,
        name=view.name,
        **changed,
        trial_before=[was, before],
        trial_after=[row.state, row.promoted],
    )
    return view
