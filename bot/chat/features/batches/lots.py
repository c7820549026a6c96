"""Commands for lots: the lot of an ingredient in a batch, and the batches with a lot."""

from __future__ import annotations

from dataclasses import dataclass

from bot.chat.dialogue.arguments import Arguments
from bot.chat.dialogue.command import Command, Wish
from bot.chat.dialogue.inputs.shared_slots import BATCH_SLOT, STATE_WORDS, undo_button
from bot.chat.dialogue.log_words import LogWords
from bot.chat.dialogue.slots import Given, Question, Slot, columns, plain
from bot.chat.dialogue.turn import Turn
from bot.chat.grammar.syntax import Named
from bot.chat.i18n.language import _, local, ngettext, show_day
from bot.chat.reply.message import Button, Reply, reply
from bot.trade.words import N_
from bot.work.batches import batch_life, batches
from bot.work.batches.batches import BatchView


def _ask_lot_ingredient(turn: Turn, given: Given) -> Question:
    batch = given[BATCH_SLOT]
    choices = [(line.name, f"#{line.ingredient_id}") for line in batch.lines]
    return Question(_("Whose lot?"), columns(choices, 1), hint=_("An ingredient"))


def _accept_lot_ingredient(turn: Turn, given: Given, value: Named) -> int:
    return int(turn.noun(value, "INGREDIENT", _("ingredient")).id)


def _ask_lot(turn: Turn, given: Given) -> Question:
    return Question(_("What does the bottle say? Type the lot."), hint="A2231")


@dataclass(frozen=True, kw_only=True)
class WhichArguments(Arguments):
    """A lot."""

    lot: str


@dataclass(frozen=True, kw_only=True)
class LotArguments(WhichArguments):
    """A batch, the number of one of its ingredients, and the lot."""

    batch: BatchView
    ingredient: int


def _lot(turn: Turn, arguments: LotArguments) -> Reply:
    ingredient = arguments.ingredient
    batch = batch_life.note_lot(turn.context, arguments.batch.number, ingredient, arguments.lot)
    line = next(one for one in batch.lines if one.ingredient_id == ingredient)
    return reply(
        _("Batch {number}: {name} is lot {lot}.").format(number=batch.number, name=line.name, lot=line.lot),
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
        examples=(N_("lot 12 grapefruit oil A2231"),),
        slots=(
            BATCH_SLOT,
            Slot("ingredient", _accept_lot_ingredient, _ask_lot_ingredient),
            Slot("lot", plain(str), _ask_lot),
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

LOG_WORDS = (LogWords("lot", N_("noted a lot for batch {batch}"), N_("lot {after} in batch {batch}")),)
