"""The context of every use case: the person, the bar and the time."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import asdict, dataclass, field, replace
from datetime import UTC, date, datetime, timedelta
from decimal import Decimal
from enum import StrEnum
from fractions import Fraction
from typing import Annotated, Any, Protocol

from bot.trade.days import MINUTES_A_DAY, business_day, business_day_span
from bot.trade.formulas.measures import HouseMeasures, UnitSense
from bot.trade.safety.jurisdiction import Jurisdiction
from bot.work.errors import BadValueError, TakesTimeError
from storage.tables import Bar, Entry
from storage.types import JsonObject, exact
from storage.unit import Book

Watch = Callable[[int, int], None]  # progress callback: steps done, steps in all


def unwatched(done: int, of: int) -> None:
    """Ignore progress."""


class Clock(Protocol):
    """A source of time; tests set it."""

    def now(self) -> datetime:
        """Return the current instant, aware, in UTC."""
        ...


class SystemClock:
    """The system clock."""

    def now(self) -> datetime:
        """Return the current instant in UTC."""
        return datetime.now(UTC)


class Role(StrEnum):
    """A person's role in a bar. The values are stored."""

    OWNER = "owner"
    MANAGER = "manager"
    MEMBER = "member"

    @property
    def manages(self) -> bool:
        """Whether the role may change prices, formulas and settings."""
        return self is not Role.MEMBER


def _number_text(text: str) -> str:
    exact(text)
    return text


def _range_text(text: str) -> str:
    numbers = [exact(part) for part in text.split()]
    if len(numbers) > 2 or numbers != sorted(numbers) or any(number < 0 for number in numbers):
        raise ValueError(text)
    return text


class _Checked:
    """Makes pydantic check a text. The hook instead of AfterValidator, so that only imports load pydantic."""

    def __init__(self, check: Callable[[str], str]) -> None:
        self._check = check

    def __get_pydantic_core_schema__(self, source: Any, handler: Callable[[Any], Any]) -> Any:
        from pydantic_core import core_schema  # noqa: PLC0415 - only pydantic calls this

        return core_schema.no_info_after_validator_function(self._check, handler(source))


# Types of settings stored as text, checked when they come from a file: a number, a number from zero up, or a
# range or nothing.
NumberText = Annotated[str, _Checked(_number_text)]
RangeText = Annotated[str, _Checked(_range_text)]

DEFAULT_REASONS = (
    "mouldy",
    "dried out",
    "peeled and not used",
    "over-prepped",
    "damaged on delivery",
    "other",
)
EVERY_DAY = 0b1111111
BEFORE_CLOSING = 30  # minutes: time to check the bins. Common practice, no source.
# The columns that a stock count keeps when an edit replaces it: the rows that existed before it.
KEPT_MARKS = frozenset({"after_delivery", "after_batch", "after_waste"})


@dataclass(frozen=True)
class BarSettings:
    """The settings of a bar, which need no new table. Every default is common practice.

    Minutes count from local midnight of the business day and exceed 1440 after the next midnight;
    `service_days` has bit 0 for Monday; `house_ml` maps house measures to mL as text; sprays in mL.
    """

    locale: str = ""
    oz_liquid: str = ""  # 'us', 'imperial', or '' to ask
    household: str = ""  # 'us', 'imperial', 'metric' or ''
    service_days: int = EVERY_DAY
    quiet_from: int = 5 * 60
    quiet_to: int = 11 * 60
    close_prompt: bool = True
    close_prompt_at: int | None = None  # None for half an hour before the closing hour
    morning_at: int | None = None  # the message of what is due; None for none
    discard_prompt_at: int = 16 * 60
    discard_warn_days: int = 3
    loss_percent: NumberText = "0"
    spray_ml_low: NumberText = "1/15"
    spray_ml_high: NumberText = "1/10"
    temperature_c: NumberText = "20"  # of the room for measuring and pouring
    coldest_c: NumberText = "15"  # where bottles stand
    sprayer: int = 0  # the number of the default sprayer for formulas; 0 for none
    sprays_low: int = 2
    sprays_high: int = 3
    reasons: tuple[str, ...] = DEFAULT_REASONS
    labels: str = ""  # the name of the label paper; '' for the usual one in the bar's country
    house_ml: dict[str, str] = field(default_factory=dict)
    tools: tuple[tuple[str, str, str], ...] = ()  # name, step mL, up to mL; empty for the units' defaults
    late_from: int = 22 * 60  # entries from here to closing belong to the late shift
    peeled_hours: str = ""  # until peeled fruit counts as lost; '' for common practice
    price_rise_percent: NumberText = "10"  # the rise since the last batch at which costing mentions it
    missing_times: NumberText = "3"  # the cost of a missing fruit, relative to its price
    tax_percent: NumberText = "0"
    tax: str = ""  # 'added' to prices as entered, 'taken out' of them, or '' to leave them unchanged
    dark_pictures: bool = False
    week_picture: bool = True  # sent with every waste report, not only on request
    # Inputs of fresh and spray besides ingredients: text of one number, or of two for a range ('10 12').
    wage: RangeText = ""  # per hour
    batch_minutes: RangeText = ""
    garnish_minutes: RangeText = ""  # extra time of cutting one
    bottle_price: RangeText = ""
    label_price: RangeText = ""
    outlay: RangeText = ""  # one-off cost: sprayers, scale, funnel
    drinks_a_week: RangeText = ""  # with a sprayed garnish, if batches do not show it
    open_weeks: RangeText = "52"
    # A formula's number: its own minutes and prices, if they differ from the bar's.
    formula_costs: dict[str, dict[str, str]] = field(default_factory=dict)
    spraying_since: dict[str, str] = field(default_factory=dict)  # fruit's number: day, or '' for never
    more: JsonObject = field(default_factory=dict)

    @classmethod
    def from_json(cls, data: JsonObject) -> BarSettings:
        """Read stored settings; missing ones take their default."""
        known = {name: data[name] for name in cls.__dataclass_fields__ if name in data}
        for name in ("reasons", "tools"):
            if name in known:
                known[name] = tuple(tuple(one) if isinstance(one, list) else one for one in known[name])
        return cls(**known)

    def to_json(self) -> JsonObject:
        """Return only what differs from the defaults, so that better defaults reach old bars."""
        defaults = asdict(BarSettings())
        return {name: value for name, value in asdict(self).items() if value != defaults[name]}

    def changed(self, **values: Any) -> BarSettings:
        """Return the settings with some values changed."""
        return replace(self, **values)


@dataclass(frozen=True)
class BarView:
    """One bar for the use cases: plain values that outlive the transaction."""

    id: int
    name: str
    language: str
    currency: str
    units: str
    zone: str
    closing_minute: int
    jurisdiction: str
    settings: BarSettings
    team_room_id: int | None
    revision: int

    @classmethod
    def of(cls, row: Bar) -> BarView:
        """Copy a row's values."""
        return cls(
            row.id,
            row.name,
            row.language,
            row.currency,
            row.units,
            row.zone,
            row.closing_minute,
            row.jurisdiction,
            BarSettings.from_json(row.settings),
            row.team_room_id,
            row.revision,
        )

    @property
    def house(self) -> HouseMeasures:
        """The bar's own house measures, such as dash and barspoon."""
        return HouseMeasures({name: Decimal(ml) for name, ml in self.settings.house_ml.items()})

    @property
    def paper(self) -> str:
        """The usual paper of its country, "Letter" or "A4" (common practice)."""
        return "Letter" if self.jurisdiction == Jurisdiction.US else "A4"

    def sense(self, liquid: bool | None) -> UnitSense:
        """Return this bar's meaning of 'oz', 'cup' and other words for several units."""
        oz: Any = self.settings.oz_liquid or None
        household: Any = self.settings.household or None
        return UnitSense(oz, household, liquid)

    def day_of(self, at: datetime) -> date:
        """Return the business day of an instant."""
        return business_day(at, self.zone, self.closing_minute)

    @property
    def close_prompt_at(self) -> int:
        """The minute of the business day for the waste prompt."""
        if self.settings.close_prompt_at is not None:
            return self.settings.close_prompt_at
        closing = self.closing_minute if self.closing_minute < MINUTES_A_DAY // 2 else 0
        return MINUTES_A_DAY + closing - BEFORE_CLOSING

    @property
    def coldest_c(self) -> float:
        """The coldest temperature at which bottles stand, °C: never above that of the room."""
        return min(float(Fraction(self.settings.coldest_c)), self.temperature_c)

    @property
    def temperature_c(self) -> float:
        """The temperature for measuring in this bar, °C."""
        return float(Fraction(self.settings.temperature_c))

    @property
    def spray_ml(self) -> tuple[Fraction, Fraction]:
        """The output of one spray in this bar until a sprayer is weighed: mL, low and high."""
        return Fraction(self.settings.spray_ml_low), Fraction(self.settings.spray_ml_high)


@dataclass
class Replaced:
    """What the edit of a message has undone. The next log lines replace it."""

    kept: frozenset[str] = frozenset()  # the marks of unchanged lines, whose entries stay
    rows: list[Any] = field(default_factory=list)  # the rows that undo the rows of the other lines

    def pop(self, table: type[Any], ingredient_id: int | None = None) -> Any | None:
        """Remove and return an undoing row of this table, preferably of this ingredient."""
        found = [row for row in self.rows if isinstance(row, table)]
        same = [row for row in found if getattr(row, "ingredient_id", None) == ingredient_id]
        if not found:
            return None
        row = (same or found)[0]
        self.rows.remove(row)
        return row


@dataclass
class Context:
    """One person in one bar, within one transaction.

    `source` names the message, so that the same one cannot log twice.
    """

    book: Book
    bar: BarView
    person_id: int
    name: str
    role: Role
    room_id: int
    now: datetime
    source: str
    entry: int | None = None  # the number of the last log line, for undoing it
    replaced: Replaced | None = None  # set while an edited message is logged again
    edited_at: datetime | None = None  # the time of the edit; `now` is then the time of the message
    hurried: bool = False  # the caller cannot wait
    watch: Watch = unwatched  # progress callback for long work
    said: str = ""  # the mark of the current line of the message
    lines: int = 0  # lines of fruit logged by the message so far

    def take_time(self) -> None:
        """Announce long work. Raises TakesTimeError if the caller cannot wait."""
        if self.hurried:
            raise TakesTimeError

    @property
    def today(self) -> date:
        """The current business day."""
        return self.bar.day_of(self.now)

    def moment(self, day: date | None) -> datetime:
        """Return the instant of an entry for a day: now, or the last second of an earlier day.

        Raises BadValueError for a future day.
        """
        if day is None or day == self.today:
            return self.now
        if day > self.today:
            raise BadValueError("day", day.isoformat())
        _first, after = business_day_span(day, self.bar.zone, self.bar.closing_minute)
        return after - timedelta(seconds=1)

    def next_line(self) -> int:
        """Return the number of the message's next line; the two together are unique."""
        self.lines += 1
        return self.lines

    def add(self, row: Any) -> Any:
        """Add a logged row. During an edit it replaces an undone row of the same table."""
        self.place(row)
        return self.book.add(row)

    def place(self, row: Any) -> None:
        """During an edit, give a new row the position of the row that it replaces."""
        if self.replaced is None:
            return
        before = self.replaced.pop(type(row), getattr(row, "ingredient_id", None))
        if before is not None:
            row.corrects, row.first = before.id, before.first
            for name in KEPT_MARKS & set(type(row).__table__.columns.keys()):
                setattr(row, name, getattr(before, name))

    def log(self, what: str, follows: Entry | None = None, **details: Any) -> int:
        """Add a line to the bar's log and return its number, for undoing it.

        `follows` is the last entry of the chain that the new entry continues.
        """
        if self.said and follows is None:
            details = {**details, "said": self.said}
        row = {
            "at": self.edited_at or self.now,
            "by": self.person_id,
            "what": what,
            "details": details,
            "source": self.source[:80],
            "chain": None if follows is None else follows.chain or follows.id,
            "follows": None if follows is None else follows.id,
        }
        self.entry = self.book.write(Entry, [row])[0]
        return self.entry
