"""What came in, and what is counted."""

from __future__ import annotations

from decimal import Decimal
from fractions import Fraction
from typing import Any

from bot.chat.dialogue.command import Command
from bot.chat.dialogue.log_words import LogWords
from bot.chat.dialogue.money_input import as_money
from bot.chat.dialogue.naming import known_ingredient
from bot.chat.dialogue.shared_slots import each_line, is_liquid, never, undo_button, undo_each
from bot.chat.dialogue.slots import DIGIT, Question, Slot, columns
from bot.chat.dialogue.turn import Given, Say, Turn
from bot.chat.features.fruit.balance_words import named_amount, plain_amount, used_blocks, used_row
from bot.chat.features.money.prices import change_words, pack_words
from bot.chat.grammar.syntax import Amount, Money
from bot.chat.i18n.language import _, ngettext, show_money, show_number
from bot.chat.i18n.plurals import counted_name, pieces, singular
from bot.chat.reply.message import Button, Grid, Reply, Text, reply
from bot.chat.reply.units import show_quantity
from bot.trade.formulas.kinds import INGREDIENT_PROPERTIES, IngredientKind, guess_kind
from bot.trade.formulas.measures import Quantity
from bot.trade.words import N_
from bot.work.formulas import ingredients
from bot.work.formulas.ingredients import IngredientView
from bot.work.fruit import balance
from bot.work.log import undo
from bot.work.money import prices
from bot.work.stock import counts
from bot.work.stock.on_hand import OnHand

# -- what, how much, for how much ----------------------------------------------------------


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


def accept_item(turn: Turn, given: Given, value: Any) -> IngredientView:
    """Turn a name into what the bar buys; an ordinary name for a fruit makes a new one."""
    known = known_ingredient(turn, value)
    if known is not None:
        return known
    name = singular(value.text)
    if guess_kind(name) is IngredientKind.FRUIT:
        return ingredients.add(turn.context, name, IngredientKind.FRUIT)
    raise Say(turn.not_known(value, "INGREDIENT", _("ingredient")))


def _is_liquid(item: IngredientView) -> bool | None:
    return False if item.kind is IngredientKind.FRUIT else is_liquid(item)


def _quantity(turn: Turn, item: IngredientView, value: Any) -> Quantity:
    if isinstance(value, Amount):
        return turn.quantity(value, _is_liquid(item))
    liquid = _is_liquid(item)
    if item.kind is not IngredientKind.FRUIT and liquid is not None and _measured(item):
        raise Say(reply(_("In which unit? Such as: {name} 500 ml, or 2 kg").format(name=item.name)))
    return Quantity(Fraction(value), "each")


def _measured(item: IngredientView) -> bool:
    """Whether a bare number says nothing: liquids and powders are not counted by the piece."""
    return item.kind is not IngredientKind.OTHER and INGREDIENT_PROPERTIES[item.kind].is_liquid is not None


def _accept_amount(turn: Turn, given: Given, value: Any) -> Quantity:
    return _quantity(turn, given["item"], value)


def _ask_amount(turn: Turn, given: Given) -> Question:
    name = counted_name(given["item"].name, Fraction(2))
    choices = columns([(str(n), str(n)) for n in (0, 6, 12, 24, 40, 80)], 3)
    return Question(
        _("How many {name}?").format(name=name),
        (*choices, ((_("Other number"), DIGIT),)) if given["item"].kind is IngredientKind.FRUIT else (),
        hint=_("24, or 1.2 kg"),
    )


def _ask_content(turn: Turn, given: Given) -> Question:
    if given["item"].kind is IngredientKind.FRUIT:
        text = _("How much is in one? Such as: 80 each, or 5 kg")
    else:
        text = _("How much is in one? Such as: 70 cl, or 1 kg")
    return Question(text, hint=_("80 each"))


def _wants_content(turn: Turn, given: Given) -> bool:
    return "packs" in given and "waste_amount" not in given and "content" not in given


def _ask_paid(turn: Turn, given: Given) -> Question:
    each = _("What did one cost?") if "packs" in given else _("What did it cost in all?")
    return Question(each, (((_("Not known"), "none"),),), hint="34.00")


def _wants_paid(turn: Turn, given: Given) -> bool:
    return given.guided


def _accept_paid(turn: Turn, given: Given, value: Money | str) -> Decimal | None:
    return None if isinstance(value, str) else as_money(value, turn.context.bar.currency)


# -- bought --------------------------------------------------------------------------------


def _bought(turn: Turn, given: Given) -> Reply:
    if not given.lines:
        return _one_bought(turn, given)
    needed = ((("item",), _("what came in")), (("waste_amount", "content"), _("an amount")))
    said, entries = [], []
    for one in each_line(turn, given, _BOUGHT_SLOTS, needed, _("80 oranges 34.00; 40 limes 8.00")):
        answer = _one_bought(turn, one)
        said.append(" ".join(block.text for block in answer.blocks if isinstance(block, Text)))
        entries.append((one["item"].name, turn.context.entry or 0))
    first = ngettext("{count} delivery logged.", "{count} deliveries logged.", len(said)).format(
        count=len(said)
    )
    more = Button(_("More that came in"), "bought")
    return reply(first, *said, buttons=(*undo_each(entries), (more,)))


def _one_bought(turn: Turn, given: Given) -> Reply:
    context, item = turn.context, given["item"]
    if "instead" in given:
        undo.take_back(context, int(given["instead"]))
    packs = Fraction(given.get("packs", 1))
    content: Quantity = given["content"] if "content" in given else given["waste_amount"]
    paid: Decimal | None = given.get("paid")
    if "packs" not in given and "each_pack" in given:  # '80 oranges 0.45 each': each is a pack of one
        packs, content = content.number, Quantity(Fraction(1), content.unit)
    before = prices.in_force(context, [item.id]).get(item.id)
    price = _per_pack(given, packs, paid)
    bought = counts.buy(context, item.id, packs, content, price)
    entry = context.entry
    now = prices.in_force(context, [item.id]).get(item.id)
    first = _("Bought: {what}").format(what=_what(item, packs, content, bought.amount, bought.on_hand))
    if bought.cost is not None:
        first += _(", {money}").format(money=show_money(bought.cost))
    lines: list[str] = []
    if paid is not None and "packs" in given and packs != 1:
        lines.append(_("Understood: {money} a pack.").format(money=show_money(price or paid)))
    if now is not None and bought.cost is not None:
        lines.append(_("Price from now on: {price}.").format(price=pack_words(now)))
        if before is not None and before.dimension is now.dimension and before.id != now.id:
            lines.append(change_words(before, now))
    if bought.on_hand.counted_at is not None:
        there = named_amount(bought.on_hand.book, bought.on_hand.dimension, item, turn)
        lines.append(_("On hand by the book: {amount}").format(amount=there))
    rows: list[tuple[Button, ...]] = [(undo_button(turn), Button(_("More that came in"), "bought"))]
    if paid is not None and "packs" in given and packs != 1 and entry is not None:
        said = f"bought {show_number(packs)} x {_typed(content)} #{item.id} {_money(paid)}"
        if "in_all" in given:
            other = (_("{money} was for one").format(money=show_money(paid)), f"{said} each instead {entry}")
        else:
            other = (
                _("{money} was for all").format(money=show_money(paid)),
                f"{said} in all instead {entry}",
            )
        rows.insert(0, (Button(*other),))
    return reply(first + ".", *lines, buttons=tuple(rows), edits="instead" in given)


def _typed(content: Quantity) -> str:
    return show_number(content.number) if content.unit == "each" else show_quantity(content)


def _money(paid: Decimal) -> str:
    return show_number(Fraction(paid), 4)


def _per_pack(given: Given, packs: Fraction, paid: Decimal | None) -> Decimal | None:
    """Return what one pack cost: as said for each, or all of it shared out."""
    if paid is None:
        return None
    if "in_all" in given:
        return paid * packs.denominator / packs.numerator
    return paid


def _what(item: IngredientView, packs: Fraction, content: Quantity, amount: Fraction, there: OnHand) -> str:
    """Write what came in: '160 oranges (2 packs of 80)'."""
    if content.unit == "each":
        text = pieces(item.name, amount)
        inside = show_number(content.number)
    else:
        inside = show_quantity(content)
        text = f"{show_quantity(Quantity(content.number * packs, content.unit))} {item.name}"
    if packs == 1 or content == Quantity(Fraction(1), "each"):
        return text
    count = ngettext("{count} pack of {size}", "{count} packs of {size}", int(packs)).format(
        count=show_number(packs), size=inside
    )
    return f"{text} ({count})"


# -- count ---------------------------------------------------------------------------------


def _count(turn: Turn, given: Given) -> Reply:
    if not given.lines:
        return _one_count(turn, given)
    needed = ((("item",), _("what was counted")), (("waste_amount",), _("a number")))
    rows = [("", _("counted"), _("used"), _("lost"))]
    entries, beyond = [], []
    for one in each_line(turn, given, _COUNT_SLOTS, needed, _("oranges 24, limes 30")):
        item = one["item"]
        now, _said = counts.count(turn.context, item.id, one["waste_amount"])
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
    lost = Text(_("“Lost” is used and not explained by what was logged; “?” where nothing was."))
    buttons = (*undo_each(entries), (Button(_("Count more"), "count"),))
    return Reply((Text(first, strong=True), Grid(tuple(rows)), *map(Text, beyond), lost), buttons)


def _one_count(turn: Turn, given: Given) -> Reply:
    item = given["item"]
    now, said = counts.count(turn.context, item.id, given["waste_amount"])
    first = _("Counted: {amount}.").format(amount=named_amount(now.book, now.dimension, item, turn))
    used = balance.used(turn.context, item.id)
    buttons = ((undo_button(turn), Button(_("Count more"), "count")),)
    if used is None:
        return reply(first, _("First count: from the next one on I know what was used."), buttons=buttons)
    if item.kind is not IngredientKind.FRUIT:
        return reply(first, *_book_line(turn, item, now, said), buttons=buttons)
    return Reply((Text(first, strong=True), *used_blocks(turn, used)), buttons)


def _book_line(turn: Turn, item: IngredientView, now: OnHand, said: Fraction | None) -> list[str]:
    if said is None:
        return []
    less = said - now.book
    if not less:
        return [_("The book said the same.")]
    amount = named_amount(abs(less), now.dimension, item, turn)
    if less > 0:
        return [_("The book said {amount} more: used or lost, and not logged.").format(amount=amount)]
    return [_("The book said {amount} less: a delivery or a count is missing.").format(amount=amount)]


_BOUGHT_SLOTS = (
    Slot("item", _ask_item, accept=accept_item),
    Slot("packs", _ask_content, never),
    Slot("content", _ask_content, _wants_content, _accept_amount),
    Slot("waste_amount", _ask_amount, lambda turn, given: "packs" not in given, _accept_amount),
    Slot("paid", _ask_paid, _wants_paid, _accept_paid, rule="paid_answer_slot"),
    Slot("each_pack", _ask_paid, never),
    Slot("in_all", _ask_paid, never),
    Slot("instead", _ask_paid, never),
)
_COUNT_SLOTS = (
    Slot("item", _ask_counted, accept=accept_item),
    Slot("waste_amount", _ask_amount, accept=_accept_amount),
)

COMMANDS = (
    Command(
        "bought",
        N_("log what came in"),
        _bought,
        words=("buy", "delivery", "delivered", "received", "got in"),
        examples=(N_("bought 2 cases oranges 80 each 34.00"), N_("bought 80 oranges 34.00; 40 limes 8.00")),
        slots=_BOUGHT_SLOTS,
        writes=True,
        menu=36,
    ),
    Command(
        "count",
        N_("log what is on hand"),
        _count,
        words=("counted",),
        examples=(N_("count oranges 24, limes 30"), N_("count neutral spirit 600 ml")),
        slots=_COUNT_SLOTS,
        writes=True,
        menu=38,
    ),
)

LOG_WORDS = (
    LogWords(
        "buy stock",
        N_("bought {name}"),
        N_("What was bought of {name} is taken back, and its price with it."),
    ),
    LogWords("count stock", N_("counted {name}"), N_("The count of {name} is taken back.")),
)
