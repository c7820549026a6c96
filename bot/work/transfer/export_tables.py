"""Convert the exported document to tables for a spreadsheet."""

from __future__ import annotations

from collections.abc import Iterable
from typing import Any

from bot.documents.tables import write_csv
from bot.work.transfer.fields import Row
from bot.work.transfer.rows import BatchRow, PriceRow, WasteRow

_NESTED = ("lines", "events", "bottles", "frozen", "trial", "variant")


def _columns(model: type[Row], *more: str) -> tuple[str, ...]:
    """Return the plain fields of a kind of row; person, time and reference come last."""
    names = [field.alias or name for name, field in model.model_fields.items()]
    last = [name for name in ("at", "by", "ref") if name in names]
    return (
        *(name for name in names if name not in {*last, *_NESTED}),
        *more,
        *last,
    )


PRICE_COLUMNS = _columns(PriceRow)
WASTE_COLUMNS = _columns(WasteRow)
BATCH_COLUMNS = _columns(BatchRow, "ingredients", "lots")
_VERSION = ("rest_hours", "discard_days", "sprays_low", "sprays_high", "replaces")
FORMULA_COLUMNS = (
    *("formula", "preparation", "version", *_VERSION),
    *("ingredient", "strength_percent", "amount", "unit"),
)


def tables(found: dict[str, Any]) -> dict[str, bytes]:
    """Return formulas, prices, waste and batches as CSV, by file name; without what is sealed."""
    batches = (_batch(row) for row in found["batches"] if "sealed" not in row)
    return {
        "formulas.csv": write_csv(FORMULA_COLUMNS, map(_as_text, _formula_lines(found))),
        "prices.csv": write_csv(PRICE_COLUMNS, map(_as_text, found["prices"])),
        "waste.csv": write_csv(WASTE_COLUMNS, map(_as_text, found["waste"])),
        "batches.csv": write_csv(BATCH_COLUMNS, map(_as_text, batches)),
    }


def _as_text(row: dict[str, Any]) -> dict[str, str]:
    return {name: _text(value) for name, value in row.items()}


def _text(value: Any) -> str:
    if value is None:
        return ""
    if isinstance(value, bool):
        return "yes" if value else "no"
    return str(value)


def _formula_lines(found: dict[str, Any]) -> Iterable[dict[str, Any]]:
    """Return a row for each line of each formula's latest version."""
    strengths = {one["name"]: one["strength_percent"] for one in found["ingredients"]}
    for formula in found["formulas"]:
        if formula["archived"] or not formula["versions"]:
            continue
        latest = formula["versions"][-1]
        for line in latest["lines"]:
            yield {
                **{name: latest[name] for name in _VERSION},
                **line,
                "formula": formula["name"],
                "preparation": formula["preparation"],
                "version": latest["number"],
                "strength_percent": strengths.get(line["ingredient"]),
            }


def _batch(row: dict[str, Any]) -> dict[str, Any]:
    lines = "; ".join(f"{one['ingredient']} {one['amount']} {one['unit']}" for one in row["lines"])
    lots = "; ".join(f"{one['ingredient']}: {one['lot']}" for one in row["lines"] if one["lot"])
    return {**row, "ingredients": lines, "lots": lots}
