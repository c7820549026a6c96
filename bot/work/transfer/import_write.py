"""Writing the rows of a checked file into the book, each by its reference only once."""

from __future__ import annotations

from typing import Any

from bot.work.errors import BadValueError
from bot.work.money import prices
from bot.work.transfer.import_book import BookIntake
from bot.work.transfer.import_log import LogIntake
from bot.work.transfer.import_references import Taken
from bot.work.transfer.import_rows import refs_seen_twice

__all__ = ["Taken", "Taker"]


_TELL_EVERY = 100


class Taker(BookIntake, LogIntake):
    """Takes one sheet in. What is wrong goes to the sheet's problems; the caller then keeps nothing."""

    def take(self) -> Taken:
        """Write everything that is new."""
        sheet = self._sheet
        currency = sheet.bar.get("currency")
        if currency and currency != self._context.bar.currency and not self._empty:
            raise BadValueError("currency", str(currency)[:3])
        for kind in ("formulas", "prices", "deliveries", "waste", "batches", "drinks", "counts", "peeled"):
            refs_seen_twice(sheet.of(kind), lambda row: row.text("ref", needed=False) or f"row {row.line}")
        self._each("ingredients", self._ingredient)
        self._settings()
        self._each("formulas", self._formula)
        self._each("sprayers", self._sprayer)
        self._own_sprayer()
        self._own_costs()
        self._in_force = dict(prices.in_force(self._context))
        self._each("prices", self._price)
        self._book.touched()
        for kind, takes in (
            ("deliveries", self._delivery),
            ("waste", self._waste),
            ("juicings", self._juicing),
            ("batches", self._batch),
            ("drinks", self._drinks),
            ("counts", self._count),
            ("peeled", self._peeled),
            ("pars", self._par),
        ):
            self._each(kind, takes)
        self._book.touched()
        return self._taken

    def _each(self, kind: str, takes: Any) -> None:
        for row in self._sheet.of(kind):
            self._through += 1
            if self._through % _TELL_EVERY == 0:
                self._context.watch(self._through, self._sheet.count)
            self._before = len(self._sheet.problems)
            new = takes(row)
            if self._good(row) and new is not None:
                counts = self._taken.new if new else self._taken.already
                counts[kind] = counts.get(kind, 0) + 1
        self._write_kept()
