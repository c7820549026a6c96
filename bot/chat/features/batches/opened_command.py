"""The command that logs an opened bottle; 'opened grapefruit oil' is another form."""

from __future__ import annotations

from bot.chat.dialogue.command import Command, Wish
from bot.chat.dialogue.log_words import LogWords
from bot.chat.features.batches.opened_bottles import ASKED_SLOT, DETAIL_SLOTS, opened_reply
from bot.trade.words import N_

COMMANDS = (
    Command(
        "bottle",
        N_("note when a bottle of oil was opened"),
        opened_reply,
        words=("new bottle", "opened bottle", "opened bottle of"),
        examples=(
            N_("opened grapefruit oil yesterday, kept cold"),
            N_("opened lime juice best before 2027-01-31"),
        ),
        slots=(ASKED_SLOT, *DETAIL_SLOTS),
        writes=True,
        wishes=(Wish("bottle", ("{ingredient} ON {day}", "{ingredient?}")),),
    ),
)

LOG_WORDS = (LogWords("opened", N_("opened {name}"), N_("new bottle of {name}")),)
