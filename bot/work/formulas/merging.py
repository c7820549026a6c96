"""Two ingredients that turn out to be one: history, stock and formulas follow to the one that stays."""

from __future__ import annotations

from collections.abc import Iterator
from operator import eq
from typing import Final

from sqlalchemy import Table, and_, or_, select, true, update

from bot.work.context import Context
from bot.work.errors import BadValueError, ChangedSinceError, NotAllowedError
from bot.work.formulas import ingredients, other_names
from bot.work.formulas.ingredients import IngredientView
from bot.work.standing import Details
from storage.tables import (
    Base,
    Batch,
    Formula,
    FormulaLine,
    FormulaVersion,
    Ingredient,
    OtherName,
    StockPar,
    TrialVariant,
)

# An ingredient stands in the key of these only once: what both rows have cannot follow.
_ONCE: Final = {StockPar.__tablename__}
# What the one that stays takes over where it has none, and the subject of entries that change it.
_OWN: Final = {"strength_percent": "strength", "density_g_per_ml": "density", "grams_each": "grams each"}
# Tables with rows of formula versions: one written later goes on from the latest at the time.
_OF_FORMULAS: Final = (FormulaLine.__tablename__, FormulaVersion.__tablename__)
_AT_ONCE = 200  # rows in one statement


def merge(context: Context, ingredient_id: int, into_id: int) -> IngredientView:
    """Make one ingredient of two; the name of the first becomes another name of the second.

    Raises NotAllowedError for a plain member, BadValueError where both are the same or stand in one formula.
    """
    if not context.role.manages:
        raise NotAllowedError("manager")
    row, into = ingredients.row_of(context, ingredient_id), ingredients.row_of(context, into_id)
    if row.id == into.id or _in_one_formula(context, ingredient_id, into_id):
        raise BadValueError("second ingredient", row.name)
    names: Details = {"merged": row.id, "into": into.id, "name": row.name, "into_name": into.name}
    context.log("merge", **names, **_merge(context, row, into))
    return ingredients.get(context, into_id)


def _merge(context: Context, row: Ingredient, into: Ingredient) -> Details:
    """Move all that belongs to the first ingredient to the second; return what the undo needs."""
    old, new = row.id, into.id
    kept = [name for name in _OWN if getattr(into, name) is None and getattr(row, name) is not None]
    for name in kept:
        setattr(into, name, getattr(row, name))
    names = [other.match_key for other in context.book.all(OtherName, OtherName.ingredient_id == old)]
    row.archived_at = context.now
    context.book.session.flush()
    moved = {table.name: _move(context, table, old, new) for table in _tables()}
    moved["formula_version"] = _move(context, _table(FormulaVersion), old, new, "garnish_id")
    latest = {(formula.id, formula.latest) for formula in context.book.all(Formula)}
    variants = _move_variants(context, old, new)
    batches = [batch.id for batch in context.book.all(Batch) if _renumber(batch, old, new)]
    other_names.write(context, new, row.name)
    context.book.touched()
    return {
        "rows": {table: numbers for table, numbers in moved.items() if numbers},
        "latest": {
            table: sorted({(key[0], key[1]) for key in moved[table]} & latest) for table in _OF_FORMULAS
        },
        "variants": variants,
        "batches": batches,
        "kept": kept,
        "names": [*names, row.match_key],
    }


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
    session = context.book.session
    ours = table.c.bar_id == context.book.bar_id
    if (
        table.name in _ONCE
        and session.execute(select(table).where(ours, table.c[column] == new)).first() is not None
    ):
        return []
    here = [ours, table.c[column] == old]
    keys = [
        list(row) for row in session.execute(select(*(table.c[one] for one in key or [column])).where(*here))
    ]
    if keys:
        session.execute(update(table).where(*here).values({column: new}))
        session.expire_all()
    return keys


def _move_back(context: Context, table: Table, details: Details, column: str) -> None:
    """Point the moved rows, their corrections and formula versions since to the first ingredient again."""
    old, new = details["merged"], details["into"]
    key = [one for one in _key(table) if one != column]
    ours = table.c.bar_id == context.book.bar_id
    columns = [table.c[one] for one in key]
    keys = details["rows"][table.name]
    for some in (keys[start : start + _AT_ONCE] for start in range(0, len(keys), _AT_ONCE)):
        moved = or_(*(and_(*map(eq, columns, values)) for values in some)) if key else true()
        if "first" in table.columns:
            moved = table.c.first.in_(select(table.c.first).where(ours, moved))
        here = ours, moved, table.c[column] == new
        context.book.session.execute(update(table).where(*here).values({column: old}))
    for formula, number in details.get("latest", {}).get(table.name, []):
        later = table.c.formula_id == formula, table.c.number > number, table.c[column] == new
        context.book.session.execute(update(table).where(ours, *later).values({column: old}))
    context.book.session.expire_all()


def _in_one_formula(context: Context, one: int, other: int) -> bool:
    """Whether a version of a formula or a variant of a trial has both ingredients."""
    lines = context.book.all(FormulaLine, FormulaLine.ingredient_id.in_([one, other]))
    places = [(line.formula_id, line.number) for line in lines]
    variants = [{line[0] for line in row.lines} for row in context.book.all(TrialVariant)]
    return len(set(places)) < len(places) or any({one, other} <= found for found in variants)


def _move_variants(context: Context, old: int, new: int) -> list[list[int]]:
    """Change the lines of trial variants, which name ingredients by number; return the variants' keys."""
    changed = []
    for row in context.book.all(TrialVariant):
        if any(line[0] == old for line in row.lines):
            row.lines = _lines_with(row, old, new)
            changed.append([row.trial_id, row.number])
    return changed


def _lines_with(row: TrialVariant, old: int, new: int) -> list[list[object]]:
    return [[new if line[0] == old else line[0], *line[1:]] for line in row.lines]


def _renumber(row: Batch, old: int, new: int) -> bool:
    """Change the numbers in a batch's frozen lines, not the names used then; return whether any changed."""
    lines = row.frozen.get("lines", [])
    if not any(line.get("ingredient") == old for line in lines):
        return False
    row.frozen = row.frozen | {
        "lines": [line | {"ingredient": new} if line.get("ingredient") == old else line for line in lines]
    }
    return True


# -- undo ----------------------------------------------------------------------------------


def about(details: Details) -> Iterator[tuple[str, ...]]:
    """Yield what a merging changed beside rows: values of both ingredients, and names."""
    old, new = str(details["merged"]), str(details["into"])
    yield from (("merged", old), ("merged", new), ("ingredient away", old))
    yield from ((value, old) for value in ("par", "strength", "density", "food grade", "opened"))
    yield from ((_OWN[name], new) for name in details["kept"])
    if StockPar.__tablename__ in details["rows"]:
        yield "par", new
    yield from (("name", key) for key in details["names"])
    yield from (("variant", str(trial), str(number)) for trial, number in details["variants"])


def check(context: Context, details: Details) -> None:
    """Raise ChangedSinceError if the first ingredient is no longer archived."""
    if ingredients.row_of(context, details["merged"]).archived_at is None:
        raise ChangedSinceError


def take_back(context: Context, details: Details) -> Details:
    """Undo a merging: what was moved and later versions of its formulas belong to the first again.

    Other later rows stay.
    """
    check(context, details)
    old, new = details["merged"], details["into"]
    row, into = ingredients.row_of(context, old), ingredients.row_of(context, new)
    row.archived_at = None
    for name in details["kept"]:
        setattr(into, name, None)
    other_names.erase(context, row.name)
    context.book.session.flush()
    for name in details["rows"]:
        column = "garnish_id" if name == FormulaVersion.__tablename__ else "ingredient_id"
        _move_back(context, Base.metadata.tables[name], details, column)
    for trial, number in details["variants"]:
        variant = context.book.get(TrialVariant, trial, number)
        if variant is not None:
            variant.lines = _lines_with(variant, new, old)
    for batch in context.book.all(Batch, Batch.id.in_(details["batches"])):
        _renumber(batch, new, old)
    context.book.touched()
    return {}


def put_back(context: Context, details: Details) -> Details:
    """Merge again what an undo made two. Raises ChangedSinceError, BadValueError."""
    old, new = details["merged"], details["into"]
    row, into = ingredients.row_of(context, old), ingredients.row_of(context, new)
    if row.archived_at is not None or into.archived_at is not None or _in_one_formula(context, old, new):
        raise ChangedSinceError
    return _merge(context, row, into)
