"""The life cycle of a batch: make, check, strain, open, use up or discard."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field
from datetime import date
from fractions import Fraction
from typing import Any

from bot.trade.batches.shelf import RULE_TEXTS, ShelfPlan
from bot.trade.formulas.amounts import Line
from bot.trade.formulas.measures import BASE_UNITS, Dimension
from bot.work.batches import batches, bottles, discarding
from bot.work.batches import shelf as shelves
from bot.work.batches.batches import LOOKING, BatchState, BatchView, Clarity
from bot.work.context import Context
from bot.work.errors import BadValueError, NotThereError, WrongStateError
from bot.work.formulas import ingredients
from bot.work.formulas.ingredients import IngredientView
from bot.work.formulas.mixture import mix_of_batch
from bot.work.formulas.scaling import ScaleAnswer
from bot.work.money.prices import PriceView, in_force
from bot.work.reminders import planning
from bot.work.safety import allergens
from bot.work.stock import pars
from storage.tables import Batch, BatchEvent, BatchLine
from storage.types import JsonObject, exact_text


@dataclass(frozen=True, slots=True)
class Made:
    """A new batch, with the number for undoing it."""

    batch: BatchView
    entry: int


@dataclass(frozen=True, slots=True)
class NewBatch:
    """Input of a new batch: a scaled formula, its cautions, and its place in a trial."""

    answer: ScaleAnswer
    caution_ids: Sequence[str] = field(default=())
    trial: tuple[int, int] | None = None  # the trial and variant, for a small batch of a trial


# -- making --------------------------------------------------------------------------------


def make(context: Context, new: NewBatch) -> Made:
    """Store a batch with a frozen copy of everything used, and plan its reminders; a trial plans its own."""
    answer = new.answer
    view = answer.formula
    lines = answer.measured.recipe.lines
    plan = shelves.plan_for(context, view)
    total = _total(answer, lines)
    row = context.book.add(
        Batch(
            formula_id=view.id,
            version=view.version,
            state=BatchState.RESTING if view.rest_hours > 0 else BatchState.READY,
            total_ml=total,
            made_at=context.now,
            made_by=context.person_id,
            rest_until=plan.rest_until,
            discard_on=plan.discard_on,
            frozen=_freeze(context, new, lines, plan),
        )
    )
    context.book.add_all(
        [
            BatchLine(
                batch_id=row.id,
                position=position,
                ingredient_id=line.ingredient.id,
                amount=amount.amount,
                unit=BASE_UNITS[amount.dimension],
            )
            for position, (line, amount) in enumerate(zip(view.lines, lines, strict=True), start=1)
        ]
    )
    note_event(context, row, "made")
    entry = context.log("batch", batch=row.id, name=view.name)
    if new.trial is None:
        planning.plan_batch(context.book, context.bar, row, view.name, context.now)
    pars.watch(context, [line.ingredient.id for line in view.lines])
    return Made(batches.get(context, row.id), entry)


def _total(answer: ScaleAnswer, lines: Sequence[Line]) -> Fraction:
    """Return the mL made, after contraction where it is known."""
    poured = sum((line.amount for line in lines if line.dimension is Dimension.VOLUME), Fraction(0))
    return answer.finished_ml or poured


def _freeze(context: Context, new: NewBatch, lines: Sequence[Line], plan: ShelfPlan) -> JsonObject:
    view = new.answer.formula
    prices = in_force(context, [line.ingredient.id for line in view.lines])
    strength = new.answer.strength
    return {
        "formula": view.name,
        **({} if new.trial is None else {"trial": list(new.trial)}),
        "version": view.version,
        "preparation": view.preparation,
        "strength_percent": None if strength is None else round(strength.strength_percent, 2),
        "rest_hours": exact_text(view.rest_hours),
        "discard_days": view.discard_days,
        "discard_on": plan.discard_on.isoformat(),
        "discard_rule": RULE_TEXTS[plan.winner.rule],
        "discard_subject": plan.winner.subject,
        "recheck_on": None if plan.recheck_on is None else plan.recheck_on.isoformat(),
        "past_when_made": plan.past_when_made,
        "ask_inspector": plan.ask_inspector,
        "keep_cold": plan.keep_cold,
        "allergens": allergens.frozen(context, view),
        "sprays": None if view.sprays is None else [exact_text(one) for one in view.sprays],
        "spray_ml": [exact_text(one) for one in view.spray_ml],
        "fill": [[exact_text(size), count] for size, count in new.answer.fill.full]
        if new.answer.fill
        else [],
        "cautions": list(new.caution_ids),
        "lines": [
            frozen_line(line.ingredient, amount, prices.get(line.ingredient.id))
            for line, amount in zip(view.lines, lines, strict=True)
        ],
    }


def frozen_line(ingredient: IngredientView, amount: Line, price: PriceView | None) -> JsonObject:
    """Return what a batch keeps of one ingredient: amount, strength, density, grade and price at the time."""
    return {
        "ingredient": ingredient.id,
        "name": ingredient.name,
        "kind": ingredient.kind,
        "amount": exact_text(amount.amount),
        "dimension": amount.dimension,
        "strength_percent": _text_or_none(ingredient.strength_percent),
        "density_g_per_ml": _text_or_none(ingredient.density_g_per_ml),
        "food_grade": ingredient.food_grade,
        "price": None
        if price is None
        else {
            "pack": exact_text(price.pack_amount),
            "dimension": price.dimension,
            "price": str(price.price),
        },
    }


def _text_or_none(number: Fraction | None) -> str | None:
    return None if number is None else exact_text(number)


def note_event(context: Context, row: Batch, what: str, **values: Any) -> None:
    """Add an event to a batch."""
    if what in LOOKING:
        context.book.touched()  # the checks of a formula are cached
    context.book.add(BatchEvent(batch_id=row.id, what=what, at=context.now, by=context.person_id, **values))


# -- events --------------------------------------------------------------------------------


def state_of(row: Batch) -> JsonObject:
    """Return the state of a batch as the log stores it."""
    return {
        "state": row.state,
        "clarity": row.clarity,
        "opened_at": None if row.opened_at is None else int(row.opened_at.timestamp()),
        "ended_at": None if row.ended_at is None else int(row.ended_at.timestamp()),
        "lost_ml": None if row.lost_ml is None else exact_text(row.lost_ml),
        "lost_reason": row.lost_reason,
    }


def _moved(context: Context, row: Batch, what: str, before: JsonObject, bottle: int | None = None) -> int:
    about: JsonObject = {"batch": row.id, "name": row.frozen["formula"]}
    if bottle is not None:
        about["rows"] = [bottle]
    return context.log(what, **about, before=before, after=state_of(row))


def check(
    context: Context,
    number: int,
    clarity: Clarity,
    note: str = "",
    photo: str | None = None,
    temperature_c: Fraction | None = None,
) -> Made:
    """Record a batch's look, at a temperature other than the room's if one is given.

    A rested, clear batch becomes ready. Raises NotThereError, WrongStateError.
    """
    row = batches.row_of(context, number)
    if not BatchState(row.state).open:
        raise WrongStateError(number, row.state)
    before = state_of(row)
    row.clarity = clarity
    if row.state == BatchState.RESTING and clarity is Clarity.CLEAR and context.now >= row.rest_until:
        row.state = BatchState.READY
    seen = {"clarity": clarity, "note": note[:1000], "photo": photo, "temperature_c": temperature_c}
    note_event(context, row, "check", **seen)
    planning.settle_for_batch(context.book, row.id, ("rested",), context.person_id)
    if clarity is not Clarity.CLEAR:
        planning.plan_recheck(context.book, context.bar, row, context.now)
    entry = _moved(context, row, "check", before)
    return Made(batches.get(context, number), entry)


def open_batch(context: Context, number: int) -> Made:
    """Record that a batch is now in use; of a bottled one, one more bottle.

    Raises NotThereError, WrongStateError.
    """
    row = batches.row_of(context, number)
    bottle = bottles.take_one(context, number) if BatchState(row.state).open else None
    if bottle is None and row.state not in {BatchState.READY, BatchState.RESTING}:
        raise WrongStateError(number, row.state)
    before = state_of(row)
    row.state = BatchState.IN_USE
    row.opened_at = context.now
    discarding.renew(context, row)  # an opened bottle has its own date
    note_event(context, row, "opened")
    planning.settle_for_batch(context.book, row.id, ("rested",), context.person_id)
    return Made(batches.get(context, number), _moved(context, row, "open batch", before, bottle))


def use_up(context: Context, number: int) -> Made:
    """Record that a batch is used up; while more of it is left, only its open bottle.

    Raises NotThereError, WrongStateError.
    """
    bottle = bottles.empty_one(context, number)
    if bottle is not None:
        return _empty(context, batches.row_of(context, number), bottle)
    return _end(context, number, BatchState.USED_UP, None, "")


def _empty(context: Context, row: Batch, bottle: int) -> Made:
    before = state_of(row)
    found = bottles.left(context, row.id)
    if found is not None and not found.open_ml:
        row.state, row.opened_at = BatchState.READY, None
        discarding.renew(context, row)  # unopened bottles keep longer
    note_event(context, row, "emptied")
    return Made(batches.get(context, row.id), _moved(context, row, "use bottle", before, bottle))


def discard(context: Context, number: int, lost_ml: Fraction | None, reason: str) -> Made:
    """Record that a batch was thrown out, with amount and reason; all that is left of it by default.

    Raises NotThereError, WrongStateError.
    """
    row = batches.row_of(context, number)
    there = bottles.held_ml(context, row)
    lost = there if lost_ml is None else min(lost_ml, there)
    return _end(context, number, BatchState.DISCARDED, lost, reason)


def _end(context: Context, number: int, state: BatchState, lost_ml: Fraction | None, reason: str) -> Made:
    row = batches.row_of(context, number)
    if not BatchState(row.state).open:
        raise WrongStateError(number, row.state)
    before = state_of(row)
    row.state, row.ended_at = state, context.now
    if lost_ml is not None:
        row.lost_ml, row.lost_reason = lost_ml, reason[:80]
    note_event(context, row, state.value, note=reason[:1000])
    planning.cancel_for_batch(context.book, row.id)
    what = "use up" if state is BatchState.USED_UP else "discard"
    return Made(batches.get(context, number), _moved(context, row, what, before))


# -- straining -----------------------------------------------------------------------------


def strain(context: Context, number: int, out_ml: Fraction) -> Made:
    """Record what came out of a batch after straining: its volume, and its strength with the fruit's water.

    Raises NotThereError, WrongStateError, BadValueError, or OutOfRangeError for more than can be.
    """
    row = batches.row_of(context, number)
    if not BatchState(row.state).open:
        raise WrongStateError(number, row.state)
    if out_ml <= 0:
        raise BadValueError("amount", exact_text(out_ml))
    percent = mix_of_batch(row.frozen["lines"]).infused_percent(float(out_ml))
    before = strained_of(row)
    after: JsonObject = {
        "ml": exact_text(out_ml),
        "made_ml": exact_text(row.total_ml) if before is None else before["made_ml"],
        "percent": None if percent is None else [round(percent.low, 2), round(percent.high, 2)],
    }
    set_strained(context, row, after)
    note_event(context, row, "strained")
    names: JsonObject = {"batch": row.id, "name": row.frozen["formula"]}
    entry = context.log("strain", **names, before=before, after=after)
    return Made(batches.get(context, number), entry)


def strained_of(row: Batch) -> JsonObject | None:
    """Return what came out of a batch after straining as the log stores it, None before."""
    found: JsonObject | None = row.frozen.get("strained")
    return found


def set_strained(context: Context, row: Batch, strained: JsonObject | None) -> None:
    """Write what came out after straining; with None the volume is again the one that was made."""
    before = strained_of(row)
    if strained is not None:
        row.total_ml = Fraction(strained["ml"])
    elif before is not None:
        row.total_ml = Fraction(before["made_ml"])
    row.frozen = {**row.frozen, "strained": strained}
    context.book.touched()


# -- lots ----------------------------------------------------------------------------------


def note_lot(
    context: Context, number: int, ingredient_id: int, lot: str, best_before: date | None = None
) -> BatchView:
    """Record the lot of an ingredient used in a batch, and its expiry: the earliest date wins.

    Raises NotThereError.
    """
    row = batches.row_of(context, number)
    line = context.book.one(BatchLine, BatchLine.batch_id == row.id, BatchLine.ingredient_id == ingredient_id)
    if line is None:
        raise NotThereError("ingredient", ingredients.get(context, ingredient_id).name)
    before = lot_of(line)
    line.lot, line.best_before = lot.strip()[:60], best_before
    discarding.renew(context, row)
    names: JsonObject = {"batch": row.id, "position": line.position, "name": row.frozen["formula"]}
    context.log("lot", **names, lot=line.lot, before=before, after=lot_of(line))
    return batches.get(context, number)


def lot_of(line: BatchLine) -> list[str | None]:
    """Return the lot and its expiry as the log stores them."""
    return [line.lot, None if line.best_before is None else line.best_before.isoformat()]
