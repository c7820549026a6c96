"""Commands for deliveries and counts."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from decimal import Decimal
from fractions import Fraction

from bot.chat.dialogue.arguments import Arguments, Lines
from bot.chat.dialogue.command import Command, Wish
from bot.chat.dialogue.inputs.belief import believe, name_in_line
from bot.chat.dialogue.inputs.day import DAY_SLOT, day_words, of_day, with_day
from bot.chat.dialogue.inputs.fruit import new_fruit
from bot.chat.dialogue.inputs.money import as_money
from bot.chat.dialogue.inputs.names import known_ingredient, named_ingredient, words_of
from bot.chat.dialogue.inputs.shared_slots import accept_number, is_liquid, undo_button, undo_each
from bot.chat.dialogue.log_words import LogWords, Retold, amount_of, retold_amount
from bot.chat.dialogue.slots import DIGIT, Given, Question, Slot, columns, plain, said
from bot.chat.dialogue.turn import Say, Turn
from bot.chat.features.fruit.balance_words import named_amount, plain_amount, used_blocks, used_row
from bot.chat.features.money.prices import change_words, pack_words
from bot.chat.features.stock.delivery_words import delivery_line, paid_words, per_pack, typed
from bot.chat.grammar.syntax import Amount, Money, Named
from bot.chat.i18n.language import _, ngettext, show_money, show_number
from bot.chat.i18n.plurals import counted_name, singular
from bot.chat.reply.message import Button, Grid, Reply, Text, reply
from bot.trade.formulas.kinds import INGREDIENT_PROPERTIES, IngredientKind, guess_kind
from bot.trade.formulas.measures import Quantity
from bot.trade.words import N_
from bot.work.formulas import ingredients
from bot.work.formulas.formulas import in_base
from bot.work.formulas.ingredients import IngredientView
from bot.work.fruit import balance
from bot.work.log import chain
from bot.work.log.chain import State
from bot.work.money import prices
from bot.work.stock import counts
from bot.work.stock.on_hand import OnHand

# -- choosing item, amount and price -------------------------------------------------------


def _ask_item(turn: Turn, given: Given) -> Question:
    known = ingredients.all_of(turn.context)
    order = sorted(known, key=lambda one: (one.kind is not IngredientKind.FRUIT, one.name))
    return Question(
        _("What came in?"),
        columns([(one.name, f"#{one.id}") for one in order[:12]], 2),
        hint=_("2 cases oranges 80 each 34.00"),
    )


def _ask_counted(turn: Turn, given: Given) -> Question:
    return Question(_("What did you count?"), _ask_item(turn, given).choices, hint=_("oranges 24"))


def accept_item(turn: Turn, given: Given, value: Named) -> IngredientView:
    """Turn a name into an item that the bar buys; a common fruit name creates a new one."""
    known, typed = known_ingredient(turn, value), words_of(value)
    if known is None and guess_kind(singular(typed)) is IngredientKind.FRUIT:
        return new_fruit(turn, typed)
    return known or named_ingredient(turn, value)


def _is_liquid(item: IngredientView) -> bool | None:
    return False if item.kind is IngredientKind.FRUIT else is_liquid(item)


def _quantity(turn: Turn, item: IngredientView, value: Amount | Fraction) -> Quantity:
    if isinstance(value, Amount):
        return turn.quantity(value, _is_liquid(item))
    liquid = _is_liquid(item)
    if item.kind is not IngredientKind.FRUIT and liquid is not None and _measured(item):
        raise Say(reply(_("In which unit? Such as: {name} 500 ml, or 2 kg").format(name=item.name)))
    return Quantity(value, "each")


def _measured(item: IngredientView) -> bool:
    """Whether a bare number is ambiguous: liquids and powders are not counted by the piece."""
    return item.kind is not IngredientKind.OTHER and INGREDIENT_PROPERTIES[item.kind].is_liquid is not None


def _accept_amount(turn: Turn, given: Given, value: Amount | Fraction) -> Quantity:
    return _quantity(turn, given[_ITEM], value)


def _ask_amount(turn: Turn, given: Given) -> Question:
    name = counted_name(given[_ITEM].name, Fraction(2))
    choices = columns([(str(n), str(n)) for n in (0, 6, 12, 24, 40, 80)], 3)
    return Question(
        _("How many {name}?").format(name=name),
        (*choices, ((_("Other number"), DIGIT),)) if given[_ITEM].kind is IngredientKind.FRUIT else (),
        hint=_("24, or 1.2 kg"),
    )


def _ask_content(turn: Turn, given: Given) -> Question:
    if given[_ITEM].kind is IngredientKind.FRUIT:
        text = _("How much is in one? Such as: 80 each, or 5 kg")
    else:
        text = _("How much is in one? Such as: 70 cl, or 1 kg")
    return Question(text, hint=_("80 each"))


def _wants_content(turn: Turn, given: Given) -> bool:
    return _PACKS in given and _AMOUNT not in given and _CONTENT not in given


def _ask_paid(turn: Turn, given: Given) -> Question:
    each = _("What did one cost?") if _PACKS in given else _("What did it cost in all?")
    return Question(each, (((_("Not known"), "none"),),), hint="34.00")


def _wants_paid(turn: Turn, given: Given) -> bool:
    return given.guided


def _accept_paid(turn: Turn, given: Given, value: Money | str) -> Decimal | None:
    return None if isinstance(value, str) else as_money(value, turn.context.bar.currency)


# -- deliveries ----------------------------------------------------------------------------


@dataclass(frozen=True, kw_only=True)
class DeliveryArguments(Arguments):
    """One delivered item: packs with their content, or an amount; and the price paid.

    `each_pack` and `in_all` give the scope of the price; `instead` is the entry that this one replaces.
    """

    item: IngredientView
    packs: Fraction | None = None
    content: Quantity | None = None
    waste_amount: Quantity | None = None
    paid: Decimal | None = None
    each_pack: bool = False
    in_all: bool = False
    instead: int | None = None

    @property
    def amount(self) -> Quantity:
        """The content of one pack, or the whole amount without packs."""
        found = self.content or self.waste_amount
        if found is None:
            raise ValueError("a delivery has an amount")
        return found


@dataclass(frozen=True, kw_only=True)
class BoughtArguments(Arguments):
    """The delivered items, and the day if it is not the current one."""

    lines: tuple[DeliveryArguments, ...]
    day: date | None = None


@dataclass(frozen=True, kw_only=True)
class CountLineArguments(Arguments):
    """One counted item."""

    item: IngredientView
    waste_amount: Quantity


@dataclass(frozen=True, kw_only=True)
class CountArguments(Arguments):
    """The counted items, and the day if it is not the current one."""

    lines: tuple[CountLineArguments, ...]
    day: date | None = None


def _delivered(turn: Turn, one: DeliveryArguments) -> str:
    """Write a delivery as one would type it."""
    packs = "" if one.packs is None else f"{one.packs} x "
    each = " each" if one.each_pack else " in all" if one.in_all else ""
    paid = "" if one.paid is None else f" {one.paid}{each}"
    instead = "" if one.instead is None else f" instead {one.instead}"
    return f"{packs}{typed(one.amount)} {name_in_line(turn, one.item)}{paid}{instead}"


def _bought(turn: Turn, arguments: BoughtArguments) -> Reply:
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
    packs = Fraction(1) if one.packs is None else one.packs
    content, paid = one.amount, one.paid
    if one.packs is None and one.each_pack:  # '80 oranges 0.45 each': each is a pack of one
        packs, content = content.number, Quantity(Fraction(1), content.unit)
    before = prices.in_force(context, [item.id]).get(item.id)
    price = per_pack(one.in_all, packs, paid)
    bought = counts.buy(context, item.id, packs, content, price, day)
    entry = context.entry
    now = prices.in_force(context, [item.id]).get(item.id)
    first = _("Bought: {what}").format(what=delivery_line(item, packs, content, bought.amount))
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
    if paid is not None and one.packs is not None and packs != 1 and entry is not None:
        said = f"bought {show_number(packs)} x {typed(content)} #{item.id} {paid_words(paid)}"
        many = _("{money} was for one"), "each"
        label, other = many if one.in_all else (_("{money} was for all"), "in all")
        line = f"{said} {other} instead {entry}"
        rows.insert(0, (Button(label.format(money=show_money(paid)), with_day(line, day)),))
    said = of_day(turn, first + ".", day)
    return reply(said, *lines, buttons=tuple(rows), edits=one.instead is not None)


# -- counts --------------------------------------------------------------------------------


def _count(turn: Turn, arguments: CountArguments) -> Reply:
    said = "; ".join(f"{name_in_line(turn, one.item)} {typed(one.waste_amount)}" for one in arguments.lines)
    line = with_day(f"count {said}", arguments.day)
    for each in arguments.lines:
        amount, kind = in_base(turn.context.bar, each.waste_amount)
        believe(turn, "count", each.item, amount, kind, named_amount(amount, kind, each.item, turn), line)
    if len(arguments.lines) == 1:
        return _one_count(turn, arguments.lines[0], arguments.day)
    rows = [("", _("counted"), _("used"), _("lost"))]
    entries, beyond = [], []
    for one in arguments.lines:
        item = one.item
        now, _said = counts.count(turn.context, item.id, one.waste_amount, arguments.day)
        entries.append((item.name, turn.context.entry or 0))
        used = balance.used(turn.context, item.id)
        if used is not None and used.use.surplus:
            more = named_amount(Fraction(used.use.surplus), used.dimension, item, turn)
            beyond.append(
                _("{amount} more than there can be: a delivery or a count is missing.").format(amount=more)
            )
        cells = ("", "") if used is None else (used_row(turn, used)[1], used_row(turn, used)[3])
        rows.append((item.name, plain_amount(now.book, now.dimension, turn), *cells))
    first = ngettext("Counted: {count} thing.", "Counted: {count} things.", len(entries)).format(
        count=len(entries)
    )
    first = of_day(turn, first, arguments.day)
    lost = Text(_("“Lost” is used and not explained by what was logged; “?” where nothing was."))
    buttons = (*undo_each(entries), (Button(_("Count more"), "count"),))
    return Reply((Text(first, strong=True), Grid(tuple(rows)), *map(Text, beyond), lost), buttons)


def _one_count(turn: Turn, one: CountLineArguments, day: date | None) -> Reply:
    item = one.item
    now, by_book = counts.count(turn.context, item.id, one.waste_amount, day)
    first = _("Counted: {amount}.").format(amount=named_amount(now.book, now.dimension, item, turn))
    first = of_day(turn, first, day)
    used = balance.used(turn.context, item.id)
    buttons = ((undo_button(turn), Button(_("Count more"), "count")),)
    if used is None:
        return reply(first, _("First count. After the next one I'll know what you used."), buttons=buttons)
    if item.kind is not IngredientKind.FRUIT:
        return reply(first, *_book_line(turn, item, now, by_book), buttons=buttons)
    return Reply((Text(first, strong=True), *used_blocks(turn, used)), buttons)


def _book_line(turn: Turn, item: IngredientView, now: OnHand, said: Fraction | None) -> list[str]:
    if said is None:
        return []
    less = said - now.book
    if not less:
        return [_("Just as logged.")]
    amount = named_amount(abs(less), now.dimension, item, turn)
    if less > 0:
        return [_("{amount} less than logged: used or lost, and nobody wrote it down.").format(amount=amount)]
    return [_("{amount} more than logged: a delivery or a count is missing.").format(amount=amount)]


_ITEM = Slot("item", accept_item, _ask_item)
_PACKS = Slot("packs", plain(Fraction))
_CONTENT = Slot("content", _accept_amount, _ask_content, _wants_content)
_AMOUNT = Slot("waste_amount", _accept_amount, _ask_amount, lambda turn, given: _PACKS not in given)
_BOUGHT_SLOTS = (
    _ITEM,
    _PACKS,
    _CONTENT,
    _AMOUNT,
    Slot("paid", _accept_paid, _ask_paid, _wants_paid, rule="paid_answer_slot"),
    Slot("each_pack", said),
    Slot("in_all", said),
    Slot("instead", accept_number),
)
_DELIVERIES = Lines(
    DeliveryArguments,
    _BOUGHT_SLOTS,
    (((_ITEM,), N_("what came in")), ((_AMOUNT, _CONTENT), N_("an amount"))),
    N_("80 oranges 34.00; 40 limes 8.00"),
)
_COUNTED = Slot("waste_amount", _accept_amount, _ask_amount)
_COUNT_SLOTS = (Slot("item", accept_item, _ask_counted), _COUNTED)
_COUNTS = Lines(
    CountLineArguments,
    _COUNT_SLOTS,
    (((_ITEM,), N_("what was counted")), ((_COUNTED,), N_("a number"))),
    N_("oranges 24, limes 30"),
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
    Command(
        "count",
        N_("log what is on hand"),
        _count,
        words=("counted",),
        examples=(N_("count oranges 24, limes 30"), N_("count neutral spirit 600 ml")),
        slots=(DAY_SLOT, *_COUNT_SLOTS),
        lines=_COUNTS,
        writes=True,
        menu=38,
        wishes=(Wish("count", ("[{item} {quantity?}]", "")),),
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
    LogWords(
        "count stock",
        N_("counted {amount}"),
        N_("{amount} counted"),
        amount_of,
        retold=retold_amount("count", "item"),
    ),
)
