"""The strength of formulas, batches and spirits, and setting a spirit's strength."""

from __future__ import annotations

from dataclasses import dataclass, replace
from fractions import Fraction

from bot.trade.liquids.flash import FlashPoint
from bot.trade.liquids.strength import FormulaStrength
from bot.trade.numbers.ranges import Range
from bot.work.batches.batches import BatchView
from bot.work.context import Context, Role
from bot.work.errors import NotAllowedError
from bot.work.formulas import ingredients
from bot.work.formulas.formulas import FormulaView
from bot.work.formulas.ingredients import IngredientView
from bot.work.formulas.mixture import Mix, mix_of, mix_of_batch
from storage.tables import Formula, FormulaLine


@dataclass(frozen=True, slots=True)
class StrengthAnswer:
    """The strength of a mix: None if a spirit's strength is unknown (`unknown` names it).

    `poured_ml` is the sum of all volumes at 20 °C, `left_out` names ingredients without a known volume,
    `flash` is the flash point, `infused_percent` the strength with the water of the fruit in it, narrowed by
    what came out if it was `strained`.
    """

    name: str
    strength: FormulaStrength | None
    poured_ml: float
    unknown: tuple[str, ...]
    left_out: tuple[str, ...]
    flash: FlashPoint | None
    infused_percent: Range[float] | None
    strained: bool = False


def _answer(name: str, mix: Mix) -> StrengthAnswer:
    poured_ml = sum(component.volume_ml for component in mix.components)
    return StrengthAnswer(
        name, mix.strength, poured_ml, mix.without_strength, mix.left_out, mix.flash, mix.infused_percent()
    )


def of_formula(view: FormulaView) -> StrengthAnswer:
    """Return a formula's strength as written."""
    return _answer(view.name, mix_of(view))


def of_batch(batch: BatchView) -> StrengthAnswer:
    """Return a batch's strength from its ingredients at the time it was made."""
    answer = _answer(batch.name, mix_of_batch(batch.frozen["lines"]))
    if batch.strained is None:
        return answer
    return replace(answer, infused_percent=batch.strength, strained=True)


@dataclass(frozen=True, slots=True)
class StrengthSet:
    """A spirit's new strength, the previous one (None: unknown) and the formulas that use it."""

    ingredient: IngredientView
    before: Fraction | None
    formulas: tuple[str, ...]


def set_of(context: Context, ingredient_id: int, percent: Fraction) -> StrengthSet:
    """Set a spirit's strength in % vol at 20 °C.

    Raises NotAllowedError for a plain member, NotThereError, or BadValueError outside 0 to 100.
    """
    if not context.role.manages:
        raise NotAllowedError(Role.MANAGER)
    before = ingredients.get(context, ingredient_id).strength_percent
    after = ingredients.set_strength(context, ingredient_id, percent)
    return StrengthSet(after, before, formulas_with(context, ingredient_id))


def formulas_with(context: Context, ingredient_id: int) -> tuple[str, ...]:
    """Return the names of the formulas whose latest version contains an ingredient."""
    query = (
        context.book.rows(Formula, Formula.name)
        .join(
            FormulaLine,
            (FormulaLine.bar_id == Formula.bar_id)
            & (FormulaLine.formula_id == Formula.id)
            & (FormulaLine.number == Formula.latest),
        )
        .where(FormulaLine.ingredient_id == ingredient_id, Formula.archived_at.is_(None))
        .order_by(Formula.match_key)
    )
    return tuple(context.book.session.scalars(query))
