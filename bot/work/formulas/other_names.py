"""Other names that a bar has confirmed for its ingredients."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from bot.trade.formulas.ingredient_names.reading import plain_name
from bot.trade.formulas.kinds import IngredientKind
from bot.work.context import Context
from bot.work.errors import NotThereError
from bot.work.formulas import ingredients
from bot.work.formulas.ingredients import IngredientView
from bot.work.standing import Details, Value
from storage.tables import OtherName

_KIND = "ingredient"


@dataclass(frozen=True, slots=True)
class OtherNameView:
    """Another name, and the ingredient that it means."""

    name: str
    ingredient: int
    ingredient_name: str


def call(context: Context, ingredient_id: int, name: str) -> None:
    """Keep another name of an ingredient; one that meant something else now means this."""
    clean = ingredients.clean_name(name, "ingredient name")
    known = ingredients.get(context, ingredient_id)
    row = _row(context, clean)
    before = None if row is None else row.ingredient_id
    if before == ingredient_id:
        return
    write(context, ingredient_id, clean)
    about: Details = {
        "ingredient": ingredient_id,
        "known": known.name,
        "called": clean,
        "key": plain_name(clean),
    }
    context.log("other name", **about, before=before, after=ingredient_id)


def add_new(
    context: Context, name: str, kind: IngredientKind | None, strength_percent: Fraction | None = None
) -> IngredientView:
    """Add an ingredient that somebody confirmed to be new, as an entry of its own, unless it is there."""
    known = ingredients.by_name(context, name)
    if known is not None and ingredients.row_of(context, known.id).archived_at is None:
        return known
    made = ingredients.add(context, name, kind, strength_percent)
    context.log("new ingredient", ingredient=made.id, known=made.name)
    return made


def forget(context: Context, name: str) -> OtherNameView:
    """Forget another name. Raises NotThereError."""
    row = _row(context, name)
    if row is None:
        raise NotThereError("other name", name)
    view = OtherNameView(row.name, row.ingredient_id, ingredients.get(context, row.ingredient_id).name)
    erase(context, name)
    about: Details = {"ingredient": view.ingredient, "known": view.ingredient_name, "called": view.name}
    context.log("forget name", **about, key=row.match_key, before=view.ingredient, after=None)
    return view


def listed(context: Context, ingredient_id: int | None = None) -> list[OtherNameView]:
    """Return the other names kept, of one ingredient or of all."""
    where = [] if ingredient_id is None else [OtherName.ingredient_id == ingredient_id]
    rows = context.book.all(OtherName, *where, order=(OtherName.ingredient_id, OtherName.match_key))
    return [
        OtherNameView(row.name, row.ingredient_id, ingredients.get(context, row.ingredient_id).name)
        for row in rows
    ]


def _row(context: Context, name: str) -> OtherName | None:
    return context.book.one(OtherName, OtherName.kind == _KIND, OtherName.match_key == plain_name(name))


def write(context: Context, ingredient_id: int, name: str) -> None:
    """Write another name down without an entry of its own."""
    row = _row(context, name)
    if row is not None:
        row.ingredient_id = ingredient_id
    else:
        context.book.add(
            OtherName(
                kind=_KIND,
                name=name,
                match_key=plain_name(name),
                ingredient_id=ingredient_id,
                at=context.now,
                by=context.person_id,
            )
        )
    context.book.touched()


def erase(context: Context, name: str) -> None:
    """Erase another name, if there is one, without an entry of its own."""
    row = _row(context, name)
    if row is not None:
        context.book.session.delete(row)
    context.book.touched()


# -- undo ----------------------------------------------------------------------------------


def _read_name(context: Context, details: Details) -> int | None:
    row = _row(context, details["called"])
    return None if row is None else row.ingredient_id


def _write_name(context: Context, details: Details, ingredient_id: int | None) -> None:
    if ingredient_id is None:
        erase(context, details["called"])
    else:
        write(context, ingredient_id, details["called"])


NAME = Value(_read_name, _write_name)
