"""Field types of the rows of an exported document, for writing, reading and checking.

A type's value is the value of the table's column. Names and money need the bar: writing passes `Names` and
reading passes an `Intake` as pydantic's context. The type of an error is one of the words of `Problem.what`.
"""

from __future__ import annotations

import base64
import json
from collections.abc import Callable
from datetime import UTC, date, datetime, time
from fractions import Fraction
from typing import Annotated, Any, ClassVar, Literal, Self

from pydantic import (
    AfterValidator,
    BaseModel,
    ConfigDict,
    Field,
    PlainSerializer,
    PlainValidator,
    SerializationInfo,
    ValidationInfo,
    model_validator,
)
from pydantic_core import PydanticCustomError

from bot.trade.days import instant_of
from bot.trade.formulas.ingredient_names.reading import plain_name
from bot.trade.formulas.kinds import IngredientKind
from bot.trade.formulas.measures import dimension
from bot.trade.formulas.unit_words import UnknownUnitError, look_up
from bot.trade.money.money import from_minor, to_minor
from bot.trade.numbers.uncertainty import to_decimal
from bot.work.standing import LEAST
from storage import tables
from storage.types import exact, exact_text

_LARGEST = 10**12
_LATE_EVENING = 22 * 60  # assumed time of waste with a known day only

What = Literal["missing", "number", "day", "moment", "unit", "choice", "unknown", "long", "twice"]
Reading = ValidationInfo[Any]
Writing = SerializationInfo[Any]


def wrong(what: What, *inside: str | int) -> PydanticCustomError:
    """Return the error for a wrong value; `inside` is the path from the validated value to the wrong one."""
    return PydanticCustomError(what, what, {"inside": inside})


def _reads(what: What, read: Callable[[Any], Any]) -> PlainValidator:
    """Return a field validator whose errors are all of one kind."""

    def check(value: Any) -> Any:
        try:
            return read(value)
        except (ValueError, OverflowError, LookupError):
            raise wrong(what) from None

    return PlainValidator(check)


# -- numbers, days and instants -----------------------------------------------------------------


def _number(value: Any, most: int = _LARGEST) -> Fraction:
    """Read an exact number from zero up."""
    found = exact(str(value).strip())
    if not 0 <= found <= most:
        raise ValueError(value)
    return found


def _above(value: Any, least: Fraction = Fraction(0)) -> Fraction:
    found = _number(value)
    if not found or found < least:
        raise ValueError(value)
    return found


def _day(value: Any) -> date:
    return date.fromisoformat(str(value))


def moment(value: datetime) -> str:
    """Write an instant in the document's format."""
    return value.isoformat().replace("+00:00", "Z")


def _moment(value: Any) -> datetime:
    """Read an instant such as 2026-11-25T18:00:00Z; a day alone is its noon in UTC."""
    text = str(value)
    if len(text) == len("2026-11-25"):
        return datetime.combine(_day(text), time(12), UTC)
    found = datetime.fromisoformat(text)
    return found.replace(tzinfo=UTC) if found.tzinfo is None else found.astimezone(UTC)


def _from_thousandths(value: int) -> str:
    return exact_text(Fraction(value, 1000))


def _minor(value: Any, info: Reading) -> int:
    return to_minor(to_decimal(value), info.context.bar.currency)


def _from_minor(value: int, info: Writing) -> str:
    return str(from_minor(value, info.context.bar.currency))


_exactly, _milli = PlainSerializer(exact_text), PlainSerializer(_from_thousandths)
Number = Annotated[Fraction, _reads("number", _number), _exactly]
Positive = Annotated[Fraction, _reads("number", _above), _exactly]
Percent = Annotated[
    Fraction, _reads("number", lambda value: _number(value, 100)), PlainSerializer(exact_text)
]
Whole = Annotated[int, Field(ge=0, le=_LARGEST)]
Thousandths = Annotated[int, _reads("number", lambda value: round(_number(value) * 1000)), _milli]
PositiveThousandths = Annotated[
    int, _reads("number", lambda value: round(_above(value, LEAST) * 1000)), _milli
]
Money = Annotated[int, _reads("number", _number), AfterValidator(_minor), PlainSerializer(_from_minor)]
Day = Annotated[
    date, _reads("day", lambda value: date.fromisoformat(str(value))), PlainSerializer(date.isoformat)
]
Moment = Annotated[datetime, _reads("moment", _moment), PlainSerializer(moment)]


# -- words --------------------------------------------------------------------------------------


def _clean(value: Any, most: int) -> str:
    """Return a text without control characters."""
    clean = "".join(sign for sign in str(value) if sign.isprintable() or sign == "\n").strip()
    if len(clean) > most:
        raise wrong("long")
    return clean


def text(most: int) -> PlainValidator:
    """Return a validator for a text of limited length; it may be empty."""
    return PlainValidator(lambda value: _clean(value, most))


def text_or_none(most: int) -> PlainValidator:
    """Return a validator for a text that is stored as null if empty."""
    return PlainValidator(lambda value: _clean(value, most) or None)


def choice(*words: str) -> PlainValidator:
    """Return a validator for one of several words."""
    known = {word.casefold(): str(word) for word in words}
    return _reads("choice", lambda value: known[str(value).strip().casefold()])


def _name(value: Any) -> str:
    found = _clean(value, 80)
    if not plain_name(found):
        raise wrong("unknown" if found else "missing")
    return found


def _unit(value: Any) -> str:
    """Return a canonical unit, also from a plain word with only one meaning."""
    word = str(value).strip()
    try:
        dimension(word)
    except UnknownUnitError:
        found = look_up(word)
        if not isinstance(found, str):
            raise ValueError(word) from None
        return found
    return word


def _archived(value: Any, info: Reading) -> datetime | None:
    """Return the time of archiving: now, because the document only says whether."""
    now: datetime = info.context.now
    return now if str(value).casefold() in {"true", "yes"} else None


def _details(value: Any) -> dict[str, Any]:
    """Keep the plain values of an ingredient's details."""
    return {
        str(name)[:40]: one[:200] if isinstance(one, str) else one
        for name, one in (list(value.items())[:20] if isinstance(value, dict) else ())
        if isinstance(one, str | bool | int)
    }


Name = Annotated[str, PlainValidator(_name)]
Unit = Annotated[str, _reads("unit", _unit)]
Details = Annotated[dict[str, Any], PlainValidator(_details)]
Frozen = Annotated[dict[str, Any], PlainValidator(lambda value: value if isinstance(value, dict) else {})]
MixBefore = Annotated[
    list[Any] | None, PlainValidator(lambda value: value if isinstance(value, list) else None)
]
Archived = Annotated[
    datetime | None, PlainValidator(_archived), PlainSerializer(lambda value: value is not None)
]


# -- numbers in the bar, names in the document ------------------------------------------------------


def _item(value: Any, info: Reading) -> int:
    number: int = info.context.item(_name(value), None)
    return number


def _fruit(value: Any, info: Reading) -> int:
    number: int = info.context.item(_name(value), IngredientKind.FRUIT)
    return number


def _item_name(number: int, info: Writing) -> str:
    return str(info.context.ingredient_names[number])


def _formula(value: Any, info: Reading) -> int:
    number: int | None = info.context.formulas.get(plain_name(_name(value)))
    if number is None:
        raise wrong("unknown")
    return number


def _formula_name(number: int, info: Writing) -> str:
    return str(info.context.formula_names[number])


def _drink(value: Any, info: Reading) -> int:
    number: int | None = info.context.drinks.get(plain_name(_name(value)))
    if number is None:
        raise wrong("unknown")
    return number


def _drink_name(number: int, info: Writing) -> str:
    return str(info.context.drink_names[number])


def _known_formulas(value: Any, info: Reading) -> list[int]:
    """Read names of formulas, leaving out those unknown to this bar."""
    keys = [plain_name(str(name)) for name in value] if isinstance(value, list) else []
    return [info.context.formulas[key] for key in keys if key in info.context.formulas]


def _formula_names(numbers: list[int], info: Writing) -> list[str]:
    return [_formula_name(number, info) for number in numbers]


def _whoever_reads(value: Any, info: Reading) -> int:
    """Return the importing person, because the people in the file are not members of this bar."""
    number: int = info.context.person_id
    return number


def _person_name(number: int, info: Writing) -> str:
    return str(info.context.people.get(number, ""))


Item = Annotated[int, PlainValidator(_item), PlainSerializer(_item_name)]
Fruit = Annotated[int, PlainValidator(_fruit), PlainSerializer(_item_name)]
FormulaNamed = Annotated[int, PlainValidator(_formula), PlainSerializer(_formula_name)]
DrinkNamed = Annotated[int, PlainValidator(_drink), PlainSerializer(_drink_name)]
KnownFormulas = Annotated[list[int], PlainValidator(_known_formulas), PlainSerializer(_formula_names)]
Person = Annotated[int, PlainValidator(_whoever_reads), PlainSerializer(_person_name)]


# -- rows ---------------------------------------------------------------------------------------


def sealed(written: dict[str, Any], *shown: str) -> dict[str, Any]:
    """Return a written row with some fields to read, and the rest in a form not read at a glance.

    It is no encryption: an import in another program has to open it without a password.
    """
    hidden = {name: value for name, value in written.items() if name not in shown}
    content = base64.b64encode(json.dumps(hidden).encode()).decode()
    return {**{name: written[name] for name in shown}, "sealed": content}


def opened(content: Any) -> dict[str, Any]:
    """Return the fields that are sealed in a row."""
    try:
        found = json.loads(base64.b64decode(str(content), validate=True))
    except (ValueError, RecursionError):
        found = None
    if not isinstance(found, dict):
        raise wrong("unknown", "sealed")
    return found


class Row(BaseModel):
    """A row of the document, or one within another."""

    model_config = ConfigDict(defer_build=True)

    KIND: ClassVar[str] = ""  # the fields of its reference; '' for rows without one
    TABLE: ClassVar[type[tables.Base]]

    @model_validator(mode="before")
    @classmethod
    def _without_nothing(cls, data: Any) -> Any:
        """Open what is sealed, and drop empty fields, which count as missing."""
        if not isinstance(data, dict):
            return data
        if "sealed" in data:
            data = {**data, **opened(data["sealed"])}
        return {name: value for name, value in data.items() if value is not None and value != ""}

    @classmethod
    def of(cls, row: Any, names: Any, **more: Any) -> Self:
        """Copy a row of the table; `more` holds fields without a column."""
        if "ref" in cls.model_fields:
            # A row that corrects another one keeps the reference of that one.
            more["ref"] = names.ref(cls.KIND, getattr(row, "first", row.id))
        found = {name: getattr(row, name) for name in cls.model_fields if name not in more}
        return cls.model_construct(**found, **more)

    def written(self, names: Any) -> dict[str, Any]:
        """Return the row in the document's format."""
        return self.model_dump(by_alias=True, context=names)

    def stored(self, **more: Any) -> Any:
        """Return the row of the table; `more` holds columns that the document does not have."""
        columns = self.TABLE.__mapper__.columns
        found = {name: value for name, value in self.__dict__.items() if name in columns}
        return self.TABLE(**{**found, **more})


WHOEVER = Field(default=None, validate_default=True)


class Referenced(Row):
    """A row identified by its reference."""

    ref: Annotated[str, text(80)] = ""


class Logged(Referenced):
    """A row logged on a business day; either day or instant is enough."""

    business_day: Day | None = Field(None, alias="day")
    at: Moment | None = None
    by: Person = WHOEVER

    @model_validator(mode="after")
    def _on_a_day(self, info: Reading) -> Self:
        bar = info.context.bar
        if self.at is None:
            if self.business_day is None:
                raise wrong("missing", "day")
            self.at = instant_of(self.business_day, _LATE_EVENING, bar.zone)
        if self.business_day is None:
            self.business_day = bar.day_of(self.at)
        return self
