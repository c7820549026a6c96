"""What the grammar makes of words, before the bar's settings and book are looked at."""

from __future__ import annotations

from dataclasses import dataclass, fields, is_dataclass
from fractions import Fraction

from bot.chat.grammar.lexer import Noun
from bot.trade.formulas.measures import AmbiguousUnit


@dataclass(frozen=True, slots=True)
class Unknown:
    """Words that name nothing the bar knows."""

    text: str


@dataclass(frozen=True, slots=True)
class Hash:
    """A number sign with a number, as buttons write it: #3, or #3.2 for version 2."""

    id: int
    version: int | None = None


Named = Noun | Hash | Unknown


@dataclass(frozen=True, slots=True)
class Amount:
    """A number with the unit as typed: a canonical name, or one that must be asked about."""

    number: Fraction
    unit: str | AmbiguousUnit


@dataclass(frozen=True, slots=True)
class Span:
    """A number or a range of numbers."""

    low: Fraction
    high: Fraction


@dataclass(frozen=True, slots=True)
class Money:
    """An amount of money; `currency` is a code or a sign, None where neither was said.

    `minor` says that it was counted in the currency's smallest coin: 30 cents.
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
    """So many bottles of one size."""

    count: Fraction
    size: Amount


@dataclass(frozen=True, slots=True)
class Total:
    """So much in all."""

    amount: Amount


@dataclass(frozen=True, slots=True)
class Drinks:
    """Enough for so many drinks."""

    count: Fraction


@dataclass(frozen=True, slots=True)
class Factor:
    """So many times the formula."""

    factor: Fraction


@dataclass(frozen=True, slots=True)
class Stock:
    """What is there of one or more ingredients."""

    amounts: tuple[tuple[Named, Amount], ...]


Target = Bottles | Total | Drinks | Factor | Stock


@dataclass(frozen=True, slots=True)
class Level:
    """A strength as typed: % vol, or a proof, whose meaning depends on where the bar is."""

    number: Fraction
    proof: bool = False


@dataclass(frozen=True, slots=True)
class Temperature:
    """A temperature in °C."""

    celsius: Fraction


@dataclass(frozen=True, slots=True)
class Portion:
    """So much of a spirit, said by its strength or by its name."""

    amount: Amount
    what: Level | Named


@dataclass(frozen=True, slots=True)
class Swap:
    """Another spirit instead: by its strength, its name, or both."""

    level: Level | None
    named: Named | None


@dataclass(frozen=True, slots=True)
class Readings:
    """What a scale showed, in g, in the order read; the sprays between, and the last figure it shows."""

    masses: tuple[Fraction, ...]
    sprays: int | None
    step: Fraction


@dataclass(frozen=True, slots=True)
class Day:
    """A day as typed: a date, or so many days before today."""

    date: str | None
    days_ago: Fraction = Fraction(0)


@dataclass(frozen=True, slots=True)
class PackPrice:
    """A price, and the pack it is for; None where none was said."""

    pack: Amount | None
    price: Money


@dataclass(frozen=True, slots=True)
class PacksBought:
    """So many packs of one size, and the price of one where it was said."""

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
    """Something else a formula says.

    'rest', 'discard', 'sprays', 'kind', 'replaces', 'remove', or 'graded': food grade confirmed.
    """

    what: str
    value: Duration | Span | Noun | Hash | Unknown


@dataclass(frozen=True, slots=True)
class Filled:
    """A slot with its value and the very words that filled it."""

    slot: str
    value: object
    text: str


@dataclass(frozen=True, slots=True)
class Line:
    """The slots of one line where a message may hold several."""

    filled: tuple[Filled, ...]


def names_unknown(value: object) -> bool:
    """Whether words that name nothing the bar knows are in it, however deep: in a swap's spirit too."""
    if isinstance(value, tuple):
        return any(map(names_unknown, value))
    if not is_dataclass(value):
        return False
    inner = (getattr(value, one.name) for one in fields(value))
    return isinstance(value, Unknown) or any(map(names_unknown, inner))
