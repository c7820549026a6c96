"""Batches: make, look after, check, open, use up, throw out, note lots."""

from __future__ import annotations

from dataclasses import replace
from datetime import date, datetime
from fractions import Fraction
from typing import Any

from bot.chat.asking import PHOTO, Question, Slot, columns
from bot.chat.asks import (
    BATCH_SLOT,
    FORMULA_SLOT,
    GRAMS_SLOT,
    LOSS_SLOT,
    STATE_WORDS,
    TARGET_SLOT,
    accept_batch,
    never,
    quantity_in_ml,
    undo_button,
)
from bot.chat.batch_card import (
    CLARITY_WORDS,
    business_today,
    card,
    discard_words,
    is_sprayed,
    rule_words,
)
from bot.chat.cautioning import batch_caution, cautions_at
from bot.chat.clearing_words import clear_line, mending_line
from bot.chat.commands.scaling import answer_for
from bot.chat.grades import unconfirmed_mark
from bot.chat.language import _, local, ngettext, show_day, show_full_day, show_moment, show_number
from bot.chat.message import Block, Button, Caution, Reply, Text, reply
from bot.chat.opened import DETAIL_SLOTS, OPENED_SLOT, opened_reply
from bot.chat.swapping import SWAP_SLOT
from bot.chat.talk import Command, Given, Say, Talk
from bot.chat.temperatures import TEMPERATURE_SLOT
from bot.chat.units import show_ml
from bot.trade.caution import Step
from bot.trade.words import N_
from bot.work import batch_life, batches
from bot.work.batch_life import Made, NewBatch
from bot.work.batches import BatchState, BatchView, Clarity
from bot.work.mixing import mix_of_batch

_MOST_LISTED = 15
# What to do next, by what was seen: common practice, no source.
_NEXT = {
    Clarity.CLEAR: N_("It can be bottled and used."),
    Clarity.HAZY: N_(
        "Give it another day at room temperature, closed. Still hazy: strain it through paper, "
        "or add a little of the strongest spirit and check again."
    ),
    Clarity.SPLIT: N_(
        "Two layers will spray unevenly. Do not use it so: it needs more or stronger spirit, "
        "or less water or glycol. Shake, rest a day and check again, or discard it."
    ),
}


# -- making -----------------------------------------------------------------------------


def _batch(talk: Talk, given: Given) -> Reply:
    if "batch" in given:
        return card(talk, given["batch"])
    answer = answer_for(talk, given)
    caution_ids = [one.id for one in cautions_at(talk, answer.formula, Step.RESTING, answer)]
    made = batch_life.make(talk.desk, NewBatch(answer, caution_ids=caution_ids))
    view = answer.formula
    return _worded_made(talk, made, view.latest, clear_line(talk, view, talk.desk.bar.temperature_c))


def _worded_made(talk: Talk, made: Made, latest: int, clearing: str) -> Reply:
    batch = made.batch
    now = talk.desk.now
    first = _("Batch {number}: {name}, {volume}").format(
        number=batch.number, name=batch.name, volume=show_ml(batch.total_ml, talk.desk.bar.units)
    )
    lines: list[Block] = []
    if batch.version < latest:
        # A button of an older message logs what that message showed, and says so.
        old = _("By version {number}; the formula has changed since and is at {latest}.")
        lines.append(Text(old.format(number=batch.version, latest=latest)))
    if batch.rest_until > now:
        lines.append(
            Text(_("Resting until {when}. I will remind you.").format(when=show_moment(batch.rest_until)))
        )
    else:
        lines.append(Text(_("It needs no rest.")))
    recheck = batch.frozen.get("recheck_on")
    if recheck is not None:
        lines.append(Text(_("Look again {day}.").format(day=show_full_day(date.fromisoformat(recheck)))))
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
    if batch.frozen.get("ask_inspector"):
        lines.append(Text(_("How long it may be kept where you are: ask your inspector.")))
    mark = unconfirmed_mark(talk.desk, batch)
    lines += [Caution(mark)] if mark else batch_caution(talk.desk, batch, Step.RESTING)
    return Reply(
        (Text(first, strong=True), *lines),
        (
            (Button(_("Show batch {number}").format(number=batch.number), f"batch {batch.number}"),),
            (Button(_("Note a lot"), f"lot {batch.number}"), undo_button(talk)),
        ),
    )


def _list(talk: Talk, given: Given) -> Reply:
    everything = bool(talk.line.split()[1:2]) and talk.line.split()[1].casefold() in {"all", "everything"}
    known = batches.listed(talk.desk, everything)
    today = business_today(talk)
    if not known:
        return reply(
            _("No batch is resting or in use."),
            _("Make one from a formula: batch grapefruit mist to 400 ml"),
            buttons=((Button(_("Make a batch"), "batch"), Button(_("Formulas"), "formulas")),),
        )
    warn = talk.desk.bar.settings.discard_warn_days
    to_check = sum(_to_check(one, talk.desk.now) for one in known)
    counts = {
        N_("to check"): to_check,
        N_("resting"): sum(one.state is BatchState.RESTING for one in known) - to_check,
        N_("ready"): sum(one.state is BatchState.READY for one in known),
        N_("in use"): sum(one.state is BatchState.IN_USE for one in known),
        N_("near discard"): sum(batches.near_discard(one, today, warn) for one in known),
    }
    first = ", ".join(f"{count} {_(word)}" for word, count in counts.items() if count) or _("All batches")
    lines = [_batch_line(talk, one, today) for one in known[:_MOST_LISTED]]
    if len(known) > _MOST_LISTED:
        lines.append(_("Older ones by number: batch {number}").format(number=known[_MOST_LISTED].number))
    rows = [(Button(f"{one.number} {one.name}", f"batch {one.number}"),) for one in known[:8]]
    last = [Button(_("Make a batch"), "batch")]
    if not everything:
        last.append(Button(_("Past batches"), "batches all"))
    return Reply((Text(first, strong=True), Text("\n".join(lines))), (*rows, tuple(last)))


def _to_check(batch: BatchView, now: datetime) -> bool:
    return batch.state is BatchState.RESTING and now >= batch.rest_until


def _batch_line(talk: Talk, batch: BatchView, today: Any) -> str:
    state = _("rested, to check") if _to_check(batch, talk.desk.now) else _(STATE_WORDS[batch.state])
    text = f"{batch.number} {batch.name}: {state}"
    if batch.state is BatchState.RESTING and not _to_check(batch, talk.desk.now):
        text += " " + _("until {when}").format(when=show_moment(batch.rest_until))
    if batch.state.open:
        left = (batch.discard_on - today).days
        if left < 0:
            text += ", " + _("past its discard date")
        elif left <= talk.desk.bar.settings.discard_warn_days:
            text += ", " + _("discard {day}").format(day=show_day(batch.discard_on))
    return text


# -- what happens to it -------------------------------------------------------------------


def _ask_clarity(talk: Talk, given: Given) -> Question:
    batch: BatchView = given["batch"]
    choices = [(_("Clear"), _("clear")), (_("Hazy"), _("hazy")), (_("Split"), _("split"))]
    return Question(
        _("How does batch {number}, {name}, look?").format(number=batch.number, name=batch.name),
        columns(choices, 3),
        hint=_("clear, hazy or split"),
    )


def _accept_clarity(talk: Talk, given: Given, value: Any) -> Clarity:
    return Clarity(str(value))


def _check(talk: Talk, given: Given) -> Reply:
    batch: BatchView = given["batch"]
    clarity: Clarity = given["clarity"]
    note = str(given.get("note", ""))
    photo = talk.message.photo or given.get("photo")
    batch_life.check(talk.desk, batch.number, clarity, note, photo)
    first = _("Batch {number}, {name}: {clarity}.").format(
        number=batch.number, name=batch.name, clarity=_(CLARITY_WORDS[clarity])
    )
    lines: list[Block] = [Text(_(_NEXT[clarity]))]
    if clarity is Clarity.CLEAR and talk.desk.now < batch.rest_until:
        lines = [
            Text(
                _("It rests until {when} all the same; check once more then.").format(
                    when=show_moment(batch.rest_until)
                )
            )
        ]
    elif clarity is not Clarity.CLEAR:
        lines.append(Text(_("I will ask again in a day.")))
    else:
        lines += batch_caution(talk.desk, batch, Step.BOTTLING)
    if note:
        lines.append(Text(_("Noted: {note}").format(note=note)))
    if photo is not None:
        lines.append(Text(_("The photo is kept with it.")))
    row = [undo_button(talk)]
    if clarity is Clarity.CLEAR:
        row.insert(0, Button(_("Open it"), f"open {batch.number}"))
    else:
        row.insert(0, Button(_("Discard"), f"discard {batch.number}"))
    rows: list[tuple[Button, ...]] = [tuple(row)]
    if clarity is not Clarity.CLEAR and mix_of_batch(batch.frozen["lines"]).has_oil:
        # The amounts to add are those for the whole batch.
        rows.insert(0, (Button(_("What would mend it?"), mending_line(batch)),))
    return Reply((Text(first, strong=True), *lines), tuple(rows), edits=_of_reminder(talk))


def _of_reminder(talk: Talk) -> bool:
    return talk.message.tapped is not None


def _open(talk: Talk, given: Given) -> Reply:
    if "opened" in given:
        return opened_reply(talk, given)
    batch: BatchView = given["batch"]
    made = batch_life.open_batch(talk.desk, batch.number)
    first = _("Batch {number}, {name}, is in use.").format(number=batch.number, name=batch.name)
    lines: list[Block] = []
    if batch.state is BatchState.RESTING and batch.clarity != Clarity.CLEAR:
        lines.append(Text(_("Nobody has seen it clear yet.")))
    if made.batch.shortened_by_opening:
        lines.append(Text(_("Opening it started another clock: {rule}.").format(rule=rule_words(made.batch))))
    lines.append(Text(discard_words(made.batch, business_today(talk))))
    lines += batch_caution(talk.desk, batch, Step.SPRAYING if is_sprayed(batch) else Step.STORING)
    return Reply(
        (Text(first, strong=True), *lines),
        ((Button(_("Used up"), f"used {batch.number}"), undo_button(talk)),),
        edits=talk.message.tapped is not None,
    )


def _used(talk: Talk, given: Given) -> Reply:
    batch: BatchView = given["batch"]
    batch_life.use_up(talk.desk, batch.number)
    first = _("Batch {number}, {name}, is used up.").format(number=batch.number, name=batch.name)
    days = (talk.desk.now - (batch.opened_at or batch.made_at)).days
    return Reply(
        (
            Text(first, strong=True),
            Text(
                ngettext("It lasted {count} day.", "It lasted {count} days.", max(days, 1)).format(
                    count=max(days, 1)
                )
            ),
        ),
        (
            (
                Button(_("Make it again"), f"batch #{batch.formula_id}"),
                undo_button(talk),
            ),
        ),
        edits=talk.message.tapped is not None,
    )


def _ask_why(talk: Talk, given: Given) -> Question:
    choices = [(_(one), _(one)) for one in (N_("past its date"), N_("split"), N_("smells off"), N_("spilt"))]
    return Question(_("Why?"), columns(choices, 2), hint=_("a few words"))


def _ask_left(talk: Talk, given: Given) -> Question:
    batch: BatchView = given["batch"]
    units = talk.desk.bar.units
    word = "ml" if units == "metric" else ("US fl oz" if units == "us" else "imperial fl oz")
    from bot.trade.measures import from_ml  # noqa: PLC0415 - one conversion

    shares = []
    for label, share in (
        (_("all of it"), Fraction(1)),
        (_("half"), Fraction(1, 2)),
        (_("a quarter"), Fraction(1, 4)),
    ):
        unit = {"ml": "ml", "US fl oz": "us_fluid_ounce", "imperial fl oz": "imperial_fluid_ounce"}[word]
        number = from_ml(batch.total_ml * share, unit).number
        shares.append(
            (f"{label} ({show_ml(batch.total_ml * share, units)})", f"{show_number(number, 2)} {word}")
        )
    return Question(_("How much goes?"), columns(shares, 1), hint="40 ml")


def _accept_left(talk: Talk, given: Given, value: Any) -> Fraction:
    ml = quantity_in_ml(talk, value)
    if ml <= 0:
        raise Say(reply(_("An amount above zero, please, such as 40 ml.")))
    return ml


def _wants_amount(talk: Talk, given: Given) -> bool:
    # One tap must not throw a batch out without a word: how much and why are asked unless one was said.
    return given.guided or "note" not in given


def _discard(talk: Talk, given: Given) -> Reply:
    batch: BatchView = given["batch"]
    made = batch_life.discard(talk.desk, batch.number, given.get("amount"), str(given.get("note", "")))
    first = _("Batch {number}, {name}, is discarded: {volume}.").format(
        number=batch.number,
        name=batch.name,
        volume=show_ml(made.batch.lost_ml or Fraction(0), talk.desk.bar.units),
    )
    lines: list[Block] = []
    if given.get("note"):
        lines.append(Text(_("Why: {reason}").format(reason=given["note"])))
    lines += batch_caution(talk.desk, batch, Step.DISCARDING)
    return Reply(
        (Text(first, strong=True), *lines),
        (
            (
                Button(_("Make it again"), f"batch #{batch.formula_id}"),
                undo_button(talk),
            ),
        ),
        edits=talk.message.tapped is not None,
    )


def _ask_lot_ingredient(talk: Talk, given: Given) -> Question:
    batch: BatchView = given["batch"]
    choices = [(line.name, f"#{line.ingredient_id}") for line in batch.lines]
    return Question(_("Whose lot?"), columns(choices, 1), hint=_("An ingredient"))


def _accept_lot_ingredient(talk: Talk, given: Given, value: Any) -> int:
    return int(talk.noun(value, "INGREDIENT", _("ingredient")).id)


def _ask_lot(talk: Talk, given: Given) -> Question:
    return Question(_("What does the bottle say? Type the lot."), hint="A2231")


def _lot(talk: Talk, given: Given) -> Reply:
    batch = batch_life.note_lot(talk.desk, given["batch"].number, given["ingredient"], str(given["lot"]))
    line = next(one for one in batch.lines if one.ingredient_id == given["ingredient"])
    return reply(
        _("Batch {number}: {name} is lot {lot}.").format(number=batch.number, name=line.name, lot=line.lot),
        buttons=((Button(_("Another lot"), f"lot {batch.number}"), undo_button(talk)),),
    )


def _which(talk: Talk, given: Given) -> Reply:
    lot = str(given["lot"])
    found = batches.with_lot(talk.desk, lot)
    if not found:
        return reply(_("No batch holds lot {lot}.").format(lot=lot))
    rows = tuple((Button(f"{one.number} {one.name}", f"batch {one.number}"),) for one in found[:10])
    title = ngettext("Lot {lot} is in {count} batch", "Lot {lot} is in {count} batches", len(found))
    lines = [
        f"{one.number} {one.name}: {_(STATE_WORDS[one.state])}, {show_day(local(one.made_at).date())}"
        for one in found[:20]
    ]
    return reply(title.format(lot=lot, count=len(found)), "\n".join(lines), buttons=rows)


def _no_batch_said(slot: Slot) -> Slot:
    """A slot of making: not wanted where a batch's number was given."""
    wanted = slot.wanted
    return replace(slot, wanted=lambda talk, given: "batch" not in given and wanted(talk, given))


COMMANDS = (
    Command(
        "batch",
        N_("log a batch, or show one by its number"),
        _batch,
        words=("make batch", "made", "log batch", "make"),
        examples=(N_("batch grapefruit mist to 400 ml"), N_("batch 12")),
        slots=(
            Slot("batch", BATCH_SLOT.ask, never, accept_batch),
            _no_batch_said(FORMULA_SLOT),
            LOSS_SLOT,
            SWAP_SLOT,
            _no_batch_said(TARGET_SLOT),
            GRAMS_SLOT,
            TEMPERATURE_SLOT,
        ),
        writes=True,
        menu=20,
    ),
    Command("batches", N_("what is resting, ready, near discard"), _list, menu=25),
    Command(
        "check",
        N_("note how a rested batch looks"),
        _check,
        examples=(N_("check 12 clear"), N_("check 12 hazy, a thin skin on top")),
        slots=(
            BATCH_SLOT,
            Slot("clarity", _ask_clarity, accept=_accept_clarity),
            Slot("note", _ask_why, never),
            Slot(PHOTO, _ask_why, never),
        ),
        writes=True,
        menu=27,
    ),
    Command(
        "open",
        N_("put a batch into use, or note an opened bottle"),
        _open,
        words=("opened",),
        examples=(N_("open 12"), N_("opened grapefruit oil yesterday, kept cold")),
        slots=(
            replace(BATCH_SLOT, wanted=lambda talk, given: "opened" not in given),
            OPENED_SLOT,
            *DETAIL_SLOTS,
        ),
        writes=True,
    ),
    Command(
        "used",
        N_("note that a batch is used up"),
        _used,
        words=("used up", "finished", "empty"),
        slots=(BATCH_SLOT,),
        writes=True,
    ),
    Command(
        "discard",
        N_("throw a batch out"),
        _discard,
        examples=(N_("discard 12 40 ml, smelt of old oil"),),
        slots=(
            BATCH_SLOT,
            Slot("amount", _ask_left, _wants_amount, _accept_left),
            Slot("note", _ask_why, lambda talk, given: given.guided),
        ),
        writes=True,
    ),
    Command(
        "lot",
        N_("note the lot of an ingredient in a batch"),
        _lot,
        words=("lot number",),
        examples=(N_("lot 12 grapefruit oil A2231"),),
        slots=(
            BATCH_SLOT,
            Slot("ingredient", _ask_lot_ingredient, accept=_accept_lot_ingredient),
            Slot("lot", _ask_lot),
        ),
        writes=True,
    ),
    Command(
        "which",
        N_("which batches hold a lot"),
        _which,
        words=("which batches used lot", "which batches", "trace", "lots"),
        examples=(N_("which batches used lot A2231"),),
        slots=(Slot("lot", _ask_lot),),
    ),
)
