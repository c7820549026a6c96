"""The command waste: discarded fruit, juice, bottles and more, in one line or by taps."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from datetime import date
from decimal import Decimal
from fractions import Fraction

from bot.chat.dialogue.arguments import Arguments, Lines
from bot.chat.dialogue.command import Command, Wish
from bot.chat.dialogue.examples import fruit_choices
from bot.chat.dialogue.inputs.belief import believe, name_in_line
from bot.chat.dialogue.inputs.cases import CASES, content_slot, in_cases, noting_case
from bot.chat.dialogue.inputs.day import DAY_SLOT, day_words, noting_night, with_day
from bot.chat.dialogue.inputs.shared_slots import NUMBER_SLOT, OPEN_BATCH_SLOT, is_liquid, undo_button
from bot.chat.dialogue.log_words import LogWords, Retold, photos_kept, typed_amount, typed_day
from bot.chat.dialogue.slots import DIGIT, Given, Question, Slot, columns, plain
from bot.chat.dialogue.state import PHOTO
from bot.chat.dialogue.turn import Say, Turn
from bot.chat.features.batches.bottling import WASTED_BOTTLES
from bot.chat.features.fruit.waste_input import accept_reason, accept_thing, bottle_of, together
from bot.chat.features.fruit.waste_of_batch import lose
from bot.chat.features.fruit.week import reason_words
from bot.chat.grammar.syntax import Amount
from bot.chat.i18n.language import _, ngettext, show_day, show_money, show_number
from bot.chat.i18n.plurals import counted_name, pieces
from bot.chat.reply.message import Block, Button, Grid, Reply, Text, reply
from bot.chat.reply.units import show_ml, show_weight
from bot.trade.formulas.kinds import IngredientKind
from bot.trade.formulas.measures import Dimension, Quantity
from bot.trade.words import N_
from bot.work.batches.batches import BatchView
from bot.work.formulas.formulas import in_base
from bot.work.formulas.ingredients import IngredientView
from bot.work.fruit import waste
from bot.work.fruit.waste import WasteLine, WasteLogged, WasteView
from bot.work.log import chain, history
from bot.work.log.chain import State
from bot.work.log.history import LogLine

_MOST = Fraction(100_000)  # pieces, or grams


def _ask_fruit(turn: Turn, given: Given) -> Question:
    day = day_words(turn, given.get(DAY_SLOT))
    text = _("What was thrown out on {day}?").format(day=day) if day else _("What was thrown out?")
    return Question(text, fruit_choices(turn), hint=_("6 oranges mouldy"))


def _ask_amount(turn: Turn, given: Given) -> Question:
    name = counted_name(given[_FRUIT_SLOT].name, Fraction(2))
    choices = columns([(str(n), str(n)) for n in (1, 2, 3, 4, 5, 6, 8, 10, 12)], 3)
    more = ((_("Other number"), DIGIT),)
    return Question(_("How many {name}?").format(name=name), (*choices, more), hint=_("6, or 1.2 kg"))


def _accept_amount(turn: Turn, given: Given, value: Amount | Fraction) -> tuple[Fraction, Dimension]:
    fruit = given.get(_FRUIT_SLOT)
    if isinstance(value, Amount):
        liquid = None if fruit is None else is_liquid(fruit)
        amount, kind = in_base(turn.context.bar, turn.quantity(value, liquid))
        if kind is Dimension.VOLUME and fruit is not None and fruit.kind is IngredientKind.FRUIT:
            raise Say(reply(_("Fruit is counted or weighed: 6, or 1.2 kg. Volumes do not fit.")))
    else:
        amount, kind = value, Dimension.COUNT
    if amount <= 0:
        raise Say(reply(_("An amount above zero, please: 6, or 1.2 kg.")))
    if amount > _MOST:
        raise Say(reply(_("That is too much for one entry: {most} at most.").format(most=show_number(_MOST))))
    return amount, kind


def _ask_reason(turn: Turn, given: Given) -> Question:
    choices = columns([(_(one), _(one)) for one in turn.context.bar.settings.reasons], 2)
    return Question(_("Why?"), choices, hint=_("mouldy"))


def _of_no_batch(turn: Turn, given: Given) -> bool:
    return OPEN_BATCH_SLOT not in given


def _is_counted(turn: Turn, given: Given) -> bool:
    return _of_no_batch(turn, given) and CASES not in given and WASTED_BOTTLES not in given


_OF_BATCH = replace(OPEN_BATCH_SLOT, ask=None)
_FRUIT_SLOT = Slot("fruit", accept_thing, _ask_fruit, _of_no_batch)
_AMOUNT_SLOT = Slot("waste_amount", _accept_amount, _ask_amount, _is_counted)
_REASON_SLOT = Slot("reason", accept_reason, _ask_reason, lambda turn, given: given.guided)
_SLOTS = (
    _OF_BATCH,
    WASTED_BOTTLES,
    _FRUIT_SLOT,
    CASES,
    content_slot(_FRUIT_SLOT),
    _AMOUNT_SLOT,
    _REASON_SLOT,
)


@dataclass(frozen=True, kw_only=True)
class WasteLineArguments(Arguments):
    """One thing with its amount or cases, or a batch with an amount or bottles; and the reason."""

    fruit: IngredientView | None = None
    waste_amount: tuple[Fraction, Dimension] | None = None
    cases: Fraction | None = None
    content: Quantity | None = None
    batch: BatchView | None = None
    wasted_bottles: int = 0
    reason: str = waste.NO_REASON


_LINES = Lines(
    WasteLineArguments,
    _SLOTS,
    (((_FRUIT_SLOT, _OF_BATCH), N_("a fruit")), ((_AMOUNT_SLOT, WASTED_BOTTLES, CASES), N_("an amount"))),
    N_("6 oranges mouldy, 2 limes"),
)


@dataclass(frozen=True, kw_only=True)
class WasteArguments(Arguments):
    """The discarded fruit, the day if it is not the current one, and a photo."""

    lines: tuple[WasteLineArguments, ...]
    day: date | None = None
    photo: str | None = None


@dataclass(frozen=True, kw_only=True)
class ReasonArguments(Arguments):
    """A line of waste, and its reason."""

    number: int
    why: str


def _waste(turn: Turn, arguments: WasteArguments) -> Reply | list[Reply]:
    with together(len(arguments.lines)):
        return _logged(turn, arguments)


def _logged(turn: Turn, arguments: WasteArguments) -> Reply | list[Reply]:
    lost = [
        lose(turn, batch, one.waste_amount, one.wasted_bottles, one.reason)
        for one in arguments.lines
        if (batch := one.batch) is not None
    ]
    things = [one for one in arguments.lines if one.batch is None]
    if not things:
        return lost
    return [*lost, _of_things(turn, arguments, things)] if lost else _of_things(turn, arguments, things)


def _of_things(turn: Turn, arguments: WasteArguments, things: Sequence[WasteLineArguments]) -> Reply:
    said = [_said(turn, one) for one in things]
    lines = [WasteLine(item.id, amount, kind, reason) for item, amount, kind, reason in said]
    line = "waste " + "; ".join(
        _line_of(name_in_line(turn, item), amount, kind, reason) for item, amount, kind, reason in said
    )
    for item, amount, kind, _reason_said in said:
        words = _fruit_words(item.name, amount, kind, turn.context.bar.units)
        believe(turn, "waste", item, amount, kind, words, with_day(line, arguments.day))
    photo, day = arguments.photo, arguments.day
    answer = worded_waste(turn, waste.log(turn.context, lines, photo, day), photo)
    for one in things:
        if one.fruit is not None and one.cases is not None:
            answer = noting_case(turn, answer, one.fruit, one.content)
    return noting_night(turn, answer, day, line)


def _said(turn: Turn, one: WasteLineArguments) -> tuple[IngredientView, Fraction, Dimension, str]:
    if one.fruit is not None and one.cases is not None:
        content = in_cases(turn, one.fruit, one.cases, one.content)
        return one.fruit, *in_base(turn.context.bar, content), one.reason
    if one.fruit is not None and one.wasted_bottles:
        content = bottle_of(turn, one.fruit)
        amount = Quantity(content.number * one.wasted_bottles, content.unit)
        return one.fruit, *in_base(turn.context.bar, amount), one.reason
    if one.fruit is None or one.waste_amount is None:
        raise ValueError("a line of waste has a thing and an amount")
    return one.fruit, *one.waste_amount, one.reason


def _line_of(name: str, amount: Fraction, kind: Dimension, reason: str) -> str:
    return f"{typed_amount(amount, kind)} {name} {reason}".rstrip()


def piece_words(view: WasteView, units: str) -> str:
    """Write an amount of fruit: '6 oranges', '1.2 kg lemons'."""
    return _fruit_words(view.ingredient.name, view.amount, view.dimension, units)


def _fruit_words(name: str, amount: Fraction, dimension: Dimension, units: str) -> str:
    if dimension is Dimension.VOLUME:
        return f"{show_ml(amount, units)} {name}"
    if dimension is Dimension.MASS:
        return f"{show_weight(amount, units)} {counted_name(name, Fraction(2))}"
    return pieces(name, amount)


def worded_waste(turn: Turn, logged: WasteLogged, photo: str | None = None) -> Reply:
    """Confirm the logged entries, with their cost and an undo button."""
    lines, units = logged.lines, turn.context.bar.units
    day = day_words(turn, logged.day)
    first, *blocks = _logged_lines(turn, lines, day)
    unpriced = sorted({one.ingredient.name for one in lines if one.cost is None})
    if unpriced:
        blocks.append(Text(_("No price for {names}: not in the cost.").format(names=", ".join(unpriced))))
    if logged.day_cost or not unpriced:
        money = show_money(logged.day_cost)
        blocks.append(Text(_("{day} so far: {money}").format(day=show_day(logged.day), money=money)))
    if photo is not None:
        blocks.append(Text(photos_kept(photo)))
    more = with_day("waste", logged.day) if day else "waste"
    rows: list[tuple[Button, ...]] = [(undo_button(turn), Button(_("More waste"), more))]
    if unpriced:
        number = next(one.ingredient.id for one in lines if one.cost is None)
        rows.append((Button(_("Price of {name}").format(name=unpriced[0]), f"price #{number}"),))
    without = [one for one in lines if not one.reason]
    if len(without) == 1:
        why = _("Why? One tap is enough.")
        if len(lines) > 1:
            why = _("Why the {what}? One tap is enough.").format(what=piece_words(without[0], units))
        blocks.append(Text(why))
        choices = columns([(_(one), one) for one in turn.context.bar.settings.reasons], 2)
        for row in choices:
            rows.append(tuple(Button(label, f"reason {without[0].id} {one}") for label, one in row))
    return Reply((first, *blocks), tuple(rows))


def _logged_lines(turn: Turn, lines: tuple[WasteView, ...], day: str) -> list[Block]:
    """Return the logged lines as a sentence or a table, with the day if it is not the current one."""
    units = turn.context.bar.units
    if len(lines) == 1:
        one = lines[0]
        first = _("Logged for {day}: {what}") if day else _("Logged: {what}")
        first = first.format(day=day, what=piece_words(one, units))
        if one.reason:
            first += f", {reason_words(one.reason)}"
        first += "." if one.cost is None else f", {show_money(one.cost)}."
        return [Text(first, strong=True)]
    first = ngettext("Logged {count} line", "Logged {count} lines", len(lines))
    if day:
        first = ngettext("Logged {count} line for {day}", "Logged {count} lines for {day}", len(lines))
    rows = [
        (piece_words(one, units), reason_words(one.reason) if one.reason else "", _cost(one.cost))
        for one in lines
    ]
    return [Text(first.format(count=len(lines), day=day), strong=True), Grid(tuple(rows))]


def _cost(cost: Decimal | None) -> str:
    return _("no price") if cost is None else show_money(cost)


def _reason(turn: Turn, arguments: ReasonArguments) -> Reply:
    done = chain.give_reason(turn.context, arguments.number, arguments.why)
    what = piece_words(done.line, turn.context.bar.units)
    said = _("{what}: {reason}.")
    if done.before not in {waste.NO_REASON, arguments.why}:
        said = _("{what}: {reason} instead of {old}.")
    old = reason_words(done.before) if done.before else ""
    first = said.format(what=what, reason=reason_words(arguments.why), old=old)
    answer = Reply(
        (Text(first, strong=True),),
        ((undo_button(turn), Button(_("More waste"), "waste")),),
        edits=turn.message.tapped is not None,
    )
    day = None if done.line.day == turn.context.today else done.line.day
    return noting_night(turn, answer, day, _same_again(turn))


def _same_again(turn: Turn) -> str:
    """Return the line that logs the waste of the last entry again, '' where there is none."""
    if turn.context.entry is None:
        return ""
    found = history.said_by(turn.context, chain.state(turn.context, turn.context.entry))
    lines = [_line_of(f"#{one.ingredient.id}", one.amount, one.dimension, one.reason) for one in found.wasted]
    return "waste " + "; ".join(lines) if lines else ""


def _waste_values(line: LogLine, units: str) -> dict[str, str]:
    return {"lines": "; ".join(line_words(one, units) for one in line.wasted)}


def line_words(one: WasteView, units: str) -> str:
    """Write a line of waste with its reason: '6 oranges, mouldy'."""
    return f"{piece_words(one, units)}, {reason_words(one.reason)}" if one.reason else piece_words(one, units)


def _retold(turn: Turn, found: State) -> Retold:
    day = typed_day(turn, found)
    return Retold(
        "waste",
        tuple(
            {
                "day": "" if number else day,
                "waste_amount": typed_amount(one.amount, one.dimension),
                "fruit": f"#{one.ingredient.id}",
                "reason": _(one.reason) if one.reason else "",
            }
            for number, one in enumerate(waste.logged_in(turn.context, found.details))
        ),
    )


COMMANDS = (
    Command(
        "waste",
        N_("log fruit and anything else thrown out"),
        _waste,
        words=(
            *("waste new", "wasted", "binned", "threw out", "thrown out", "log waste", "bin", "toss"),
            *("tossed", "chuck", "chucked", "dump", "dumped", "trash", "trashed", "throw out"),
            *("throw away", "threw away", "thrown away", "we threw out", "we binned", "had to bin"),
            *("lost",),
        ),
        examples=(
            N_("waste 6 oranges mouldy"),
            N_("waste 1.2 kg lemons, 3 limes dried out"),
            N_("waste 200 ml lime juice"),
            N_("waste 1 bottle of batch 12"),
        ),
        slots=(DAY_SLOT, *_SLOTS, Slot(PHOTO, plain(str))),
        lines=_LINES,
        writes=True,
        menu=1,
        wishes=(
            Wish(
                "waste",
                (
                    "{day?} [{quantity?} {fruit} {reason?}]",
                    "{day?} [{amount} {ingredient} {reason?}]",
                    "{amount} BATCH {batch} {reason?}",
                    "{day?} {quantity?}",
                ),
            ),
        ),
    ),
    Command(
        "reason",
        N_("say why something was thrown out"),
        _reason,
        slots=(NUMBER_SLOT, Slot("why", accept_reason)),
        writes=True,
    ),
)

LOG_WORDS = (
    LogWords("waste", N_("waste: {lines}"), N_("{lines}"), values=_waste_values, retold=_retold),
    LogWords("waste reason", N_("gave a reason: {lines}"), N_("reason of {lines}"), values=_waste_values),
)
