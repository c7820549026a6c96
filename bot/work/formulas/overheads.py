"""What making a formula takes beside ingredients, where that is not what the bar's settings say."""

from __future__ import annotations

from collections.abc import Mapping

from bot.work.context import BarSettings, Context
from bot.work.formulas import formulas
from bot.work.people import bars

FIELDS = ("batch_minutes", "bottle_price", "label_price")


def own(settings: BarSettings, formula_id: int) -> dict[str, str]:
    """Return what is set for one formula: text of one number, or of two for a range, by the field's name."""
    return dict(settings.formula_costs.get(str(formula_id), {}))


def said(settings: BarSettings, formula_id: int, name: str) -> str:
    """Return a field as it holds for a formula: its own, else the bar's, '' where neither is set."""
    return own(settings, formula_id).get(name) or str(getattr(settings, name))


def change(context: Context, formula_id: int, values: Mapping[str, str]) -> None:
    """Set fields of a formula; without any its own are gone. Raises NotThereError, NotAllowedError."""
    formulas.get(context, formula_id)
    kept = {number: dict(one) for number, one in context.bar.settings.formula_costs.items()}
    if values:
        kept[str(formula_id)] = {**kept.get(str(formula_id), {}), **values}
    else:
        kept.pop(str(formula_id), None)
    bars.change(context, formula_costs=kept)
