"""The command label: a sheet to print and a picture of it."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from bot.chat.dialogue.arguments import Arguments
from bot.chat.dialogue.command import Command, Wish
from bot.chat.dialogue.inputs.shared_slots import BATCH_SLOT
from bot.chat.dialogue.slots import Given, Question, Slot, columns
from bot.chat.dialogue.turn import Say, Turn
from bot.chat.features.labels.label_words import label_text, stock_words
from bot.chat.grammar.lexer import Noun
from bot.chat.i18n.language import _, ngettext, show_number
from bot.chat.reply.message import Block, Button, Caution, File, Reply, Text, reply
from bot.documents.labels.labels import MOST_COPIES
from bot.trade.words import N_
from bot.work.batches.batches import BatchView
from bot.work.labels import labels
from bot.work.labels.labels import ALL_STOCKS, LabelFacts, LabelStock, Printed

_MOST_STOCKS = 8


def _ask_stock(turn: Turn, given: Given) -> Question:
    units = turn.context.bar.units
    choices = [
        (stock_words(one, units), one.handle) for one in labels.offered(turn.context.bar)[:_MOST_STOCKS]
    ]
    others = [one.handle for one in labels.offered(turn.context.bar)[_MOST_STOCKS:]]
    hint = ", ".join(others[:3])
    return Question(_("Which labels are in the printer?"), columns(choices, 1), hint=hint)


def _accept_stock(turn: Turn, given: Given, value: Noun) -> LabelStock:
    return ALL_STOCKS[value.id]


def _wants_stock(turn: Turn, given: Given) -> bool:
    return not turn.context.bar.settings.labels


def _ask_copies(turn: Turn, given: Given) -> Question:
    facts = labels.facts_of(turn.context, given[BATCH_SLOT].number)
    stock = given.get(_STOCK) or labels.stock_for(turn.context.bar)
    wanted = dict.fromkeys([facts.bottles, 1, stock.per_page])
    names = {facts.bottles: _("one per bottle"), stock.per_page: _("a whole sheet"), 1: _("one")}
    names[facts.bottles] = _("one per bottle")
    choices = [
        (f"{show_number(count, 0)} ({names[count]})", str(count)) for count in wanted if count <= MOST_COPIES
    ]
    more = [((_("Another number"), "+"),)]
    return Question(_("How many labels?"), (*columns(choices, 1), *more), hint=str(facts.bottles))


def _whole(value: Fraction, high: int) -> int:
    if value.denominator != 1 or not 1 <= value <= high:
        raise Say(reply(_("A whole number from 1 to {most}, please.").format(most=show_number(high, 0))))
    return int(value)


def _accept_copies(turn: Turn, given: Given, value: Fraction) -> int:
    return _whole(value, MOST_COPIES)


def _accept_first(turn: Turn, given: Given, value: Fraction) -> int:
    stock = given.get(_STOCK) or labels.stock_for(turn.context.bar)
    return _whole(value, stock.per_page)


@dataclass(frozen=True, kw_only=True)
class LabelArguments(Arguments):
    """A batch, the paper in the printer, the number of labels, and the first free place on the sheet."""

    batch: BatchView
    copies: int
    stock: LabelStock | None = None
    first: int = 1


def _label(turn: Turn, arguments: LabelArguments) -> Reply:
    facts = labels.facts_of(turn.context, arguments.batch.number)
    stock = arguments.stock or labels.stock_for(turn.context.bar)
    text = label_text(turn, facts)
    printed = labels.print_labels(text, stock, arguments.copies, arguments.first)
    number, copies = facts.batch.number, arguments.copies
    first = ngettext(
        "{count} label for batch {number}, {name}", "{count} labels for batch {number}, {name}", copies
    ).format(count=show_number(copies, 0), number=number, name=facts.batch.name)
    lines: list[Block] = [Text(stock_words(stock, turn.context.bar.units)), *_notes(printed, stock, facts)]
    name = f"batch-{number}-labels"
    files = (
        File(f"{name}.png", printed.preview.png, picture=True, caption=_("How it will look")),
        File(f"{name}.pdf", printed.sheet.pdf),
    )
    return Reply(
        (Text(first, strong=True), *lines),
        _buttons(turn, number, stock, copies),
        files=files,
        edits=turn.message.tapped is not None,
    )


def _notes(printed: Printed, stock: LabelStock, facts: LabelFacts) -> list[Block]:
    lines = []
    if stock.paper:
        lines.append(_("Print at 100 %, not “fit to page”."))
    if facts.blind is not None:
        lines.append(_("Blind trial: every bottle gets the same label, that of the strongest."))
    elif facts.checked_clear_on is None:
        lines.append(_("Nobody has seen it clear yet, so the label does not say so."))
    if printed.sheet.continued:
        lines.append(_("The text needs two labels for each bottle. A larger label holds it in one."))
    if printed.sheet.link_left_out:
        lines.append(_("These labels are too small for the QR symbol."))
    if printed.sheet.missing_glyphs:
        lines.append(
            _("I can't print {signs}: an empty square takes its place.").format(
                signs=" ".join(printed.sheet.missing_glyphs[:10])
            )
        )
    check = _("Local rules on labels differ: ask your inspector what yours must say.")
    return [*(Text(line) for line in lines), Caution(check)]


def _buttons(turn: Turn, number: int, stock: LabelStock, copies: int) -> tuple[tuple[Button, ...], ...]:
    others = [one for one in labels.offered(turn.context.bar) if one != stock][:2]
    units = turn.context.bar.units
    rows = [(Button(stock_words(one, units), f"label {number} {one.handle} x{copies}"),) for one in others]
    last = [Button(_("Show batch {number}").format(number=number), f"batch {number}")]
    if turn.context.role.manages and turn.context.bar.settings.labels != stock.name:
        last.append(Button(_("Always this paper"), f"bar label paper {stock.handle}"))
    return (*rows, tuple(last))


_STOCK = Slot("stock", _accept_stock, _ask_stock, _wants_stock)

COMMANDS = (
    Command(
        "label",
        N_("labels for a batch, to print"),
        _label,
        words=(
            *("labels", "print labels", "print label", "print", "label for", "labels for"),
            *("print labels for", "print label for"),
        ),
        examples=(N_("label 12"), N_("label 12 a4-3x7 x8"), N_("label 12 x4 from 9")),
        slots=(
            BATCH_SLOT,
            _STOCK,
            Slot("copies", _accept_copies, _ask_copies),
            Slot("first", _accept_first),
        ),
        menu=28,
        wishes=(Wish("label", ("{formula} {copies?}", "{batch?} {copies?}", "{batch?}")),),
    ),
)
