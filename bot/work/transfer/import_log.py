"""Import the log: deliveries, waste, juice, batches, drinks, counts, peeled fruit and pars."""

from __future__ import annotations

from datetime import datetime
from fractions import Fraction

from bot.trade.formulas.ingredient_names.reading import plain_name
from bot.trade.formulas.measures import Quantity
from bot.trade.money.money import to_minor
from bot.work.batches.batches import BatchState
from bot.work.formulas import formulas, ingredients
from bot.work.fruit import peeled, waste
from bot.work.money import prices
from bot.work.reminders import own, planning
from bot.work.reminders.own import When
from bot.work.stock import on_hand
from bot.work.transfer.fields import Logged
from bot.work.transfer.import_references import Intake
from bot.work.transfer.import_snapshot import mix_before, snapshot
from bot.work.transfer.rows import BatchRow, DeliveryRow, ParRow, PeeledRow, WasteRow, WordingRow
from bot.work.transfer.service_rows import EventRow, ReminderRow
from storage.tables import Batch, Counter, Event, Formula, Ingredient, StockPar, Waste, Wording


class LogIntake(Intake):
    """Imports the events of the bar. Each method returns whether the row is new."""

    def _logged(self, row: Logged) -> bool:
        self._keep(row, row.stored())
        return True

    def _delivery(self, row: DeliveryRow) -> bool:
        self._keep(row, row.stored(source=self._source, line=self._line))
        return True

    def _waste(self, row: WasteRow) -> bool:
        line: Waste = row.stored(source=self._source, line=self._line)
        if line.cost_minor is None and self._sheet.is_table:
            self._cost(line, line.at)
        self._keep(row, line)
        return True

    def _cost(self, line: Waste, at: datetime) -> None:
        """Compute the cost of a table's line at the price valid then, if the table has no cost."""
        if line.ingredient_id not in self._courses:
            self._courses[line.ingredient_id] = prices.course(self._context, line.ingredient_id)
        price = self._courses[line.ingredient_id].at(at)
        if price is None:
            return
        amount = Fraction(line.amount_milli, 1000)
        view = ingredients.get(self._context, line.ingredient_id)
        turned = on_hand.convert(view, amount, waste.dimension_of(line), price.dimension)
        if turned is not None:
            line.cost_minor = to_minor(turned * price.per_base, self.bar.currency)
            line.price_id = price.id

    def _batch(self, row: BatchRow) -> bool:
        lines = [line.stored(position=position) for position, line in enumerate(row.lines, start=1)]
        names = {line.ingredient_id: self._name(Ingredient, line.ingredient_id) for line in row.lines}
        frozen = snapshot(row, self._name(Formula, row.formula_id), lines, names)
        batch: Batch = self._book.add(row.stored(id=self._batch_number(row.number), frozen=frozen))
        for line in lines:
            line.batch_id = batch.id
        self._book.add_all(lines)
        self._book.add_all(
            [one.stored(batch_id=batch.id, mix_before=mix_before(one.mix_before)) for one in row.events]
        )
        self._book.add_all([one.stored(batch_id=batch.id) for one in row.bottles])
        self._note(row, batch.id)
        if batch.id != row.number:
            self._taken.renumbered.append((row.number, batch.id))
        if BatchState(row.state).open:
            planning.plan_batch(self._book, self.bar, batch, str(frozen["formula"]), self.now)
        return True

    def _name(self, table: type[Ingredient | Formula], number: int) -> str:
        found = self._book.get(table, number)
        assert found is not None  # noqa: S101 - the row was read with it
        return found.name

    def _batch_number(self, wanted: int) -> int:
        """Return the number in the file if it is free, so that the labels on the bottles stay valid."""
        query = self._book.rows(Counter, Counter.value).where(Counter.name == Batch.__tablename__)
        last = self._book.session.scalar(query) or 0
        return self._book.next_number(Batch.__tablename__, max(wanted - last, 1))

    def _peeled(self, row: PeeledRow) -> bool:
        count = Fraction(row.count_milli, 1000)
        self._note(row, peeled.bring_in(self._context, row.ingredient_id, count, row.at, row.lost_at))
        return True

    def _wording(self, row: WordingRow) -> bool:
        said = (Wording.language == row.language, Wording.shape == row.shape)
        if self._book.one(Wording, *said) is not None:
            return False
        added = self._book.add(row.stored(made_at=self.now, by=self.person_id))
        self._taken.note("wording", added.id)
        return True

    def _event(self, row: EventRow) -> bool:
        if not (row.formulas or row.drinks):
            return False
        said = {"guests": row.guests, "each": str(row.each)}
        known = {"formulas": row.formulas, "drinks": row.drinks}
        if any(one.plan == {**said, **known} for one in self._book.all(Event, Event.day == row.day)):
            return False
        back = {
            str(self.formulas[plain_name(name)]): str(Fraction(ml))
            for name, ml in (row.back or {}).items()
            if plain_name(name) in self.formulas
        }
        found = Event(
            day=row.day, plan={**said, **known}, back=back or None, made_at=self.now, by=self.person_id
        )
        self._taken.note("event", self._book.add(found).id)
        return True

    def _reminder(self, row: ReminderRow) -> bool | None:
        number = own.bring_in(self._context, row.kind, row.words, When(row.due_at, row.days), row.team)
        if number is None:
            return None  # its time is past
        self._note(row, number)
        return True

    def _par(self, row: ParRow) -> bool:
        formulas.in_base(self.bar, Quantity(row.amount, row.unit))
        if self._book.get(StockPar, row.ingredient_id) is not None:
            return False
        self._book.add(row.stored(told=False))
        self._taken.pars.append((row.ingredient_id, str(row.amount), row.unit))
        return True
