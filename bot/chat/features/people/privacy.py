"""Commands for privacy: a member's own data, erasing a person, and deleting the bar."""

from __future__ import annotations

import json
from dataclasses import dataclass

from bot.chat.dialogue.arguments import Arguments
from bot.chat.dialogue.command import Command, Wish
from bot.chat.dialogue.log_words import LogWords
from bot.chat.dialogue.slots import Given, Question, Slot
from bot.chat.dialogue.turn import Say, Turn
from bot.chat.features.people.team import SURE_SLOT, SureArguments
from bot.chat.i18n.language import _, ngettext, show_moment, show_number
from bot.chat.reply.message import Button, File, Reply, reply
from bot.trade.words import N_
from bot.work.context import Role
from bot.work.errors import NotAllowedError
from bot.work.people import bar_deletion, former, people, team
from bot.work.trials import trials


def _privacy(turn: Turn, arguments: Arguments) -> Reply:
    if turn.presence.bar is None:
        seen = _("A bar you left still shows your name beside what you logged there.")
    else:
        text = _("People at {bar} see your name beside what you logged. Other bars see nothing.")
        seen = text.format(bar=turn.context.bar.name)
    return reply(
        _("I keep your name, your number in this chat's service, your language, and what you logged."),
        seen,
        _("Whoever runs this bot holds the database and its backups."),
        buttons=((Button(_("All of it as a file"), "export me"), Button(_("Forget me"), "forget me")),),
    )


def _export_me(turn: Turn, arguments: Arguments) -> Reply:
    left = former.bars_left(turn.unit, turn.presence)
    outside = former.held(turn.unit, turn.presence, turn.clock.now(), turn.message.key)
    if turn.presence.bar is None:
        first = _("I keep your name, your number here and your language.")
        if left:
            first = _("Still kept of you at {bars}, with your name, number and language.").format(
                bars=", ".join(left)
            )
        return reply(first, buttons=((Button(_("Forget me"), "forget me"),),), files=(_as_file(outside),))
    held = bar_deletion.held_of_member(turn.context)
    rows = sum(len(value) for value in held.values() if isinstance(value, list))
    buttons = [(Button(_("Forget me"), "forget me"),)]
    lines = [_("Photos stay with the chat; here are only their numbers.")]
    if trials.running_blind(turn.context):
        lines.append(_("What went into the bottles of a blind trial comes with it once that ends."))
    if left:
        held["bars_left"] = outside["bars_left"]
        lines.append(_("It also has what is still kept of you at {bars}.").format(bars=", ".join(left)))
        buttons.append((Button(_("Forget me where I left"), "forget me where i left"),))
    return reply(
        ngettext(
            "Everything {bar} keeps about you: {count} row.",
            "Everything {bar} keeps about you: {count} rows.",
            rows,
        ).format(bar=turn.context.bar.name, count=show_number(rows, 0)),
        *lines,
        buttons=tuple(buttons),
        files=(_as_file(held),),
    )


def _as_file(held: dict[str, object]) -> File:
    return File("my-data.json", json.dumps(held, ensure_ascii=False, indent=2, default=str).encode())


def _forget_me(turn: Turn, arguments: SureArguments) -> Reply:
    if turn.presence.bar is None:
        return _forget_outside(turn, arguments)
    bar = turn.context.bar.name
    if turn.context.role is Role.OWNER:
        return reply(
            _("You own this bar: hand it over first, or delete it."),
            buttons=((Button(_("Team"), "team"),),),
        )
    if not arguments.sure:
        return reply(
            _("Leave {bar} and take your name out of it? It cannot be undone.").format(bar=bar),
            _("What you logged stays, under “former member”."),
            buttons=((Button(_("Yes, forget me"), "forget me yes"),), (Button(_("Stay"), "start"),)),
        )
    team.forget(turn.context, turn.context.person_id)
    return reply(_("You have left {bar}, and your name is gone from it.").format(bar=bar))


def _forget_outside(turn: Turn, arguments: SureArguments) -> Reply:
    """Forget a person in their former bars, whether or not they are in another one."""
    left = ", ".join(former.bars_left(turn.unit, turn.presence))
    inside = turn.presence.bar is not None or bool(people.bars_of(turn.unit, turn.presence))
    if inside and not left:
        return reply(_("No bar that you left holds your name."))
    if not arguments.sure:
        line = "forget me where i left yes" if inside else "forget me yes"
        yes = ((Button(_("Yes, forget me"), line),),)
        if not left:
            return reply(_("Forget your name, your number here and your language?"), buttons=yes)
        return reply(
            _("Take your name out of {bars}? It cannot be undone.").format(bars=left),
            _("What you logged stays, under “former member”."),
            buttons=yes,
        )
    former.forget(turn.unit, turn.presence, turn.clock.now(), turn.message.key)
    if not left:
        return reply(_("Forgotten. Write again any time."))
    return reply(_("Your name is gone from {bars}.").format(bars=left))


def _ask_name(turn: Turn, given: Given) -> Question:
    if turn.context.role is not Role.OWNER:
        raise NotAllowedError(Role.OWNER)
    return Question(
        _("To delete {bar} with all its formulas, batches and waste, type its name.").format(
            bar=turn.context.bar.name
        ),
        hint=turn.context.bar.name,
    )


def _accept_name(turn: Turn, given: Given, value: str) -> str:
    if not bar_deletion.matches_name(turn.context.bar, value):
        raise Say(reply(_("That is not its name. Nothing is deleted.")))
    return value


@dataclass(frozen=True, kw_only=True)
class DeleteArguments(Arguments):
    """The bar's name, typed again."""

    free: str


def _delete(turn: Turn, arguments: DeleteArguments) -> Reply:
    until = bar_deletion.begin(turn.context, arguments.free)
    return reply(
        _("{bar} will be deleted on {day}.").format(bar=turn.context.bar.name, day=show_moment(until)),
        _("Until then all works as before, and you can keep it after all."),
        _("I will warn the team a day before. Take a copy first: export"),
        buttons=((Button(_("Keep the bar"), "restore bar"),),),
    )


def _keep(turn: Turn, arguments: Arguments) -> Reply:
    if bar_deletion.keep(turn.context):
        return reply(_("{bar} stays.").format(bar=turn.context.bar.name))
    return reply(_("Nobody had asked to delete {bar}.").format(bar=turn.context.bar.name))


COMMANDS = (
    Command(
        "privacy",
        N_("what is kept of you, and who sees it"),
        _privacy,
        quick=True,
        anyone=True,
        wishes=(Wish("privacy"),),
    ),
    Command(
        "export me",
        N_("all that this bar holds of you, as a file"),
        _export_me,
        words=("my data",),
        private_only=True,
        anyone=True,
        wishes=(Wish("privacy"),),
    ),
    Command(
        "forget me",
        N_("leave, and take your name out"),
        _forget_me,
        slots=(SURE_SLOT,),
        writes=True,
        private_only=True,
        anyone=True,
        wishes=(Wish("privacy"),),
    ),
    Command(
        "forget me where i left",
        N_("take your name out of bars you left"),
        _forget_outside,
        slots=(SURE_SLOT,),
        writes=True,
        private_only=True,
        anyone=True,
    ),
    Command(
        "delete bar",
        N_("delete the bar, after seven days"),
        _delete,
        slots=(Slot("free", _accept_name, _ask_name),),
        writes=True,
        private_only=True,
    ),
    Command(
        "restore bar",
        N_("keep a bar that was to be deleted"),
        _keep,
        words=("keep bar",),
        writes=True,
    ),
)

LOG_WORDS = (
    LogWords("delete bar", N_("set the bar to be deleted")),
    LogWords("keep bar", N_("kept the bar after all")),
)
