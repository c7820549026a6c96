"""Commands for lots: the lot of an ingredient in a batch, and the batches with a lot."""

from __future__ import annotations

import re
from calendar import monthrange
from dataclasses import dataclass
from datetime import date

from bot.chat.dialogue.arguments import Arguments
from bot.chat.dialogue.command import Command, Wish
from bot.chat.dialogue.inputs.names import named_ingredient
from bot.chat.dialogue.inputs.shared_slots import SHOWN_BATCH_SLOT, STATE_WORDS, undo_button
from bot.chat.dialogue.log_words import LogWords
from bot.chat.dialogue.slots import Given, Question, Slot, columns, plain
from bot.chat.dialogue.turn import Say, Turn
from bot.chat.features.batches.batch_card import discard_words
from bot.chat.grammar.syntax import Named
from bot.chat.i18n.language import _, local, ngettext, show_day, show_full_day
from bot.chat.reply.message import Button, Reply, reply
from bot.trade.words import N_
from bot.work.batches import batch_life, batches
from bot.work.batches.batches import BatchView
from bot.work.log.chain import State

_EXPIRY = re.compile(
    r"(?P<lot>.+?)[\s,;]+(?:exp(?:\.|iry|ires?)?|best(?: before| by)?|use by|bbe?|cad(?:\.|uca|ucidad)?|vence"
    r"|consumir antes del?)(?: date| on)?[\s:]*"
    r"(?:(?P<year>\d{4})-(?P<month>\d{1,2})(?:-(?P<day>\d{1,2}))?|(?P<m>\d{1,2})[/.-](?P<y>\d{2}|\d{4})|.*)",
    re.IGNORECASE | re.ASCII | re.DOTALL,
)


def _ask_lot_ingredient(turn: Turn, given: Given) -> Question:
    batch = given[SHOWN_BATCH_SLOT]
    choices = [(line.name, f"#{line.ingredient_id}") for line in batch.lines]
    return Question(_("Whose lot?"), columns(choices, 1), hint=_("An ingredient"))


def _accept_lot_ingredient(turn: Turn, given: Given, value: Named) -> int:
    return named_ingredient(turn, value).id


def _ask_lot(turn: Turn, given: Given) -> Question:
    return Question(_("What does the bottle say? Type the lot."), hint="A2231")


def _accept_lot(turn: Turn, given: Given, value: str) -> tuple[str, date | None]:
    """Take the expiry off the end of what the bottle says: '77-B exp 2027-05'."""
    found = _EXPIRY.fullmatch(value.strip())
    if found is None:
        return value.strip(), None
    day = _last_day(found["year"] or found["y"], found["month"] or found["m"], found["day"])
    if day is None:
        first = _("When does lot {lot} expire? Write it as 2027-05, or 2027-05-31.")
        raise Say(reply(first.format(lot=found["lot"])))
    return found["lot"].strip(" ,"), day


def _last_day(year: str | None, month: str | None, day: str | None) -> date | None:
    """Return a day of the calendar, the last of its month where none was said; None for no such day."""
    if year is None or month is None:
        return None
    number, of = int(month), int(year) + (2000 if len(year) == 2 else 0)
    if not 1 <= number <= 12:
        return None
    last = monthrange(of, number)[1]
    return (
        date(of, number, last if day is None else int(day)) if int(day or 1) in range(1, last + 1) else None
    )


@dataclass(frozen=True, kw_only=True)
class WhichArguments(Arguments):
    """A lot."""

    lot: str


@dataclass(frozen=True, kw_only=True)
class LotArguments(Arguments):
    """A batch, an ingredient of it by its number, and its lot with the expiry."""

    lot: tuple[str, date | None]
    batch: BatchView
    ingredient: int


def _lot(turn: Turn, arguments: LotArguments) -> Reply:
    ingredient = arguments.ingredient
    before = arguments.batch.discard_on
    batch = batch_life.note_lot(turn.context, arguments.batch.number, ingredient, *arguments.lot)
    line = next(one for one in batch.lines if one.ingredient_id == ingredient)
    lines = []
    if line.best_before is not None:
        lines.append(_("Best before {day}.").format(day=show_full_day(line.best_before)))
    if batch.discard_on < before:
        first = _("The batch goes by that day too, instead of {day}.")
        lines.append(first.format(day=show_full_day(before)))
    return reply(
        _("Batch {number}: {name} is lot {lot}.").format(number=batch.number, name=line.name, lot=line.lot),
        *lines,
        buttons=((Button(_("Another lot"), f"lot {batch.number}"), undo_button(turn)),),
    )


def _which(turn: Turn, arguments: WhichArguments) -> Reply:
    lot = arguments.lot
    found = batches.with_lot(turn.context, lot)
    if not found:
        return reply(_("No batch holds lot {lot}.").format(lot=lot))
    rows = tuple((Button(f"{one.number} {one.name}", f"batch {one.number}"),) for one in found[:10])
    title = ngettext("Lot {lot} is in {count} batch", "Lot {lot} is in {count} batches", len(found))
    lines = [
        f"{one.number} {one.name}: {_(STATE_WORDS[one.state])}, {show_day(local(one.made_at).date())}"
        for one in found[:20]
    ]
    return reply(title.format(lot=lot, count=len(found)), "\n".join(lines), buttons=rows)


COMMANDS = (
    Command(
        "lot",
        N_("note the lot of an ingredient in a batch"),
        _lot,
        words=("lot number",),
        examples=(N_("lot 12 grapefruit oil A2231"), N_("lot 12 grapefruit oil A2231 exp 2027-05")),
        slots=(
            SHOWN_BATCH_SLOT,
            Slot("ingredient", _accept_lot_ingredient, _ask_lot_ingredient),
            Slot("lot", _accept_lot, _ask_lot),
        ),
        writes=True,
        wishes=(Wish("lot", ("{batch} {ingredient} {lot}", "{batch} {ingredient}", "{batch?}")),),
    ),
    Command(
        "which",
        N_("which batches hold a lot"),
        _which,
        words=("which batches used lot", "which batches", "trace", "lots"),
        examples=(N_("which batches used lot A2231"),),
        slots=(Slot("lot", plain(str), _ask_lot),),
        wishes=(Wish("which", ("{lot}", "")),),
    ),
)


def _discard_now(turn: Turn, found: State) -> list[str]:
    """Say the discard date after an undo of a lot with an expiry."""
    batch = batches.get(turn.context, found.details["batch"])
    expiry = isinstance(found.details["before"], list) and found.details["after"][1] is not None
    return [discard_words(batch, turn.context.today)] if expiry and batch.state.open else []


LOG_WORDS = (
    LogWords("lot", N_("noted a lot for batch {batch}"), N_("lot {lot} in batch {batch}"), now=_discard_now),
)
