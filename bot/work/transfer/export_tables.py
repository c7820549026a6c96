"""The exported document as tables for a spreadsheet."""

from __future__ import annotations

from collections.abc import Iterable
from typing import Any

from bot.documents.tables import write_csv


def tables(found: dict[str, Any]) -> dict[str, bytes]:
    """Return formulas, prices, waste and batches as CSV, by file name."""
    return {
        "formulas.csv": write_csv(FORMULA_COLUMNS, _formula_rows(found)),
        "prices.csv": write_csv(PRICE_COLUMNS, map(_as_text, found["prices"])),
        "waste.csv": write_csv(WASTE_COLUMNS, map(_as_text, found["waste"])),
        "batches.csv": write_csv(BATCH_COLUMNS, map(_batch_row, found["batches"])),
    }


FORMULA_COLUMNS = (
    "formula",
    "preparation",
    "version",
    "rest_hours",
    "discard_days",
    "sprays_low",
    "sprays_high",
    "replaces",
    "ingredient",
    "strength_percent",
    "amount",
    "unit",
)
PRICE_COLUMNS = (
    "ingredient",
    "pack_amount",
    "pack_unit",
    "price",
    "garnishes_low",
    "garnishes_high",
    "at",
    "by",
    "ref",
)
WASTE_COLUMNS = ("day", "fruit", "pieces", "grams", "reason", "cost", "late", "at", "by", "ref")
BATCH_COLUMNS = (
    "number",
    "formula",
    "version",
    "state",
    "total_ml",
    "made_at",
    "by",
    "rest_until",
    "discard_on",
    "opened_at",
    "ended_at",
    "lost_ml",
    "lost_reason",
    "clarity",
    "ingredients",
    "lots",
    "ref",
)


def _text(value: Any) -> str:
    if value is None:
        return ""
    if isinstance(value, bool):
        return "yes" if value else "no"
    return str(value)


def _as_text(row: dict[str, Any]) -> dict[str, str]:
    return {name: _text(value) for name, value in row.items()}


def _formula_rows(found: dict[str, Any]) -> Iterable[dict[str, str]]:
    """Return a row for each line of each formula's latest version."""
    strengths = {one["name"]: one["strength_percent"] for one in found["ingredients"]}
    for formula in found["formulas"]:
        if formula["archived"] or not formula["versions"]:
            continue
        latest = formula["versions"][-1]
        for line in latest["lines"]:
            yield _as_text(
                {
                    "formula": formula["name"],
                    "preparation": formula["preparation"],
                    "version": latest["number"],
                    "rest_hours": latest["rest_hours"],
                    "discard_days": latest["discard_days"],
                    "sprays_low": latest["sprays_low"],
                    "sprays_high": latest["sprays_high"],
                    "replaces": latest["replaces"],
                    "ingredient": line["ingredient"],
                    "strength_percent": strengths.get(line["ingredient"]),
                    "amount": line["amount"],
                    "unit": line["unit"],
                }
            )


def _batch_row(row: dict[str, Any]) -> dict[str, str]:
    lines = "; ".join(f"{one['ingredient']} {one['amount']} {one['unit']}" for one in row["lines"])
    lots = "; ".join(f"{one['ingredient']}: {one['lot']}" for one in row["lines"] if one["lot"])
    return _as_text({**row, "ingredients": lines, "lots": lots})
