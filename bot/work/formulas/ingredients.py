"""The ingredients that a bar buys and uses."""

from __future__ import annotations

import re
from dataclasses import dataclass
from fractions import Fraction

from bot.trade.formulas.ingredient_names.reading import plain_name, read_name
from bot.trade.formulas.kinds import IngredientKind, guess_kind
from bot.work.context import Context
from bot.work.errors import BadValueError, NotThereError
from bot.work.standing import Details, Value
from storage.tables import Ingredient, OtherName

LONGEST_NAME = 80
# Specific oranges before the plain one: a navel orange matches navel first.
_HANDBOOK_KEYS = ("navel", "valencia", "florida", "lemon", "lime", "grapefruit", "mandarin", "orange")
_OTHER_NAMES = {"tangerine": "mandarin", "satsuma": "mandarin", "clementine": "mandarin"}


@dataclass(frozen=True, slots=True)
class IngredientView:
    """An ingredient: strength in % vol, the bar's own density in g/mL if set, mass of one piece in g."""

    id: int
    name: str
    kind: IngredientKind
    strength_percent: Fraction | None
    density_g_per_ml: Fraction | None
    density_source: str | None
    grams_each: Fraction | None
    food_grade: str | None

    @classmethod
    def of(cls, row: Ingredient) -> IngredientView:
        """Copy a row's values."""
        return cls(
            row.id,
            row.name,
            IngredientKind(row.kind),
            row.strength_percent,
            row.density_g_per_ml,
            row.density_source,
            row.grams_each,
            row.food_grade,
        )


def clean_name(name: str, what: str) -> str:
    """Return a name with single spaces. Raises BadValueError when it is empty or too long."""
    clean = " ".join(name.split())
    if not clean or len(clean) > LONGEST_NAME or not plain_name(clean):
        raise BadValueError(what, name[:LONGEST_NAME])
    return clean


def handbook_key(name: str, language: str = "en") -> str | None:
    """Return the key in bot.trade.fruit of the fruit with this name, or None if there is none.

    In a bar with Spanish as its language 'pomelo' is a grapefruit, elsewhere another fruit.
    """
    plain = read_name(name, language)
    for word, key in (*((key, key) for key in _HANDBOOK_KEYS), *_OTHER_NAMES.items()):
        if re.search(rf"\b{word}e?s?\b", plain):
            return key
    return None


def get(context: Context, ingredient_id: int) -> IngredientView:
    """Return an ingredient by number. Raises NotThereError."""

    def read() -> IngredientView:
        return IngredientView.of(row_of(context, ingredient_id))

    return context.book.remembered(context.bar.revision, ("ingredient", ingredient_id), read)


def by_name(context: Context, name: str) -> IngredientView | None:
    """Return the ingredient of this name or other name, ignoring case and accents, or None."""
    row = _named(context, name)
    return None if row is None else IngredientView.of(row)


def _named(context: Context, name: str) -> Ingredient | None:
    """Return the row of this name; an archived name may be another name of something now."""
    key = plain_name(name)
    row = context.book.one(Ingredient, Ingredient.match_key == key)
    if row is not None and row.archived_at is None:
        return row
    other = context.book.one(OtherName, OtherName.kind == "ingredient", OtherName.match_key == key)
    return row if other is None else context.book.get(Ingredient, other.ingredient_id)


def all_of(context: Context, *kinds: IngredientKind) -> list[IngredientView]:
    """Return the active ingredients of these kinds, or of all, by name."""
    where = [Ingredient.archived_at.is_(None)]
    if kinds:
        where.append(Ingredient.kind.in_(kinds))
    return [
        IngredientView.of(row) for row in context.book.all(Ingredient, *where, order=Ingredient.match_key)
    ]


def add(
    context: Context, name: str, kind: IngredientKind | None = None, strength_percent: Fraction | None = None
) -> IngredientView:
    """Add a new ingredient, or return the existing one of that name.

    Unless given, its kind is guessed from the words of the name; it can be changed later.
    """
    clean = clean_name(name, "ingredient name")
    row = _named(context, clean)
    if row is None:
        row = context.book.add(
            Ingredient(
                name=clean,
                match_key=plain_name(clean),
                kind=kind or guess_kind(clean) or IngredientKind.OTHER,
                strength_percent=strength_percent,
                made_at=context.now,
            )
        )
        context.book.touched()
    else:
        row.archived_at = None
        if strength_percent is not None:
            row.strength_percent = strength_percent
        context.book.touched()
    return IngredientView.of(row)


def row_of(context: Context, ingredient_id: int) -> Ingredient:
    """Return the row of an ingredient. Raises NotThereError."""
    row = context.book.get(Ingredient, ingredient_id)
    if row is None:
        raise NotThereError("ingredient", str(ingredient_id))
    return row


def set_strength(context: Context, ingredient_id: int, percent: Fraction) -> IngredientView:
    """Set a spirit's strength in % vol at 20 °C. Raises NotThereError, or BadValueError outside 0 to 100."""
    known = get(context, ingredient_id)
    before = known.strength_percent
    after = write_strength(context, ingredient_id, percent)
    if before != percent:
        context.log(
            "strength",
            ingredient=ingredient_id,
            name=known.name,
            percent=str(percent),
            before=None if before is None else str(before),
            after=str(percent),
        )
    return after


def write_strength(context: Context, ingredient_id: int, percent: Fraction | None) -> IngredientView:
    """Write a strength down without an entry of its own. Raises NotThereError, BadValueError."""
    row = row_of(context, ingredient_id)
    if percent is not None and not 0 <= percent <= 100:
        raise BadValueError("strength", str(float(percent)))
    row.strength_percent = percent
    context.book.touched()
    return IngredientView.of(row)


def set_density(context: Context, ingredient_id: int, g_per_ml: Fraction, source: str) -> IngredientView:
    """Set the bar's own density in g/mL at 20 °C and its source. Raises NotThereError, BadValueError."""
    row = row_of(context, ingredient_id)
    if not Fraction(1, 2) <= g_per_ml <= 3:
        raise BadValueError("density", str(float(g_per_ml)))
    before, source_before = row.density_g_per_ml, row.density_source
    row.density_g_per_ml, row.density_source = g_per_ml, source[:200]
    context.log(
        "density",
        ingredient=ingredient_id,
        name=row.name,
        density=str(g_per_ml),
        before=[None if before is None else str(before), source_before],
        after=[str(g_per_ml), row.density_source],
    )
    context.book.touched()
    return IngredientView.of(row)


def confirm_grade(context: Context, ingredient_id: int, confirmed: bool) -> IngredientView:
    """Record whether the bar confirmed that the ingredient is food grade. Raises NotThereError."""
    row = row_of(context, ingredient_id)
    before = row.food_grade
    row.food_grade = "confirmed" if confirmed else "not confirmed"
    context.log(
        "food grade",
        ingredient=ingredient_id,
        name=row.name,
        confirmed=confirmed,
        before=before,
        after=row.food_grade,
    )
    context.book.touched()
    return IngredientView.of(row)


# -- undo ----------------------------------------------------------------------------------


def _read_strength(context: Context, details: Details) -> str | None:
    percent = row_of(context, details["ingredient"]).strength_percent
    return None if percent is None else str(percent)


def _write_strength(context: Context, details: Details, percent: str | None) -> None:
    write_strength(context, details["ingredient"], None if percent is None else Fraction(percent))


def _read_strengths(context: Context, details: Details) -> dict[str, str | None]:
    """Return the strengths of the ingredients that a formula changed, by number."""
    return {number: _read_strength(context, {"ingredient": int(number)}) for number in details["before"]}


def _write_strengths(context: Context, details: Details, percents: dict[str, str | None]) -> None:
    for number, percent in percents.items():
        _write_strength(context, {"ingredient": int(number)}, percent)


def _read_density(context: Context, details: Details) -> list[str | None]:
    row = row_of(context, details["ingredient"])
    return [None if row.density_g_per_ml is None else str(row.density_g_per_ml), row.density_source]


def _write_density(context: Context, details: Details, density: list[str | None]) -> None:
    row = row_of(context, details["ingredient"])
    row.density_g_per_ml = None if density[0] is None else Fraction(density[0])
    row.density_source = density[1]
    context.book.touched()


def _read_grade(context: Context, details: Details) -> str | None:
    return row_of(context, details["ingredient"]).food_grade


def _write_grade(context: Context, details: Details, grade: str | None) -> None:
    row_of(context, details["ingredient"]).food_grade = grade
    context.book.touched()


STRENGTH = Value(_read_strength, _write_strength)
STRENGTHS = Value(_read_strengths, _write_strengths)
DENSITY = Value(_read_density, _write_density)
GRADE = Value(_read_grade, _write_grade)
