"""Transform parse trees to values."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import time
from fractions import Fraction
from typing import Any

from lark import Token, Transformer, v_args
from lark.tree import Meta

from bot.chat.grammar.lexer import Noun
from bot.chat.grammar.syntax import (
    DAYS_AGO,
    Amount,
    Bottles,
    Day,
    Detail,
    Drinks,
    Duration,
    Factor,
    Filled,
    Hash,
    IngredientLine,
    Level,
    Line,
    Money,
    Named,
    PackPrice,
    PacksBought,
    Portion,
    Readings,
    Span,
    Stock,
    Swap,
    Temperature,
    Total,
    Unknown,
)
from bot.chat.i18n.numbers import NotANumberError
from bot.trade.formulas.measures import AmbiguousUnit, Dimension, Quantity, dimension, to_g

_HOURS = {"MINUTES": Fraction(1, 60), "HOURS": Fraction(1), "DAYS": Fraction(24), "WEEKS": Fraction(168)}
_HOURS["MONTHS"] = Fraction(30 * 24)  # a month of shelf life counts as 30 days


# The children that lark passes to a rule's method: tokens, and results of the methods of inner rules.
Children = list[Any]


class Spoken(Token):
    """A token of the grammar with its value."""

    meaning: Any


def _flat(children: Children) -> Iterator[Any]:
    for child in children:
        if isinstance(child, list):
            yield from _flat(child)
        elif not isinstance(child, Token):
            yield child


def _numbers(children: Children) -> list[Fraction]:
    return [token.meaning for token in children if isinstance(token, Spoken) and token.type == "NUMBER"]


def _mass_unit(unit: str | AmbiguousUnit) -> str:
    """Return the unit of a weight; an ounce on a scale is an ounce of weight."""
    if isinstance(unit, AmbiguousUnit):
        return next((one for one in unit.choices if dimension(one) is Dimension.MASS), "g")
    return unit if dimension(unit) is Dimension.MASS else "g"


def _is_sign(child: object) -> bool:
    """Whether a child is a keyword or sign without a value."""
    return isinstance(child, Spoken) and not isinstance(child.meaning, Noun)


def _whole(number: Fraction) -> int:
    if number.denominator != 1:
        raise NotANumberError(str(number))
    return int(number)


class Meaning(Transformer[Token, Any]):
    """Bottom-up transformer: values first, then slots with the words that filled them."""

    def __init__(self, text: str) -> None:
        super().__init__()
        self._text = text

    def __default__(self, data: Any, children: Children, meta: Meta) -> Any:
        """Handle rules without their own method: slots keep their words, other children pass through."""
        name = str(data)
        if not name.endswith("_slot"):
            return [child for child in children if not isinstance(child, Token)] if name != "_" else children
        return self._filled(name, children, meta)

    def _filled(self, name: str, children: Children, meta: Meta) -> Filled:
        values = list(_flat(children))
        if not values:
            first = next((token for token in children if isinstance(token, Token)), None)
            value: Any = getattr(first, "meaning", None)
            if isinstance(first, Token) and not isinstance(value, Noun):
                value = first.type.lower()
        else:
            value = values[0] if len(values) == 1 else tuple(values)
        text = self._text[meta.start_pos : meta.end_pos] if not meta.empty else ""
        return Filled(name.removesuffix("_slot"), value, text)

    # -- values ------------------------------------------------------------------------

    def number(self, children: Children) -> Fraction:
        return _numbers(children)[0]

    def one(self, children: Children) -> Span:
        value = _numbers(children)[0]
        return Span(value, value)

    def span(self, children: Children) -> Span:
        low, high = sorted(_numbers(children))
        return Span(low, high)

    percent = packs = number

    def measured(self, children: Children) -> Amount:
        return Amount(children[0].meaning, children[1].meaning)

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
        return self._text[meta.start_pos : meta.end_pos].strip()

    name = text
    settled = text

    @v_args(meta=True)
    def unknown(self, meta: Meta, children: Children) -> Unknown:
        return Unknown(self._text[meta.start_pos : meta.end_pos].strip())

    @v_args(meta=True)
    def item_longer(self, meta: Meta, children: Children) -> Unknown:
        return Unknown(self._text[meta.start_pos : meta.end_pos].strip())

    def _named(self, children: Children) -> Named:
        child = children[0]
        if not isinstance(child, Spoken):
            assert isinstance(child, Unknown)  # noqa: S101 - the grammar has no other child here
            return child
        if child.type == "HASH":
            number, _, version = child.meaning.partition(".")
            return Hash(int(number), int(version) if version else None)
        noun: Noun = child.meaning
        return noun

    formula = ingredient = item = fruit = why = subject = sprayer = opened_item = entry = drink = _named

    def batch(self, children: Children) -> int:
        token = children[0]
        if token.type == "HASH":
            return int(str(token.meaning).partition(".")[0])
        return _whole(token.meaning)

    def money(self, children: Children) -> Money:
        number = _numbers(children)[0]
        currency = None
        for token in children:
            if token.type in {"CODE", "SIGN"}:
                currency = token.meaning
        return Money(number, currency, any(token.type == "CENTS" for token in children))

    # -- targets -----------------------------------------------------------------------

    def bottles(self, children: Children) -> Bottles:
        return Bottles(_numbers(children)[0], next(_flat(children)))

    def bottles_after(self, children: Children) -> Bottles:
        return Bottles(_numbers(children)[0], next(_flat(children)))

    def total(self, children: Children) -> Total:
        return Total(next(_flat(children)))

    def drinks(self, children: Children) -> Drinks:
        return Drinks(_numbers(children)[0])

    def factor(self, children: Children) -> Factor:
        return Factor(_numbers(children)[0])

    def double(self, children: Children) -> Factor:
        return Factor(Fraction(2))

    def triple(self, children: Children) -> Factor:
        return Factor(Fraction(3))

    def half(self, children: Children) -> Factor:
        return Factor(Fraction(1, 2))

    def have(self, children: Children) -> tuple[Named, Amount]:
        parts = list(_flat(children))
        amount = next(part for part in parts if isinstance(part, Amount))
        return next(part for part in parts if not isinstance(part, Amount)), amount

    def stock(self, children: Children) -> Stock:
        return Stock(tuple(_flat(children)))

    def loss(self, children: Children) -> Fraction:
        percent: Fraction = next(_flat(children))
        return percent / 100

    # -- strength, doses, sprayers -------------------------------------------------------

    def level(self, children: Children) -> Level:
        return Level(_numbers(children)[0])

    def bare_level(self, children: Children) -> Level:
        return Level(_numbers(children)[0], bare=True)

    def proof(self, children: Children) -> Level:
        return Level(_numbers(children)[0], proof=True)

    def celsius(self, children: Children) -> Temperature:
        return Temperature(_numbers(children)[0])

    def fahrenheit(self, children: Children) -> Temperature:
        return Temperature((_numbers(children)[0] - 32) * 5 / 9)

    def portion(self, children: Children) -> Portion:
        amount, what = _flat(children)
        return Portion(amount, what)

    @v_args(meta=True)
    def swap_slot(self, meta: Meta, children: Children) -> Filled:
        parts = list(_flat(children))
        level = next((part for part in parts if isinstance(part, Level)), None)
        if level is None and _numbers(children):  # 'with 75.5 spirit instead'
            level = Level(_numbers(children)[0])
        named = next((part for part in parts if isinstance(part, Noun | Hash | Unknown)), None)
        return Filled("swap", Swap(level, named), self._text[meta.start_pos : meta.end_pos])

    bare_swap_slot = swap_answer_slot = named_swap_slot = swap_slot

    @v_args(meta=True)
    def poured(self, meta: Meta, children: Children) -> Filled:
        amount: Amount = children[0]
        weighs = isinstance(amount.unit, str) and dimension(amount.unit) is Dimension.MASS
        return Filled("weight" if weighs else "drink", amount, self._text[meta.start_pos : meta.end_pos])

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
            return Day(str(token.meaning), before=before, words=self._text[meta.start_pos : meta.end_pos])
        return Day(None, DAYS_AGO[token.type], words=self._text[meta.start_pos : meta.end_pos])

    # -- prices ------------------------------------------------------------------------

    @v_args(meta=True)
    def pack_and_price(self, meta: Meta, children: Children) -> Filled:
        number, unit = children[0].meaning, children[1]
        pack = Amount(number, "each" if unit.type == "EACH" else unit.meaning)
        return self._pack_price(meta, PackPrice(pack, next(_flat(children))))

    @v_args(meta=True)
    def pieces_for_price(self, meta: Meta, children: Children) -> Filled:
        return self._pack_price(meta, PackPrice(Amount(children[0].meaning, "each"), next(_flat(children))))

    @v_args(meta=True)
    def each_price(self, meta: Meta, children: Children) -> Filled:
        money = self.money([token for token in children if token.type != "EACH"])
        return self._pack_price(meta, PackPrice(Amount(Fraction(1), "each"), money))

    @v_args(meta=True)
    def price_alone(self, meta: Meta, children: Children) -> Filled:
        return self._pack_price(meta, PackPrice(None, next(_flat(children))))

    def _pack_price(self, meta: Meta, value: PackPrice) -> Filled:
        return Filled("pack_price", value, self._text[meta.start_pos : meta.end_pos])

    # -- stock -------------------------------------------------------------------------

    @v_args(meta=True)
    def packs_bought(self, meta: Meta, children: Children) -> Filled:
        parts = list(_flat(children))
        count = _numbers(children)[0] if _numbers(children) else Fraction(1)
        price = next((part for part in parts if isinstance(part, Money)), None)
        pack = next(part for part in parts if isinstance(part, Amount))
        return Filled(
            "stock_packs", PacksBought(count, pack, price), self._text[meta.start_pos : meta.end_pos]
        )

    @v_args(meta=True)
    def pieces_bought(self, meta: Meta, children: Children) -> Filled:
        pieces = PacksBought(_numbers(children)[0], Amount(Fraction(1), "each"))
        return Filled("stock_packs", pieces, self._text[meta.start_pos : meta.end_pos])

    # -- trials ------------------------------------------------------------------------

    @v_args(meta=True)
    def trial_hash(self, meta: Meta, children: Children) -> Filled:
        number = Fraction(children[0].meaning.partition(".")[0])
        return Filled("trial_number", number, self._text[meta.start_pos : meta.end_pos].removeprefix("#"))

    @v_args(meta=True)
    def letter(self, meta: Meta, children: Children) -> str:
        return self._text[meta.start_pos : meta.end_pos]

    @v_args(meta=True)
    def code_bottle(self, meta: Meta, children: Children) -> Filled:
        code: str = next(_flat(children))
        return Filled("code", code, code)

    # -- formula lines -----------------------------------------------------------------

    def ingredient_line(self, children: Children) -> IngredientLine:
        parts = list(_flat(children))
        strength = next((part for part in parts if isinstance(part, Level)), None)
        amount = next(part for part in parts if isinstance(part, Amount))
        item = next(part for part in parts if isinstance(part, Noun | Hash | Unknown))
        return IngredientLine(item, amount, strength)

    def rest_line(self, children: Children) -> Detail:
        return Detail("rest", next(_flat(children)))

    def discard_line(self, children: Children) -> Detail:
        return Detail("discard", next(_flat(children)))

    def sprays_line(self, children: Children) -> Detail:
        return Detail("sprays", next(_flat(children)))

    def kind_line(self, children: Children) -> Detail:
        return Detail("kind", next(token.meaning for token in children if token.type == "PREPARATION"))

    def replaces_line(self, children: Children) -> Detail:
        return Detail("replaces", next(_flat(children)))

    def remove_line(self, children: Children) -> Detail:
        return Detail("remove", next(_flat(children)))

    def graded_line(self, children: Children) -> Detail:
        return Detail("graded", self._named([child for child in children if not _is_sign(child)]))

    @v_args(meta=True)
    def lines_slot(self, meta: Meta, children: Children) -> Filled:
        return Filled("lines", tuple(_flat(children)), self._text[meta.start_pos : meta.end_pos])

    # -- waste -------------------------------------------------------------------------

    @v_args(meta=True)
    def reason_before(self, meta: Meta, children: Children) -> Filled:
        return Filled("reason", children[0].meaning, self._text[meta.start_pos : meta.end_pos])

    def waste_line(self, children: Children) -> Line:
        return Line(tuple(_flat(children)))

    bought_line = count_line = peeled_line = drinks_line = waste_line

    @v_args(meta=True)
    def copies_said(self, meta: Meta, children: Children) -> Filled:
        return Filled("copies", next(_flat(children)), self._text[meta.start_pos : meta.end_pos])

    @v_args(meta=True)
    def uses_said(self, meta: Meta, children: Children) -> Filled:
        return Filled("uses", next(_flat(children)), self._text[meta.start_pos : meta.end_pos])

    @v_args(meta=True)
    def batch_card(self, meta: Meta, children: Children) -> Filled:
        return Filled("batch", _whole(_numbers(children)[0]), self._text[meta.start_pos : meta.end_pos])
