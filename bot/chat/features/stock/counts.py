"""The command count: what is on hand, and what must have been used since the last count."""

from __future__ import annotations

from dataclasses import dataclass, replace
from datetime import date
from fractions import Fraction

from bot.chat.dialogue.arguments import Arguments, Lines
from bot.chat.dialogue.command import Command, Wish
from bot.chat.dialogue.inputs.belief import believe, name_in_line
from bot.chat.dialogue.inputs.cases import CASES, content_slot, in_cases, noting_case
from bot.chat.dialogue.inputs.day import DAY_SLOT, of_day, with_day
from bot.chat.dialogue.inputs.shared_slots import undo_button, undo_each
from bot.chat.dialogue.log_words import LogWords, amount_of, retold_amount
from bot.chat.dialogue.slots import Given, Question, Slot
from bot.chat.dialogue.turn import Turn
from bot.chat.features.fruit.balance_words import named_amount, plain_amount, used_blocks, used_row
from bot.chat.features.stock.delivery_words import typed
from bot.chat.features.stock.stock_items import ITEM_SLOT, accept_amount, ask_amount, ask_item
from bot.chat.i18n.language import _, ngettext
from bot.chat.reply.message import Button, Grid, Reply, Text, reply
from bot.trade.formulas.kinds import IngredientKind
from bot.trade.formulas.measures import Quantity
from bot.trade.words import N_
from bot.work.formulas.formulas import in_base
from bot.work.formulas.ingredients import IngredientView
from bot.work.fruit import balance
from bot.work.stock import counts
from bot.work.stock.on_hand import OnHand


@dataclass(frozen=True, kw_only=True)
class CountLineArguments(Arguments):
    """One counted item with its amount, or with the cases of it."""

    item: IngredientView
    waste_amount: Quantity | None = None
    cases: Fraction | None = None
    content: Quantity | None = None

    def amount(self, turn: Turn) -> Quantity:
        """Return the counted amount. Raises Say where nothing tells what a case holds."""
        if self.cases is not None:
            return in_cases(turn, self.item, self.cases, self.content)
        if self.waste_amount is None:
            raise ValueError("a count has an amount")
        return self.waste_amount


@dataclass(frozen=True, kw_only=True)
class CountArguments(Arguments):
    """The counted items, and the day if it is not the current one."""

    lines: tuple[CountLineArguments, ...]
    day: date | None = None


def _ask_counted(turn: Turn, given: Given) -> Question:
    return Question(_("What did you count?"), ask_item(turn, given).choices, hint=_("oranges 24"))


def _count(turn: Turn, arguments: CountArguments) -> Reply:
    said = "; ".join(f"{name_in_line(turn, one.item)} {typed(one.amount(turn))}" for one in arguments.lines)
    line = with_day(f"count {said}", arguments.day)
    for each in arguments.lines:
        amount, kind = in_base(turn.context.bar, each.amount(turn))
        believe(turn, "count", each.item, amount, kind, named_amount(amount, kind, each.item, turn), line)
    if len(arguments.lines) == 1:
        (one,) = arguments.lines
        answer = _one_count(turn, one, arguments.day)
        return answer if one.cases is None else noting_case(turn, answer, one.item, one.content)
    rows = [("", _("counted"), _("used"), _("lost"))]
    entries, beyond = [], []
    for one in arguments.lines:
        item = one.item
        now, _said = counts.count(turn.context, item.id, one.amount(turn), arguments.day)
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
    now, by_book = counts.count(turn.context, item.id, one.amount(turn), day)
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


_COUNTED = Slot("waste_amount", accept_amount, ask_amount, lambda turn, given: CASES not in given)
_ITEM = replace(ITEM_SLOT, ask=_ask_counted)
_COUNT_SLOTS = (_ITEM, CASES, content_slot(_ITEM), _COUNTED)
_COUNTS = Lines(
    CountLineArguments,
    _COUNT_SLOTS,
    (((_ITEM,), N_("what was counted")), ((_COUNTED, CASES), N_("a number"))),
    N_("oranges 24, limes 30"),
)


COMMANDS = (
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
        "count stock",
        N_("counted {amount}"),
        N_("{amount} counted"),
        amount_of,
        retold=retold_amount("count", "item"),
    ),
)
