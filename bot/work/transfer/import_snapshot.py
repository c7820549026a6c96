"""The frozen copy that a batch keeps of its formula, made again from a file."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from datetime import date
from fractions import Fraction
from typing import Any

from bot.trade.formulas.ingredient_names.reading import plain_name
from bot.trade.formulas.kinds import IngredientKind, Preparation
from bot.trade.formulas.measures import BASE_DIMENSIONS, Dimension
from bot.trade.safety.allergens import Allergen
from bot.trade.safety.cautions import CAUTIONS
from bot.work.transfer.import_rows import Row
from storage.tables import BatchLine
from storage.types import exact_text


def frozen(row: Row, lines: Sequence[BatchLine], names: Mapping[int, str]) -> dict[str, Any]:
    """Return the frozen copy from the file as far as it can be trusted, the rest from the row itself.

    Ingredients are known by other numbers here, so they are found again by name.
    """
    given = row.data.get("frozen")
    said: dict[str, Any] = dict(given) if isinstance(given, dict) else {}
    listed = said.get("lines")
    was = {
        plain_name(str(one.get("name"))): one
        for one in (listed if isinstance(listed, list) else ())
        if isinstance(one, dict)
    }
    kept: dict[str, Any] = {
        "formula": _name(said.get("formula")) or row.text("formula", False),
        "version": row.whole("version", False),
        "lines": [_line(line, names[line.ingredient_id], was) for line in lines],
    }
    for name, (usual, fits) in _FIELDS.items():
        value = said.get(name)
        kept[name] = value if fits(value) else usual
    for name, fits in _MAY_BE_THERE.items():
        if fits(said.get(name)):
            kept[name] = said[name]
    return kept


def _name(value: Any) -> str:
    """Return what the batch was called when it was made, '' where that is no name."""
    return " ".join(value.split()) if _is_text(value) and value.isprintable() else ""


def _is_text(value: Any) -> bool:
    return isinstance(value, str) and len(value) <= _LONGEST


def _is_strength(value: Any) -> bool:
    return type(value) in {int, float} and 0 <= value <= 100


def _is_number(value: Any) -> bool:
    try:
        return _is_text(value) and Fraction(value) >= 0
    except (ValueError, ZeroDivisionError):
        return False


def _is_range(value: Any) -> bool:
    return isinstance(value, list) and len(value) == 2 and all(map(_is_number, value))


def _is_fill(value: Any) -> bool:
    return isinstance(value, list) and all(
        isinstance(one, list) and len(one) == 2 and _is_number(one[0]) and type(one[1]) is int
        for one in value
    )


def _are_cautions(value: Any) -> bool:
    known = {caution.id for caution in CAUTIONS}
    return isinstance(value, list) and all(_is_text(one) and one in known for one in value)


def _is_day(value: Any) -> bool:
    try:
        return _is_text(value) and bool(date.fromisoformat(value))
    except ValueError:
        return False


def _are_allergens(value: Any) -> bool:
    return isinstance(value, list) and all(
        isinstance(one, dict)
        and _is_text(one.get("allergen"))
        and one["allergen"] in set(Allergen)
        and isinstance(one.get("declare"), bool)
        and isinstance(one.get("certain"), bool)
        for one in value
    )


def _is_trial(value: Any) -> bool:
    return isinstance(value, list) and len(value) == 2 and all(type(one) is int for one in value)


_LONGEST = 300
# What a copy holds beside its lines: what it is where the file does not say, and what fits.
_FIELDS: dict[str, tuple[Any, Callable[[Any], bool]]] = {
    "preparation": ("other", lambda value: _is_text(value) and value in set(Preparation)),
    "strength_percent": (None, _is_strength),
    "rest_hours": ("0", _is_number),
    "discard_days": (0, lambda value: type(value) is int and value >= 0),
    "discard_rule": ("", _is_text),
    "ask_inspector": (False, lambda value: isinstance(value, bool)),
    "sprays": (None, _is_range),
    "spray_ml": (["1/15", "1/10"], _is_range),
    "fill": ([], _is_fill),
    "cautions": ([], _are_cautions),
    "recheck_on": (None, _is_day),
    "past_when_made": (False, lambda value: isinstance(value, bool)),
    "discard_subject": ("", _is_text),
}
_MAY_BE_THERE: dict[str, Callable[[Any], bool]] = {
    "discard_on": _is_day,
    "allergens": _are_allergens,
    "trial": _is_trial,
}


def _line(line: BatchLine, name: str, was: Mapping[str, dict[str, Any]]) -> dict[str, Any]:
    one = dict(was.get(plain_name(name), {}))
    kind = one.get("kind")
    one.update(
        ingredient=line.ingredient_id,
        name=name,
        kind=kind if _is_text(kind) and kind in set(IngredientKind) else IngredientKind.OTHER.value,
        amount=exact_text(line.amount),
        dimension=BASE_DIMENSIONS.get(line.unit, Dimension.VOLUME).value,
    )
    kept = {name: one[name] for name in ("ingredient", "name", "kind", "amount", "dimension")}
    kept["strength_percent"] = (
        one.get("strength_percent") if _is_number(one.get("strength_percent")) else None
    )
    kept["density_g_per_ml"] = (
        one.get("density_g_per_ml") if _is_number(one.get("density_g_per_ml")) else None
    )
    kept["food_grade"] = one.get("food_grade") if _is_text(one.get("food_grade")) else None
    kept["price"] = one.get("price") if _is_price(one.get("price")) else None
    return kept


def _is_price(value: Any) -> bool:
    return (
        isinstance(value, dict)
        and _is_number(value.get("pack"))
        and _is_number(value.get("price"))
        and value.get("dimension") in set(Dimension)
    )
