"""Two ingredients that turn out to be one: history, stock and formulas follow to the one that stays."""

from __future__ import annotations

from typing import Final

from sqlalchemy import Table, select, update

from bot.work.context import Context
from bot.work.errors import BadValueError, NotAllowedError, NotThereError
from bot.work.formulas import ingredients, other_names
from bot.work.formulas.ingredients import IngredientView
from storage.tables import (
    Base,
    Batch,
    FormulaLine,
    FormulaVersion,
    Ingredient,
    OtherName,
    StockPar,
    TrialVariant,
)
from storage.types import JsonObject

# An ingredient stands in the key of these only once: what both rows have cannot follow.
_ONCE: Final = {StockPar.__tablename__}


def merge(context: Context, ingredient_id: int, into_id: int) -> IngredientView:
    """Make one ingredient of two; the name of the first becomes another name of the second.

    Raises NotAllowedError for a plain member, BadValueError where both are the same or stand in one formula.
    """
    if not context.role.manages:
        raise NotAllowedError("manager")
    row, into = context.book.get(Ingredient, ingredient_id), context.book.get(Ingredient, into_id)
    if row is None or into is None:
        raise NotThereError("ingredient", str(ingredient_id if row is None else into_id))
    if row.id == into.id:
        raise BadValueError("second ingredient", row.name)
    if (both := _in_one_formula(context, ingredient_id, into_id)) is not None:
        raise BadValueError("second ingredient", both)
    moved = {table.name: _move(context, table, ingredient_id, into_id) for table in _tables()}
    moved["formula_version"] = _move(context, _table(FormulaVersion), ingredient_id, into_id, "garnish_id")
    variants = _move_variants(context, ingredient_id, into_id)
    batches = _move_snapshots(context, ingredient_id, into_id)
    kept = {
        name: str(getattr(row, name))
        for name in ("strength_percent", "density_g_per_ml", "grams_each")
        if getattr(into, name) is None and getattr(row, name) is not None
    }
    for name in kept:
        setattr(into, name, getattr(row, name))
    row.archived_at = context.now
    name = row.name
    context.book.session.flush()
    other_names.write(context, into_id, name)
    context.log(
        "merge",
        merged=ingredient_id,
        into=into_id,
        name=name,
        into_name=into.name,
        rows={table: numbers for table, numbers in moved.items() if numbers},
        variants=variants,
        batches=batches,
        kept=sorted(kept),
    )
    context.book.touched()
    return ingredients.get(context, into_id)


def _table(model: type[Base]) -> Table:
    table = model.__table__
    assert isinstance(table, Table)  # noqa: S101 - every model here has a table of its own
    return table


def _tables() -> list[Table]:
    """Return every table with a row for an ingredient, the ingredients themselves left out."""
    return [
        table
        for table in Base.metadata.sorted_tables
        if "ingredient_id" in table.columns and "bar_id" in table.columns
    ]


def _key(table: Table) -> list[str]:
    return [one.name for one in table.primary_key.columns if one.name != "bar_id"]


def _move(
    context: Context, table: Table, old: int, new: int, column: str = "ingredient_id"
) -> list[list[int]]:
    """Point the rows of a table to the other ingredient; return their keys."""
    key = [one for one in _key(table) if one != column]
    if table.name in _ONCE:
        there = select(table).where(table.c.bar_id == context.book.bar_id, table.c[column] == new)
        if context.book.session.execute(there).first() is not None:
            return []
    here = [table.c.bar_id == context.book.bar_id, table.c[column] == old]
    found = context.book.session.execute(select(*(table.c[one] for one in key or [column])).where(*here))
    keys = [list(row) for row in found]
    if keys:
        context.book.session.execute(update(table).where(*here).values({column: new}))
        context.book.session.expire_all()
    return keys


def _move_back(context: Context, table: Table, keys: list[list[int]], old: int, column: str) -> None:
    key = [one for one in _key(table) if one != column]
    for values in keys:
        here = [table.c.bar_id == context.book.bar_id]
        here += [table.c[name] == value for name, value in zip(key, values, strict=False)]
        context.book.session.execute(update(table).where(*here).values({column: old}))
    context.book.session.expire_all()


def _in_one_formula(context: Context, one: int, other: int) -> str | None:
    """Return the name of an ingredient that stands beside the other in a version of a formula or a batch."""
    for table in (FormulaLine,):
        rows = context.book.all(table, table.ingredient_id.in_([one, other]))
        seen: set[tuple[int, int]] = set()
        for line in rows:
            place = (line.formula_id, line.number)
            if place in seen:
                return ingredients.get(context, one).name
            seen.add(place)
    return None


def _move_variants(context: Context, old: int, new: int) -> list[list[int]]:
    """Change the lines of trial variants, which name ingredients by number; return the variants' keys."""
    changed = []
    for row in context.book.all(TrialVariant):
        if any(line[0] == old for line in row.lines):
            row.lines = [[new if line[0] == old else line[0], *line[1:]] for line in row.lines]
            changed.append([row.trial_id, row.number])
    return changed


def _move_snapshots(context: Context, old: int, new: int) -> list[int]:
    """Change the numbers in the frozen lines of batches, not the names used then; return the batches."""
    changed = []
    for row in context.book.all(Batch):
        if _renumber(row, old, new):
            changed.append(row.id)
    return changed


def _renumber(row: Batch, old: int, new: int) -> bool:
    lines = row.frozen.get("lines", [])
    if not any(line.get("ingredient") == old for line in lines):
        return False
    row.frozen = row.frozen | {
        "lines": [line | {"ingredient": new} if line.get("ingredient") == old else line for line in lines]
    }
    return True


def take_back(context: Context, details: JsonObject) -> None:
    """Undo a merging: the rows that were moved, and no later ones, belong to the first ingredient again."""
    old, new = details["merged"], details["into"]
    row, into = context.book.get(Ingredient, old), context.book.get(Ingredient, new)
    if row is None or into is None:
        return
    row.archived_at = None
    for name in details["kept"]:
        setattr(into, name, None)
    context.book.session.flush()
    tables = Base.metadata.tables
    for name, keys in details["rows"].items():
        column = "garnish_id" if name == "formula_version" else "ingredient_id"
        _move_back(context, tables[name], keys, old, column)
    for trial, number in details["variants"]:
        variant = context.book.get(TrialVariant, trial, number)
        if variant is not None:
            variant.lines = [[old if line[0] == new else line[0], *line[1:]] for line in variant.lines]
    for number in details["batches"]:
        batch = context.book.get(Batch, number)
        if batch is not None:
            _renumber(batch, new, old)
    other = context.book.one(OtherName, OtherName.ingredient_id == new, OtherName.name == row.name)
    if other is not None:
        context.book.session.delete(other)
    context.book.touched()
