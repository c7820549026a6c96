"""Allergens suggested by ingredient names, for a formula and as stored with a batch."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from typing import Any

from bot.trade.safety.allergens import Allergen, AllergenLine, Standing, allergen_lines
from bot.trade.safety.jurisdiction import Jurisdiction
from bot.work.context import Context
from bot.work.formulas.formulas import FormulaView
from storage.types import JsonObject


@dataclass(frozen=True, slots=True)
class Named:
    """One allergen: on the bar's list or only worth mentioning, and whether it is certain."""

    allergen: Allergen
    declare: bool
    certain: bool


def lines_of(context: Context, view: FormulaView) -> list[AllergenLine]:
    """Return the allergens of a formula by ingredient, those on the bar's list first."""
    return allergen_lines(
        (line.ingredient.name for line in view.lines), Jurisdiction(context.bar.jurisdiction)
    )


def named_in(context: Context, view: FormulaView) -> list[Named]:
    """Return each allergen of a formula once."""
    return once(lines_of(context, view))


def once(lines: Iterable[AllergenLine]) -> list[Named]:
    """Return each allergen of the lines once, those to declare first."""
    found: dict[Allergen, Named] = {}
    for line in lines:
        declare = line.standing is not Standing.WORTH_SAYING
        before = found.get(line.allergen)
        certain = line.certain or (before is not None and before.certain)
        found[line.allergen] = Named(line.allergen, declare, certain)
    return sorted(found.values(), key=lambda one: not one.declare)


def frozen(context: Context, view: FormulaView) -> list[JsonObject]:
    """Return a formula's allergens in the form stored with a batch."""
    return [
        {"allergen": one.allergen, "declare": one.declare, "certain": one.certain}
        for one in named_in(context, view)
    ]


def kept_with(frozen_copy: Mapping[str, Any]) -> list[Named]:
    """Return the allergens stored in a batch's frozen copy."""
    return [
        Named(Allergen(one["allergen"]), bool(one["declare"]), bool(one["certain"]))
        for one in frozen_copy.get("allergens", ())
    ]
