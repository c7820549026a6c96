"""Who asks, for which bar, when: what every use case is handed."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import asdict, dataclass, field, replace
from datetime import UTC, datetime
from decimal import Decimal
from enum import StrEnum
from fractions import Fraction
from typing import Annotated, Any, Protocol

from pydantic import AfterValidator

from bot.trade.formulas.measures import HouseMeasures, UnitSense
from bot.work.errors import TakesTimeError
from storage.tables import Bar, Entry
from storage.types import exact
from storage.unit import Book

Watch = Callable[[int, int], None]  # told how many of how many are through


def unwatched(done: int, of: int) -> None:
    """Watch nothing."""


class Clock(Protocol):
    """Where the time comes from; tests turn its hands."""

    def now(self) -> datetime:
        """Return the present instant, aware, in UTC."""
        ...


class SystemClock:
    """The machine's own clock."""

    def now(self) -> datetime:
        """Return the present instant in UTC."""
        return datetime.now(UTC)


class Role(StrEnum):
    """What a person may do in a bar. The values are stored."""

    OWNER = "owner"
    MANAGER = "manager"
    MEMBER = "member"

    @property
    def manages(self) -> bool:
        """Whether prices, formulas and settings may be changed."""
        return self is not Role.MEMBER


def _number_text(text: str) -> str:
    exact(text)
    return text


def _range_text(text: str) -> str:
    numbers = [exact(part) for part in text.split()]
    if len(numbers) > 2 or numbers != sorted(numbers) or any(number < 0 for number in numbers):
        raise ValueError(text)
    return text


# What settings keep as text, checked where they come from a file: a number, and one from nothing up, or
# two, or none.
NumberText = Annotated[str, AfterValidator(_number_text)]
RangeText = Annotated[str, AfterValidator(_range_text)]

DEFAULT_REASONS = (
    "mouldy",
    "dried out",
    "peeled and not used",
    "over-prepped",
    "damaged on delivery",
    "other",
)
EVERY_DAY = 0b1111111


@dataclass(frozen=True)
class BarSettings:
    """What a bar may change without a new table. Every default is common practice.

    Minutes count from local midnight of the business day and go past 1440 after the next;
    `service_days` has bit 0 for Monday; `house_ml` maps house measures to mL as text; sprays in mL.
    """

    locale: str = ""
    oz_liquid: str = ""  # 'us', 'imperial', or '' where it must be asked
    household: str = ""  # 'us', 'imperial', 'metric' or ''
    service_days: int = EVERY_DAY
    quiet_from: int = 5 * 60
    quiet_to: int = 11 * 60
    close_prompt: bool = True
    close_prompt_at: int = 24 * 60 + 30
    discard_prompt_at: int = 16 * 60
    discard_warn_days: int = 3
    loss_percent: NumberText = "0"
    spray_ml_low: NumberText = "1/15"
    spray_ml_high: NumberText = "1/10"
    temperature_c: NumberText = "20"  # of the room where things are measured and poured
    sprayer: int = 0  # the number of the sprayer used for all formulas that name none; 0 for none
    sprays_low: int = 2
    sprays_high: int = 3
    reasons: tuple[str, ...] = DEFAULT_REASONS
    labels: str = ""  # the name of the label paper; '' for the usual one where the bar is
    house_ml: dict[str, str] = field(default_factory=dict)
    tools: tuple[tuple[str, str, str], ...] = ()  # name, step mL, up to mL; empty for the units' defaults
    late_from: int = 22 * 60  # what is logged from here to closing is the late shift's
    peeled_hours: str = ""  # until peeled fruit counts as lost; '' for common practice
    price_rise_percent: NumberText = "10"  # from which a rise since the last batch is said when costing
    missing_times: NumberText = "3"  # what a fruit that is missing costs, as against its price
    tax_percent: NumberText = "0"
    tax: str = ""  # 'added' to prices as typed, 'taken out' of them, or '' to leave them as they are
    dark_pictures: bool = False
    week_picture: bool = True  # sent with every report of waste, not only when asked for
    # What fresh and spray take beside ingredients: text of one number, or of two for a range ('10 12').
    wage: RangeText = ""  # an hour
    batch_minutes: RangeText = ""
    garnish_minutes: RangeText = ""  # how much longer cutting one takes than spraying
    bottle_price: RangeText = ""
    label_price: RangeText = ""
    outlay: RangeText = ""  # spent once: sprayers, scale, funnel
    drinks_a_week: RangeText = ""  # with a sprayed garnish, where batches do not tell
    open_weeks: RangeText = "52"
    # A formula's number: its own minutes and prices of these, where they are not the bar's.
    formula_costs: dict[str, dict[str, str]] = field(default_factory=dict)
    spraying_since: dict[str, str] = field(default_factory=dict)  # fruit's number: day, or '' for never
    more: dict[str, Any] = field(default_factory=dict)

    @classmethod
    def from_json(cls, data: dict[str, Any]) -> BarSettings:
        """Read what is stored; what is missing takes its default."""
        known = {name: data[name] for name in cls.__dataclass_fields__ if name in data}
        for name in ("reasons", "tools"):
            if name in known:
                known[name] = tuple(tuple(one) if isinstance(one, list) else one for one in known[name])
        return cls(**known)

    def to_json(self) -> dict[str, Any]:
        """Return only what differs from the defaults, so that better defaults reach old bars."""
        defaults = asdict(BarSettings())
        return {name: value for name, value in asdict(self).items() if value != defaults[name]}

    def changed(self, **values: Any) -> BarSettings:
        """Return the settings with some values changed."""
        return replace(self, **values)


@dataclass(frozen=True)
class BarView:
    """One bar as the use cases see it: plain values that outlive the transaction."""

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
        """The bar's own dash, barspoon and the like."""
        return HouseMeasures({name: Decimal(ml) for name, ml in self.settings.house_ml.items()})

    def sense(self, liquid: bool | None) -> UnitSense:
        """Return what this bar means by 'oz', 'cup' and other words that name several units."""
        oz: Any = self.settings.oz_liquid or None
        household: Any = self.settings.household or None
        return UnitSense(oz, household, liquid)

    @property
    def temperature_c(self) -> float:
        """The temperature at which this bar measures, °C."""
        return float(Fraction(self.settings.temperature_c))

    @property
    def spray_ml(self) -> tuple[Fraction, Fraction]:
        """What one spray gives in this bar until a sprayer is weighed: mL, low and high."""
        return Fraction(self.settings.spray_ml_low), Fraction(self.settings.spray_ml_high)


@dataclass
class Context:
    """One person at work in one bar, within one transaction.

    `source` names the message that asked, so that the same one cannot log twice.
    """

    book: Book
    bar: BarView
    person_id: int
    name: str
    role: Role
    room_id: int
    now: datetime
    source: str
    entry: int | None = None  # the last line written into the log, by which it can be undone
    corrects: int | None = None  # the entry in whose place what is logged now stands
    hurried: bool = False  # others wait meanwhile
    watch: Watch = unwatched  # told by long work how far it is
    lines: int = 0  # how many lines of fruit the message has logged so far

    def take_time(self) -> None:
        """Say that what comes now takes long. Raises TakesTimeError where others wait meanwhile."""
        if self.hurried:
            raise TakesTimeError

    def next_line(self) -> int:
        """Return the number of the message's next line: no other message can log under the two together."""
        self.lines += 1
        return self.lines

    def correct(self, row: Any, **changed: Any) -> Any:
        """Write a row that takes another back or stands in its place, the same but for what is `changed`.

        Nothing logged is erased: the new row points to the one before.
        """
        changed |= {"at": self.now, "corrects": row.id}
        if hasattr(row, "by"):
            changed["by"] = self.person_id
        return self.book.add_like(row, changed)

    def log(self, what: str, undo_of: int | None = None, **details: Any) -> int:
        """Write a line into the bar's log and return its number, by which it can be undone."""
        row = {
            "at": self.now,
            "by": self.person_id,
            "what": what,
            "details": details,
            "undo_of": undo_of,
            "source": self.source[:80],
            "corrects": self.corrects if undo_of is None else None,
        }
        self.entry = self.book.write(Entry, [row])[0]
        return self.entry
