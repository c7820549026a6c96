"""Values of a phrase from its parse tree: numbers, amounts, days, names, strengths."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import time
from fractions import Fraction
from typing import Any

from lark import Token, Transformer, v_args
from lark.tree import Meta

from bot.chat.grammar.day_phrases import numeric_day
from bot.chat.grammar.lexer import Noun
from bot.chat.grammar.syntax import (
    DAYS_AGO,
    Amount,
    Bottles,
    CameBack,
    Day,
    DaySpan,
    Drinks,
    Duration,
    Factor,
    Filled,
    Hash,
    Level,
    Money,
    Named,
    Portion,
    Readings,
    Span,
    Stock,
    Temperature,
    Total,
    Unknown,
)
from bot.chat.i18n.keywords import stands_for
from bot.chat.i18n.language import tongue
from bot.chat.i18n.numbers import NotANumberError
from bot.trade.formulas.measures import AmbiguousUnit, Dimension, Quantity, dimension, to_g

_HOURS = {"MINUTES": Fraction(1, 60), "HOURS": Fraction(1), "DAYS": Fraction(24), "WEEKS": Fraction(168)}
_HOURS["MONTHS"] = Fraction(30 * 24)  # a month of shelf life counts as 30 days


# The children that lark passes to a rule's method: tokens, and results of the methods of inner rules.
Children = list[Any]


class Spoken(Token):
    """A token of the grammar with its value."""

    meaning: Any


def flat(children: Children) -> Iterator[Any]:
    """Yield the values among the children, those in lists too; tokens carry none."""
    for child in children:
        if isinstance(child, list):
            yield from flat(child)
        elif not isinstance(child, Token):
            yield child


def numbers(children: Children) -> list[Fraction]:
    """Return the numbers among the tokens."""
    return [token.meaning for token in children if isinstance(token, Spoken) and token.type == "NUMBER"]


def _mass_unit(unit: str | AmbiguousUnit) -> str:
    """Return the unit of a weight; an ounce on a scale is an ounce of weight."""
    if isinstance(unit, AmbiguousUnit):
        return next((one for one in unit.choices if dimension(one) is Dimension.MASS), "g")
    return unit if dimension(unit) is Dimension.MASS else "g"


def is_sign(child: object) -> bool:
    """Whether a child is a keyword or sign without a value."""
    return isinstance(child, Spoken) and not isinstance(child.meaning, Noun)


def whole(number: Fraction) -> int:
    """Return a number as an int. Raises NotANumberError if it has a fraction."""
    if number.denominator != 1:
        raise NotANumberError(str(number))
    return int(number)


class Values(Transformer[Token, Any]):
    """Bottom-up transformer of values; a rule ending in _slot becomes a filled slot."""

    def __init__(self, text: str) -> None:
        super().__init__()
        self._text = text

    def __default__(self, data: Any, children: Children, meta: Meta) -> Any:
        """Handle rules without their own method: slots keep their words, other children pass through."""
        name = str(data)
        if not name.endswith("_slot"):
            return [child for child in children if not isinstance(child, Token)] if name != "_" else children
        return self._filled(name, children, meta)

    def _words(self, meta: Meta) -> str:
        """Return the words of a rule as typed."""
        return self._text[meta.start_pos : meta.end_pos]

    def _filled(self, name: str, children: Children, meta: Meta) -> Filled:
        values = list(flat(children))
        if not values:
            first = next((token for token in children if isinstance(token, Token)), None)
            value: Any = getattr(first, "meaning", None)
            if isinstance(first, Token) and not isinstance(value, Noun):
                value = first.type.lower()
        else:
            value = values[0] if len(values) == 1 else tuple(values)
        text = self._words(meta) if not meta.empty else ""
        return Filled(name.removesuffix("_slot"), value, text)

    # -- values ------------------------------------------------------------------------

    def number(self, children: Children) -> Fraction:
        return numbers(children)[0]

    def one(self, children: Children) -> Span:
        value = numbers(children)[0]
        return Span(value, value)

    def span(self, children: Children) -> Span:
        low, high = sorted(numbers(children))
        return Span(low, high)

    percent = packs = number

    def measured(self, children: Children) -> Amount:
        return Amount(children[0].meaning, children[1].meaning)

    def one_unit(self, children: Children) -> Amount:
        return Amount(Fraction(1), children[0].meaning)

    def bare_amount(self, children: Children) -> Amount:
        return Amount(children[0].meaning, "")

    def counted(self, children: Children) -> Amount:
        return Amount(children[0].meaning, "each")

    def moment(self, children: Children) -> time:
        hour, _colon, minute = str(children[0].meaning).partition(":")
        if int(hour) > 23 or int(minute) > 59:
            raise NotANumberError(str(children[0].meaning))
        return time(int(hour), int(minute))

    def duration(self, children: Children) -> Duration:
        return Duration(children[0].meaning * _HOURS[children[1].type])

    @v_args(meta=True)
    def text(self, meta: Meta, children: Children) -> str:
        return self._words(meta).strip()

    name = text
    settled = text

    @v_args(meta=True)
    def unknown(self, meta: Meta, children: Children) -> Unknown:
        name, _space, last = self._words(meta).strip().rpartition(" ")
        # 'aceite de lima de' 10 ml: the last word leads to what follows.
        leads = bool(name) and stands_for(last, "OF", tongue().language)
        return Unknown(name if leads else f"{name} {last}".strip())

    item_longer = unknown

    def _named(self, children: Children) -> Named:
        child = children[-1]
        if not isinstance(child, Spoken):
            assert isinstance(child, Unknown)  # noqa: S101 - the grammar has no other child here
            return child
        if child.type == "HASH":
            number, _, version = child.meaning.partition(".")
            return Hash(int(number), int(version) if version else None)
        noun: Noun = child.meaning
        return noun

    formula = ingredient = item = thing = why = subject = sprayer = opened_item = entry = drink = _named

    def fruit(self, children: Children) -> Named:
        return self._named(children) if is_sign(children[-1]) else children[-1]

    def batch(self, children: Children) -> int | Noun:
        token = children[-1]
        if token.type == "FORMULA":
            named: Noun = token.meaning
            return named
        if token.type == "HASH":
            return int(str(token.meaning).partition(".")[0])
        return whole(token.meaning)

    def money(self, children: Children) -> Money:
        number = numbers(children)[0]
        currency = None
        for token in children:
            if token.type in {"CODE", "SIGN"}:
                currency = token.meaning
        return Money(number, currency, any(token.type == "CENTS" for token in children))

    # -- targets -----------------------------------------------------------------------

    def bottles(self, children: Children) -> Bottles:
        return Bottles(numbers(children)[0], next(flat(children)))

    def bottles_after(self, children: Children) -> Bottles:
        return Bottles(numbers(children)[0], next(flat(children)))

    def total(self, children: Children) -> Total:
        return Total(next(flat(children)))

    def drinks(self, children: Children) -> Drinks:
        return Drinks(numbers(children)[0])

    def factor(self, children: Children) -> Factor:
        return Factor(numbers(children)[0])

    def double(self, children: Children) -> Factor:
        return Factor(Fraction(2))

    def triple(self, children: Children) -> Factor:
        return Factor(Fraction(3))

    def half(self, children: Children) -> Factor:
        return Factor(Fraction(1, 2))

    def none_of_it(self, children: Children) -> Factor:
        return Factor(Fraction(0))

    def all_of_it(self, children: Children) -> Factor:
        return Factor(Fraction(1))

    def came(self, children: Children) -> CameBack:
        parts = list(flat(children))
        amounts = [part for part in parts if isinstance(part, Amount | Factor)]
        taken = next((one for one in amounts[1:] if isinstance(one, Amount)), None)
        what = next((part for part in parts if not isinstance(part, Amount | Factor)), None)
        return CameBack(amounts[0], taken, what)

    def have(self, children: Children) -> tuple[Named, Amount]:
        parts = list(flat(children))
        amount = next(part for part in parts if isinstance(part, Amount))
        return next(part for part in parts if not isinstance(part, Amount)), amount

    def stock(self, children: Children) -> Stock:
        return Stock(tuple(flat(children)))

    def loss(self, children: Children) -> Fraction:
        percent: Fraction = next(flat(children))
        return percent / 100

    # -- strength, doses, sprayers -------------------------------------------------------

    def level(self, children: Children) -> Level:
        return Level(numbers(children)[0])

    def bare_level(self, children: Children) -> Level:
        return Level(numbers(children)[0], bare=True)

    def proof(self, children: Children) -> Level:
        return Level(numbers(children)[0], proof=True)

    def celsius(self, children: Children) -> Temperature:
        return Temperature(numbers(children)[0])

    def fahrenheit(self, children: Children) -> Temperature:
        return Temperature((numbers(children)[0] - 32) * 5 / 9)

    def portion(self, children: Children) -> Portion:
        amount, what = flat(children)
        return Portion(amount, what)

    def readings(self, children: Children) -> Readings:
        masses: list[Fraction] = []
        sprays = None
        finest, grams = 0, Fraction(1)
        for token in children:
            if token.type == "NUMBER":
                masses.append(token.meaning)
                digits = self._text[token.start_pos : token.end_pos].replace(",", ".").partition(".")[2]
                finest = max(finest, len(digits))
            elif token.type == "SPRAYS":
                sprays = int(masses.pop())
            elif token.type == "UNIT":
                factor = to_g(Quantity(Fraction(1), _mass_unit(token.meaning)))
                masses.append(masses.pop() * factor)
                grams = max(grams, factor)
        return Readings(tuple(masses), sprays, grams / 10**finest)

    @v_args(meta=True)
    def day(self, meta: Meta, children: Children) -> Day:
        token = next((one for one in children if one.type in {"DATE", "DAY"}), children[0])
        if token.type in {"DATE", "DAY"}:
            before = any(one.type == "LAST" for one in children)
            return Day(str(token.meaning), before=before, words=self._words(meta))
        return Day(None, DAYS_AGO[token.type], words=self._words(meta))

    def two_days(self, children: Children) -> DaySpan:
        first, last = (
            self._figures(one) if isinstance(one, Spoken) else one
            for one in children
            if isinstance(one, Day) or (isinstance(one, Spoken) and one.type == "NUMBER")
        )
        return DaySpan(first, last)

    def _figures(self, token: Spoken) -> Day | Fraction:
        """Return the number of a day, or the day that 1/2 is beside another one."""
        words = self._text[token.start_pos : token.end_pos]
        found = numeric_day(words, 0)
        return token.meaning if found is None else Day(found[0], words=words)

    def days_since(self, children: Children) -> DaySpan:
        day = next(flat(children))
        alone = any(stands_for(str(one.meaning), "OF", tongue().language) for one in children if is_sign(one))
        return DaySpan(day, day if alone else None)  # 'del lunes' is the day alone

    def one_day(self, children: Children) -> DaySpan:
        day = next(flat(children))
        return DaySpan(day, day)

    def days_back(self, children: Children) -> DaySpan:
        unit = next(one.type for one in children if isinstance(one, Token) and one.type in _HOURS)
        return DaySpan(numbers(children)[0] * _HOURS[unit] / 24, None)
