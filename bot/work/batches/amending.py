"""Change what is in a batch after it was made: add an ingredient, or filter it and lose some."""

from __future__ import annotations

from dataclasses import dataclass, replace
from datetime import date
from decimal import Decimal
from fractions import Fraction

from bot.trade.batches.shelf import RULE_TEXTS
from bot.trade.formulas.amounts import Line
from bot.trade.formulas.measures import BASE_UNITS, Dimension, Quantity
from bot.trade.liquids.strength import Portion, mix
from bot.trade.money.money import as_decimal
from bot.work.batches import batches, discarding
from bot.work.batches import shelf as shelves
from bot.work.batches.batch_life import frozen_line, note_event, state_of
from bot.work.batches.batches import BatchState, BatchView
from bot.work.context import Context
from bot.work.errors import BadValueError, WrongStateError
from bot.work.formulas import formulas, ingredients
from bot.work.formulas.formulas import FormulaLineView
from bot.work.formulas.mixture import mix_of_batch
from bot.work.money.prices import in_force
from bot.work.reminders import planning
from bot.work.safety import allergens
from bot.work.standing import Details
from bot.work.stock import pars
from storage.tables import Batch, BatchLine
from storage.types import JsonObject, exact_text

KINDS = frozenset({"add to batch", "filter"})  # of log entries whose undo restores the content
# The parts of a batch's frozen copy that an addition changes.
_CHANGED = (
    *("lines", "strength_percent", "allergens", "discard_on", "discard_rule", "discard_subject"),
    *("keep_cold", "ask_inspector", "strained"),
)


@dataclass(frozen=True, slots=True)
class Amended:
    """A batch after a change, the same before it, and what its ingredients cost, None without prices."""

    before: BatchView
    after: BatchView
    cost: Decimal | None


def add(context: Context, number: int, ingredient_id: int, ml: Fraction, note: str) -> Amended:
    """Add an ingredient to a batch: volume, strength, allergens and discard date follow. `note` says what.

    Raises NotThereError, WrongStateError, or BadValueError for no amount or more than ten times the batch.
    """
    row, view = _open_row(context, number), batches.get(context, number)
    if not 0 < ml <= 10 * row.total_ml:
        raise BadValueError("amount", exact_text(ml))
    before = state_of(row) | content_of(context, row)
    ingredient = ingredients.get(context, ingredient_id)
    price = in_force(context, [ingredient_id]).get(ingredient_id)
    added = frozen_line(ingredient, Line(ingredient.name, ml, Dimension.VOLUME), price)
    old = row.frozen["lines"]
    lines = _with(old, added)
    contraction = _contraction(old) - _contraction(lines)
    strained = _strained_with(row, added)
    row.frozen = row.frozen | {"lines": lines, "strength_percent": _strength(lines)} | strained
    row.total_ml += ml + contraction
    _pour(context, row, ingredient_id, ml)
    _renew_keeping(context, row)
    note_event(context, row, "added", note=note, mix_before=old)
    details: JsonObject = {"ingredient": ingredient_id, "amount": exact_text(ml), "item": ingredient.name}
    pars.watch(context, [ingredient_id])
    return _amended(context, row, "add to batch", view, before, details)


def filtered(context: Context, number: int, lost_ml: Fraction, note: str) -> Amended:
    """Record that a batch was filtered, and how much of it was lost. `note` says how much.

    Raises NotThereError, WrongStateError, or BadValueError for a loss below zero or of all of it.
    """
    row, view = _open_row(context, number), batches.get(context, number)
    if not 0 <= lost_ml < row.total_ml:
        raise BadValueError("amount", exact_text(lost_ml))
    before = state_of(row) | content_of(context, row)
    kept = 1 - lost_ml / row.total_ml
    row.frozen = row.frozen | {"lines": [_keep(line, kept) for line in row.frozen["lines"]]}
    row.total_ml -= lost_ml
    note_event(context, row, "filtered", note=note)
    return _amended(context, row, "filter", view, before, {"amount": exact_text(lost_ml)})


def _open_row(context: Context, number: int) -> Batch:
    row = batches.row_of(context, number)
    if not BatchState(row.state).open:
        raise WrongStateError(number, row.state)
    return row


def _amended(
    context: Context, row: Batch, what: str, view: BatchView, before: JsonObject, details: JsonObject
) -> Amended:
    row.clarity = None  # the last look was at another bottle
    context.book.touched()
    if BatchState(row.state).open:
        planning.plan_recheck(context.book, context.bar, row, context.now)
    context.log(
        what,
        batch=row.id,
        name=row.frozen["formula"],
        **details,
        before=before,
        after=state_of(row) | content_of(context, row),
    )
    after = batches.get(context, row.id)
    return Amended(view, after, _cost(row.frozen["lines"]))


# -- what is in it -------------------------------------------------------------------------


def _keep(line: JsonObject, share: Fraction) -> JsonObject:
    """Return a line with only a share left in the batch; the amount poured stays, as it was paid for."""
    return line | {"left": exact_text(Fraction(str(line.get("left", line["amount"]))) * share)}


def _with(lines: list[JsonObject], added: JsonObject) -> list[JsonObject]:
    """Return the lines with an addition: to the same ingredient in the same strength, or as a new line."""
    same = ("ingredient", "dimension", "strength_percent")
    for place, line in enumerate(lines):
        if all(line.get(name) == added[name] for name in same):
            more = {"amount": exact_text(Fraction(str(line["amount"])) + Fraction(str(added["amount"])))}
            if "left" in line:
                more["left"] = exact_text(Fraction(str(line["left"])) + Fraction(str(added["amount"])))
            return [*lines[:place], line | more, *lines[place + 1 :]]
    return [*lines, added]


def _strength(lines: list[JsonObject]) -> float | None:
    strength = mix_of_batch(lines).strength
    return None if strength is None else round(strength.strength_percent, 2)


def _strained_with(row: Batch, added: JsonObject) -> JsonObject:
    """Return the change to what came out after straining: the strength that an addition to it gives."""
    strained: JsonObject | None = row.frozen.get("strained")
    if strained is None or not strained["percent"]:
        return {}
    more = Portion(float(Fraction(added["amount"])), float(Fraction(added["strength_percent"] or 0)))
    ends = (mix([Portion(float(row.total_ml), end), more]) for end in strained["percent"])
    return {"strained": strained | {"percent": [round(end.strength_percent, 2) for end in ends]}}


def _contraction(lines: list[JsonObject]) -> Fraction:
    """Return by how many mL the mix is smaller than its parts; 0 where a strength is unknown."""
    mix = mix_of_batch(lines)
    if mix.strength is None:
        return Fraction(0)
    shrunk = sum(one.volume_ml for one in mix.components) - mix.strength.volume_ml
    return Fraction(str(round(shrunk, 2)))


def _pour(context: Context, row: Batch, ingredient_id: int, ml: Fraction) -> None:
    """Add the amount to the batch's line of the ingredient, or as a new line."""
    found = context.book.all(BatchLine, BatchLine.batch_id == row.id, order=BatchLine.position)
    unit = BASE_UNITS[Dimension.VOLUME]
    for line in found:
        if line.ingredient_id == ingredient_id and line.unit == unit:
            line.amount += ml
            return
    position = max((line.position for line in found), default=0) + 1
    context.book.add(
        BatchLine(batch_id=row.id, position=position, ingredient_id=ingredient_id, amount=ml, unit=unit)
    )


def _renew_keeping(context: Context, row: Batch) -> None:
    """Bring the discard date forward where the new mix keeps less long; never later."""
    made = formulas.get(context, row.formula_id, row.version)
    view = replace(made, lines=tuple(_line_view(context, line) for line in row.frozen["lines"]))
    plan = shelves.plan_for(replace(context, now=row.made_at), view)
    row.frozen = row.frozen | {"allergens": allergens.frozen(context, view)}
    if plan.discard_on < date.fromisoformat(str(row.frozen.get("discard_on", row.discard_on))):
        row.frozen = row.frozen | {
            "discard_on": plan.discard_on.isoformat(),
            "discard_rule": RULE_TEXTS[plan.winner.rule],
            "discard_subject": plan.winner.subject,
            "keep_cold": plan.keep_cold,
            "ask_inspector": plan.ask_inspector,
        }
    discarding.renew(context, row)


def _line_view(context: Context, line: JsonObject) -> FormulaLineView:
    amount, dimension = Fraction(line["amount"]), Dimension(line["dimension"])
    percent = line["strength_percent"]
    ingredient = replace(
        ingredients.get(context, line["ingredient"]),
        strength_percent=None if percent is None else Fraction(percent),
    )
    return FormulaLineView(ingredient, Quantity(amount, BASE_UNITS[dimension]), amount, dimension)


def _cost(lines: list[JsonObject]) -> Decimal | None:
    """Return the cost of all that was poured, at the prices of its time; None if one is not known."""
    total = Fraction(0)
    for line in lines:
        price = line.get("price")
        if price is None or price["dimension"] != line["dimension"]:
            return None
        total += Fraction(line["amount"]) / Fraction(price["pack"]) * Fraction(price["price"])
    return as_decimal(total)


# -- undo ----------------------------------------------------------------------------------


def content_of(context: Context, row: Batch) -> JsonObject:
    """Return the content of a batch as the log stores it."""
    lines = context.book.all(BatchLine, BatchLine.batch_id == row.id, order=BatchLine.position)
    return {
        "total_ml": exact_text(row.total_ml),
        "frozen": {name: row.frozen[name] for name in _CHANGED if name in row.frozen},
        "poured": [[line.position, line.ingredient_id, exact_text(line.amount), line.unit] for line in lines],
    }


def set_content(context: Context, row: Batch, content: Details) -> None:
    """Write the content of a batch back."""
    row.total_ml = Fraction(content["total_ml"])
    unchanged = {name: kept for name, kept in row.frozen.items() if name not in _CHANGED}
    row.frozen = unchanged | content["frozen"]
    wanted = {position: rest for position, *rest in content["poured"]}
    for line in context.book.all(BatchLine, BatchLine.batch_id == row.id):
        if line.position in wanted:
            line.amount = Fraction(wanted.pop(line.position)[1])
        else:
            context.book.session.delete(line)
    for position, (ingredient, amount, unit) in wanted.items():
        context.book.add(
            BatchLine(
                batch_id=row.id,
                position=position,
                ingredient_id=ingredient,
                amount=Fraction(amount),
                unit=unit,
            )
        )
    context.book.session.flush()
