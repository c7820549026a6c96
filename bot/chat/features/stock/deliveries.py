"""The command bought: what came in, in packs or by amount, and what was paid."""

from __future__ import annotations

from dataclasses import dataclass, replace
from datetime import date
from decimal import Decimal
from fractions import Fraction

from bot.chat.dialogue.arguments import Arguments, Lines
from bot.chat.dialogue.command import Command, Wish
from bot.chat.dialogue.inputs.belief import believe, name_in_line
from bot.chat.dialogue.inputs.cases import CASES, content_of
from bot.chat.dialogue.inputs.day import DAY_SLOT, day_words, of_day, with_day
from bot.chat.dialogue.inputs.money import as_money
from bot.chat.dialogue.inputs.shared_slots import accept_number, is_liquid, undo_button, undo_each
from bot.chat.dialogue.log_words import LogWords, Retold, amount_of, retold_amount
from bot.chat.dialogue.slots import Given, Question, Slot, plain, said
from bot.chat.dialogue.turn import Say, Turn
from bot.chat.features.fruit.balance_words import named_amount
from bot.chat.features.money.prices import change_words, pack_words
from bot.chat.features.stock.delivery_words import delivery_line, paid_words, per_pack, typed
from bot.chat.features.stock.stock_items import ITEM_SLOT, accept_amount, ask_amount
from bot.chat.grammar.syntax import Amount, Money
from bot.chat.i18n.language import _, ngettext, show_money, show_number
from bot.chat.reply.message import Button, Reply, Text, reply
from bot.trade.formulas.kinds import IngredientKind
from bot.trade.formulas.measures import Quantity, dimension
from bot.trade.words import N_
from bot.work.context import BarView
from bot.work.formulas.formulas import in_base
from bot.work.formulas.ingredients import IngredientView
from bot.work.log import chain
from bot.work.log.chain import State
from bot.work.money import prices
from bot.work.money.prices import PriceView
from bot.work.stock import counts


def _ask_content(turn: Turn, given: Given) -> Question:
    if given[ITEM_SLOT].kind is IngredientKind.FRUIT:
        text = _("How much is in one? Such as: 80 each, or 5 kg")
    else:
        text = _("How much is in one? Such as: 70 cl, or 1 kg")
    return Question(text, hint=_("80 each"))


def _wants_content(turn: Turn, given: Given) -> bool:
    if CASES in given and prices.case_of(turn.context, given[ITEM_SLOT].id) is not None:
        return False
    return (_PACKS in given or CASES in given) and _AMOUNT not in given and _CONTENT not in given


def _ask_paid(turn: Turn, given: Given) -> Question:
    each = _("What did one cost?") if _PACKS in given or CASES in given else _("What did it cost in all?")
    return Question(each, (((_("Not known"), "none"),),), hint="34.00")


def _wants_paid(turn: Turn, given: Given) -> bool:
    return given.guided


def _accept_paid(turn: Turn, given: Given, value: Money | str) -> Decimal | None:
    return None if isinstance(value, str) else as_money(value, turn.context.bar.currency)


@dataclass(frozen=True, kw_only=True)
class DeliveryArguments(Arguments):
    """One delivered item: packs with their content, or an amount; and the price paid.

    `each_pack`, `in_all` and `each_unit` give the scope of the price; so does `at`: 80 oranges at 0.40 cost
    32.00. So does `in_sum`, 'for', unless each is said. `instead` is the entry that this one replaces.
    """

    item: IngredientView
    packs: Fraction | None = None
    cases: Fraction | None = None
    content: Quantity | None = None
    waste_amount: Quantity | None = None
    paid: Decimal | None = None
    each_pack: bool = False
    in_all: bool = False
    in_sum: bool = False
    each_unit: Quantity | None = None
    at: bool = False
    instead: int | None = None

    @property
    def amount(self) -> Quantity:
        """The content of one pack, or the whole amount without packs."""
        found = self.content or self.waste_amount
        if found is None:
            raise ValueError("a delivery has an amount")
        return found

    def in_packs(self, bar: BarView) -> tuple[Fraction, Quantity]:
        """Return how many packs the price is of, and what one of them holds."""
        if self.packs is not None:
            return self.packs, self.amount
        if self.each_unit is not None:
            return in_base(bar, self.amount)[0] / in_base(bar, self.each_unit)[0], self.each_unit
        if self.each_pack or (self.at and not self.in_all):
            return self.amount.number, Quantity(Fraction(1), self.amount.unit)
        return Fraction(1), self.amount


@dataclass(frozen=True, kw_only=True)
class BoughtArguments(Arguments):
    """The delivered items, and the day if it is not the current one."""

    lines: tuple[DeliveryArguments, ...]
    day: date | None = None


def _plain(turn: Turn, one: DeliveryArguments) -> DeliveryArguments:
    """Return a delivery with cases as packs, and a sum as the price in all."""
    if one.in_sum and not one.each_pack and one.each_unit is None:
        one = replace(one, in_all=True)
    if one.cases is None:
        return one
    content = one.waste_amount or content_of(turn, one.item, one.content)
    return replace(one, packs=one.cases, cases=None, content=content)


def _delivered(turn: Turn, one: DeliveryArguments) -> str:
    """Write a delivery as one would type it."""
    packs = "" if one.packs is None else f"{one.packs} x "
    each = " each" if one.each_pack else " in all" if one.in_all else ""
    if one.each_unit is not None:
        each = f" a {typed(one.each_unit).partition(' ')[2]}"
    paid = "" if one.paid is None else f"{' at' if one.at else ''} {one.paid}{each}"
    instead = "" if one.instead is None else f" instead {one.instead}"
    return f"{packs}{typed(one.amount)} {name_in_line(turn, one.item)}{paid}{instead}"


def _bought(turn: Turn, arguments: BoughtArguments) -> Reply:
    arguments = replace(arguments, lines=tuple(_plain(turn, one) for one in arguments.lines))
    said = "; ".join(_delivered(turn, one) for one in arguments.lines)
    line = with_day(f"bought {said}", arguments.day)
    for one in arguments.lines:
        amount, kind = in_base(turn.context.bar, one.amount)
        amount *= one.packs or 1
        believe(turn, "bought", one.item, amount, kind, named_amount(amount, kind, one.item, turn), line)
    if len(arguments.lines) == 1:
        return _one_bought(turn, arguments.lines[0], arguments.day)
    shown, entries = [], []
    for one in arguments.lines:
        answer = _one_bought(turn, one, arguments.day)
        shown.append(" ".join(block.text for block in answer.blocks if isinstance(block, Text)))
        entries.append((one.item.name, turn.context.entry or 0))
    first = ngettext("{count} delivery logged.", "{count} deliveries logged.", len(shown))
    first = first.format(count=len(shown))
    more = Button(_("More that came in"), "bought")
    return reply(of_day(turn, first, arguments.day), *shown, buttons=(*undo_each(entries), (more,)))


def _one_bought(turn: Turn, one: DeliveryArguments, day: date | None) -> Reply:
    context, item = turn.context, one.item
    if one.instead is not None:
        chain.undo(context, one.instead)
    paid = one.paid
    packs, content = one.in_packs(context.bar)
    before = prices.in_force(context, [item.id]).get(item.id)
    price = per_pack(one.in_all, packs, paid)
    bought = counts.buy(context, item.id, packs, content, price, day)
    entry = context.entry
    now = prices.in_force(context, [item.id]).get(item.id)
    shown = (packs, content) if one.packs is not None else (Fraction(1), one.amount)
    first = _("Bought: {what}").format(what=delivery_line(item, *shown, bought.amount))
    if bought.cost is not None:
        first += _(", {money}").format(money=show_money(bought.cost))
    lines: list[str] = []
    if paid is not None and one.packs is not None and packs != 1:
        lines.append(_("Understood: {money} a pack.").format(money=show_money(price or paid)))
    newer = bool(day_words(turn, day)) and before is not None and now is not None and before.id == now.id
    if now is not None and bought.cost is not None and not newer:
        lines.append(_("Price from now on: {price}.").format(price=pack_words(now)))
        if before is not None and before.dimension is now.dimension and before.id != now.id:
            lines.append(change_words(before, now))
    if bought.on_hand.counted_at is not None:
        there = named_amount(bought.on_hand.book, bought.on_hand.dimension, item, turn)
        lines.append(_("Should be on hand: {amount}").format(amount=there))
    rows: list[tuple[Button, ...]] = [(undo_button(turn), Button(_("More that came in"), "bought"))]
    if paid is not None and entry is not None and (other := _other_scope(one, before, now)):
        amount = typed(one.amount) if one.packs is None else f"{show_number(packs)} x {typed(content)}"
        label = _("{money} was for all") if other == "in all" else _("{money} was for one")
        line = f"bought {amount} #{item.id} {paid_words(paid)} {other} instead {entry}"
        rows.insert(0, (Button(label.format(money=show_money(paid)), with_day(line, day)),))
    said = of_day(turn, first + ".", day)
    return reply(said, *lines, buttons=tuple(rows), edits=one.instead is not None)


def _other_scope(one: DeliveryArguments, before: PriceView | None, now: PriceView | None) -> str:
    """Return the other thing that a price may have been for, 'each' or 'in all'; '' where it is plain."""
    if (one.amount.number if one.packs is None else one.packs) == 1 or one.each_unit is not None:
        return ""
    if one.in_all:
        return "each"
    if one.packs is not None or one.at:
        return "in all"
    if one.each_pack or before is None or now is None or before.dimension is not now.dimension:
        return ""
    return "each" if now.per_base < before.per_base / 2 else ""


def _accept_unit(turn: Turn, given: Given, value: Amount) -> Quantity:
    unit = turn.quantity(value, is_liquid(given[ITEM_SLOT]))
    amount = given.get(_AMOUNT)
    if amount is not None and dimension(unit.unit) is not dimension(amount.unit):
        first = _("That price is not in the measure of the amount.")
        raise Say(reply(first, _("Write what it cost in all, such as: 80 oranges 34.00")))
    return unit


_PACKS = Slot("packs", plain(Fraction))
_CONTENT = Slot("content", accept_amount, _ask_content, _wants_content, rule="content_answer_slot")
_AMOUNT = Slot(
    "waste_amount", accept_amount, ask_amount, lambda turn, given: _PACKS not in given and CASES not in given
)
_BOUGHT_SLOTS = (
    ITEM_SLOT,
    _PACKS,
    CASES,
    _CONTENT,
    _AMOUNT,
    Slot("paid", _accept_paid, _ask_paid, _wants_paid, rule="paid_answer_slot"),
    Slot("each_pack", said),
    Slot("in_all", said),
    Slot("in_sum", said),
    Slot("each_unit", _accept_unit),
    Slot("at", said),
    Slot("instead", accept_number),
)
_DELIVERIES = Lines(
    DeliveryArguments,
    _BOUGHT_SLOTS,
    (((ITEM_SLOT,), N_("what came in")), ((_AMOUNT, _CONTENT), N_("an amount"))),
    N_("80 oranges 34.00; 40 limes 8.00"),
)


def _buying_retold(turn: Turn, found: State) -> Retold | None:
    """Return a delivery as typed, unless it had a price: its packs are not known any more."""
    if counts.was_paid(turn.context, found.details):
        return None
    return retold_amount("bought", "item")(turn, found)


COMMANDS = (
    Command(
        "bought",
        N_("log what came in"),
        _bought,
        words=("buy", "delivery", "delivered", "received", "got in"),
        examples=(N_("bought 2 cases oranges 80 each 34.00"), N_("bought 80 oranges 34.00; 40 limes 8.00")),
        slots=(DAY_SLOT, *_BOUGHT_SLOTS),
        lines=_DELIVERIES,
        writes=True,
        menu=36,
        wishes=(Wish("bought", ("{day?} [{quantity?} {item} {money?}]", "{day?}"), between="; "),),
    ),
)

LOG_WORDS = (
    LogWords(
        "buy stock",
        N_("bought {amount}"),
        N_("{amount} bought"),
        amount_of,
        retold=_buying_retold,
    ),
)
