"""Commands for the events of a batch: check, open, use up, discard."""

from __future__ import annotations

import re
from dataclasses import dataclass, replace
from datetime import date, timedelta
from fractions import Fraction

from bot.chat.dialogue.arguments import Arguments
from bot.chat.dialogue.command import Command, Wish
from bot.chat.dialogue.inputs.shared_slots import (
    BATCH_SLOT,
    OPEN_BATCH_SLOT,
    accept_open_batch,
    quantity_in_ml,
    undo_button,
)
from bot.chat.dialogue.inputs.temperature import accept_temperature
from bot.chat.dialogue.log_words import LogWords, Retold, photos_kept
from bot.chat.dialogue.slots import Given, Question, Slot, columns, plain
from bot.chat.dialogue.state import PHOTO
from bot.chat.dialogue.turn import Say, Turn
from bot.chat.features.batches.at_event import EVENT_SLOT, PART_SLOT, UsedArguments, used_at_event
from bot.chat.features.batches.batch_card import (
    CLARITY_WORDS,
    discard_words,
    is_sprayed,
    left_words,
    rule_words,
)
from bot.chat.features.batches.opened_bottles import DETAIL_SLOTS, OPENED_SLOT, BottleArguments, opened_reply
from bot.chat.features.batches.why_hazy import next_test_lines
from bot.chat.features.liquids.diagnosis_words import CLEAR_WORDS
from bot.chat.features.safety.caution_blocks import batch_caution
from bot.chat.grammar.lexer import Noun
from bot.chat.grammar.syntax import Amount
from bot.chat.i18n.language import _, ngettext, show_moment, show_number
from bot.chat.reply.message import Block, Button, Reply, Text, reply
from bot.chat.reply.units import own_volume, show_ml
from bot.trade.formulas.measures import from_ml
from bot.trade.safety.caution import Step
from bot.trade.words import N_
from bot.work.batches import batch_life, bottles
from bot.work.batches.batches import BatchState, BatchView, Clarity
from bot.work.errors import WrongStateError
from bot.work.formulas.ingredients import IngredientView
from bot.work.log.chain import State

# -- checks --------------------------------------------------------------------------------


def _ask_clarity(turn: Turn, given: Given) -> Question:
    batch = given[BATCH_SLOT]
    choices = [(_("Clear"), _("clear")), (_("Hazy"), _("hazy")), (_("Split"), _("split"))]
    return Question(
        _("How does batch {number}, {name}, look?").format(number=batch.number, name=batch.name),
        columns(choices, 3),
        hint=_("clear, hazy or split"),
    )


def _accept_clarity(turn: Turn, given: Given, value: str) -> Clarity:
    return Clarity(value)


@dataclass(frozen=True, kw_only=True)
class BatchArguments(Arguments):
    """A batch."""

    batch: BatchView


@dataclass(frozen=True, kw_only=True)
class CheckArguments(BatchArguments):
    """A batch, its look, and a note and a photo of it."""

    clarity: Clarity
    note: str = ""
    photo: str | None = None


@dataclass(frozen=True, kw_only=True)
class OpenArguments(Arguments):
    """A batch to open, or an opened bottle of an ingredient."""

    batch: BatchView | None = None
    opened: IngredientView | None = None
    day: date | None = None
    best: date | None = None
    cold: bool | None = None


@dataclass(frozen=True, kw_only=True)
class DiscardArguments(BatchArguments):
    """A batch, the amount discarded in mL (None for all), and the reason."""

    amount: Fraction | None = None
    note: str = ""


def _check(turn: Turn, arguments: CheckArguments) -> Reply:
    batch, clarity = arguments.batch, arguments.clarity
    degrees, note = _temperature_in(turn, arguments.note)
    made = batch_life.check(turn.context, batch.number, clarity, note, arguments.photo, degrees)
    first = _("Batch {number}, {name}: {clarity}.").format(
        number=batch.number, name=batch.name, clarity=_(CLARITY_WORDS[clarity])
    )
    lines: list[Block] = []
    if clarity is Clarity.CLEAR and turn.context.now < batch.rest_until:
        lines = [
            Text(
                _("It rests until {when} all the same; check once more then.").format(
                    when=show_moment(batch.rest_until)
                )
            )
        ]
    elif clarity is not Clarity.CLEAR:
        if clarity is Clarity.SPLIT:
            lines.append(Text(_("Two layers spray unevenly, so do not use it.")))
        lines += [*next_test_lines(turn, made.batch), Text(_("I will ask again in a day."))]
    else:
        lines += [Text(_(CLEAR_WORDS)), *batch_caution(turn.context, batch, Step.BOTTLING)]
    if note:
        lines.append(Text(_("Noted: {note}").format(note=note)))
    if arguments.photo is not None:
        lines.append(Text(photos_kept(arguments.photo)))
    row = [undo_button(turn)]
    if clarity is Clarity.CLEAR:
        row.insert(0, Button(_("Open it"), f"open {batch.number}"))
    else:
        row.insert(0, Button(_("Discard"), f"discard {batch.number}"))
    rows: list[tuple[Button, ...]] = [tuple(row)]
    if clarity is not Clarity.CLEAR:
        rows.insert(0, (Button(_("What would mend it?"), f"why {batch.number}"),))
    return Reply((Text(first, strong=True), *lines), tuple(rows), edits=_of_reminder(turn))


_TEMPERATURE = re.compile(
    r"\s*(?:(?:at|a)\s+)?(?P<said>\d+(?:[.,]\d+)?\s*(?:°\s*)?(?:degrees\s+|grados\s+)?[CF])\b[\s,;:]*",
    re.IGNORECASE | re.ASCII,
)


def _temperature_in(turn: Turn, note: str) -> tuple[Fraction | None, str]:
    """Take the temperature of the bottle off the beginning of a note: 'at 5 C, a thin skin'."""
    found = _TEMPERATURE.match(note)
    if found is None:
        return None, note
    return accept_temperature(turn, found["said"]), note[found.end() :]


def _check_retold(turn: Turn, found: State) -> Retold | None:
    clarity = found.details["after"].get("clarity")
    if clarity is None:
        return None
    words = {"batch": str(found.details["batch"]), "clarity": _(CLARITY_WORDS[Clarity(clarity)]), "note": ""}
    return Retold("check", (words,))


def _of_reminder(turn: Turn) -> bool:
    return turn.message.tapped is not None


# -- opening and using up ------------------------------------------------------------------


def _seen_words(batch: BatchView) -> str:
    """Write the last look of a batch that was never seen clear."""
    if batch.clarity == Clarity.HAZY:
        return _("It was hazy at the last check. Nobody has seen it clear yet.")
    if batch.clarity == Clarity.SPLIT:
        return _("It had split at the last check. Nobody has seen it clear yet.")
    return _("Nobody has seen it clear yet.")


def _unready_lines(turn: Turn, batch: BatchView) -> list[str]:
    """Return what an opened batch still lacks: its rest, and its straining."""
    lines = []
    if not batch.rested(turn.context.now):
        lines.append(_("It is still resting, until {when}.").format(when=show_moment(batch.rest_until)))
    if batch.to_strain:
        lines.append(_("Nobody has strained it yet."))
    return lines


def _open(turn: Turn, arguments: OpenArguments) -> Reply:
    batch, opened = arguments.batch, arguments.opened
    if opened is not None:
        bottle = BottleArguments(opened=opened, day=arguments.day, best=arguments.best, cold=arguments.cold)
        return opened_reply(turn, bottle)
    if batch is None:
        raise ValueError("a batch or a bottle is opened")
    made = batch_life.open_batch(turn.context, batch.number)
    first = _("Batch {number}, {name}, is in use.").format(number=batch.number, name=batch.name)
    lines: list[Block] = []
    there = bottles.left(turn.context, batch.number)
    if there is not None:
        lines.append(Text(_("Now: {left}.").format(left=left_words(there, turn.context.bar.units))))
    if batch.state is BatchState.RESTING and batch.clarity != Clarity.CLEAR:
        lines += [Text(line) for line in (*_unready_lines(turn, batch), _seen_words(batch))]
    if made.batch.shortened_by_opening:
        lines.append(Text(_("Opening it started another clock: {rule}.").format(rule=rule_words(made.batch))))
    lines.append(Text(discard_words(made.batch, turn.context.today)))
    lines += batch_caution(turn.context, batch, Step.SPRAYING if is_sprayed(batch) else Step.STORING)
    return Reply(
        (Text(first, strong=True), *lines),
        ((Button(_("Used up"), f"used {batch.number}"), undo_button(turn)),),
        edits=turn.message.tapped is not None,
    )


def _accept_unopened(turn: Turn, given: Given, value: int | Noun) -> BatchView:
    batch = accept_open_batch(turn, given, value)
    there = bottles.left(turn.context, batch.number)
    if batch.state is BatchState.IN_USE and not (there is not None and there.unopened):
        raise WrongStateError(batch.number, batch.state)
    return batch


def _lasted(span: timedelta) -> str:
    """Write how long a batch lasted, to the digits that are known."""
    hours = int(span.total_seconds() // 3600)
    if span.days:
        return ngettext("It lasted {count} day.", "It lasted {count} days.", span.days).format(
            count=span.days
        )
    if hours:
        return ngettext("It lasted {count} hour.", "It lasted {count} hours.", hours).format(count=hours)
    return _("It lasted less than an hour.")


def _used(turn: Turn, arguments: UsedArguments) -> Reply:
    batch = arguments.batch
    if arguments.used_part is not None and arguments.for_event is not None:
        return used_at_event(turn, batch, arguments.used_part, arguments.for_event)
    used = batch_life.use_up(turn.context, batch.number).batch
    if used.state.open:
        return _bottle_used(turn, used)
    first = _("Batch {number}, {name}, is used up.").format(number=batch.number, name=batch.name)
    return Reply(
        (
            Text(first, strong=True),
            Text(_lasted(turn.context.now - (batch.opened_at or batch.made_at))),
        ),
        (
            (
                Button(_("Make it again"), f"batch #{batch.formula_id}"),
                undo_button(turn),
            ),
        ),
        edits=turn.message.tapped is not None,
    )


def _bottle_used(turn: Turn, batch: BatchView) -> Reply:
    """Say that a bottle is empty, and what is left of its batch."""
    there = bottles.left(turn.context, batch.number)
    first = _("A bottle of batch {number}, {name}, is empty.").format(number=batch.number, name=batch.name)
    left = "" if there is None else left_words(there, turn.context.bar.units)
    return Reply(
        (Text(first, strong=True), Text(_("Now: {left}.").format(left=left))),
        ((Button(_("Open the next"), f"open {batch.number}"), undo_button(turn)),),
        edits=turn.message.tapped is not None,
    )


# -- discarding ----------------------------------------------------------------------------


def _ask_why(turn: Turn, given: Given) -> Question:
    choices = [(_(one), _(one)) for one in (N_("past its date"), N_("split"), N_("smells off"), N_("spilt"))]
    return Question(_("Why?"), columns(choices, 2), hint=_("a few words"))


def _ask_left(turn: Turn, given: Given) -> Question:
    there = bottles.held_ml(turn.context, given[BATCH_SLOT])
    units = turn.context.bar.units
    unit = "ml" if units == "metric" else f"{units}_fluid_ounce"
    shares = []
    for label, share in (
        (_("all of it"), Fraction(1)),
        (_("half"), Fraction(1, 2)),
        (_("a quarter"), Fraction(1, 4)),
    ):
        number = from_ml(there * share, unit).number
        shares.append(
            (
                f"{label} ({show_ml(there * share, units)})",
                f"{show_number(number, 2)} {own_volume(units)}",
            )
        )
    return Question(_("How much goes?"), columns(shares, 1), hint="40 ml")


def _accept_left(turn: Turn, given: Given, value: Amount) -> Fraction:
    ml = quantity_in_ml(turn, value)
    if ml <= 0:
        raise Say(reply(_("An amount above zero, please, such as 40 ml.")))
    return ml


def _wants_amount(turn: Turn, given: Given) -> bool:
    # One tap must not discard a batch: amount and reason are asked unless one was given.
    return given.guided or _NOTE not in given


def _discard(turn: Turn, arguments: DiscardArguments) -> Reply:
    batch = arguments.batch
    made = batch_life.discard(turn.context, batch.number, arguments.amount, arguments.note)
    first = _("Batch {number}, {name}, is discarded: {volume}.").format(
        number=batch.number,
        name=batch.name,
        volume=show_ml(made.batch.lost_ml or Fraction(0), turn.context.bar.units),
    )
    lines: list[Block] = []
    if arguments.note:
        lines.append(Text(_("Why: {reason}").format(reason=arguments.note)))
    lines += batch_caution(turn.context, batch, Step.DISCARDING)
    return Reply(
        (Text(first, strong=True), *lines),
        (
            (
                Button(_("Make it again"), f"batch #{batch.formula_id}"),
                undo_button(turn),
            ),
        ),
        edits=turn.message.tapped is not None,
    )


_NOTE = Slot("note", plain(str))

COMMANDS = (
    Command(
        "check",
        N_("note how a rested batch looks"),
        _check,
        words=("checked", "check on"),
        examples=(N_("check 12 clear"), N_("check 12 hazy, a thin skin on top"), N_("check 12 clear at 5 C")),
        slots=(
            OPEN_BATCH_SLOT,
            Slot("clarity", _accept_clarity, _ask_clarity),
            _NOTE,
            Slot(PHOTO, plain(str)),
        ),
        writes=True,
        menu=27,
        wishes=(Wish("check", ("{formula} {clarity?}", "{batch?} {clarity?}")),),
    ),
    Command(
        "open",
        N_("put a batch into use, or note an opened bottle"),
        _open,
        words=("opened", "open batch", "opened batch"),
        examples=(N_("open 12"), N_("opened grapefruit oil yesterday, kept cold")),
        slots=(
            replace(BATCH_SLOT, accept=_accept_unopened, wanted=lambda turn, given: OPENED_SLOT not in given),
            OPENED_SLOT,
            *DETAIL_SLOTS,
        ),
        writes=True,
        wishes=(
            Wish("open", ("{formula}", "{batch?}")),
            Wish("bottle", ("{ingredient} ON {day}", "{ingredient?}")),
        ),
    ),
    Command(
        "used",
        N_("note that a batch is used up"),
        _used,
        words=("used up", "finished", "empty", "batch used up", "finished batch", "used up batch"),
        examples=(N_("used 12"), N_("used 12 80 ml for event 1")),
        slots=(OPEN_BATCH_SLOT, PART_SLOT, EVENT_SLOT),
        writes=True,
        wishes=(Wish("used", ("{formula}", "{batch?}")),),
    ),
    Command(
        "discard",
        N_("throw a batch out"),
        _discard,
        words=("bin batch", "throw out batch", "dump batch", "throw batch", "discarded"),
        examples=(N_("discard 12 40 ml, smelt of old oil"),),
        slots=(
            OPEN_BATCH_SLOT,
            Slot("amount", _accept_left, _ask_left, _wants_amount),
            replace(_NOTE, ask=_ask_why, wanted=lambda turn, given: given.guided),
        ),
        writes=True,
        wishes=(Wish("discard", ("{formula} {amount?}", "{batch?} {amount?}")),),
    ),
)

LOG_WORDS = (
    LogWords("check", N_("checked batch {batch}"), N_("check of batch {batch}"), retold=_check_retold),
    LogWords("open batch", N_("opened batch {batch}"), N_("opening of batch {batch}")),
    LogWords("use up", N_("batch {batch} used up"), N_("batch {batch} used up")),
    LogWords("use bottle", N_("a bottle of batch {batch} emptied"), N_("bottle of batch {batch} emptied")),
    LogWords("discard", N_("discarded batch {batch}"), N_("discarding of batch {batch}")),
)
