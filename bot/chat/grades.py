"""Food grade in words."""

from __future__ import annotations

from bot.chat.language import _
from bot.trade.grade import GRADE_MARK, FoodGrade, GradedIngredient, unconfirmed
from bot.trade.kinds import IngredientKind
from bot.work.batches import BatchView


def unconfirmed_mark(batch: BatchView) -> str:
    """Return the mark for a batch made with something whose food grade nobody has confirmed, or ''."""
    graded = [
        GradedIngredient(line["name"], IngredientKind(line["kind"]), _state(line.get("food_grade")))
        for line in batch.frozen["lines"]
    ]
    names = unconfirmed(graded)
    if not names:
        return ""
    return _(GRADE_MARK) + ": " + ", ".join(names)


def _state(stored: str | None) -> FoodGrade:
    return FoodGrade.CONFIRMED if stored == "confirmed" else FoodGrade.NOT_CONFIRMED
