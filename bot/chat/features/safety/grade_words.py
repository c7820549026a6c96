"""Word food grade and allergens."""

from __future__ import annotations

from collections.abc import Sequence

from bot.chat.i18n.language import _
from bot.chat.reply.message import Button
from bot.trade.safety.grade import GRADE_MARK
from bot.work.batches.batches import BatchView
from bot.work.context import Context
from bot.work.safety import grade as grades
from bot.work.safety.allergens import Named
from bot.work.safety.grade import OpenQuestion

_MOST_ASKED = 3


def mark(names: Sequence[str]) -> str:
    """Return the mark for an ingredient without confirmed food grade, or ''."""
    return _(GRADE_MARK) + ": " + ", ".join(names) if names else ""


def unconfirmed_mark(context: Context, batch: BatchView) -> str:
    """Return the mark of a batch with an ingredient still not confirmed as food grade, or ''."""
    return mark(grades.open_in_snapshot(context, batch.frozen))


def grade_buttons(context: Context, questions: Sequence[OpenQuestion]) -> tuple[tuple[Button, ...], ...]:
    """Return the two answers for each of the first questions, for members who may answer."""
    if not context.role.manages:
        return ()
    return tuple(
        (
            Button(
                _("{name}: food grade").format(name=one.ingredient.name), f"grade #{one.ingredient.id} yes"
            ),
            Button(_("Not sure"), f"grade #{one.ingredient.id} no"),
        )
        for one in questions[:_MOST_ASKED]
    )


def allergen_line(named: Sequence[Named]) -> str:
    """Return the allergens found by name, those of the bar's list first, then other notable ones; or ''."""
    declare = [_allergen(one) for one in named if one.declare]
    others = [_allergen(one) for one in named if not one.declare]
    if declare and others:
        return _("Allergens to declare: {names}. Also contains {others}.").format(
            names=", ".join(declare), others=", ".join(others)
        )
    if declare:
        return _("Allergens to declare: {names}.").format(names=", ".join(declare))
    if others:
        return _("No listed allergen by name. Contains {others}.").format(others=", ".join(others))
    return ""


def _allergen(one: Named) -> str:
    return _(one.allergen) if one.certain else _("perhaps {allergen}").format(allergen=_(one.allergen))
