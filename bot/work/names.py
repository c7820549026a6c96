"""The names used by a bar, for the chat to recognise."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from sqlalchemy import select

from bot.trade.formulas.kinds import IngredientKind
from storage.tables import Formula, Ingredient, MenuDrink, OtherName, Sprayer
from storage.unit import Book

_OIL = IngredientKind.CITRUS_OIL.value


@dataclass(frozen=True, slots=True)
class Name:
    """The name of a formula, a drink, an ingredient or a sprayer with its number.

    `fruit` marks fruit, `only_oil` the only citrus oil of the bar, and `also` are the other names that the
    bar calls it by.
    """

    kind: str  # 'formula', 'drink', 'ingredient' or 'sprayer'
    id: int
    name: str
    fruit: bool = False
    also: tuple[str, ...] = ()
    only_oil: bool = False


def names(book: Book) -> list[Name]:
    """Return every name in use, formulas first."""
    formulas = book.session.execute(
        select(Formula.id, Formula.name)
        .where(Formula.bar_id == book.bar_id, Formula.archived_at.is_(None))
        .order_by(Formula.id)
    )
    ingredients = book.session.execute(
        select(Ingredient.id, Ingredient.name, Ingredient.kind, Ingredient.strength_percent)
        .where(Ingredient.bar_id == book.bar_id, Ingredient.archived_at.is_(None))
        .order_by(Ingredient.id)
    ).all()
    oils = [number for number, _name, kind, _strength in ingredients if kind == _OIL]
    sprayers = book.session.execute(
        select(Sprayer.id, Sprayer.name)
        .where(Sprayer.bar_id == book.bar_id, Sprayer.archived_at.is_(None))
        .order_by(Sprayer.id)
    )
    drinks = book.session.execute(
        select(MenuDrink.id, MenuDrink.name)
        .where(MenuDrink.bar_id == book.bar_id, MenuDrink.archived_at.is_(None))
        .order_by(MenuDrink.id)
    )
    also: dict[int, list[str]] = {}
    for other in book.all(OtherName, order=OtherName.id):
        also.setdefault(other.ingredient_id, []).append(other.name)
    return [
        *(Name("formula", number, name) for number, name in formulas),
        *(Name("drink", number, name) for number, name in drinks),
        *(Name("sprayer", number, name) for number, name in sprayers),
        *(
            Name(
                "ingredient",
                number,
                name,
                kind == "fruit",
                (*also.get(number, ()), *_with_strength(name, strength)),
                oils == [number],
            )
            for number, name, kind, strength in ingredients
        ),
    ]


def _with_strength(name: str, strength: Fraction | None) -> tuple[str, ...]:
    """Return a spirit's name as it is shown, with its strength: 'neutral spirit 96 %'."""
    if strength is None:
        return ()
    percent = f"{float(strength):g}"
    return tuple(f"{name} {number} %" for number in dict.fromkeys((percent, percent.replace(".", ","))))
