"""Commands for peeled fruit: its time limit, its juice, its end."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from fractions import Fraction

from bot.chat.dialogue.arguments import Arguments, Lines
from bot.chat.dialogue.command import Command, Wish
from bot.chat.dialogue.examples import example_of, fruit_choices
from bot.chat.dialogue.inputs.belief import believe, name_in_line
from bot.chat.dialogue.inputs.day import DAY_SLOT, noting_night, of_day, with_day
from bot.chat.dialogue.inputs.fruit import accept_fruit
from bot.chat.dialogue.inputs.shared_slots import (
    BATCH_SLOT,
    quantity_in_ml,
    undo_button,
    undo_each,
)
from bot.chat.dialogue.log_words import LogWords, Retold, amount_of, retold_amount, typed_amount
from bot.chat.dialogue.slots import DIGIT, Given, Question, Slot, columns
from bot.chat.dialogue.turn import Say, Turn
from bot.chat.features.fruit.peeled_words import BASIS, acid_button, rounded_volume, sour_button, what_to_do
from bot.chat.features.fruit.waste import worded_waste
from bot.chat.grammar.syntax import Amount
from bot.chat.i18n.language import _, ngettext, show_moment, show_number
from bot.chat.i18n.plurals import counted_name, pieces
from bot.chat.reply.message import Block, Button, Grid, Reply, Text, reply
from bot.chat.reply.units import show_ml
from bot.trade.formulas.measures import Dimension
from bot.trade.words import N_
from bot.work.batches.batches import BatchView
from bot.work.formulas.formulas import in_base
from bot.work.formulas.ingredients import IngredientView
from bot.work.fruit import acid_adjustment, peeled, waste
from bot.work.fruit.peeled import PeeledView
from bot.work.fruit.waste import WasteLine
from bot.work.log.chain import State

# -- choosing fruit and number -------------------------------------------------------------


def _ask_fruit(turn: Turn, given: Given) -> Question:
    lying = peeled.waiting(turn.context)
    blocks: tuple[Block, ...] = (Grid(tuple(_lying_row(one) for one in lying[:6])),) if lying else ()
    return Question(_("Which fruit was peeled?"), fruit_choices(turn), blocks, _("4 oranges"))


def _ask_lying(turn: Turn, given: Given) -> Question:
    lying = peeled.waiting(turn.context)
    if not lying:
        raise Say(
            reply(_("No peeled fruit lies there."), buttons=((Button(_("Log peeled fruit"), "peeled"),),))
        )
    fruit = {one.ingredient.id: one.ingredient.name for one in lying}
    return Question(
        _("Which fruit?"), columns([(name, f"#{number}") for number, name in fruit.items()], 2), hint="4"
    )


def _lying_row(one: PeeledView) -> tuple[str, str]:
    return pieces(one.ingredient.name, one.left), show_moment(one.lost_at)


def _ask_count(turn: Turn, given: Given) -> Question:
    name = counted_name(given[_FRUIT].name, Fraction(2))
    lying = sum((one.left for one in peeled.waiting(turn.context, given[_FRUIT].id)), Fraction(0))
    numbers = sorted({*range(1, 7), 8, 10, 12, *([int(lying)] if lying else [])})
    choices = columns([(str(number), str(number)) for number in numbers], 3)
    return Question(
        _("How many {name}?").format(name=name), (*choices, ((_("Other number"), DIGIT),)), hint="4"
    )


def _accept_count(turn: Turn, given: Given, value: Amount | Fraction) -> Fraction:
    if isinstance(value, Amount):
        amount, kind = in_base(turn.context.bar, turn.quantity(value, False))
        if kind is not Dimension.COUNT:
            raise Say(reply(example_of(turn, _("Peeled fruit is counted: 4 oranges."))))
    else:
        amount = value
    if amount <= 0:
        raise Say(reply(example_of(turn, _("A number of pieces above zero, please: 4 oranges."))))
    if amount > peeled.MOST:
        most = show_number(peeled.MOST)
        raise Say(reply(_("That is too much for one entry: {most} at most.").format(most=most)))
    return amount


def _pieces(fruit: IngredientView, count: Fraction) -> str:
    return pieces(fruit.name, count)


# -- peeled --------------------------------------------------------------------------------


@dataclass(frozen=True, kw_only=True)
class PiecesArguments(Arguments):
    """A number of pieces of one fruit."""

    fruit: IngredientView
    waste_amount: Fraction


@dataclass(frozen=True, kw_only=True)
class PeeledArguments(Arguments):
    """The peeled fruit, and the day if it is not the current one."""

    lines: tuple[PiecesArguments, ...]
    day: date | None = None


@dataclass(frozen=True, kw_only=True)
class JuicedArguments(PiecesArguments):
    """Pieces of a fruit, their juice in mL, and the day if it is not the current one."""

    juice: Fraction
    day: date | None = None


@dataclass(frozen=True, kw_only=True)
class InBatchArguments(PiecesArguments):
    """Pieces of a fruit, and the batch made with them."""

    batch: BatchView


def _peeled(turn: Turn, arguments: PeeledArguments) -> Reply:
    said = "; ".join(f"{one.waste_amount} {name_in_line(turn, one.fruit)}" for one in arguments.lines)
    line, day = f"peeled {said}", arguments.day
    for one in arguments.lines:
        words = _pieces(one.fruit, one.waste_amount)
        believe(turn, "peeled", one.fruit, one.waste_amount, Dimension.COUNT, words, with_day(line, day))
    if len(arguments.lines) == 1:
        return noting_night(turn, _one_peeled(turn, arguments.lines[0], day), day, line)
    return _several_peeled(turn, arguments, line)


def _several_peeled(turn: Turn, arguments: PeeledArguments, line: str) -> Reply:
    rows, entries = [], []
    for one in arguments.lines:
        logged = peeled.peel(turn.context, one.fruit.id, one.waste_amount, arguments.day)
        entries.append((one.fruit.name, logged.entry))
        juice = (
            "?" if logged.juice is None else rounded_volume(logged.juice.volume_ml, turn.context.bar.units)
        )
        rows.append((_pieces(one.fruit, one.waste_amount), juice))
    first = _("Peeled, good until {when}:").format(when=show_moment(logged.peeled.lost_at))
    first = of_day(turn, first, arguments.day)
    about = Text(_("With the juice to expect; I will remind you before."))
    buttons = (*undo_each(entries), (Button(_("More peeled"), "peeled"),))
    answer = Reply((Text(first, strong=True), Grid(tuple(rows)), about), buttons)
    return noting_night(turn, answer, arguments.day, line, [number for _name, number in entries])


def _one_peeled(turn: Turn, one: PiecesArguments, day: date | None) -> Reply:
    fruit, count = one.fruit, one.waste_amount
    logged = peeled.peel(turn.context, fruit.id, count, day)
    past = logged.peeled.lost_at <= turn.context.now
    first = _("Peeled: {what}, lost since {when}.") if past else _("Peeled: {what}, good until {when}.")
    first = first.format(what=_pieces(fruit, count), when=show_moment(logged.peeled.lost_at))
    first = of_day(turn, first, day)
    hours = show_number(logged.clock.lost_after_hours)
    own = logged.clock.source is None
    clock = _("{hours} h, as this bar set it; I will remind you before.")
    if not own:
        clock = _("{hours} h is common practice (/bar peeled fruit); I will remind you before.")
    lines = [] if past else [clock.format(hours=hours)]
    lines += what_to_do(turn, fruit, logged.juice)
    return reply(
        first,
        *lines,
        buttons=(*ends(fruit.id, count), (undo_button(turn), acid_button(turn, fruit, logged.juice))),
    )


def ends(fruit_id: int, count: Fraction) -> tuple[tuple[Button, ...], ...]:
    """Offer the three ends of peeled fruit: juiced, discarded, in a batch."""
    said = f"{show_number(count)} #{fruit_id}"
    return (
        (
            Button(_("Juiced"), f"juiced {said}"),
            Button(_("Binned"), f"bin peeled {said}"),
            Button(_("In a batch"), f"peeled in batch {said}"),
        ),
    )


# -- ends ----------------------------------------------------------------------------------


def _ask_juice(turn: Turn, given: Given) -> Question:
    fruit, count = given[_FRUIT], given[_COUNT]
    usual = peeled.juice_of(turn.context, fruit, count)
    choices: list[tuple[str, str]] = []
    if usual is not None:
        ends_ml = (usual.range_ml.low, usual.volume_ml, usual.range_ml.high)
        rounded = dict.fromkeys(str(max(10, int(round(one, -1)))) for one in ends_ml)
        choices = [(f"{one} ml", f"{one} ml") for one in rounded]
    return Question(
        _("How much juice did {what} give?").format(what=_pieces(fruit, count)),
        columns(choices, 3),
        hint="280 ml",
    )


def _accept_juice(turn: Turn, given: Given, value: Amount) -> Fraction:
    return quantity_in_ml(turn, value)


def _juiced(turn: Turn, arguments: JuicedArguments) -> Reply:
    fruit, count, ml = arguments.fruit, arguments.waste_amount, arguments.juice
    line = f"juiced {count} {name_in_line(turn, fruit)} to {ml} ml"
    said = with_day(line, arguments.day)
    believe(turn, "juiced", fruit, count, Dimension.COUNT, _pieces(fruit, count), said)
    found = peeled.juice(turn.context, fruit.id, count, ml, arguments.day)
    units = turn.context.bar.units
    first = _("Juiced: {what} gave {volume}, {each} each.").format(
        what=_pieces(fruit, count), volume=show_ml(ml, units), each=show_ml(ml / count, units)
    )
    first = of_day(turn, first, arguments.day)
    lines = []
    if found.usual is not None:
        lines.append(
            _("To be expected: {low} to {high} ({basis}).").format(
                low=rounded_volume(found.usual.range_ml.low, units),
                high=rounded_volume(found.usual.range_ml.high, units),
                basis=_(BASIS[found.usual.basis]),
            )
        )
    if found.own is not None:
        pieces = int(found.own.own_count)
        lines.append(
            ngettext(
                "I'll now assume {each} per {fruit}, counting {count} of your own.",
                "I'll now assume {each} per {fruit}, counting {count} of your own.",
                pieces,
            ).format(
                each=show_ml(Fraction(round(found.own.per_fruit_ml)), units),
                fruit=fruit.name,
                count=show_number(pieces),
            )
        )
    buttons = [undo_button(turn)]
    if acid_adjustment.juice_named(fruit.name, turn.context.bar.language) is not None:
        buttons.append(sour_button(turn, fruit, show_number(ml, 0)))
    return noting_night(turn, reply(first, *lines, buttons=(tuple(buttons),)), arguments.day, line)


def _binned(turn: Turn, arguments: PiecesArguments) -> Reply:
    line = WasteLine(arguments.fruit.id, arguments.waste_amount, Dimension.COUNT, waste.PEELED)
    return worded_waste(turn, waste.log(turn.context, [line]))


def _in_batch(turn: Turn, arguments: InBatchArguments) -> Reply:
    fruit, batch = arguments.fruit, arguments.batch
    taken = peeled.into_batch(turn.context, fruit.id, arguments.waste_amount, batch.number)
    said = _("{what} went into batch {number}, {name}.").format(
        what=_pieces(fruit, taken), number=batch.number, name=batch.name
    )
    return reply(said, buttons=((undo_button(turn),),))


def _juicing_retold(turn: Turn, found: State) -> Retold | None:
    pieces = retold_amount("juiced", "fruit")(turn, found)
    if pieces is None or "volume_ml" not in found.details:
        return None
    juice = typed_amount(Fraction(found.details["volume_ml"]), Dimension.VOLUME)
    return Retold("juiced", ({**pieces.lines[0], "juice": juice},))


_FRUIT = Slot("fruit", accept_fruit, _ask_fruit)
_LYING = Slot("fruit", accept_fruit, _ask_lying)
_COUNT = Slot("waste_amount", _accept_count, _ask_count)
_LINES = Lines(
    PiecesArguments,
    (_FRUIT, _COUNT),
    (((_FRUIT,), N_("a fruit")), ((_COUNT,), N_("a number"))),
    N_("4 oranges, 3 limes"),
)

COMMANDS = (
    Command(
        "peeled",
        N_("fruit peeled, with its clock"),
        _peeled,
        words=("naked", "peeled fruit", "what is peeled"),
        examples=(N_("peeled 4 oranges, 3 limes"),),
        slots=(DAY_SLOT, _FRUIT, _COUNT),
        lines=_LINES,
        writes=True,
        menu=33,
        wishes=(Wish("peeled", ("{day?} [{number?} {fruit}]", "{day?}")),),
    ),
    Command(
        "juiced",
        N_("what fruit gave in juice"),
        _juiced,
        words=("squeezed",),
        examples=(N_("juiced 4 oranges 280 ml"),),
        slots=(DAY_SLOT, _FRUIT, _COUNT, Slot("juice", _accept_juice, _ask_juice)),
        writes=True,
        menu=35,
        wishes=(
            Wish(
                "juiced",
                (
                    *("{day?} {number} {whole_fruit} {amount?}", "{day?} {number} {fruit} {amount?}"),
                    *("{day?} {fruit} {amount?}", "{day?}"),
                ),
            ),
        ),
    ),
    Command(
        "peeledbin",
        N_("throw peeled fruit out"),
        _binned,
        words=("bin peeled", "peeled binned"),
        examples=(N_("bin peeled 2 oranges"),),
        slots=(_LYING, _COUNT),
        writes=True,
    ),
    Command(
        "peeledin",
        N_("peeled fruit went into a batch"),
        _in_batch,
        words=("peeled in batch", "peeled into batch"),
        examples=(N_("peeled in batch 4 oranges 12"),),
        slots=(_LYING, _COUNT, BATCH_SLOT),
        writes=True,
    ),
)

LOG_WORDS = (
    LogWords(
        "peeled",
        N_("peeled {amount}"),
        N_("{amount} peeled"),
        amount_of,
        retold=retold_amount("peeled", "fruit"),
    ),
    LogWords("juiced", N_("juiced {amount}"), N_("{amount} juiced"), amount_of, retold=_juicing_retold),
    LogWords(
        "peeled in batch",
        N_("put {amount}, peeled, into batch {batch}"),
        N_("{amount}, peeled, in batch {batch}"),
        amount_of,
    ),
)
