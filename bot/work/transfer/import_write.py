"""Write the rows of a checked file to the book, each reference only once."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

from pydantic import ValidationError

from bot.work.errors import BadValueError
from bot.work.money import prices
from bot.work.transfer.fields import Referenced, Row
from bot.work.transfer.import_book import BookIntake
from bot.work.transfer.import_log import LogIntake
from bot.work.transfer.import_references import Taken
from bot.work.transfer.rows import SECTIONS, FormulaRow

__all__ = ["Taken", "Taker"]


_TELL_EVERY = 100


class Taker(BookIntake, LogIntake):
    """Imports one sheet. Errors go to the sheet's problems; the caller then keeps nothing."""

    def take(self) -> Taken:
        """Write everything that is new."""
        currency = self._sheet.bar.get("currency")
        if currency and currency != self.bar.currency and not self._empty:
            raise BadValueError("currency", str(currency)[:3])
        self._each("ingredients", self._ingredient)
        self._settings()
        self._each("formulas", self._formula)
        self._each("menu", self._menu)
        self._each("sprayers", self._sprayer)
        self._own()
        self._in_force = dict(prices.in_force(self._context))
        self._each("prices", self._price)
        self._book.touched()
        self._each("deliveries", self._delivery)
        self._each("waste", self._waste)
        self._each("juicings", self._logged)
        self._each("trials", self._trial)
        self._each("batches", self._batch)
        self._each("drinks", self._logged)
        self._each("counts", self._logged)
        self._each("peeled", self._peeled)
        self._each("pars", self._par)
        self._each("wordings", self._wording)
        self._each("events", self._event)
        self._each("reminders", self._reminder)
        self._book.touched()
        return self._taken

    def _each(self, kind: str, take: Callable[[Any], bool | None]) -> None:
        self._sheet.refs_seen_twice(kind)
        for given in self._sheet.of(kind):
            self._through += 1
            if self._through % _TELL_EVERY == 0:
                self._context.watch(self._through, self._sheet.count)
            try:
                row = SECTIONS[kind].model_validate(given.data, context=self)
            except ValidationError as error:
                self._sheet.refused(kind, given, error)
                continue
            self._line = given.line
            new = False if self._is_known(row) else take(row)
            if new is not None:
                counts = self._taken.new if new else self._taken.already
                counts[kind] = counts.get(kind, 0) + 1
        self._write_kept()

    def _is_known(self, row: Row) -> bool:
        """Whether a row was imported before; a formula's name is its reference in the file."""
        if not isinstance(row, Referenced) or isinstance(row, FormulaRow):
            return False
        return self.by_ref(row.KIND, row.ref) is not None
