"""Commands to make a batch, show one, and list those with something left."""

from __future__ import annotations

from dataclasses import dataclass, replace
from datetime import date, datetime
from fractions import Fraction
from typing import TypeVar

from bot.chat.dialogue.arguments import Arguments
from bot.chat.dialogue.command import Command, Wish
from bot.chat.dialogue.examples import example_of
from bot.chat.dialogue.inputs.day import DAY_SLOT
from bot.chat.dialogue.inputs.shared_slots import (
    FORMULA_SLOT,
    GRAMS_SLOT,
    LOSS_SLOT,
    SAID_BATCH_SLOT,
    STATE_WORDS,
    TARGET_SLOT,
    SaidTarget,
    accept_number,
    undo_button,
)
from bot.chat.dialogue.inputs.temperature import TEMPERATURE_SLOT
from bot.chat.dialogue.log_words import LogWords, Retold, typed_amount
from bot.chat.dialogue.slots import Slot
from bot.chat.dialogue.turn import Say, Turn
from bot.chat.features.batches.amending import ADDED_SLOT, Addition, added_reply
from bot.chat.features.batches.batch_card import card, event_lines, rule_words
from bot.chat.features.formulas.scale import ScaledArguments, answer_for
from bot.chat.features.liquids.clearing_words import clear_line
from bot.chat.features.liquids.spirit_substitution import SWAP_SLOT
from bot.chat.features.safety.caution_blocks import batch_caution, cautions_at
from bot.chat.features.safety.grade_words import unconfirmed_mark
from bot.chat.i18n.keywords import stands_for
from bot.chat.i18n.language import _, ngettext, show_day, show_full_day, show_moment, tongue
from bot.chat.reply.message import Block, Button, Caution, Reply, Text, reply
from bot.chat.reply.units import show_ml
from bot.trade.formulas.measures import Dimension
from bot.trade.safety.caution import Step
from bot.trade.words import N_
from bot.work.batches import batch_life, batches, bottles
from bot.work.batches.batch_life import Made, NewBatch
from bot.work.batches.batches import BatchState, BatchView
from bot.work.batches.bottles import Size
from bot.work.events import events
from bot.work.formulas import formulas
from bot.work.formulas.formulas import FormulaView
from bot.work.liquids.spirit_substitution import Swapped
from bot.work.log.chain import State

T = TypeVar("T")
_MOST_LISTED = 15


# -- making --------------------------------------------------------------------------------


@dataclass(frozen=True, kw_only=True)
class BatchArguments(Arguments):
    """A batch to show or to add to; or a formula and the amount made."""

    batch: BatchView | None = None
    formula: FormulaView | None = None
    target: SaidTarget | None = None
    loss: Fraction | None = None
    swap: Swapped | None = None
    grams: bool = False
    temperature: Fraction | None = None
    added: Addition | None = None
    for_event: int | None = None
    day: date | None = None

    @property
    def made(self) -> ScaledArguments:
        """The amount made."""
        if self.formula is None:
            raise ValueError("a batch to make has a formula")
        return ScaledArguments(
            formula=self.formula,
            target=self.target,
            loss=self.loss,
            swap=self.swap,
            temperature=self.temperature,
        )


def _batch(turn: Turn, arguments: BatchArguments) -> Reply:
    if arguments.batch is not None and arguments.added is not None:
        return added_reply(turn, arguments.batch, arguments.added)
    if arguments.batch is not None:
        return card(turn, arguments.batch)
    _refuse_other_day(turn, arguments)
    answer = answer_for(turn, arguments.made)
    if arguments.for_event is not None:
        _refuse_unplanned(turn, arguments.for_event, answer.formula)
    caution_ids = [one.id for one in cautions_at(turn, answer.formula, Step.RESTING, answer)]
    made = batch_life.make(turn.context, NewBatch(answer, caution_ids=caution_ids))
    if arguments.for_event is not None:
        events.tie(turn.context, arguments.for_event, made.batch.number, answer.formula.id)
    view = answer.formula
    clearing = clear_line(turn, answer.measured, turn.context.bar.temperature_c)
    return _worded_made(turn, made, view.latest, clearing)


def _refuse_other_day(turn: Turn, arguments: BatchArguments) -> None:
    """Raise Say for a batch of another day: its rest and its discard day count from when it is logged."""
    day = arguments.day
    if day is None or day == turn.context.today:
        return
    words = arguments.words
    line = " ".join([words["formula"], *(words[one] for one in ("target", "loss", "swap") if one in words)])
    raise Say(
        reply(
            _("I can't date a batch to {day}: its rest and its discard day count from now.").format(
                day=show_full_day(day)
            ),
            _("Log it as made today, or not at all."),
            buttons=((Button(_("Made today"), f"batch {line}"),),),
        )
    )


def _refuse_unplanned(turn: Turn, number: int, formula: FormulaView) -> None:
    """Raise Say for a formula that the event does not need."""
    if all(one.formula.id != formula.id for one in events.get(turn.context, number).parts):
        raise Say(reply(_("{name} was not planned for that event.").format(name=formula.name)))


def _worded_made(turn: Turn, made: Made, latest: int, clearing: str) -> Reply:
    batch = made.batch
    now = turn.context.now
    first = _("Batch {number}: {name}, {volume}").format(
        number=batch.number, name=batch.name, volume=show_ml(batch.total_ml, turn.context.bar.units)
    )
    lines: list[Block] = []
    if batch.version < latest:
        # A button of an old message logs the amounts of that message, and says so.
        old = _("By version {number}; the formula has changed since and is at {latest}.")
        lines.append(Text(old.format(number=batch.version, latest=latest)))
    if batch.rest_until > now:
        lines.append(
            Text(_("Resting until {when}. I will remind you.").format(when=show_moment(batch.rest_until)))
        )
    else:
        lines.append(Text(_("It needs no rest.")))
    lines += [Text(line) for line in event_lines(turn, batch.number)]
    recheck = batch.frozen.get("recheck_on")
    if recheck is not None:
        lines.append(
            Text(_("Check it again on {day}.").format(day=show_full_day(date.fromisoformat(recheck))))
        )
    lines.append(
        Text(
            _("Discard after {day}: {rule}.").format(
                day=show_full_day(batch.discard_on), rule=rule_words(batch)
            )
        )
    )
    if clearing:
        lines.append(Text(clearing))
    if batch.frozen.get("past_when_made"):
        lines.append(Text(_("That day is past: something old went into it. Use a fresh bottle.")))
    if batch.frozen.get("keep_cold"):
        lines.append(Text(_("Keep refrigerated") + "."))
    if batch.frozen.get("ask_inspector"):
        lines.append(Text(_("How long it may be kept where you are: ask your inspector.")))
    mark = unconfirmed_mark(turn.context, batch)
    lines += [Caution(mark)] if mark else batch_caution(turn.context, batch, Step.RESTING)
    return Reply(
        (Text(first, strong=True), *lines),
        (
            (Button(_("Show batch {number}").format(number=batch.number), f"batch {batch.number}"),),
            (Button(_("Note a lot"), f"lot {batch.number}"), undo_button(turn)),
        ),
    )


# -- listing -------------------------------------------------------------------------------


@dataclass(frozen=True, kw_only=True)
class BatchesArguments(Arguments):
    """A formula; None for the batches of all."""

    formula: FormulaView | None = None


def _list(turn: Turn, arguments: BatchesArguments) -> Reply:
    if arguments.formula is not None:
        return _list_of(turn, arguments.formula)
    everything = any(stands_for(word, "ALL", tongue().language) for word in turn.line.split()[1:2])
    known = batches.listed(turn.context, everything)
    today = turn.context.today
    if not known:
        return reply(
            _("No batch is resting or in use."),
            example_of(turn, _("Make one from a formula: batch grapefruit mist to 400 ml")),
            buttons=((Button(_("Make a batch"), "batch"), Button(_("Formulas"), "formulas")),),
        )
    warn = turn.context.bar.settings.discard_warn_days
    to_check = sum(_to_check(one, turn.context.now) for one in known)
    counts = {
        N_("to check"): to_check,
        N_("resting"): sum(one.state is BatchState.RESTING for one in known) - to_check,
        N_("ready"): sum(one.state is BatchState.READY for one in known),
        N_("in use"): sum(one.state is BatchState.IN_USE for one in known),
        N_("near discard"): sum(batches.near_discard(one, today, warn) for one in known),
    }
    first = ", ".join(f"{count} {_(word)}" for word, count in counts.items() if count) or _("All batches")
    there = bottles.unopened(turn.context, [one.number for one in known])
    lines = [_batch_line(turn, one, today, there.get(one.number, [])) for one in known[:_MOST_LISTED]]
    if len(known) > _MOST_LISTED:
        lines.append(_("Older ones by number: batch {number}").format(number=known[_MOST_LISTED].number))
    rows = [(Button(f"{one.number} {one.name}", f"batch {one.number}"),) for one in known[:8]]
    last = [Button(_("Make a batch"), "batch")]
    if not everything:
        last.append(Button(_("Past batches"), "batches all"))
    return Reply((Text(first, strong=True), Text("\n".join(lines))), (*rows, tuple(last)))


def _list_of(turn: Turn, formula: FormulaView) -> Reply:
    """List what there is of a formula: unopened amounts are known, what is in use is not."""
    known, name = batches.open_of(turn.context, formula.id), formula.name
    make = Button(_("Make {name}").format(name=name), f"batch #{formula.id}")
    if not known:
        return reply(_("No batch of {name} has anything left in it.").format(name=name), buttons=((make,),))
    there = bottles.unopened(turn.context, [one.number for one in known])
    lines, units = [], turn.context.bar.units
    for one in known:
        line = _batch_line(turn, one, turn.context.today, there.get(one.number, []))
        whole = one.state is not BatchState.IN_USE and one.number not in there
        lines.append(f"{line}, {show_ml(bottles.held_ml(turn.context, one), units)}" if whole else line)
    first = ngettext("{name}: {count} batch", "{name}: {count} batches", len(known))
    rows = [(Button(f"{one.number} {one.name}", f"batch {one.number}"),) for one in known[:8]]
    last = (make, Button(_("Plan"), f"plan #{formula.id}"))
    head = Text(first.format(name=name, count=len(known)), strong=True)
    return Reply((head, Text("\n".join(lines))), (*rows, last))


def _to_check(batch: BatchView, now: datetime) -> bool:
    return batch.state is BatchState.RESTING and now >= batch.rest_until


def _batch_line(turn: Turn, batch: BatchView, today: date, there: list[Size]) -> str:
    state = _("rested, to check") if _to_check(batch, turn.context.now) else _(STATE_WORDS[batch.state])
    text = f"{batch.number} {batch.name}: {state}"
    if batch.state is BatchState.RESTING and not _to_check(batch, turn.context.now):
        text += " " + _("until {when}").format(when=show_moment(batch.rest_until))
    if batch.state.open:
        units = turn.context.bar.units
        text += "".join(f", {one.unopened} x {show_ml(one.size_ml, units)}" for one in there)
        left = (batch.discard_on - today).days
        if left < 0:
            text += ", " + _("past its discard date")
        elif left <= turn.context.bar.settings.discard_warn_days:
            text += ", " + _("discard {day}").format(day=show_day(batch.discard_on))
    return text


def _no_batch_said(slot: Slot[T]) -> Slot[T]:
    """A `wanted` for slots of making, which do not apply to the number of a batch."""
    wanted = slot.wanted
    return replace(slot, wanted=lambda turn, given: SAID_BATCH_SLOT not in given and wanted(turn, given))


def _is_as_written(turn: Turn, batch: BatchView) -> bool:
    """Whether a batch was made with the formula's own ingredients and strengths, without a swap."""
    formula = formulas.get(turn.context, batch.formula_id, batch.version)
    written = {(line.ingredient.id, line.ingredient.strength_percent) for line in formula.lines}
    strengths = ((line["ingredient"], line["strength_percent"]) for line in batch.frozen["lines"])
    return written == {(number, None if one is None else Fraction(one)) for number, one in strengths}


def _retold(turn: Turn, found: State) -> Retold | None:
    batch = batches.get(turn.context, found.details["batch"])
    if "trial" in batch.frozen or not _is_as_written(turn, batch):
        return None
    formula = f"#{batch.formula_id}.{batch.version}"
    target = typed_amount(batch.total_ml, Dimension.VOLUME)
    event = events.made_for(turn.context).get(batch.number)
    kept = "" if event is None else f"for event {event.id}"
    return Retold("batch", ({"formula": formula, "target": target, "for_event": kept},))


COMMANDS = (
    Command(
        "batch",
        N_("log a batch, or show one by its number"),
        _batch,
        words=(
            *("make batch", "made", "log batch", "how is batch", "show batch", "log a batch"),
            *("make a batch of", "batch up", "is batch"),
        ),
        examples=(N_("batch grapefruit mist to 400 ml"), N_("batch 12"), N_("batch 12 add 29 ml spirit")),
        slots=(
            SAID_BATCH_SLOT,
            ADDED_SLOT,
            _no_batch_said(FORMULA_SLOT),
            LOSS_SLOT,
            SWAP_SLOT,
            _no_batch_said(TARGET_SLOT),
            GRAMS_SLOT,
            TEMPERATURE_SLOT,
            Slot("for_event", accept_number),
            DAY_SLOT,
        ),
        writes=True,
        menu=20,
        wishes=(
            Wish(
                "batch",
                (
                    *("{formula?} TO {bottles} {past_day?}", "{formula?} TO {amount} {past_day?}"),
                    *("{formula?} {factor} {past_day?}", "{formula?} {past_day?}"),
                ),
            ),
            Wish("batch card", ("{batch}",), shows=True),
            Wish("add", ("{batch} ADD {amount} {ingredient}", "{batch} ADD {amount} SPIRIT")),
        ),
    ),
    Command(
        "batches",
        N_("what is resting, ready, near discard"),
        _list,
        words=(
            *("show batches", "what's ready", "what is ready", "whats ready", "what's resting"),
            *("what is resting",),
        ),
        slots=(replace(FORMULA_SLOT, ask=None),),
        menu=25,
        wishes=(Wish("batches", ("{formula?}",)), Wish("batch card", ("{formula?}",))),
    ),
)

LOG_WORDS = (
    LogWords("batch", N_("made batch {batch}, {name}"), N_("batch {batch}, {name}"), retold=_retold),
)
