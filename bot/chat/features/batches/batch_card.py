"""Show a batch as a card: ingredients, state, events, and next steps."""

from __future__ import annotations

from datetime import date, datetime, timedelta
from fractions import Fraction

from bot.chat.dialogue.inputs.shared_slots import STATE_WORDS
from bot.chat.dialogue.log_words import photos_mark
from bot.chat.dialogue.turn import Turn
from bot.chat.features.safety.caution_blocks import batch_caution
from bot.chat.features.safety.grade_words import allergen_line, unconfirmed_mark
from bot.chat.i18n.language import _, local, ngettext, show_day, show_full_day, show_moment, show_number
from bot.chat.reply.message import Block, Button, Caution, Grid, Reply, Text
from bot.chat.reply.units import show_amount, show_hours, show_ml, show_percents, show_temperature
from bot.trade.safety.caution import Step
from bot.trade.words import N_
from bot.work.batches import bottles
from bot.work.batches.batches import BatchLineView, BatchState, BatchView, Clarity, EventView
from bot.work.batches.bottles import Left
from bot.work.events import events
from bot.work.safety import allergens
from bot.work.trials import blind

CLARITY_WORDS = {Clarity.CLEAR: N_("clear"), Clarity.HAZY: N_("hazy"), Clarity.SPLIT: N_("split")}
_WHAT_WORDS = {
    "made": N_("made"),
    "arrived": N_("came from another bar"),
    "moved": N_("moved"),
    "check": N_("checked"),
    "strained": N_("strained"),
    "added": N_("added"),
    "filtered": N_("filtered"),
    "opened": N_("opened"),
    "emptied": N_("a bottle emptied"),
    "used up": N_("used up"),
    "discarded": N_("discarded"),
    "undo": N_("undone"),
}


def card(turn: Turn, batch: BatchView) -> Reply:
    """Show one batch with its next steps."""
    units = turn.context.bar.units
    first = _("Batch {number}: {name}, {state}").format(
        number=batch.number, name=batch.name, state=_(STATE_WORDS[batch.state])
    )
    rows = []
    for line in batch.lines:
        amount = show_amount(line.amount, line.dimension, units)
        rows.append((_shown_line(batch, line), amount))
    trial = blind.trial_of(turn.context, batch)
    inside: Block = Grid(tuple(rows))
    if trial is not None:
        inside = Text(_("Blind trial {trial}: what went in stays hidden until it ends.").format(trial=trial))
    # From here on nothing may distinguish the bottles of a blind trial.
    batch = blind.as_any_bottle(turn.context, batch)
    # The next step precedes the ingredients: people scan a label with the bottle in the other hand.
    step = next_step(turn, batch) if batch.state.open else ""
    blocks: list[Block] = [Text(step)] if step else []
    blocks += [inside, *(Text(line) for line in _card_facts(turn, batch, trial is None))]
    blocks += [
        Text(event_words(event, units)) for event in batch.events if event.what not in {"made", "arrived"}
    ][-4:]
    mark = unconfirmed_mark(turn.context, batch)
    if mark:
        blocks.append(Caution(mark))
    elif batch.state.open:
        blocks += batch_caution(turn.context, batch, _step(batch))
    buttons = _next_buttons(turn, batch)
    if trial is not None:
        buttons = (*buttons, (Button(_("Trial {trial}").format(trial=trial), f"trials {trial}"),))
    return Reply((Text(first, strong=True), *blocks), buttons)


def _shown_line(batch: BatchView, line: BatchLineView) -> str:
    """Return an ingredient with its lot, and with the strength of the poured spirit."""
    name = line.name
    for kept in batch.frozen["lines"]:
        if (
            kept["ingredient"] == line.ingredient_id
            and kept.get("strength_percent") is not None
            and not name.endswith("%")
        ):
            name = f"{name} {show_number(Fraction(kept['strength_percent']), 1)} %"
    if line.best_before is None:
        return f"{name} [{line.lot}]" if line.lot else name
    best = _("best before {day}").format(day=show_full_day(line.best_before))
    return f"{name} [{line.lot}, {best}]"


def _step(batch: BatchView) -> Step:
    """Return the current step of the work on a batch."""
    if batch.state is BatchState.RESTING:
        return Step.RESTING
    if batch.state is BatchState.READY:
        return Step.STORING
    return Step.SPRAYING if is_sprayed(batch) else Step.SERVING


def is_sprayed(batch: BatchView) -> bool:
    """Whether a batch is used by spraying."""
    return batch.frozen.get("preparation") == "aroma mist" or batch.frozen.get("sprays") is not None


def rule_words(batch: BatchView) -> str:
    """Write the rule behind a batch's discard date, and the ingredient whose age set it."""
    rule = _(batch.discard_rule)
    return f"{rule}, {batch.discard_subject}" if batch.discard_subject else rule


def event_lines(turn: Turn, number: int) -> list[str]:
    """Say for which event a batch is kept, if for any."""
    event = events.made_for(turn.context).get(number)
    return [] if event is None else [_("For the event on {day}.").format(day=show_day(event.asked.day))]


def _card_facts(turn: Turn, batch: BatchView, tells: bool = True) -> list[str]:
    units = turn.context.bar.units
    made = _("{volume} made {when} by {name}, version {version}")
    if batch.came_from is not None:
        made = _("{volume}, made {when} at {bar} as batch {number}")
    facts = [
        made.format(
            volume=show_ml(batch.made_ml, units),
            when=show_moment(batch.made_at),
            name=batch.made_by,
            version=batch.version,
            bar=batch.came_from,
            number=batch.number_there,
        ),
        *event_lines(turn, batch.number),
    ]
    if batch.strained:
        text = _("{volume} of it came out after straining")
        facts.append(text.format(volume=show_ml(batch.total_ml, units)))
    if tells and batch.strength is not None and batch.strength.high:
        facts.append(show_percents(batch.strength))
    if batch.state is BatchState.RESTING:
        facts.append(rest_words(batch, turn.context.now))
    there = bottles.left(turn.context, batch.number) if batch.state.open else None
    if there is not None:
        facts.append(left_words(there, units))
    if batch.opened_at is not None:
        facts.append(_("Opened {when}").format(when=show_moment(batch.opened_at)))
    if batch.state.open:
        rule = f" ({rule_words(batch)})" if tells else ""
        facts.append(f"{discard_words(batch, turn.context.today)}{rule}")
        facts.append(allergen_line(allergens.kept_with(batch.frozen)))
    elif batch.lost_ml:
        facts.append(_("{volume} lost").format(volume=show_ml(batch.lost_ml, units)))
    return [fact for fact in facts if fact]


def left_words(there: Left, units: str) -> str:
    """Write what is left of a batch in how many bottles, and what was lost."""
    parts = []
    for one in there.sizes:
        said = _("{count} of {filled} x {size} unopened")
        parts.append(said.format(count=one.unopened, filled=one.filled, size=show_ml(one.size_ml, units)))
    opened = sum(one.open for one in there.sizes)
    if opened:
        parts.append(ngettext("{count} open", "{count} open", opened).format(count=opened))
    if there.bulk_ml >= 1:
        parts.append(_("{amount} not bottled").format(amount=show_ml(there.bulk_ml, units)))
    if there.lost_ml:
        parts.append(_("{volume} lost").format(volume=show_ml(there.lost_ml, units)))
    if there.moved_ml:
        parts.append(_("{volume} moved").format(volume=show_ml(there.moved_ml, units)))
    if there.event_ml:
        parts.append(_("{volume} used at events").format(volume=show_ml(there.event_ml, units)))
    return ", ".join(parts)


def next_step(turn: Turn, batch: BatchView) -> str:
    """Return the likely next step in words, or '' if there is none yet."""
    if turn.context.today > batch.discard_on:
        return _("Next: discard it.")
    if batch.state is BatchState.RESTING:
        if not batch.rested(turn.context.now):
            return ""
        return _("Next: strain it.") if batch.to_strain else _("Next: check how it looks.")
    if batch.state is BatchState.READY:
        return _("Next: label it, then open it.")
    return _("Next: note when it is used up.")


def rest_words(batch: BatchView, now: datetime) -> str:
    """Write the remaining rest of a batch, or the time since it ended."""
    if now < batch.rest_until:
        left = batch.rest_until - now
        hours = Fraction(round(left / timedelta(hours=1)) or 1)
        if hours >= 72:
            hours = Fraction(24 * round(hours / 24))
        return _("Rests until {when}, {left} more").format(
            when=show_moment(batch.rest_until), left=show_hours(hours)
        )
    return _("Rested since {when}: check how it looks").format(when=show_moment(batch.rest_until))


def discard_words(batch: BatchView, today: date) -> str:
    """Write the discard date of a batch."""
    left = (batch.discard_on - today).days
    day = show_full_day(batch.discard_on)
    if left < 0:
        return _("Past its discard date, {day}").format(day=day)
    if left == 0:
        return _("Discard today, at the end of the day")
    return ngettext(
        "Discard after {day}, {count} day left", "Discard after {day}, {count} days left", left
    ).format(day=day, count=show_number(left, 0))


def event_words(event: EventView, units: str, with_photo: bool = True) -> str:
    """Write one event of a batch; `with_photo` means that it has a photo."""
    what = _(_WHAT_WORDS.get(event.what, event.what))
    text = f"{show_day(local(event.at).date())}: {what}"
    if event.clarity:
        text += f", {_(CLARITY_WORDS[Clarity(event.clarity)])}"
    if event.temperature_c is not None:
        text += f", {show_temperature(float(event.temperature_c), units)}"
    text += f" ({event.by})"
    if event.note:
        text += f": {event.note}"
    if event.photos and with_photo:
        text += " " + photos_mark(len(event.photos))
    return text


def _next_buttons(turn: Turn, batch: BatchView) -> tuple[tuple[Button, ...], ...]:
    number = batch.number
    again = Button(_("Make it again"), f"batch #{batch.formula_id}")
    photos = any(event.photos for event in batch.events)
    if not batch.state.open:
        return ((again, Button(_("Photos"), f"photos {number}")),) if photos else ((again,),)
    discard = Button(_("Discard"), f"discard {number}")
    past = turn.context.today > batch.discard_on
    rows: list[tuple[Button, ...]] = [(discard,)] if past else []
    if batch.state is BatchState.READY:
        rows.append((Button(_("Open it"), f"open {number}"), Button(_("Check"), f"check {number}")))
    elif batch.state is BatchState.RESTING:
        if batch.to_strain:
            rows.append((Button(_("Strained"), f"strained {number}"),))
        if batch.clarity in {Clarity.HAZY, Clarity.SPLIT}:
            rows.append((Button(_("What would mend it?"), f"why {number}"),))
        rows.append(clarity_buttons(number))
        rows.append((Button(_("Open it"), f"open {number}"),))
    else:
        rows.append((Button(_("Used up"), f"used {number}"), Button(_("Check"), f"check {number}")))
    last = [Button(_("Label"), f"label {number}"), Button(_("Note a lot"), f"lot {number}")]
    rows.append(tuple(last if past else [discard, *last]))
    if photos:
        rows.append((Button(_("Photos"), f"photos {number}"),))
    return tuple(rows)


def clarity_buttons(number: int) -> tuple[Button, ...]:
    """Return the three answers to 'how does it look?'."""
    return (
        Button(_("Clear"), f"check {number} clear"),
        Button(_("Hazy"), f"check {number} hazy"),
        Button(_("Split"), f"check {number} split"),
    )
