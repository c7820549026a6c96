"""The command stock: the amounts on hand, counted or bought."""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal
from fractions import Fraction

from bot.chat.dialogue.arguments import Arguments
from bot.chat.dialogue.command import Command, Wish
from bot.chat.dialogue.inputs.cases import CASES, content_slot, in_cases, noting_case
from bot.chat.dialogue.inputs.money import as_money
from bot.chat.dialogue.inputs.names import known_ingredient, words_of
from bot.chat.dialogue.inputs.naming import what_is
from bot.chat.dialogue.inputs.shared_slots import ask_item, is_liquid, undo_button
from bot.chat.dialogue.slots import Given, Question, Slot, said
from bot.chat.dialogue.turn import Say, Turn
from bot.chat.grammar.syntax import Amount, Named, PacksBought, Unknown
from bot.chat.i18n.language import _, ngettext, show_day, show_money, show_number
from bot.chat.i18n.plurals import singular
from bot.chat.reply.message import Block, Button, Grid, Reply, Text, reply
from bot.chat.reply.units import show_amount
from bot.trade.days import local_time
from bot.trade.formulas.kinds import IngredientKind, guess_kind
from bot.trade.formulas.measures import Dimension, Quantity
from bot.trade.words import N_
from bot.work.formulas.formulas import in_base
from bot.work.formulas.ingredients import IngredientView
from bot.work.stock import counts
from bot.work.stock import on_hand as stock
from bot.work.stock.on_hand import OnHand

_MOST_LISTED = 10
_WHOLE_FROM = 10  # pieces: from this number on, fractions are not shown


def amount_words(turn: Turn, amount: Fraction, dimension: Dimension) -> str:
    """Write an amount of stock: '1,400 ml', '12 pieces'."""
    if dimension is Dimension.COUNT:
        # Weighed waste leaves fractions of a fruit in the book, which nobody can count on a shelf.
        return ngettext("{count} piece", "{count} pieces", 1 if amount == 1 else 2).format(
            count=show_number(amount, 0 if amount >= _WHOLE_FROM else 1)
        )
    return show_amount(amount, dimension, turn.context.bar.units)


# -- slots ---------------------------------------------------------------------------------


def accept_item(turn: Turn, given: Given, value: Named) -> IngredientView:
    """Turn a name into an ingredient; suggest near names if there is none, or ask if it is new."""
    known = known_ingredient(turn, value)
    if known is None and given.words.keys() & {"on_hand", "stock_packs", "cases"}:
        name = words_of(value)
        raise what_is(turn, name, fruit=guess_kind(singular(name)) is IngredientKind.FRUIT)
    if known is None:
        raise Say(_unknown(turn, words_of(value)))
    return known


def _unknown(turn: Turn, name: str) -> Reply:
    known = turn.not_known(Unknown(name), "INGREDIENT", _("ingredient"))
    more = _("Add a new one by its price, or in a formula: price {name} 1 l 24")
    return Reply((*known.blocks, Text(more.format(name=name))), known.buttons)


def _ask_on_hand(turn: Turn, given: Given) -> Question:
    item = given[_ITEM]
    return Question(_("How much {name} is there?").format(name=item.name), hint=_("1.4 l"))


def _ask_packs(turn: Turn, given: Given) -> Question:
    item = given[_ITEM]
    return Question(
        _("How much {name} was bought? Packs, size and price of one: 3 x 1 l 24").format(name=item.name),
        hint="3 x 1 l 24",
    )


def quantity_of(turn: Turn, item: IngredientView, value: Amount | Fraction) -> Quantity:
    """Turn a typed amount into an amount of an ingredient; a bare number is in pieces if possible."""
    if isinstance(value, Amount):
        return turn.quantity(value, is_liquid(item))
    there = stock.on_hand(turn.context, [item.id]).get(item.id)
    if is_liquid(item) is not True and (there is None or there.dimension is Dimension.COUNT):
        return Quantity(value, "each")
    raise Say(
        reply(
            _("{number} of what? Write the unit too, such as {number} l or {number} g.").format(
                number=show_number(value, 3)
            )
        )
    )


def _accept_amount(turn: Turn, given: Given, value: Amount | Fraction) -> Quantity:
    return quantity_of(turn, given[_ITEM], value)


def _accept_packs(turn: Turn, given: Given, value: PacksBought) -> tuple[Fraction, Quantity, Decimal | None]:
    price = None if value.price is None else as_money(value.price, turn.context.bar.currency)
    return value.count, quantity_of(turn, given[_ITEM], value.pack), price


# -- stock ---------------------------------------------------------------------------------


@dataclass(frozen=True, kw_only=True)
class StockArguments(Arguments):
    """An ingredient and its bought or counted amount; nothing to show the stock."""

    item: IngredientView | None = None
    stock_packs: tuple[Fraction, Quantity, Decimal | None] | None = None
    on_hand: Quantity | None = None
    cases: Fraction | None = None
    content: Quantity | None = None
    bought: bool = False
    counted: bool = False
    everything: bool = False


def _stock(turn: Turn, arguments: StockArguments) -> Reply:
    item = arguments.item
    if item is None:
        return _list(turn, arguments.everything)
    if arguments.stock_packs is not None:
        return _bought(turn, item, *arguments.stock_packs)
    if arguments.cases is not None:
        amount = in_cases(turn, item, arguments.cases, arguments.content)
        return noting_case(turn, _counted(turn, item, amount), item, arguments.content)
    return _card(turn, item) if arguments.on_hand is None else _counted(turn, item, arguments.on_hand)


def _bought(
    turn: Turn, item: IngredientView, count: Fraction, pack: Quantity, price: Decimal | None
) -> Reply:
    bought = counts.buy(turn.context, item.id, count, pack, price)
    there = bought.on_hand
    first = _("Bought: {amount} {name}").format(
        amount=amount_words(turn, bought.amount, in_base(turn.context.bar, pack)[1]), name=item.name
    )
    first += "." if bought.cost is None else f", {show_money(bought.cost)}."
    return reply(first, on_hand_line(turn, there), *_notes(turn, there), buttons=(_after(turn, item),))


def on_hand_line(turn: Turn, there: OnHand) -> str:
    """Write the amount on hand: 'On hand: 1,400 ml'."""
    return _("On hand: {amount}").format(amount=amount_words(turn, there.amount, there.dimension))


def _after(turn: Turn, item: IngredientView) -> tuple[Button, ...]:
    return undo_button(turn), Button(_("Par"), f"par #{item.id}"), Button(_("All stock"), "stock")


def _notes(turn: Turn, there: OnHand) -> list[str]:
    notes = []
    if there.book < 0:
        notes.append(
            _("{amount} more used than came in: please count it.").format(
                amount=amount_words(turn, -there.book, there.dimension)
            )
        )
    if there.par is not None:
        par = amount_words(turn, there.par, there.dimension)
        text = _("Below its par of {par}.") if there.low else _("Par: {par}")
        notes.append(text.format(par=par))
    return notes


def _counted(turn: Turn, item: IngredientView, amount: Quantity) -> Reply:
    there, said = counts.count(turn.context, item.id, amount)
    first = _("{name}: {amount} on hand.").format(
        name=item.name, amount=amount_words(turn, there.amount, there.dimension)
    )
    lines = []
    if said is not None and said != there.amount:
        gone = said - there.amount
        text = (
            _("It should be {book}: {difference} missing, and not logged.")
            if gone > 0
            else _("It should be {book}: {difference} more than logged.")
        )
        lines.append(
            text.format(
                book=amount_words(turn, said, there.dimension),
                difference=amount_words(turn, abs(gone), there.dimension),
            )
        )
    return reply(first, *lines, *_notes(turn, there), buttons=(_after(turn, item),))


def _card(turn: Turn, item: IngredientView) -> Reply:
    there = stock.on_hand(turn.context, [item.id]).get(item.id)
    ways = (
        (Button(_("Count it"), f"stock count #{item.id}"), Button(_("Bought"), f"stock bought #{item.id}")),
        (Button(_("Par"), f"par #{item.id}"), Button(_("All stock"), "stock")),
    )
    if there is None:
        return reply(
            _("{name} was never counted.").format(name=item.name),
            _("Count it once: stock {name} 1.4 l").format(name=item.name),
            buttons=ways,
        )
    first = _("{name}: {amount} on hand.").format(
        name=item.name, amount=amount_words(turn, there.amount, there.dimension)
    )
    if there.counted_at is None:
        since = _("From deliveries only; never counted.")
    else:
        day = local_time(there.counted_at, turn.context.bar.zone).date()
        since = _("Counted {day}, less what batches took since.").format(day=show_day(day))
    return reply(first, since, *_notes(turn, there), buttons=ways)


def _list(turn: Turn, everything: bool) -> Reply:
    known = stock.listed(turn.context)
    if not known:
        return reply(
            _("Nothing is counted yet."),
            _("Count what is there: stock neutral spirit 1.4 l"),
            _("Or note what comes in: stock bought neutral spirit 3 x 1 l 24 each"),
            buttons=((Button(_("Count something"), "stock count"), Button(_("Bought"), "stock bought")),),
        )
    low = [one for one in known if one.low]
    first = ngettext("{count} ingredient on hand", "{count} ingredients on hand", len(known)).format(
        count=len(known)
    )
    if low:
        first = ngettext("{count} below par: {names}", "{count} below par: {names}", len(low)).format(
            count=len(low), names=", ".join(one.ingredient.name for one in low[:3])
        )
    shown = known if everything else known[:_MOST_LISTED]
    rows = tuple(
        (one.ingredient.name + (" *" if one.low else ""), amount_words(turn, one.amount, one.dimension))
        for one in shown
    )
    blocks: list[Block] = [Text(first, strong=True), Grid(rows)]
    if low:
        blocks.append(Text(_("* below its par")))
    overdrawn = [one.ingredient.name for one in known if one.book < 0]
    if overdrawn:
        blocks.append(
            Text(_("More used than came in, so please count: {names}").format(names=", ".join(overdrawn[:5])))
        )
    last = [Button(_("What can I make?"), "can make"), Button(_("Shopping list"), "shopping")]
    if len(shown) < len(known):
        last.insert(0, Button(_("All {count}").format(count=len(known)), "stock all"))
    row = (Button(_("Count something"), "stock count"), Button(_("Bought"), "stock bought"))
    return Reply(tuple(blocks), (row, tuple(last)))


_BOUGHT = Slot("bought", said)
_COUNTED = Slot("counted", said)


def _needs_item(turn: Turn, given: Given) -> bool:
    return _BOUGHT in given or _COUNTED in given


_ITEM = Slot("item", accept_item, ask_item, _needs_item)

COMMANDS = (
    Command(
        "stock",
        N_("what is on hand; count it, or note what was bought"),
        _stock,
        words=("on hand", "in stock", "inventory"),
        examples=(N_("stock neutral spirit 1.4 l"), N_("stock bought neutral spirit 3 x 1 l 24 each")),
        slots=(
            _BOUGHT,
            _COUNTED,
            Slot("everything", said),
            _ITEM,
            CASES,
            content_slot(_ITEM),
            Slot("stock_packs", _accept_packs, _ask_packs, lambda turn, given: _BOUGHT in given),
            Slot("on_hand", _accept_amount, _ask_on_hand, lambda turn, given: _COUNTED in given),
        ),
        writes=True,
        menu=52,
        wishes=(Wish("stock", ("{item?}",), shows=True),),
    ),
)
