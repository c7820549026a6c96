"""The command start: open a bar, or join one by a code."""

from __future__ import annotations

from dataclasses import dataclass, replace

from bot.chat.dialogue.command import Command
from bot.chat.dialogue.slots import AnySlot, Given, Slot, plain
from bot.chat.dialogue.turn import Turn
from bot.chat.features.people.deep_links import is_scan, join, main_buttons, scan
from bot.chat.features.people.opening import (
    ABOUT_A_BAR,
    OpenArguments,
    Proposal,
    units_name,
)
from bot.chat.features.people.setting_values import clock_text, show_clock_minute
from bot.chat.i18n.language import _, show_moment, tongue
from bot.chat.reply.message import Button, Reply, reply
from bot.trade.words import N_
from bot.work.context import Role
from bot.work.people import bars, people, team


@dataclass(frozen=True, kw_only=True)
class StartArguments(OpenArguments):
    """The code of a link; or the answers for a new bar."""

    code: str = ""


def _start(turn: Turn, arguments: StartArguments) -> Reply:
    code = arguments.code
    if code:
        return scan(turn, code) if is_scan(code) else join(turn, code)
    presence = turn.presence
    if presence.bar is None and not turn.message.place.private:
        return _claim_group(turn)
    return _welcome_back(turn) if arguments.bar_name is None else _open(turn, arguments)


def _open(turn: Turn, arguments: OpenArguments) -> Reply:
    """Open a bar with the given answers, and make it the person's current bar."""
    if arguments.bar_name is None:
        raise LookupError("a new bar has a name")
    zone = arguments.zone or arguments.bar_name.zone
    likely, said = bars.likely_in(zone), arguments.proposal or Proposal()
    closing = arguments.closing if said.closing is None else said.closing
    bar = bars.open_bar(
        turn.unit,
        turn.presence,
        turn.message.sender.name,
        turn.message.place.private,
        turn.clock.now(),
        name=arguments.bar_name.name,
        zone=zone,
        jurisdiction=arguments.jurisdiction or said.jurisdiction or likely.jurisdiction,
        currency=arguments.currency or said.currency or likely.currency,
        units=arguments.units or said.units or likely.units,
        closing_minute=bars.DEFAULT_CLOSING_MINUTE if closing is None else closing,
        language=tongue().language,
    )
    return reply(
        _("{bar} is open.").format(bar=bar.name),
        _("{units} · {currency} · {zone} · a day ends at {closing}").format(
            units=units_name(bar.units),
            currency=bar.currency,
            zone=bar.zone.replace("_", " "),
            closing=show_clock_minute(bar.closing_minute),
        ),
        _("At {time} I ask you what was thrown out. Another time: bar close reminder {other}").format(
            time=show_clock_minute(bar.close_prompt_at), other=clock_text(bar.close_prompt_at - 60)
        ),
        _("All of it can be changed with /bar. Next: write down what you make."),
        buttons=(
            (Button(_("Add a formula"), "new formula"), Button(_("Propose one"), "design")),
            (Button(_("Set a price"), "price"), Button(_("Log waste"), "waste")),
        ),
    )


def _claim_group(turn: Turn) -> Reply:
    """Claim a group without a bar as the chat of the manager's bar."""
    place = turn.message.place
    home = people.at_home(turn.unit, turn.presence)
    if home is None:
        return reply(
            _("Open a bar first, in a private chat with me. Then say /start here to make this its own chat.")
        )
    context = home.context(turn.unit, turn.clock.now(), turn.message.key)
    people.use_as_team_room(context, place.title, place.thread)
    return reply(
        _("This chat is now {bar}'s own: reminders for the team come here.").format(bar=context.bar.name),
        _("Here, start with a slash or answer one of my messages: I read nothing else."),
    )


def _welcome_back(turn: Turn) -> Reply:
    context = turn.context
    until = team.is_closing(context)
    closing = [_("This bar will be deleted on {day}.").format(day=show_moment(until))] if until else []
    keep = ((Button(_("Keep the bar"), "restore bar"),),) if until and context.role is Role.OWNER else ()
    return reply(
        _("You are at {bar}, {name}.").format(bar=context.bar.name, name=context.name),
        *closing,
        buttons=(*keep, *main_buttons()),
    )


def _opening(turn: Turn, given: Given) -> bool:
    return turn.presence.bar is None and _CODE not in given and turn.message.place.private


_CODE = Slot("code", plain(str), rule="free_slot")


def _while_opening(slot: AnySlot) -> AnySlot:
    """Return the slot as the command start asks it: of a person without a bar only."""

    def wanted(turn: Turn, given: Given) -> bool:
        return _opening(turn, given) and slot.wanted(turn, given)

    return replace(slot, wanted=wanted)


COMMANDS = (
    Command(
        "start",
        N_("open a bar, or see where you are"),
        _start,
        slots=(
            _CODE,
            *map(_while_opening, ABOUT_A_BAR),
        ),
        writes=True,
        anyone=True,
    ),
    Command(
        "another bar",
        N_("open another bar of your own"),
        _open,
        words=("open another bar", "open a bar", "new bar", "second bar"),
        slots=ABOUT_A_BAR,
        writes=True,
        private_only=True,
    ),
)
