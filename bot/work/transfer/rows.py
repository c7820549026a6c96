"""The rows of an exported document: one model per kind, for writing and for reading.

A field has the name of its column; an alias gives a different name in the document.
"""

from __future__ import annotations

from typing import Annotated, Any, Self

from pydantic import (
    Field,
    FieldSerializationInfo,
    PlainSerializer,
    StringConstraints,
    field_serializer,
    field_validator,
    model_validator,
)

from bot.trade.formulas.kinds import IngredientKind, Preparation
from bot.trade.formulas.measures import Dimension
from bot.trade.safety.jurisdiction import Jurisdiction
from bot.work.batches.batches import BatchState, Clarity
from bot.work.context import BarSettings, RangeText
from bot.work.formulas.formulas import MOST_LINES
from bot.work.transfer import fields as of
from bot.work.transfer.fields import WHOEVER, Logged, Referenced, Row, choice, text, text_or_none, wrong
from bot.work.transfer.service_rows import BottlingRow, EventRow, MenuRow, PeeledRow, ReminderRow, TrialRow
from storage import tables

# The last delivery, batch and waste before a count.
_AFTER = {"after_delivery": "delivery", "after_batch": "batch", "after_waste": "waste"}
_Word = Annotated[str, StringConstraints(min_length=1, max_length=64)]


# -- the book ------------------------------------------------------------------------------


class IngredientRow(Row):
    """An ingredient."""

    TABLE = tables.Ingredient

    name: of.Name
    kind: Annotated[str, choice(*IngredientKind)] | None = None
    strength_percent: of.Percent | None = None
    density_g_per_ml: of.Positive | None = None
    density_source: Annotated[str | None, text_or_none(200)] = None
    grams_each: of.Positive | None = None
    food_grade: Annotated[str, choice("confirmed", "not confirmed")] | None = None
    details: of.Details = Field(default_factory=dict)
    archived_at: of.Archived = Field(None, alias="archived")
    other_names: list[of.Name] = Field(default_factory=list, max_length=100)


class FormulaLineRow(Row):
    """One ingredient of a formula; a table of formulas also has its strength."""

    TABLE = tables.FormulaLine

    ingredient_id: of.Item = Field(alias="ingredient")
    amount: of.Positive
    unit: of.Unit
    strength_percent: of.Percent | None = Field(None, exclude=True)


class VersionRow(Row):
    """One version of a formula."""

    TABLE = tables.FormulaVersion

    number: of.Whole
    rest_hours: of.Number | None = None
    discard_days: of.Whole | None = None
    sprays_low: of.Positive | None = None
    sprays_high: of.Positive | None = None
    spray_ml_low: of.Positive | None = None
    spray_ml_high: of.Positive | None = None
    garnish_id: of.Fruit | None = Field(None, alias="replaces")
    note: Annotated[str, text(2000)] = ""
    made_at: of.Moment | None = None
    lines: list[FormulaLineRow] = Field(min_length=1, max_length=MOST_LINES)

    @model_validator(mode="after")
    def _each_ingredient_once(self) -> Self:
        seen: set[int] = set()
        for at, line in enumerate(self.lines):
            if line.ingredient_id in seen:
                raise wrong("twice", "lines", at, "ingredient")
            seen.add(line.ingredient_id)
        return self


class FormulaRow(Referenced):
    """A formula with all its versions."""

    KIND = "formula"
    TABLE = tables.Formula

    name: of.Name
    preparation: Annotated[str, choice(*Preparation)]
    archived_at: of.Archived = Field(None, alias="archived")
    versions: list[VersionRow] = Field(min_length=1)

    @model_validator(mode="after")
    def _in_their_order(self) -> Self:
        numbers = [one.number for one in self.versions]
        if sorted(set(numbers)) != numbers:
            raise wrong("twice", "versions")
        return self


class RunRow(Row):
    """A weighing of a sprayer."""

    TABLE = tables.SprayerRun

    formula_id: of.FormulaNamed | None = Field(None, alias="formula")
    before_g: of.Number
    after_g: of.Number
    step_g: of.Positive
    sprays: Annotated[of.Whole, Field(ge=1)]
    density_g_per_ml: of.Positive
    priming: bool = False
    at: of.Moment


class SprayerRow(Row):
    """A sprayer with its weighings."""

    TABLE = tables.Sprayer

    name: of.Name
    archived_at: of.Archived = Field(None, alias="archived")
    formulas: of.KnownFormulas = Field(default_factory=list)
    runs: list[RunRow] = Field(default_factory=list)


class PriceRow(Referenced):
    """A price."""

    KIND = "price"
    TABLE = tables.Price

    ingredient_id: of.Item = Field(alias="ingredient")
    pack_amount: of.Positive
    pack_unit: of.Unit
    price_minor: of.Money = Field(alias="price")
    garnishes_low: of.Positive | None = None
    garnishes_high: of.Positive | None = None
    at: of.Moment | None = None
    by: of.Person = WHOEVER


class ParRow(Row):
    """The minimum stock of an ingredient."""

    TABLE = tables.StockPar

    ingredient_id: of.Item = Field(alias="ingredient")
    amount: of.Positive
    unit: of.Unit


class WordingRow(Row):
    """A wording that the bar has confirmed."""

    TABLE = tables.Wording

    language: Annotated[str, text(8)]
    shape: Annotated[str, text(200)]
    wish: Annotated[str, text(40)]


# -- the log -------------------------------------------------------------------------------


class DeliveryRow(Logged):
    """A delivery."""

    KIND = "delivery"
    TABLE = tables.Delivery

    ingredient_id: of.Item = Field(alias="ingredient")
    dimension: Annotated[str, choice(*Dimension)]
    amount_milli: of.PositiveThousandths = Field(alias="amount")
    cost_minor: of.Money | None = Field(None, alias="cost")


class WasteRow(Logged):
    """Something thrown out, by pieces, mass or volume."""

    KIND = "waste"
    TABLE = tables.Waste

    ingredient_id: of.Fruit = Field(alias="fruit")
    count_milli: of.PositiveThousandths | None = Field(None, alias="pieces")
    grams_milli: of.PositiveThousandths | None = Field(None, alias="grams")
    volume_milli: of.PositiveThousandths | None = Field(None, alias="ml")
    reason: Annotated[str, text(40)] = ""
    cost_minor: of.Money | None = Field(None, alias="cost")
    late: bool = False

    @model_validator(mode="after")
    def _by_one_measure(self) -> Self:
        said = [self.count_milli, self.grams_milli, self.volume_milli]
        if said == [None, None, None]:
            raise wrong("missing", "pieces")
        if self.count_milli is not None:
            self.grams_milli = None
        if self.count_milli is not None or self.grams_milli is not None:
            self.volume_milli = None
        return self


class JuicingRow(Logged):
    """Fruit juiced and the juice."""

    KIND = "juicing"
    TABLE = tables.Juicing

    ingredient_id: of.Fruit = Field(alias="fruit")
    count_milli: of.PositiveThousandths = Field(alias="pieces")
    volume_ml: of.Positive


class BatchLineRow(Row):
    """One ingredient of a batch."""

    TABLE = tables.BatchLine

    ingredient_id: of.Item = Field(alias="ingredient")
    amount: of.Number
    unit: Annotated[str, choice("ml", "g", "each")]
    lot: Annotated[str | None, text_or_none(60)] = None
    best_before: of.Day | None = None


_CHANGES = ("added", "filtered")


class BatchEventRow(Row):
    """An event of a batch."""

    TABLE = tables.BatchEvent

    what: Annotated[
        str,
        choice(
            *("made", "arrived", "check", "strained", *_CHANGES, "opened", "emptied", "moved"),
            *("used up", "discarded"),
        ),
    ]
    clarity: Annotated[str, choice(*Clarity)] | None = None
    note: Annotated[str, text(1000)] = ""
    temperature_c: of.Number | None = None
    mix_before: of.MixBefore = None
    at: of.Moment
    by: of.Person = WHOEVER


class BatchRow(Referenced):
    """A batch with its lines and events; `trial` and `variant` of a bottle of a trial."""

    KIND = "batch"
    TABLE = tables.Batch

    number: of.Whole
    formula_id: of.FormulaNamed = Field(alias="formula")
    version: of.Whole
    state: Annotated[str, choice(*(state for state in BatchState if state is not BatchState.UNDONE))]
    total_ml: of.Number
    made_at: of.Moment
    made_by: of.Person = Field(default=None, alias="by", validate_default=True)
    rest_until: of.Moment
    discard_on: of.Day
    opened_at: of.Moment | None = None
    ended_at: of.Moment | None = None
    lost_ml: of.Number | None = None
    lost_reason: Annotated[str | None, text_or_none(80)] = None
    clarity: Annotated[str, choice(*Clarity)] | None = None
    came_from: Annotated[str | None, text_or_none(80)] = None
    number_there: of.Whole | None = None
    lines: list[BatchLineRow] = Field(default_factory=list)
    events: list[BatchEventRow] = Field(default_factory=list)
    bottles: list[BottlingRow] = Field(default_factory=list)
    frozen: of.Frozen = Field(default_factory=dict)
    trial: Annotated[str | None, text_or_none(80)] = None
    variant: of.Whole = 0


class DrinksRow(Logged):
    """A count of drinks."""

    KIND = "drinks"
    TABLE = tables.DrinksCount

    formula_id: of.FormulaNamed | None = Field(None, alias="formula")
    ingredient_id: of.Fruit | None = Field(None, alias="garnish")
    menu_id: of.DrinkNamed | None = Field(None, alias="drink")
    drinks: of.Whole
    ran_out: bool = False


class CountRow(Logged):
    """A count of stock, with the last delivery, batch and waste before it."""

    KIND = "count"
    TABLE = tables.StockCount

    ingredient_id: of.Item = Field(alias="ingredient")
    dimension: Annotated[str, choice(*Dimension)]
    amount_milli: of.Thousandths = Field(alias="amount")
    after_delivery: int = 0
    after_batch: int = 0
    after_waste: int = 0

    @field_validator(*_AFTER, mode="plain")
    @classmethod
    def _by_ref(cls, value: Any, info: of.Reading) -> int:
        number: int | None = info.context.by_ref(_AFTER[str(info.field_name)], str(value))
        return number or 0

    @field_serializer(*_AFTER)
    def _last(self, value: int, info: FieldSerializationInfo[Any]) -> str | None:
        ref: str | None = info.context.last(_AFTER[info.field_name], value)
        return ref


class BarRow(Row):
    """The bar itself and its settings."""

    TABLE = tables.Bar

    origin: str = ""
    name: str = ""
    currency: _Word = ""
    units: _Word = ""
    zone: _Word = ""
    closing_minute: Annotated[int, Field(ge=0, le=12 * 60)] = 0
    jurisdiction: Annotated[str, choice(*Jurisdiction)] = ""
    settings: Annotated[BarSettings, PlainSerializer(lambda value: value)] = Field(
        default_factory=BarSettings
    )
    spraying_since: dict[str, str] = Field(default_factory=dict)
    sprayer: str | None = None
    formula_costs: dict[str, dict[str, RangeText]] = Field(default_factory=dict)


# The lists of the document by name, in the order of writing and reading.
SECTIONS: dict[str, type[Row]] = {
    "ingredients": IngredientRow,
    "formulas": FormulaRow,
    "menu": MenuRow,
    "sprayers": SprayerRow,
    "prices": PriceRow,
    "deliveries": DeliveryRow,
    "waste": WasteRow,
    "juicings": JuicingRow,
    "trials": TrialRow,
    "batches": BatchRow,
    "drinks": DrinksRow,
    "counts": CountRow,
    "peeled": PeeledRow,
    "pars": ParRow,
    "wordings": WordingRow,
    "reminders": ReminderRow,
    "events": EventRow,
}
