"""Writing the rows of a checked file into the book, each by its reference only once."""

from __future__ import annotations

from dataclasses import dataclass, field
from datetime import date, datetime
from fractions import Fraction
from typing import Any

from bot.trade.days import business_day, instant_of
from bot.trade.jurisdiction import Jurisdiction
from bot.trade.kinds import PREPARATION_DEFAULTS, IngredientKind, Preparation, plain_name
from bot.trade.measures import Dimension, Quantity
from bot.trade.money import to_minor
from bot.trade.uncertainty import to_decimal
from bot.work import bars, exporting, formulas, ingredients, prices, reminders, stock
from bot.work.batches import BatchState, Clarity
from bot.work.desk import BarSettings, Desk
from bot.work.errors import BadValueError
from bot.work.file_rows import Row, Sheet, refs_seen_twice
from bot.work.frozen_batch import frozen
from bot.work.prices import PriceView
from storage.tables import (
    Bar,
    Batch,
    BatchEvent,
    BatchLine,
    Counter,
    Delivery,
    DrinksCount,
    Formula,
    FormulaLine,
    FormulaSprayer,
    FormulaVersion,
    Imported,
    Ingredient,
    Juicing,
    Price,
    Sprayer,
    SprayerRun,
    StockCount,
    StockPar,
    Waste,
)

_EVENTS = frozenset({"made", "check", "opened", "used up", "discarded"})
_STATES = frozenset(state.value for state in BatchState if state is not BatchState.UNDONE)
_REFERENCED: dict[str, Any] = {
    "formula": Formula,
    "price": Price,
    "delivery": Delivery,
    "waste": Waste,
    "juicing": Juicing,
    "batch": Batch,
    "drinks": DrinksCount,
    "count": StockCount,
}
_LATE_EVENING = 22 * 60  # when waste of which only the day is known is taken to have been logged


@dataclass
class Taken:
    """How many rows of each kind were new, how many were here already; `older` prices were left out.

    `settings`: the bar had nothing in its book, so its settings came in too.
    """

    new: dict[str, int] = field(default_factory=dict)
    already: dict[str, int] = field(default_factory=dict)
    older: int = 0
    settings: bool = False


class Taker:
    """Takes one sheet in. What is wrong goes to the sheet's problems; the caller then keeps nothing."""

    def __init__(self, desk: Desk, sheet: Sheet, upload: int) -> None:
        self._desk = desk
        self._book = desk.book
        self._sheet = sheet
        self._upload = upload
        self._taken = Taken()
        bar = desk.book.session.get(Bar, desk.bar.id)
        assert bar is not None  # noqa: S101 - somebody sits at its desk
        self._own_origin = exporting.origin_of(bar)
        self._ingredients = {row.match_key: row.id for row in self._book.all(Ingredient)}
        self._formulas = {row.match_key: row.id for row in self._book.all(Formula)}
        self._imported = {(row.kind, row.ref): row.number for row in self._book.all(Imported)}
        self._sprayers = {row.match_key: row.id for row in self._book.all(Sprayer)}
        self._empty = not self._formulas and self._book.one(Price) is None and self._book.one(Waste) is None
        self._in_force: dict[int, PriceView] = {}
        self._before = 0  # how many problems there were before the row being taken in

    def take(self) -> Taken:
        """Write everything that is new."""
        sheet = self._sheet
        currency = sheet.bar.get("currency")
        if currency and currency != self._desk.bar.currency and not self._empty:
            raise BadValueError("currency", str(currency)[:3])
        for kind in ("formulas", "prices", "deliveries", "waste", "batches", "drinks", "counts"):
            refs_seen_twice(sheet.of(kind), lambda row: row.text("ref", needed=False) or f"row {row.line}")
        self._each("ingredients", self._ingredient)
        self._settings()
        self._each("formulas", self._formula)
        self._each("sprayers", self._sprayer)
        self._own_sprayer()
        self._in_force = dict(prices.in_force(self._desk))
        self._each("prices", self._price)
        self._book.touched()
        for kind, takes in (
            ("deliveries", self._delivery),
            ("waste", self._waste),
            ("juicings", self._juicing),
            ("batches", self._batch),
            ("drinks", self._drinks),
            ("counts", self._count),
            ("pars", self._par),
        ):
            self._each(kind, takes)
        self._book.touched()
        return self._taken

    def _each(self, kind: str, takes: Any) -> None:
        for row in self._sheet.of(kind):
            self._before = len(self._sheet.problems)
            new = takes(row)
            if self._good(row) and new is not None:
                counts = self._taken.new if new else self._taken.already
                counts[kind] = counts.get(kind, 0) + 1

    # -- references --------------------------------------------------------------------------

    def _known(self, kind: str, row: Row) -> int | None:
        """Return the number of the row that this one came in as before, or None."""
        return self._by_ref(kind, row.text("ref", needed=False))

    def _by_ref(self, kind: str, ref: str) -> int | None:
        if (kind, ref) in self._imported:
            return self._imported[kind, ref]
        origin, _sign, number = ref.partition(f":{kind}:")
        if origin == self._own_origin and number.isdigit():
            own = self._book.get(_REFERENCED[kind], int(number))
            return None if own is None else int(number)
        return None

    def _note(self, kind: str, row: Row, number: int) -> None:
        ref = row.text("ref", needed=False)
        if ref:
            self._book.add(Imported(kind=kind, ref=ref, number=number))
            self._imported[kind, ref] = number

    def _good(self, row: Row) -> bool:
        """Whether nothing is wrong with the row being taken in."""
        return len(row.problems) == self._before

    def _item(self, row: Row, name: str, needed: bool = True) -> int | None:
        """Return the ingredient that a field names; a new name is written down."""
        text = row.text(name, needed)
        key = plain_name(text)
        if not text:
            return None
        if not key:
            row.wrong(name, "unknown")
            return None
        if key not in self._ingredients:
            kind = IngredientKind.FRUIT if name in {"fruit", "replaces", "garnish"} else None
            self._ingredients[key] = ingredients.add(self._desk, text, kind).id
        return self._ingredients[key]

    def _formula_named(self, row: Row, name: str, needed: bool = True) -> int | None:
        text = row.text(name, needed)
        if not text:
            return None
        found = self._formulas.get(plain_name(text))
        if found is None:
            row.wrong(name, "unknown")
        return found

    # -- the book ----------------------------------------------------------------------------

    def _ingredient(self, row: Row) -> bool | None:
        name = row.text("name")
        kind = row.choice("kind", set(IngredientKind), needed=False) or None
        strength = row.number("strength_percent", needed=False)
        if strength is not None and strength > 100:
            row.wrong("strength_percent", "number")
        density, grams = row.number("density_g_per_ml", False, True), row.number("grams_each", False, True)
        grade = row.choice("food_grade", {"confirmed", "not confirmed"}, needed=False)
        details = row.data.get("details")
        if not self._good(row) or not plain_name(name):
            return None
        if plain_name(name) in self._ingredients:
            return False
        view = ingredients.add(self._desk, name, None if kind is None else IngredientKind(kind), strength)
        found = self._book.get(Ingredient, view.id)
        assert found is not None  # noqa: S101 - just written
        found.density_g_per_ml, found.grams_each = density, grams
        found.density_source = row.text("density_source", False, 200) or None
        found.food_grade = grade or None
        found.details = _details(details)
        found.archived_at = self._desk.now if row.flag("archived") else None
        self._ingredients[plain_name(name)] = view.id
        return True

    def _settings(self) -> None:
        """Take the settings over, into a bar that has nothing in its book yet."""
        bar = self._sheet.bar
        if not bar or not self._empty or not self._desk.role.manages:
            return
        given = bar.get("settings")
        if not isinstance(given, dict):
            return
        since = bar.get("spraying_since")
        names = ("currency", "units", "zone", "jurisdiction", "closing_minute")
        columns: dict[str, Any] = {name: bar[name] for name in names if name in bar}
        dated = {}
        for name, day in (since if isinstance(since, dict) else {}).items():
            number = self._ingredients.get(plain_name(str(name)))
            if number is not None:
                dated[str(number)] = str(day)
        settings = _settings(given).changed(spraying_since=dated, more=self._desk.bar.settings.more)
        values = {name: getattr(settings, name) for name in settings.to_json()}
        closing = columns.get("closing_minute", 0)
        words = [value for name, value in columns.items() if name != "closing_minute"]
        if (
            type(closing) is not int
            or not 0 <= closing <= _LATEST_CLOSING
            or not all(_is_word(one) for one in words)
        ):
            raise BadValueError("settings", "")
        if columns.get("jurisdiction", Jurisdiction.OTHER) not in set(Jurisdiction):
            raise BadValueError("settings", "")
        bars.change(self._desk, **columns, **values)
        self._taken.settings = True

    def _formula(self, row: Row) -> bool | None:
        name = row.text("name")
        preparation = row.choice("preparation", set(Preparation))
        versions = [self._version(one, preparation) for one in row.rows("versions")]
        if not versions:
            row.wrong("versions", "missing")
        if not self._good(row) or any(one is None for one in versions):
            return None
        if plain_name(name) in self._formulas:
            return False
        made = [one for one in versions if one is not None]
        numbers = [version.number for version, _lines in made]
        if sorted(set(numbers)) != numbers:
            row.wrong("versions", "twice")
            return None
        formula = self._book.add(
            Formula(
                name=name,
                match_key=plain_name(name),
                preparation=preparation,
                latest=numbers[-1],
                made_at=made[0][0].made_at,
                archived_at=self._desk.now if row.flag("archived") else None,
            )
        )
        for version, lines in made:
            version.formula_id = formula.id
            self._book.add(version)
            for line in lines:
                line.formula_id = formula.id
            self._book.add_all(lines)
        self._formulas[formula.match_key] = formula.id
        self._note("formula", row, formula.id)
        return True

    def _version(self, row: Row, preparation: str) -> tuple[FormulaVersion, list[FormulaLine]] | None:
        number, rest = row.whole("number"), row.number("rest_hours", needed=False)
        days = row.whole("discard_days", needed=False)
        garnish = self._item(row, "replaces", needed=False)
        lines: list[FormulaLine] = []
        seen: set[int] = set()
        listed = list(row.rows("lines"))
        if not 0 < len(listed) <= formulas.MOST_LINES:
            row.wrong("lines", "missing")
        for position, one in enumerate(listed, start=1):
            item, amount, unit = (
                self._item(one, "ingredient"),
                one.number("amount", above=True),
                one.unit("unit"),
            )
            self._strength(one, item)
            if item is not None and item in seen:
                one.wrong("ingredient", "twice")
            if item is not None and amount is not None and number is not None:
                seen.add(item)
                lines.append(
                    FormulaLine(
                        number=number, position=position, ingredient_id=item, amount=amount, unit=unit
                    )
                )
        sprays = {
            name: row.number(name, False, True)
            for name in ("sprays_low", "sprays_high", "spray_ml_low", "spray_ml_high")
        }
        note, made_at = row.text("note", False, 2000), row.moment("made_at", needed=False)
        if number is None or len(lines) != len(listed) or not lines or preparation not in set(Preparation):
            return None
        usual = PREPARATION_DEFAULTS[Preparation(preparation)]
        if preparation == Preparation.AROMA_MIST and sprays["sprays_low"] is None:
            settings = self._desk.bar.settings
            sprays["sprays_low"], sprays["sprays_high"] = (
                Fraction(settings.sprays_low),
                Fraction(settings.sprays_high),
            )
        version = FormulaVersion(
            number=number,
            rest_hours=Fraction(usual.rest_hours) if rest is None else rest,
            discard_days=usual.discard_days if days is None else days,
            garnish_id=garnish,
            note=note,
            made_at=made_at or self._desk.now,
            made_by=self._desk.person_id,
            **sprays,
        )
        return version, lines

    def _strength(self, row: Row, item: int | None) -> None:
        """A table of formulas says a spirit's strength beside it; one that is known is left as it is."""
        strength = row.number("strength_percent", needed=False)
        if strength is None or item is None:
            return
        if strength > 100:
            row.wrong("strength_percent", "number")
            return
        found = self._book.get(Ingredient, item)
        if found is not None and found.strength_percent is None:
            found.strength_percent = strength

    def _sprayer(self, row: Row) -> bool | None:
        name = row.text("name")
        named = row.data.get("formulas")
        used = [
            self._formulas.get(plain_name(str(one))) for one in (named if isinstance(named, list) else ())
        ]
        runs = []
        for one in row.rows("runs"):
            formula = self._formula_named(one, "formula", needed=False)
            before, after = one.number("before_g"), one.number("after_g")
            step, density = one.number("step_g", above=True), one.number("density_g_per_ml", above=True)
            sprays, at = one.whole("sprays"), one.moment("at")
            if before is None or after is None or step is None or density is None or not sprays or at is None:
                continue
            runs.append(
                SprayerRun(
                    formula_id=formula,
                    before_g=before,
                    after_g=after,
                    step_g=step,
                    sprays=sprays,
                    density_g_per_ml=density,
                    priming=one.flag("priming"),
                    at=at,
                    by=self._desk.person_id,
                )
            )
        if not self._good(row) or not plain_name(name):
            return None
        if plain_name(name) in self._sprayers:
            return False
        sprayer = self._book.add(
            Sprayer(
                name=name,
                match_key=plain_name(name),
                made_at=self._desk.now,
                archived_at=self._desk.now if row.flag("archived") else None,
            )
        )
        self._sprayers[sprayer.match_key] = sprayer.id
        for run in runs:
            run.sprayer_id = sprayer.id
        self._book.add_all(runs)
        for number in used:
            if number is not None and self._book.get(FormulaSprayer, number) is None:
                self._book.add(FormulaSprayer(formula_id=number, sprayer_id=sprayer.id))
        return True

    def _own_sprayer(self) -> None:
        name = self._sheet.bar.get("sprayer")
        if self._taken.settings and name:
            number = self._sprayers.get(plain_name(str(name)))
            if number is not None:
                bars.change(self._desk, sprayer=number)

    # -- what was logged -----------------------------------------------------------------------

    def _money(self, row: Row, name: str, needed: bool) -> int | None:
        amount = row.number(name, needed)
        return None if amount is None else to_minor(to_decimal(amount), self._desk.bar.currency)

    def _price(self, row: Row) -> bool | None:
        item, size = self._item(row, "ingredient"), row.number("pack_amount", above=True)
        unit, minor = row.unit("pack_unit"), self._money(row, "price", True)
        low, high = row.number("garnishes_low", False, True), row.number("garnishes_high", False, True)
        at = row.moment("at", needed=False) or self._desk.now
        if not self._good(row) or item is None or size is None or minor is None:
            return None
        if self._known("price", row) is not None:
            return False
        newer = self._in_force.get(item)
        if newer is not None and newer.at > at:
            self._taken.older += 1  # the newest row is the price in force, and history is not rewritten
            return None
        price = self._book.add(
            Price(
                ingredient_id=item,
                pack_amount=size,
                pack_unit=unit,
                price_minor=minor,
                garnishes_low=low,
                garnishes_high=high or low,
                at=at,
                by=self._desk.person_id,
            )
        )
        self._note("price", row, price.id)
        return True

    def _logged(self, row: Row, minute: int = _LATE_EVENING) -> tuple[date, datetime] | None:
        """Return the business day and the moment of a row; of the two one is enough."""
        day, at = row.day("day", needed=False), row.moment("at", needed=False)
        bar = self._desk.bar
        if day is None and at is None:
            if not row.says("day", "at"):
                row.wrong("day", "missing")
            return None
        if at is None and day is not None:
            at = instant_of(day, minute, bar.zone)
        assert at is not None  # noqa: S101 - one of the two was there
        return day or business_day(at, bar.zone, bar.closing_minute), at

    def _delivery(self, row: Row) -> bool | None:
        item, amount = self._item(row, "ingredient"), row.number("amount", above=True)
        dimension, cost = row.choice("dimension", set(Dimension)), self._money(row, "cost", False)
        when = self._logged(row)
        if not self._good(row) or item is None or amount is None or when is None:
            return None
        if self._known("delivery", row) is not None:
            return False
        delivery = self._book.add(
            Delivery(
                ingredient_id=item,
                dimension=dimension,
                amount_milli=round(amount * 1000),
                cost_minor=cost,
                business_day=when[0],
                at=when[1],
                by=self._desk.person_id,
                source=f"import {self._upload}",
                line=row.line,
            )
        )
        self._note("delivery", row, delivery.id)
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
            by=self._desk.person_id,
            source=f"import {self._upload}",
            line=row.line,
            late=row.flag("late"),
        )
        if cost is None and self._sheet.is_table:
            self._cost(line, when[1])
        self._book.add(line)
        self._note("waste", row, line.id)
        return True

    def _cost(self, line: Waste, at: datetime) -> None:
        """Cost a line of a table at the price that was in force, where the table does not say."""
        price = prices.in_force(self._desk, [line.ingredient_id], at).get(line.ingredient_id)
        if price is None:
            return
        counted = line.count_milli is not None
        amount = Fraction(line.count_milli or line.grams_milli or 0, 1000)
        given = Dimension.COUNT if counted else Dimension.MASS
        view = ingredients.get(self._desk, line.ingredient_id)
        turned = stock.convert(view, amount, given, price.dimension)
        if turned is not None:
            line.cost_minor = to_minor(turned * price.per_base, self._desk.bar.currency)
            line.price_id = price.id

    def _juicing(self, row: Row) -> bool | None:
        fruit, pieces = self._item(row, "fruit"), row.number("pieces", above=True)
        volume, when = row.number("volume_ml", above=True), self._logged(row)
        if not self._good(row) or fruit is None or pieces is None or volume is None or when is None:
            return None
        if self._known("juicing", row) is not None:
            return False
        juiced = self._book.add(
            Juicing(
                ingredient_id=fruit,
                count_milli=round(pieces * 1000),
                volume_ml=volume,
                business_day=when[0],
                at=when[1],
                by=self._desk.person_id,
            )
        )
        self._note("juicing", row, juiced.id)
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
                made_by=self._desk.person_id,
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
        if BatchState(state).open:
            reminders.plan_batch(
                self._book, self._desk.bar, batch, str(batch.frozen["formula"]), self._desk.now
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
                    BatchEvent(what=what, clarity=clarity, note=note, at=at, by=self._desk.person_id)
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
        drinks = self._book.add(
            DrinksCount(
                business_day=when[0],
                formula_id=formula,
                ingredient_id=garnish,
                drinks=count,
                ran_out=row.flag("ran_out"),
                at=when[1],
                by=self._desk.person_id,
            )
        )
        self._note("drinks", row, drinks.id)
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
                by=self._desk.person_id,
                **marks,
            )
        )
        self._note("count", row, counted.id)
        return True

    def _par(self, row: Row) -> bool | None:
        item, amount, unit = self._item(row, "ingredient"), row.number("amount", above=True), row.unit("unit")
        if not self._good(row) or item is None or amount is None:
            return None
        formulas.in_base(self._desk.bar, Quantity(amount, unit))
        if self._book.get(StockPar, item) is not None:
            return False
        self._book.add(StockPar(ingredient_id=item, amount=amount, unit=unit, told=False))
        return True


_LATEST_CLOSING = 12 * 60


def _is_word(value: Any) -> bool:
    return isinstance(value, str) and 0 < len(value) <= 64


_NUMBERS = (
    "loss_percent",
    "spray_ml_low",
    "spray_ml_high",
    "temperature_c",
    "price_rise_percent",
    "tax_percent",
)


def _settings(given: dict[str, Any]) -> BarSettings:
    """Return settings from a file. Raises BadValueError where one is not of its kind."""
    defaults = BarSettings()
    for name, value in given.items():
        usual = getattr(defaults, name, None)
        expected = list if isinstance(usual, tuple) else type(usual)
        if usual is not None and type(value) is not expected:
            raise BadValueError("settings", name)
    try:
        settings = BarSettings.from_json(given)
        for name in _NUMBERS:
            Fraction(getattr(settings, name))
    except (TypeError, ValueError, ZeroDivisionError):
        raise BadValueError("settings", "") from None
    return settings


def _details(given: Any) -> dict[str, Any]:
    """Return what else is noted of an ingredient, as far as it is plain."""
    if not isinstance(given, dict):
        return {}
    return {
        str(name)[:40]: value[:200] if isinstance(value, str) else value
        for name, value in list(given.items())[:20]
        if isinstance(value, str | bool | int)
    }
