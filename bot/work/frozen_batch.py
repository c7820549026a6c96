"""The frozen copy that a batch keeps of its formula, made again from a file."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any

from bot.trade.kinds import IngredientKind, plain_name
from bot.trade.measures import Dimension
from bot.work.file_rows import Row
from storage.tables import BatchLine
from storage.types import exact_text

_DIMENSIONS = {"ml": Dimension.VOLUME, "g": Dimension.MASS, "each": Dimension.COUNT}


def frozen(row: Row, lines: Sequence[BatchLine], names: Mapping[int, str]) -> dict[str, Any]:
    """Return the frozen copy from the file as far as it can be trusted, the rest from the row itself.

    Ingredients are known by other numbers here, so they are found again by name.
    """
    given = row.data.get("frozen")
    said: dict[str, Any] = dict(given) if isinstance(given, dict) else {}
    said["formula"] = row.text("formula", False)
    said["version"] = row.whole("version", False)
    said["preparation"] = str(said.get("preparation", "other"))
    for name in ("cautions", "fill"):
        said[name] = said[name] if isinstance(said.get(name), list) else []
    strength = said.get("strength_percent")
    said["strength_percent"] = strength if isinstance(strength, int | float) else None
    said["discard_rule"] = str(said.get("discard_rule", ""))
    said["ask_inspector"] = bool(said.get("ask_inspector", False))
    was = {plain_name(str(one.get("name"))): one for one in said.get("lines") or () if isinstance(one, dict)}
    said["lines"] = [_line(line, names[line.ingredient_id], was) for line in lines]
    return said


def _line(line: BatchLine, name: str, was: Mapping[str, dict[str, Any]]) -> dict[str, Any]:
    one = dict(was.get(plain_name(name), {}))
    kind = one.get("kind")
    one.update(
        ingredient=line.ingredient_id,
        name=name,
        kind=kind if kind in set(IngredientKind) else IngredientKind.OTHER.value,
        amount=exact_text(line.amount),
        dimension=_DIMENSIONS.get(line.unit, Dimension.VOLUME).value,
    )
    for field in ("strength_percent", "food_grade", "price"):
        one.setdefault(field, None)
    if not isinstance(one["price"], dict):
        one["price"] = None
    return one
