"""Taking in what was logged: deliveries, waste, juice, batches, drinks, counts and pars."""

from __future__ import annotations

from datetime import datetime
from fractions import Fraction

from bot.trade.formulas.measures import Dimension, Quantity
from bot.trade.money.money import to_minor
from bot.work.batches.batches import BatchState, Clarity
from bot.work.formulas import formulas, ingredients
from bot.work.fruit import peeled
from bot.work.money import prices
from bot.work.reminders import planning
from bot.work.stock import on_hand
from bot.work.transfer.import_references import Intake
from bot.work.transfer.import_rows import Row
from bot.work.transfer.import_snapshot import frozen
from storage.tables import (
    Batch,
    BatchEvent,
    BatchLine,
    Counter,
    Delivery,
    DrinksCount,
    Juicing,
    StockCount,
    StockPar,
    Waste,
)

_EVENTS = frozenset({"made", "check", "opened", "used up", "discarded"})
_STATES = frozenset(state.value for state in BatchState if state is not BatchState.UNDONE)


class LogIntake(Intake):
    """Takes in what happened in the bar."""

    def _delivery(self, row: Row) -> bool | None:
        item, amount = self._item(row, "ingredient"), row.number("amount", above=True)
        dimension, cost = row.choice("dimension", set(Dimension)), self._money(row, "cost", False)
        when = self._logged(row)
        if not self._good(row) or item is None or amount is None or when is None:
            return None
        if self._known("delivery", row) is not None:
            return False
        self._keep(
            "delivery",
            row,
            Delivery(
                ingredient_id=item,
                dimension=dimension,
                amount_milli=round(amount * 1000),
                cost_minor=cost,
                business_day=when[0],
                at=when[1],
                by=self._context.person_id,
                source=f"import {self._upload}",
                line=row.line,
            ),
        )
        return True

    def _waste(self, row: Row) -> bool | None:
        fruit, pieces = self._item(row, "fruit"), row.number("pieces", False, True)
        grams, cost = row.number("grams", False, True), self._money(row, "cost", False)
        reason, when = row.text("reason", False, 40), self._logged(row)
        if not row.says("pieces", "grams"):
            row.wrong("pieces", "missing")
        if not self._good(row) or fruit is None or when is None:
            return None
        if self._known("waste", row) is not None:
            return False
        line = Waste(
            ingredient_id=fruit,
            count_milli=None if pieces is None else round(pieces * 1000),
            grams_milli=None if pieces is not None or grams is None else round(grams * 1000),
            reason=reason,
            business_day=when[0],
            cost_minor=cost,
            at=when[1],
            by=self._context.person_id,
            source=f"import {self._upload}",
            line=row.line,
            late=row.flag("late"),
        )
        if cost is None and self._sheet.is_table:
            self._cost(line, when[1])
        self._keep("waste", row, line)
        return True

    def _cost(self, line: Waste, at: datetime) -> None:
        """Cost a line of a table at the price that was in force, where the table does not say."""
        if line.ingredient_id not in self._courses:
            self._courses[line.ingredient_id] = prices.course(self._context, line.ingredient_id)
        price = self._courses[line.ingredient_id].at(at)
        if price is None:
            return
        counted = line.count_milli is not None
        amount = Fraction(line.count_milli or line.grams_milli or 0, 1000)
        given = Dimension.COUNT if counted else Dimension.MASS
        view = ingredients.get(self._context, line.ingredient_id)
        turned = on_hand.convert(view, amount, given, price.dimension)
        if turned is not None:
            line.cost_minor = to_minor(turned * price.per_base, self._context.bar.currency)
            line.price_id = price.id

    def _juicing(self, row: Row) -> bool | None:
        fruit, pieces = self._item(row, "fruit"), row.number("pieces", above=True)
        volume, when = row.number("volume_ml", above=True), self._logged(row)
        if not self._good(row) or fruit is None or pieces is None or volume is None or when is None:
            return None
        if self._known("juicing", row) is not None:
            return False
        self._keep(
            "juicing",
            row,
            Juicing(
                ingredient_id=fruit,
                count_milli=round(pieces * 1000),
                volume_ml=volume,
                business_day=when[0],
                at=when[1],
                by=self._context.person_id,
            ),
        )
        return True

    def _batch(self, row: Row) -> bool | None:
        number, formula = row.whole("number"), self._formula_named(row, "formula")
        version, state = row.whole("version"), row.choice("state", _STATES)
        total, made_at = row.number("total_ml"), row.moment("made_at")
        rested, discard_on = row.moment("rest_until"), row.day("discard_on")
        opened, ended = row.moment("opened_at", False), row.moment("ended_at", False)
        lost, clarity = row.number("lost_ml", False), row.choice("clarity", set(Clarity), False)
        lines = self._batch_lines(row)
        events = self._batch_events(row)
        if not self._good(row) or formula is None or total is None or lines is None:
            return None
        if number is None or version is None or made_at is None or rested is None or discard_on is None:
            return None
        if self._known("batch", row) is not None:
            return False
        named = {line.ingredient_id: one.text("ingredient") for line, one in lines}
        batch = self._book.add(
            Batch(
                id=self._batch_number(number),
                formula_id=formula,
                version=version,
                state=state,
                total_ml=total,
                made_at=made_at,
                made_by=self._context.person_id,
                rest_until=rested,
                discard_on=discard_on,
                opened_at=opened,
                ended_at=ended,
                lost_ml=lost,
                lost_reason=row.text("lost_reason", False) or None,
                clarity=clarity or None,
                frozen=frozen(row, [line for line, _one in lines], named),
            )
        )
        for line, _one in lines:
            line.batch_id = batch.id
        self._book.add_all([line for line, _one in lines])
        for event in events:
            event.batch_id = batch.id
        self._book.add_all(events)
        self._note("batch", row, batch.id)
        if batch.id != number:
            self._taken.renumbered.append((number, batch.id))
        if BatchState(state).open:
            planning.plan_batch(
                self._book, self._context.bar, batch, str(batch.frozen["formula"]), self._context.now
            )
        return True

    def _batch_number(self, wanted: int) -> int:
        """Return the number from the file while it is free, so that the labels on the bottles stay true."""
        query = self._book.rows(Counter, Counter.value).where(Counter.name == Batch.__tablename__)
        last = self._book.session.scalar(query) or 0
        if wanted > last:
            return self._book.next_number(Batch.__tablename__, wanted - last)
        return self._book.next_number(Batch.__tablename__)

    def _batch_lines(self, row: Row) -> list[tuple[BatchLine, Row]] | None:
        found: list[tuple[BatchLine, Row]] = []
        listed = list(row.rows("lines"))
        for position, one in enumerate(listed, start=1):
            item, amount = self._item(one, "ingredient"), one.number("amount")
            unit = one.choice("unit", {"ml", "g", "each"})
            lot = one.text("lot", False, 60) or None
            if item is None or amount is None:
                return None
            line = BatchLine(position=position, ingredient_id=item, amount=amount, unit=unit, lot=lot)
            found.append((line, one))
        return found

    def _batch_events(self, row: Row) -> list[BatchEvent]:
        found = []
        for one in row.rows("events"):
            what, at = one.choice("what", _EVENTS), one.moment("at")
            clarity = one.choice("clarity", set(Clarity), False) or None
            if at is not None:
                note = one.text("note", False, 1000)
                found.append(
                    BatchEvent(what=what, clarity=clarity, note=note, at=at, by=self._context.person_id)
                )
        return found

    def _drinks(self, row: Row) -> bool | None:
        count, when = row.whole("drinks"), self._logged(row)
        formula = self._formula_named(row, "formula", needed=False)
        garnish = self._item(row, "garnish", needed=False)
        if not self._good(row) or count is None or when is None:
            return None
        if self._known("drinks", row) is not None:
            return False
        self._keep(
            "drinks",
            row,
            DrinksCount(
                business_day=when[0],
                formula_id=formula,
                ingredient_id=garnish,
                drinks=count,
                ran_out=row.flag("ran_out"),
                at=when[1],
                by=self._context.person_id,
            ),
        )
        return True

    def _count(self, row: Row) -> bool | None:
        item, amount = self._item(row, "ingredient"), row.number("amount")
        dimension, when = row.choice("dimension", set(Dimension)), self._logged(row)
        if not self._good(row) or item is None or amount is None or when is None:
            return None
        if self._known("count", row) is not None:
            return False
        marks = {
            f"after_{kind}": self._by_ref(kind, row.text(f"after_{kind}", False)) or 0
            for kind in ("delivery", "batch", "waste")
        }
        counted = self._book.add(
            StockCount(
                ingredient_id=item,
                dimension=dimension,
                amount_milli=round(amount * 1000),
                business_day=when[0],
                at=when[1],
                by=self._context.person_id,
                **marks,
            )
        )
        self._note("count", row, counted.id)
        return True

    def _peeled(self, row: Row) -> bool | None:
        fruit, pieces = self._item(row, "fruit"), row.number("pieces", above=True)
        at, lost_at = row.moment("at"), row.moment("lost_at")
        if pieces is not None and pieces > peeled.MOST:
            row.wrong("pieces", "number")
        if not self._good(row) or fruit is None or pieces is None or at is None or lost_at is None:
            return None
        if self._known("peeled", row) is not None:
            return False
        self._note("peeled", row, peeled.bring_in(self._context, fruit, pieces, at, lost_at))
        return True

    def _par(self, row: Row) -> bool | None:
        item, amount, unit = self._item(row, "ingredient"), row.number("amount", above=True), row.unit("unit")
        if not self._good(row) or item is None or amount is None:
            return None
        formulas.in_base(self._context.bar, Quantity(amount, unit))
        if self._book.get(StockPar, item) is not None:
            return False
        self._book.add(StockPar(ingredient_id=item, amount=amount, unit=unit, told=False))
        self._taken.pars.append((item, str(amount), unit))
        return True
