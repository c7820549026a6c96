"""Food grade: open questions about a bar's ingredients, and their answers."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from typing import Any

from bot.trade.formulas.kinds import IngredientKind, guess_kind
from bot.trade.safety.grade import FoodGrade, GradedIngredient, GradeQuestion, question_for
from bot.work.context import Context, Role
from bot.work.errors import NotAllowedError
from bot.work.formulas import ingredients
from bot.work.formulas.formulas import FormulaView
from bot.work.formulas.ingredients import IngredientView


@dataclass(frozen=True, slots=True)
class OpenQuestion:
    """An ingredient without a confirmed food grade, and the question."""

    ingredient: IngredientView
    question: GradeQuestion


def question_about(ingredient: IngredientView | str) -> GradeQuestion | None:
    """Return the question about an ingredient, or about a name that is not in the book yet."""
    if isinstance(ingredient, str):
        kind = guess_kind(ingredient) or IngredientKind.OTHER
        return question_for(GradedIngredient(ingredient, kind))
    grade = FoodGrade.CONFIRMED if ingredient.food_grade == FoodGrade.CONFIRMED else FoodGrade.NOT_CONFIRMED
    return question_for(GradedIngredient(ingredient.name, ingredient.kind, grade))


def _open(ingredients_: Iterable[IngredientView]) -> list[OpenQuestion]:
    found = []
    for one in ingredients_:
        question = question_about(one)
        if question is not None:
            found.append(OpenQuestion(one, question))
    return sorted(found, key=lambda one: not one.question.stop)


def open_in_formula(view: FormulaView) -> list[OpenQuestion]:
    """Return the open questions about a formula's ingredients, blocking ones first."""
    return _open(line.ingredient for line in view.lines)


def open_in_bar(context: Context) -> list[OpenQuestion]:
    """Return the open questions about all ingredients of the bar."""
    return _open(ingredients.all_of(context))


def open_in_snapshot(context: Context, snapshot: Mapping[str, Any]) -> list[str]:
    """Return the ingredients of a batch snapshot without a confirmed food grade."""
    lines = {int(line["ingredient"]): str(line["name"]) for line in snapshot["lines"]}
    return [
        name for number, name in lines.items() if question_about(ingredients.get(context, number)) is not None
    ]


def confirm(context: Context, ingredient_id: int, confirmed: bool) -> IngredientView:
    """Record whether somebody confirmed that it is sold for food.

    Raises NotAllowedError for a plain member, or NotThereError.
    """
    if not context.role.manages:
        raise NotAllowedError(Role.MANAGER)
    return ingredients.confirm_grade(context, ingredient_id, confirmed)
