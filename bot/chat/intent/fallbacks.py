"""Replies to messages that are not understood, cannot run, or come from people without a bar."""

from __future__ import annotations

from bot.chat.dialogue.command import Command
from bot.chat.dialogue.error_messages import worded, worded_phrase_error
from bot.chat.dialogue.registry import command_at_start
from bot.chat.dialogue.rights import stranger
from bot.chat.dialogue.turn import Turn
from bot.chat.grammar.parser import PhraseError
from bot.chat.i18n.language import _
from bot.chat.intent.guessing import near_word, offers
from bot.chat.reply.layout import LABEL_LENGTH
from bot.chat.reply.message import Button, Reply, reply
from bot.chat.reply.units import own_volume


def not_understood(turn: Turn) -> Reply:
    """Suggest the command whose word is close to the first typed one, without running it; else the help."""
    if turn.presence.bar is None:
        return stranger(turn)
    text = " ".join(turn.message.text.split()).lstrip("/¿ ")
    meant = offers(turn, text)
    if meant:
        return reply(_("Did you mean:"), buttons=meant)
    first = text.partition(" ")[0].casefold()
    near = near_word(first)
    if near is not None:
        fixed = near + text[len(first) :]
        return reply(
            _("I do not know “{word}”. Did you mean “{near}”?").format(word=first[:LABEL_LENGTH], near=near),
            buttons=((Button(fixed if len(fixed) <= LABEL_LENGTH else near, fixed),),),
        )
    return reply(
        _("I did not understand that."),
        _("Start with what to do, such as: scale, waste, batch, cost, week. Or tap Help."),
        buttons=((Button(_("Help"), "help"),),),
    )


def worded_refusal(error: Exception, turn: Turn) -> list[Reply]:
    """Word the error of a message; a parse error adds an example and a button for the steps."""
    if isinstance(error, PhraseError):
        found = command_at_start(turn.line.lstrip("/"))
        said = worded_phrase_error(error)
        return [reply(said)] if found is None else [_with_a_way_on(turn, error, said, *found)]
    answer = worded(error)
    if answer is None:
        raise error
    return [answer]


def _with_a_way_on(turn: Turn, error: PhraseError, said: str, command: Command, rest: str) -> Reply:
    line = " ".join(turn.line.split())
    if not error.problem and "UNIT" in error.expected and turn.presence.bar is not None:
        # '8x50' leaves the unit open: the bar's own is one tap away.
        unit = own_volume(turn.context.bar.units)
        return reply(said, buttons=((Button(f"{line} {unit}"[-LABEL_LENGTH:], f"{line} {unit}"),),))
    meant = offers(turn, line, command.name) or offers(turn, rest, command.name)
    if not command.writes and any(_writes(button) for row in meant for button in row):
        meant = ()  # 'plan orange mist 250 ml friday' only asks
    if meant:
        return reply(said, _("Did you mean:"), buttons=meant)
    lines = [_("For example: {example}").format(example=_(one)) for one in command.examples[:1]]
    way = []
    if any(slot.ask is not None or slot.name not in _BESIDE for slot in command.slots):
        way.append(Button(_("Step by step"), command.name))
    if command.examples:
        way.append(Button(_("More examples"), f"help {command.name}"))
    return reply(said, *lines, buttons=(tuple(way),) if way else ())


def _writes(button: Button) -> bool:
    found = command_at_start(button.line)
    return found is not None and found[0].writes


# Optional slots, and slots that only buttons fill: a command with no others has no steps.
_BESIDE = frozenset({"grams", "loss", "temperature", "more_detail", "picture", "swap", "number", "why"})
_BESIDE |= {"duration", "moment", "sure", "free"}
