"""A part of a batch that arrives from another bar, as a batch of this bar."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from fractions import Fraction
from typing import Any

from bot.trade.batches.shelf import RULE_TEXTS, ShelfRule
from bot.work.batches import batch_undo, batches, bottles, discarding
from bot.work.batches.batch_life import note_event
from bot.work.batches.batches import BatchState
from bot.work.context import Context
from bot.work.errors import CameFromError, ChangedSinceError, UsedThereError
from bot.work.formulas import formulas, ingredients
from bot.work.formulas.formulas import FormulaView, draft_of
from bot.work.formulas.ingredients import IngredientView
from bot.work.reminders import planning
from bot.work.standing import PUT_BACK, UNDO, Details
from storage.tables import Batch, BatchEvent, BatchLine, Entry, Formula, Ingredient
from storage.types import JsonObject, exact_text

MOVED_IN = "moved in"
_HARMLESS = frozenset({"arrived", "check"})  # events that use nothing of a batch


@dataclass(frozen=True, slots=True)
class Part:
    """What moves of a batch: bottles of one size, or with `bottles` 0 an amount without bottles."""

    bottles: int
    size_ml: Fraction | None
    ml: Fraction

    @classmethod
    def of_bottles(cls, count: int, size_ml: Fraction) -> Part:
        """Return some bottles of one size."""
        return cls(count, size_ml, count * size_ml)

    @classmethod
    def of_amount(cls, ml: Fraction) -> Part:
        """Return an amount without bottles."""
        return cls(0, None, ml)

    def as_logged(self) -> Details:
        """Return the part as the log stores it."""
        size = None if self.size_ml is None else exact_text(self.size_ml)
        return {"bottles": self.bottles, "size": size, "ml": exact_text(self.ml)}


@dataclass(frozen=True, slots=True)
class Arrived:
    """The batch in the receiving bar, and its log entry there."""

    number: int
    entry: int


# -- the formula -----------------------------------------------------------------------------------


def formula_there(here: Context, there: Context, formula_id: int) -> Formula | None:
    """Return the active formula of the same name in the other bar, or None."""
    same = Formula.match_key == formulas.row_of(here, formula_id).match_key
    return there.book.one(Formula, same, Formula.archived_at.is_(None))


def _formula(here: Context, there: Context, row: Batch) -> tuple[int, int, bool]:
    """Return the number and version of the batch's formula in the other bar, and whether it was put there.

    The version is 0 where no version there has the same content.
    """
    view = formulas.get(here, row.formula_id, row.version)
    found = formula_there(here, there, row.formula_id)
    is_new = found is None
    if found is None:
        found = _put_formula(here, there, view)
    same = row.version and next(
        (one for one in range(found.latest, 0, -1) if _same(view, formulas.get(there, found.id, one))), 0
    )
    return found.id, same, is_new


def _put_formula(here: Context, there: Context, view: FormulaView) -> Formula:
    """Add a formula with its ingredients; bring one that was archived back as it is there."""
    known = formulas.row_of(here, view.id)
    row = there.book.one(Formula, Formula.match_key == known.match_key)
    if row is not None:
        row.archived_at = None
        there.book.touched()
        return row
    numbers = _numbers(here, there, [line.ingredient.id for line in view.lines])
    garnish = None if view.garnish is None else _numbers(here, there, [view.garnish.id])[view.garnish.id]
    draft = draft_of(view)
    lines = tuple(replace(line, ingredient=numbers[int(line.ingredient)]) for line in draft.lines)
    row = there.book.add(
        Formula(
            name=known.name,
            match_key=known.match_key,
            preparation=known.preparation,
            latest=0,
            made_at=there.now,
        )
    )
    formulas.write_version(there, row, replace(draft, lines=lines, garnish=garnish))
    return row


def _same(one: FormulaView, other: FormulaView) -> bool:
    """Whether two formulas have the same ingredients in the same strengths and ratio."""
    return _shares(one) == _shares(other)


def _shares(view: FormulaView) -> dict[object, Fraction]:
    whole = sum((line.amount for line in view.lines), Fraction(0))
    return {
        (line.ingredient.name.casefold(), line.ingredient.strength_percent, line.dimension): line.amount
        / whole
        for line in view.lines
    }


def _numbers(here: Context, there: Context, wanted: Sequence[int]) -> dict[int, int]:
    """Return the other bar's numbers of ingredients; those that it does not have are added to it."""
    return {number: _number(there, ingredients.get(here, number)) for number in dict.fromkeys(wanted)}


def _number(there: Context, view: IngredientView) -> int:
    known = ingredients.by_name(there, view.name)
    if known is not None:
        return ingredients.add(there, known.name).id  # brings an archived one back
    made = ingredients.add(there, view.name, view.kind, view.strength_percent)
    row: Ingredient = ingredients.row_of(there, made.id)
    row.density_g_per_ml, row.density_source = view.density_g_per_ml, view.density_source
    row.grams_each, row.food_grade = view.grams_each, view.food_grade
    return made.id


# -- the batch -------------------------------------------------------------------------------------


def arrive(here: Context, there: Context, row: Batch, part: Part) -> Arrived:
    """Store a part of a batch as a batch of the other bar, with its lots and dates, and log that there."""
    formula, version, is_new = _formula(here, there, row)
    lines = here.book.all(BatchLine, BatchLine.batch_id == row.id, order=BatchLine.position)
    used = [*(line.ingredient_id for line in lines), *(int(one["ingredient"]) for one in row.frozen["lines"])]
    numbers = _numbers(here, there, used)
    share = part.ml / row.total_ml
    opened = not part.bottles and row.opened_at is not None
    batch = there.book.add(
        Batch(
            formula_id=formula,
            version=version,
            state=BatchState.RESTING if row.state == BatchState.RESTING else BatchState.READY,
            total_ml=part.ml,
            made_at=row.made_at,
            made_by=there.person_id,
            rest_until=row.rest_until,
            discard_on=row.discard_on,
            clarity=row.clarity,
            frozen=_frozen(row, share, numbers, version, opened, here.bar.currency == there.bar.currency),
            came_from=here.bar.name,
            number_there=row.id,
        )
    )
    there.book.add_all(
        [
            BatchLine(
                batch_id=batch.id,
                position=line.position,
                ingredient_id=numbers[line.ingredient_id],
                amount=line.amount * share,
                unit=line.unit,
                lot=line.lot,
                best_before=line.best_before,
            )
            for line in lines
        ]
    )
    filled = []
    if part.bottles:
        filled.append(bottles.add(there, batch.id, bottles.BOTTLED, part.bottles, part.size_ml).id)
    note_event(there, batch, "arrived", note=f"{here.bar.name}, {row.id}")
    discarding.renew(there, batch)
    planning.plan_batch(there.book, there.bar, batch, str(batch.frozen["formula"]), there.now)
    details: Details = {"batch": batch.id, "name": batch.frozen["formula"], "from": here.bar.name}
    details |= {"formula": formula, "new": is_new, "rows": filled}
    return Arrived(batch.id, there.log(MOVED_IN, **details, **part.as_logged()))


def _frozen(
    row: Batch, share: Fraction, numbers: dict[int, int], version: int, opened: bool, priced: bool
) -> JsonObject:
    """Return the frozen copy for a part of a batch. Prices in another currency are left out."""
    frozen = {name: kept for name, kept in row.frozen.items() if name not in {"trial", "fill"}}
    frozen |= {"version": version, "fill": []}
    frozen["lines"] = [
        {
            **line,
            "ingredient": numbers[int(line["ingredient"])],
            **{name: exact_text(Fraction(line[name]) * share) for name in ("amount", "left") if name in line},
            "price": line.get("price") if priced else None,
        }
        for line in row.frozen["lines"]
    ]
    strained = row.frozen.get("strained")
    if strained is not None:
        scaled = {name: exact_text(Fraction(strained[name]) * share) for name in ("ml", "made_ml")}
        frozen["strained"] = strained | scaled
    if opened or "discard_on" not in frozen:
        frozen["discard_on"] = row.discard_on.isoformat()
    if opened and row.discard_on.isoformat() != row.frozen.get("discard_on"):
        frozen |= {"discard_rule": RULE_TEXTS[ShelfRule.OPENED], "discard_subject": ""}
    return frozen


# -- undo ------------------------------------------------------------------------------------------


def refuse(there: Context, details: Details) -> Any:
    """Raise CameFromError: only the bar that a batch came from can undo the move."""
    raise CameFromError(details["from"])


def check(there: Context, entry: int) -> Batch:
    """Return the batch that an entry logged, as it came. Raises UsedThereError if some of it was used."""
    details = _entry(there, entry).details
    row = batches.row_of(there, details["batch"])
    events = batches.standing_events(there.book.all(BatchEvent, BatchEvent.batch_id == row.id))
    rows = bottles.rows_of(there, [row.id]).get(row.id, ())
    if any(one.what not in _HARMLESS for one in events) or any(one.id not in details["rows"] for one in rows):
        raise UsedThereError(there.bar.name, row.id)
    return row


def take_back(there: Context, entry: int) -> None:
    """Take an arrived batch off the other bar's log again. Raises UsedThereError."""
    row = check(there, entry)
    first = _entry(there, entry)
    left = {"state": row.state}
    row.state = BatchState.UNDONE
    batch_undo.take_back_event(there, row, "arrived")
    planning.cancel_for_batch(there.book, row.id)
    formula = formulas.row_of(there, row.formula_id)
    others = Batch.formula_id == row.formula_id, Batch.id != row.id, Batch.state != BatchState.UNDONE
    if first.details["new"] and there.book.one(Batch, *others) is None:
        formula.archived_at = there.now
    there.book.touched()
    there.log(UNDO, _last(there, first), undone=MOVED_IN, left=left)


def put_back(there: Context, entry: int) -> None:
    """Bring an arrived batch back after an undo. Raises ChangedSinceError."""
    first = _entry(there, entry)
    last = _last(there, first)
    row = there.book.get(Batch, first.details["batch"])
    if row is None or last.what != UNDO:
        raise ChangedSinceError
    row.state = last.details["left"]["state"]
    batch_undo.put_back_event(there, row, "arrived")
    planning.plan_batch(there.book, there.bar, row, str(row.frozen["formula"]), there.now)
    if first.details["new"]:
        formulas.row_of(there, row.formula_id).archived_at = None
    there.book.touched()
    there.log(PUT_BACK, last, **first.details, kind=MOVED_IN)


def _entry(there: Context, number: int) -> Entry:
    found = there.book.get(Entry, number)
    if found is None:
        raise ChangedSinceError
    return found


def _last(there: Context, first: Entry) -> Entry:
    """Return the last entry of the chain."""
    return there.book.one(Entry, Entry.chain == first.id, order=Entry.id.desc()) or first
