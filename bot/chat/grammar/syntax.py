"""The values that the grammar returns, before the bar's settings and book apply."""

from __future__ import annotations

from dataclasses import dataclass, fields, is_dataclass
from fractions import Fraction

from bot.chat.grammar.lexer import Noun
from bot.trade.formulas.measures import AmbiguousUnit


@dataclass(frozen=True, slots=True)
class Unknown:
    """Words that match no name in the bar."""

    text: str


@dataclass(frozen=True, slots=True)
class Hash:
    """A number sign with a number, as in button lines: #3, or #3.2 for version 2."""

    id: int
    version: int | None = None


Named = Noun | Hash | Unknown


@dataclass(frozen=True, slots=True)
class Amount:
    """A number with its unit as typed: a canonical name, or an ambiguous unit."""

    number: Fraction
    unit: str | AmbiguousUnit


@dataclass(frozen=True, slots=True)
class Span:
    """A number or a range of numbers."""

    low: Fraction
    high: Fraction


@dataclass(frozen=True, slots=True)
class Money:
    """An amount of money; `currency` is a code or a sign, None if not given.

    `minor` marks an amount in the currency's smallest coin: 30 cents.
    """

    number: Fraction
    currency: str | None
    minor: bool = False


@dataclass(frozen=True, slots=True)
class Duration:
    """A length of time, in hours."""

    hours: Fraction


@dataclass(frozen=True, slots=True)
class Bottles:
    """A number of bottles of one size."""

    count: Fraction
    size: Amount


@dataclass(frozen=True, slots=True)
class BareBottles:
    """A number of bottles whose size was not said."""

    count: Fraction


@dataclass(frozen=True, slots=True)
class Total:
    """A total amount."""

    amount: Amount


@dataclass(frozen=True, slots=True)
class Drinks:
    """Enough for a number of drinks."""

    count: Fraction


@dataclass(frozen=True, slots=True)
class Factor:
    """A multiple of the formula."""

    factor: Fraction

    def of(self, words: str) -> str:
        """Return an amount that begins with a plain number, multiplied: '800 ml' for '400 ml'."""
        number, _space, unit = words.partition(" ")
        return f"{Fraction(number) * self.factor} {unit}".strip()


@dataclass(frozen=True, slots=True)
class Stock:
    """The available amount of one or more ingredients."""

    amounts: tuple[tuple[Named, Amount], ...]


@dataclass(frozen=True, slots=True)
class EachOf:
    """The size of bottles whose number was said before: '12 bottles of orange mist, 50 ml each'."""

    size: Amount


Target = Bottles | BareBottles | Total | Drinks | Factor | Stock


@dataclass(frozen=True, slots=True)
class Level:
    """A strength as typed: % vol, or a proof, whose scale depends on the bar's country.

    A bare number is neither: 'alcohol de 96'.
    """

    number: Fraction
    proof: bool = False
    bare: bool = False


@dataclass(frozen=True, slots=True)
class Temperature:
    """A temperature in °C."""

    celsius: Fraction


@dataclass(frozen=True, slots=True)
class Portion:
    """An amount of a spirit, named by its strength or its name."""

    amount: Amount
    what: Level | Named


@dataclass(frozen=True, slots=True)
class CameBack:
    """What came back from an event: an amount, some bottles ("each") or a share of what was taken.

    `taken` is what was taken, if said; `what` the preparation, if named.
    """

    amount: Amount | Factor
    taken: Amount | None
    what: Named | None


@dataclass(frozen=True, slots=True)
class Swap:
    """A substitute spirit, named by its strength, its name, or both."""

    level: Level | None
    named: Named | None


@dataclass(frozen=True, slots=True)
class Readings:
    """Scale readings in g, in order; the sprays between them, and the last digit shown."""

    masses: tuple[Fraction, ...]
    sprays: int | None
    step: Fraction


@dataclass(frozen=True, slots=True)
class Day:
    """A day as typed: a date, or a number of days before today.

    The date has the ISO 8601 form, without a year if none was typed ('--11-24'); or it is a day of the week
    ('-W-2'), the last one, or with `before` the last one before today, or one to come ('-W-2 next', see
    day_phrases); or the next day of a number ('---05'); or a time ago ('-P3D'); or one of two
    dates ('--05-12 or --12-05'), the first of them with the day before the month. `words` is the typed text.
    """

    date: str | None
    days_ago: int = 0
    before: bool = False
    words: str = ""


@dataclass(frozen=True, slots=True)
class DaySpan:
    """Days as typed: from one to another, where one of them may be only a number of the other's month.

    `last` is None for up to now, and is `first` for a single day; `first` is then a day, or a number of days.
    """

    first: Day | Fraction
    last: Day | Fraction | None


DAYS_AGO = {"YESTERDAY": 1, "TODAY": 0, "TOMORROW": -1, "AFTER_TOMORROW": -2}


@dataclass(frozen=True, slots=True)
class PackPrice:
    """A price and its pack; None if no pack was given."""

    pack: Amount | None
    price: Money


@dataclass(frozen=True, slots=True)
class PacksBought:
    """A number of packs of one size, and the price of one if given."""

    count: Fraction
    pack: Amount
    price: Money | None = None


@dataclass(frozen=True, slots=True)
class IngredientLine:
    """One ingredient of a formula as typed."""

    item: Named
    amount: Amount
    strength: Level | None = None


@dataclass(frozen=True, slots=True)
class Detail:
    """Another part of a formula.

    'rest', 'discard', 'sprays', 'kind', 'replaces', 'remove', or 'graded': food grade confirmed.
    """

    what: str
    value: Duration | Span | Noun | Hash | Unknown


@dataclass(frozen=True, slots=True)
class Filled:
    """A slot with its value and the exact words that filled it."""

    slot: str
    value: object
    text: str


@dataclass(frozen=True, slots=True)
class Line:
    """The slots of one line in a message that may hold several."""

    filled: tuple[Filled, ...]


def names_unknown(value: object) -> bool:
    """Whether the value contains unknown names at any depth, even in a swap's spirit."""
    if isinstance(value, tuple):
        return any(map(names_unknown, value))
    if not is_dataclass(value):
        return False
    inner = (getattr(value, one.name) for one in fields(value))
    return isinstance(value, Unknown) or any(map(names_unknown, inner))
