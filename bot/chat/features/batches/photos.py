"""The command photos: the photos of a batch's checks, oldest first."""

from __future__ import annotations

from dataclasses import dataclass

from bot.chat.dialogue.arguments import Arguments
from bot.chat.dialogue.command import Command, Wish
from bot.chat.dialogue.inputs.shared_slots import BATCH_SLOT
from bot.chat.dialogue.turn import Turn
from bot.chat.features.batches.batch_card import event_words
from bot.chat.i18n.language import _, ngettext, show_number
from bot.chat.reply.message import Button, File, Reply, reply
from bot.trade.words import N_
from bot.work.batches.batches import BatchView


@dataclass(frozen=True, kw_only=True)
class PhotosArguments(Arguments):
    """A batch."""

    batch: BatchView


def _photos(turn: Turn, arguments: PhotosArguments) -> Reply:
    batch, units = arguments.batch, turn.context.bar.units
    shown = Button(_("Show batch {number}").format(number=batch.number), f"batch {batch.number}")
    events = [event for event in batch.events if event.photos]
    if not events:
        return reply(
            _("Batch {number}, {name}, has no photos yet.").format(number=batch.number, name=batch.name),
            _("Send one with “check {number} clear” written under it.").format(number=batch.number),
            buttons=((shown,),),
        )
    photos = [(event, photo) for event in events for photo in event.photos]
    first = ngettext(
        "Batch {number}, {name}: {count} photo", "Batch {number}, {name}: {count} photos", len(photos)
    ).format(number=batch.number, name=batch.name, count=show_number(len(photos), 0))
    files = tuple(
        File(
            f"batch-{batch.number}-{number}.jpg",
            b"",
            picture=True,
            caption=event_words(event, units, with_photo=False),
            file_id=photo,
        )
        for number, (event, photo) in enumerate(photos, start=1)
    )
    lines = [event_words(event, units, with_photo=False) for event in events[-8:]]
    return reply(first, "\n".join(lines), buttons=((shown,),), files=files)


COMMANDS = (
    Command(
        "photos",
        N_("how a batch has looked over time"),
        _photos,
        words=("photo", "pictures", "album"),
        examples=(N_("photos 12"),),
        slots=(BATCH_SLOT,),
        wishes=(Wish("photos", ("{batch?}",)),),
    ),
)
