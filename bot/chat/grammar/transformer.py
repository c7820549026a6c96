"""Slots and lines of a phrase from its parse tree, each with the words that filled it."""

from __future__ import annotations

from fractions import Fraction

from lark import v_args
from lark.tree import Meta

from bot.chat.grammar.lexer import Noun
from bot.chat.grammar.syntax import (
    Amount,
    BareBottles,
    Detail,
    EachOf,
    Filled,
    Hash,
    IngredientLine,
    Level,
    Line,
    Money,
    PackPrice,
    PacksBought,
    Swap,
    Unknown,
)
from bot.chat.grammar.values import Children, Spoken, Values, flat, is_sign, numbers, whole
from bot.trade.formulas.measures import Dimension, dimension


class Meaning(Values):
    """Bottom-up transformer: values first, then slots with the words that filled them."""

    # -- strength and doses ----------------------------------------------------------------

    @v_args(meta=True)
    def swap_slot(self, meta: Meta, children: Children) -> Filled:
        parts = list(flat(children))
        level = next((part for part in parts if isinstance(part, Level)), None)
        if level is None and numbers(children):  # 'with 75.5 spirit instead'
            level = Level(numbers(children)[0])
        named = next((part for part in parts if isinstance(part, Noun | Hash | Unknown)), None)
        return Filled("swap", Swap(level, named), self._words(meta))

    bare_swap_slot = swap_answer_slot = named_swap_slot = swap_slot

    @v_args(meta=True)
    def poured(self, meta: Meta, children: Children) -> Filled:
        amount: Amount = children[0]
        weighs = isinstance(amount.unit, str) and dimension(amount.unit) is Dimension.MASS
        return Filled("weight" if weighs else "drink", amount, self._words(meta))

    # -- prices ------------------------------------------------------------------------

    @v_args(meta=True)
    def pack_and_price(self, meta: Meta, children: Children) -> Filled:
        number, unit = children[0].meaning, children[1]
        pack = Amount(number, "each" if unit.type == "EACH" else unit.meaning)
        return self._pack_price(meta, PackPrice(pack, next(flat(children))))

    @v_args(meta=True)
    def pieces_for_price(self, meta: Meta, children: Children) -> Filled:
        return self._pack_price(meta, PackPrice(Amount(numbers(children)[0], "each"), next(flat(children))))

    @v_args(meta=True)
    def price_for_pack(self, meta: Meta, children: Children) -> Filled:
        *price, number, unit = (token for token in children if token.type != "FOR")
        return self._pack_price(meta, PackPrice(Amount(number.meaning, unit.meaning), self.money(price)))

    @v_args(meta=True)
    def each_price(self, meta: Meta, children: Children) -> Filled:
        money = self.money([token for token in children if token.type != "EACH"])
        return self._pack_price(meta, PackPrice(Amount(Fraction(1), "each"), money))

    @v_args(meta=True)
    def unit_price(self, meta: Meta, children: Children) -> Filled:
        unit = next(part for part in children if isinstance(part, Amount))
        paid = next((part for part in children if isinstance(part, Money)), None)
        tokens = [part for part in children if isinstance(part, Spoken) and part.type in {"NUMBER", "SIGN"}]
        return self._pack_price(meta, PackPrice(unit, paid or self.money(tokens)))

    @v_args(meta=True)
    def price_alone(self, meta: Meta, children: Children) -> Filled:
        return self._pack_price(meta, PackPrice(None, next(flat(children))))

    def _pack_price(self, meta: Meta, value: PackPrice) -> Filled:
        return Filled("pack_price", value, self._words(meta))

    # -- stock -------------------------------------------------------------------------

    @v_args(meta=True)
    def packs_bought(self, meta: Meta, children: Children) -> Filled:
        parts = list(flat(children))
        count = numbers(children)[0] if numbers(children) else Fraction(1)
        price = next((part for part in parts if isinstance(part, Money)), None)
        pack = next(part for part in parts if isinstance(part, Amount))
        return Filled("stock_packs", PacksBought(count, pack, price), self._words(meta))

    @v_args(meta=True)
    def pieces_bought(self, meta: Meta, children: Children) -> Filled:
        pieces = PacksBought(numbers(children)[0], Amount(Fraction(1), "each"))
        return Filled("stock_packs", pieces, self._words(meta))

    # -- trials ------------------------------------------------------------------------

    @v_args(meta=True)
    def trial_hash(self, meta: Meta, children: Children) -> Filled:
        number = Fraction(children[0].meaning.partition(".")[0])
        return Filled("trial_number", number, self._words(meta).removeprefix("#"))

    @v_args(meta=True)
    def letter(self, meta: Meta, children: Children) -> str:
        return self._words(meta)

    @v_args(meta=True)
    def code_bottle(self, meta: Meta, children: Children) -> Filled:
        code: str = next(flat(children))
        return Filled("code", code, code)

    # -- formula lines -----------------------------------------------------------------

    def ingredient_line(self, children: Children) -> IngredientLine:
        parts = list(flat(children))
        strength = next((part for part in parts if isinstance(part, Level)), None)
        amount = next(part for part in parts if isinstance(part, Amount))
        item = next(part for part in parts if isinstance(part, Noun | Hash | Unknown))
        return IngredientLine(item, amount, strength)

    def rest_line(self, children: Children) -> Detail:
        return Detail("rest", next(flat(children)))

    def discard_line(self, children: Children) -> Detail:
        return Detail("discard", next(flat(children)))

    def sprays_line(self, children: Children) -> Detail:
        return Detail("sprays", next(flat(children)))

    def kind_line(self, children: Children) -> Detail:
        return Detail("kind", next(token.meaning for token in children if token.type == "PREPARATION"))

    def replaces_line(self, children: Children) -> Detail:
        return Detail("replaces", next(flat(children)))

    def remove_line(self, children: Children) -> Detail:
        return Detail("remove", next(flat(children)))

    def graded_line(self, children: Children) -> Detail:
        return Detail("graded", self._named([child for child in children if not is_sign(child)]))

    @v_args(meta=True)
    def lines_slot(self, meta: Meta, children: Children) -> Filled:
        return Filled("lines", tuple(flat(children)), self._words(meta))

    # -- waste -------------------------------------------------------------------------

    @v_args(meta=True)
    def reason_before(self, meta: Meta, children: Children) -> Filled:
        return Filled("reason", children[0].meaning, self._words(meta))

    @v_args(meta=True)
    def bottled_item(self, meta: Meta, children: Children) -> Filled:
        return Filled("fruit", children[0], self._words(meta))

    def waste_line(self, children: Children) -> Line:
        return Line(tuple(flat(children)))

    bought_line = count_line = peeled_line = drinks_line = waste_line

    @v_args(meta=True)
    def unsized(self, meta: Meta, children: Children) -> Filled:
        return Filled("target", BareBottles(numbers(children)[0]), self._words(meta))

    @v_args(meta=True)
    def each_of(self, meta: Meta, children: Children) -> Filled:
        return Filled("target", EachOf(next(flat(children))), self._words(meta))

    @v_args(meta=True)
    def copies_said(self, meta: Meta, children: Children) -> Filled:
        return Filled("copies", next(flat(children)), self._words(meta))

    @v_args(meta=True)
    def uses_said(self, meta: Meta, children: Children) -> Filled:
        return Filled("uses", next(flat(children)), self._words(meta))

    @v_args(meta=True)
    def batch_named(self, meta: Meta, children: Children) -> Filled:
        return Filled("batch", self.batch(children), self._words(meta))

    @v_args(meta=True)
    def formula_named(self, meta: Meta, children: Children) -> Filled:
        return Filled("batch", self.batch(children), self._words(meta))

    @v_args(meta=True)
    def part_said(self, meta: Meta, children: Children) -> Filled:
        return Filled("moved_part", next(flat(children)), self._words(meta))

    @v_args(meta=True)
    def batch_card(self, meta: Meta, children: Children) -> Filled:
        return Filled("batch", whole(numbers(children)[0]), self._words(meta))
