"""Import the log: deliveries, waste, juice, trials, batches, drinks, counts, peeled fruit and pars."""

from __future__ import annotations

from collections import Counter
from datetime import datetime
from fractions import Fraction

from bot.trade.formulas.ingredient_names.reading import plain_name
from bot.trade.formulas.measures import Quantity
from bot.trade.money.money import to_minor
from bot.work.batches.batches import BatchState
from bot.work.events import events
from bot.work.events.needs import Asked
from bot.work.formulas import formulas, ingredients
from bot.work.fruit import peeled, waste
from bot.work.money import prices
from bot.work.reminders import own, planning
from bot.work.reminders.own import When
from bot.work.stock import on_hand
from bot.work.transfer.fields import Logged
from bot.work.transfer.import_references import Intake
from bot.work.transfer.import_snapshot import mix_before, snapshot
from bot.work.transfer.rows import BatchRow, DeliveryRow, ParRow, WasteRow, WordingRow
from bot.work.transfer.service_rows import EventRow, PeeledRow, PeeledUseRow, ReminderRow, ScoreRow, TrialRow
from storage.tables import (
    Base,
    Batch,
    Event,
    Formula,
    FormulaVersion,
    Ingredient,
    Member,
    PeeledUse,
    StockPar,
    Trial,
    TrialVariant,
    Waste,
    Wording,
)
from storage.tables import Counter as LastNumber


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

    def _trial(self, row: TrialRow) -> bool:
        formula = self._book.get(Formula, row.formula_id)
        assert formula is not None  # noqa: S101 - the row was read with it
        version = self._book.get(FormulaVersion, formula.id, row.version)
        trial = self._book.add(
            row.stored(
                id=self._free_number(Trial, row.number),
                version=formula.latest if version is None else version.number,
            )
        )
        self._book.add_all([one.stored(trial_id=trial.id, batch_id=None) for one in row.variants])
        members = self._members() if row.scores else {}
        self._book.add_all(
            [one.stored(trial_id=trial.id, **self._taster(one, members)) for one in row.scores]
        )
        self._note(row, trial.id)
        if trial.id != row.number:
            self._taken.renumbered_trials.append((row.number, trial.id))
        return True

    def _members(self) -> dict[str, int]:
        """Return the members of this bar by name, without names that several have."""
        names = [(one.name, one.person_id) for one in self._book.all(Member, Member.left_at.is_(None))]
        counts = Counter(name for name, _person in names)
        return {name: person for name, person in names if counts[name] == 1}

    def _taster(self, row: ScoreRow, members: dict[str, int]) -> dict[str, int]:
        """Return the member who tasted, or the number of a taster whom the importing person brings in."""
        if row.by in members:
            return {"person_id": members[row.by], "taster": 0}
        return {"person_id": self.person_id, "taster": row.taster}

    def _bottle(self, row: BatchRow, batch: Batch) -> None:
        """Make a batch the bottle of a trial, as far as the trial is here and the variant has none yet."""
        trial = self.by_ref("trial", row.trial) if row.trial else None
        variant = None if trial is None else self._book.get(TrialVariant, trial, row.variant)
        if variant is None or variant.batch_id is not None:
            return
        variant.batch_id = batch.id
        name = f"{self._name(Formula, row.formula_id)} {variant.trial_id}{variant.code}"
        batch.frozen = {**batch.frozen, "trial": [variant.trial_id, variant.number], "formula": name}

    def _batch(self, row: BatchRow) -> bool:
        lines = [line.stored(position=position) for position, line in enumerate(row.lines, start=1)]
        names = {line.ingredient_id: self._name(Ingredient, line.ingredient_id) for line in row.lines}
        frozen = snapshot(row, self._name(Formula, row.formula_id), lines, names)
        batch: Batch = self._book.add(row.stored(id=self._free_number(Batch, row.number), frozen=frozen))
        self._bottle(row, batch)
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
            planning.plan_batch(self._book, self.bar, batch, str(batch.frozen["formula"]), self.now)
        return True

    def _name(self, table: type[Ingredient | Formula], number: int) -> str:
        found = self._book.get(table, number)
        assert found is not None  # noqa: S101 - the row was read with it
        return found.name

    def _free_number(self, table: type[Base], wanted: int) -> int:
        """Return the number in the file if it is free, so that the labels on the bottles stay valid."""
        query = self._book.rows(LastNumber, LastNumber.value).where(LastNumber.name == table.__tablename__)
        last = self._book.session.scalar(query) or 0
        return self._book.next_number(table.__tablename__, max(wanted - last, 1))

    def _peeled(self, row: PeeledRow) -> bool:
        fruit = row.stored(business_day=self.bar.day_of(row.at), by=self.person_id)
        self._note(row, peeled.bring_in(self._context, fruit, [self._use(one) for one in row.uses]))
        return True

    def _use(self, row: PeeledUseRow) -> PeeledUse:
        """Return a use with the waste, juicing or batch that it was for, if that is here."""
        kind = peeled.CAUSES[row.what]
        number = self.by_ref(kind, row.cause) if kind and row.cause else None
        use: PeeledUse = row.stored(**({} if number is None else {f"{kind}_id": number}))
        return use

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
        asked = events.written(Asked(row.day, row.guests, row.each, tuple(row.formulas), tuple(row.drinks)))
        if any(asked.items() <= one.plan.items() for one in self._book.all(Event, Event.day == row.day)):
            return False
        made = [self.by_ref("batch", ref) for ref in row.batches]
        plan = {**asked, "batches": [number for number in made if number is not None]}
        drawn = {self.by_ref("batch", ref): str(Fraction(ml)) for ref, ml in row.drawn.items()}
        plan["drawn"] = {str(number): ml for number, ml in drawn.items() if number is not None}
        if row.noted is not None:
            plan |= {"taken": self._by_number(row.taken), "noted": row.noted.isoformat()}
        back = self._by_number(row.back or {})
        found = Event(day=row.day, plan=plan, made_at=self.now, by=self.person_id, back=back or None)
        self._taken.note("event", self._book.add(found).id)
        self._event_marks[row.number] = events.mark(found)
        return True

    def _by_number(self, amounts: dict[str, str]) -> dict[str, str]:
        return {
            str(self.formulas[plain_name(name)]): str(Fraction(ml))
            for name, ml in amounts.items()
            if plain_name(name) in self.formulas
        }

    def _reminder(self, row: ReminderRow) -> bool | None:
        if row.event and row.event not in self._event_marks:
            return None  # of an event that is here already
        about = self._event_marks[row.event] if row.event else ""
        when = When(row.due_at, row.days)
        number = own.bring_in(self._context, row.kind, row.words, when, row.team, about)
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
