"""Convert the rows of a table in another format to rows of the exported document's kinds."""

from __future__ import annotations

from dataclasses import dataclass, field
from datetime import date
from fractions import Fraction
from typing import Any

from bot.documents.spreadsheets import Cells
from bot.trade.formulas.measures import Dimension, Quantity, dimension
from bot.work.context import BarView
from bot.work.formulas.formulas import in_base
from bot.work.transfer.foreign.reading import Meaning, Reading, Said, Words, unit_of
from bot.work.transfer.foreign.values import fold, read_amount, read_day, read_number
from bot.work.transfer.import_rows import Given


@dataclass(slots=True)
class Converted:
    """The converted rows of a table, and the unreadable places: line, column and the cell."""

    rows: list[Given] = field(default_factory=list)
    wrong: list[tuple[int, Meaning, str]] = field(default_factory=list)


class Converter:
    """Converts the rows of one table, by its reading, to rows of the exported document's kinds."""

    def __init__(self, reading: Reading, words: Words, bar: BarView, today: date) -> None:
        self._reading, self._words, self._bar, self._today = reading, words, bar, today

    def convert(self, cells: Cells, most: int | None = None) -> Converted:
        """Return the rows below the header; rows without an item, such as totals, are left out."""
        found = Converted()
        for line, row in cells[self._reading.first :]:
            if most is not None and len(found.rows) >= most:
                break
            said: dict[Meaning, str] = {
                meaning: row[at]
                for at, meaning in enumerate(self._reading.columns)
                if meaning and at < len(row) and row[at]
            }
            if not said.get("item") or fold(said["item"]) in self._words.totals or not self._tells(said):
                continue
            try:
                found.rows.append(Given(line, self._row(said)))
            except _UnreadableCellError as error:
                found.wrong.append((line, error.meaning, said.get(error.meaning, "")))
        return found

    def _tells(self, said: Said) -> bool:
        """Whether a row contains a number. A heading between rows does not."""
        return any(meaning in said for meaning in ("amount", "cost", "each"))

    def _row(self, said: Said) -> dict[str, Any]:
        kind = self._reading.kind
        if kind == "prices":
            return self._price(said)
        amount, unit = self._amount(said)
        data: dict[str, Any] = {"day": self._day(said)}
        if kind in {"waste", "deliveries"}:
            cost = self._money(said, amount)
            data |= {} if cost is None else {"cost": cost}
        measure = dimension(unit)
        if kind == "waste":
            name = "grams" if measure is Dimension.MASS else "pieces"
            data |= {
                "fruit": self._words.named(said["item"]),
                name: _text(in_base(self._bar, Quantity(amount, unit))[0]),
                "reason": fold(said.get("reason", ""))[:40],
            }
            if measure is Dimension.VOLUME:
                raise _UnreadableCellError("unit" if "unit" in said else "amount")
        else:
            data |= {
                "ingredient": self._words.named(said["item"]),
                "dimension": measure.value,
                "amount": _text(in_base(self._bar, Quantity(amount, unit))[0]),
            }
        return data

    def _price(self, said: Said) -> dict[str, Any]:
        packed = {**said, "amount": said.get("pack") or said.get("amount") or "1"}
        amount, unit = self._amount(packed)
        cost = self._number(said, "cost") if "cost" in said else self._number(said, "each")
        if "cost" not in said and "each" in said:
            amount = Fraction(1) if dimension(unit) is Dimension.COUNT else amount
        return {
            "ingredient": self._words.named(said["item"]),
            "pack_amount": _text(amount),
            "pack_unit": unit,
            "price": _text(cost),
        }

    def _amount(self, said: Said) -> tuple[Fraction, str]:
        try:
            number, word = read_amount(said.get("amount", ""), self._reading.decimal or ".")
        except (ValueError, ZeroDivisionError):
            raise _UnreadableCellError("amount") from None
        word = word or said.get("unit", "")
        if not word:
            return number, "each"
        found = unit_of(word, self._words, self._bar, self._reading.unit)
        if not isinstance(found, str):
            raise _UnreadableCellError("unit" if "unit" in said else "amount")
        return number, found

    def _number(self, said: Said, meaning: Meaning) -> Fraction:
        try:
            return read_number(said[meaning], self._reading.decimal or ".")
        except (ValueError, ZeroDivisionError):
            raise _UnreadableCellError(meaning) from None

    def _money(self, said: Said, amount: Fraction) -> str | None:
        if "cost" in said:
            return _text(self._number(said, "cost"))
        return _text(self._number(said, "each") * amount) if "each" in said else None

    def _day(self, said: Said) -> str:
        if "day" not in said:
            return (self._reading.day or self._today).isoformat()
        try:
            return read_day(
                said["day"], self._reading.order or "ymd", self._words.months, self._today
            ).isoformat()
        except ValueError:
            raise _UnreadableCellError("day") from None


class _UnreadableCellError(ValueError):
    """An unreadable cell, by the meaning of its column."""

    def __init__(self, meaning: Meaning) -> None:
        super().__init__(meaning)
        self.meaning = meaning


def _text(number: Fraction) -> str:
    return str(number)
