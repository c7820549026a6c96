"""Costs of a formula besides ingredients, where they differ from the bar's settings."""

from __future__ import annotations

from collections.abc import Mapping

from bot.work.context import BarSettings, Context
from bot.work.formulas import formulas
from bot.work.people import bars

FIELDS = ("batch_minutes", "bottle_price", "label_price")


def own(settings: BarSettings, formula_id: int) -> dict[str, str]:
    """Return the overrides of one formula by field name: text of one number, or of two for a range."""
    return dict(settings.formula_costs.get(str(formula_id), {}))


def said(settings: BarSettings, formula_id: int, name: str) -> str:
    """Return the value of a field for a formula: its own, else the bar's, '' if neither is set."""
    return own(settings, formula_id).get(name) or str(getattr(settings, name))


def change(context: Context, formula_id: int, values: Mapping[str, str]) -> None:
    """Set fields of a formula; without any, clear them. Raises NotThereError, NotAllowedError."""
    formulas.get(context, formula_id)
    kept = {number: dict(one) for number, one in context.bar.settings.formula_costs.items()}
    if values:
        kept[str(formula_id)] = {**kept.get(str(formula_id), {}), **values}
    else:
        kept.pop(str(formula_id), None)
    bars.change(context, formula_costs=kept)
