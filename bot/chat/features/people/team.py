"""Commands for the team: members, inviting, handing over, leaving; and a person's several bars."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from bot.chat.dialogue.arguments import Arguments
from bot.chat.dialogue.command import Command, Wish
from bot.chat.dialogue.inputs.shared_slots import NUMBER_SLOT
from bot.chat.dialogue.log_words import LogWords
from bot.chat.dialogue.rights import stranger
from bot.chat.dialogue.slots import Given, Question, Slot, columns, plain, said
from bot.chat.dialogue.turn import Say, Turn
from bot.chat.features.people.deep_links import ask_code, join, main_buttons
from bot.chat.grammar.syntax import Duration
from bot.chat.i18n.language import _, local, ngettext, other_words, show_full_day, show_moment, show_number
from bot.chat.reply.message import Button, File, Reply, reply
from bot.trade.words import N_
from bot.work.context import Role
from bot.work.log.history import LogLine
from bot.work.people import invites, people, team
from bot.work.people.team import TeamMember

ROLE_WORDS = {Role.OWNER: N_("owner"), Role.MANAGER: N_("manager"), Role.MEMBER: N_("member")}
_CHANGES = (N_("remove"), N_("manager"), N_("member"), N_("owner"), N_("forget"))


def shown_name(name: str) -> str:
    """Return a member's name, or in the current language that it was forgotten."""
    return _(team.FORGOTTEN) if name == team.FORGOTTEN else name


# -- team -------------------------------------------------------------------------------


@dataclass(frozen=True, kw_only=True)
class TeamArguments(Arguments):
    """A member and the change; nothing to show the team."""

    free: str = ""


def _team(turn: Turn, arguments: TeamArguments) -> Reply:
    words = arguments.free.split()
    if not words:
        return _list(turn)
    first = words[0].casefold()
    what = next((one for one in _CHANGES if first in {one, _(one), *other_words(one)}), first)
    if what in _CHANGES and len(words) > 1:
        sure = len(words) > 2 and words[-1].casefold() in {"yes", _("yes")}
        member = _named(turn, " ".join(words[1:-1] if sure else words[1:]), what)
        return _change(turn, what, member, sure)
    raise Say(reply(_("Say: team remove Ben, team manager Ben, team owner Ben. Or tap /team.")))


def _named(turn: Turn, text: str, what: str) -> TeamMember:
    known = team.team(turn.context)
    if what == "forget":
        known = [*known, *team.gone(turn.context)]
    plain = text.casefold()
    found = [one for one in known if str(one.person_id) == plain or one.name.casefold() == plain]
    if len(found) == 1:
        return found[0]
    buttons = tuple((Button(one.name, f"team {what} {one.person_id}"),) for one in found or known[:10])
    raise Say(reply(_("Who is “{name}”?").format(name=text[:40]), buttons=buttons))


def _list(turn: Turn) -> Reply:
    context = turn.context
    known = team.team(context)
    rows = []
    for one in known:
        row = _("{name}, {role}, since {day}").format(
            name=shown_name(one.name),
            role=_(ROLE_WORDS[one.role]),
            day=show_full_day(local(one.joined_at).date()),
        )
        rows.append(row + ", " + _("has blocked me and gets no messages") if one.blocked else row)
    buttons: list[tuple[Button, ...]] = []
    if context.role.manages:
        buttons.append((Button(_("Invite a member"), "invite member"),))
        if context.role is Role.OWNER:
            buttons.append((Button(_("Invite a manager"), "invite manager"),))
        buttons += [row for one in known for row in _member_buttons(turn, one)]
    buttons.append((Button(_("Log"), "log"), Button(_("Leave"), "leave")))
    return reply(
        ngettext("{bar}: {count} in the team", "{bar}: {count} in the team", len(rows)).format(
            bar=context.bar.name, count=show_number(len(rows), 0)
        ),
        *rows,
        buttons=tuple(buttons),
    )


def _member_buttons(turn: Turn, one: TeamMember) -> list[tuple[Button, ...]]:
    context = turn.context
    owns = context.role is Role.OWNER
    if (
        one.role is Role.OWNER
        or one.person_id == context.person_id
        or (one.role is Role.MANAGER and not owns)
    ):
        return []
    row = [Button(_("Remove {name}").format(name=one.name), f"team remove {one.person_id}")]
    if owns:
        other = Role.MEMBER if one.role is Role.MANAGER else Role.MANAGER
        label = _("Make {name} {role}").format(name=one.name, role=_(ROLE_WORDS[other]))
        row.append(Button(label, f"team {other} {one.person_id}"))
    return [tuple(row)]


def _change(turn: Turn, what: str, one: TeamMember, sure: bool) -> Reply:
    name, number = one.name, one.person_id
    if what == "remove":
        team.remove(turn.context, number)
        forget = Button(_("Forget the name too"), f"team forget {number}")
        return reply(_("{name} is out of the bar now.").format(name=name), buttons=((forget,),))
    if what in {"owner", "forget"} and not sure:
        return _ask_sure(what, one)
    if what == "owner":
        team.hand_over(turn.context, number)
        return reply(_("{name} is now the owner, and you are a manager.").format(name=name))
    if what == "forget":
        team.forget(turn.context, number)
        return reply(_("The name is gone. What was logged stays, under “former member”."))
    role = Role(what)
    team.set_role(turn.context, number, role)
    return reply(_("{name} is now {role}.").format(name=name, role=_(ROLE_WORDS[role])))


def _ask_sure(what: str, one: TeamMember) -> Reply:
    if what == "owner":
        first = _("Hand the bar over to {name}? Only the owner can give it back.")
        yes = _("Yes, make {name} the owner")
    else:
        first = _("Take {name} out and forget the name? It cannot be undone.")
        yes = _("Yes, forget {name}")
    line = f"team {what} {one.person_id} yes"
    return reply(first.format(name=one.name), buttons=((Button(yes.format(name=one.name), line),),))


# -- inviting ---------------------------------------------------------------------------


def _ask_uses(turn: Turn, given: Given) -> Question:
    return Question(
        _("For how many people?"),
        columns([("1", "1"), ("3", "3"), ("10", "10")], 3),
        hint=_("A number of people"),
    )


def _ask_days(turn: Turn, given: Given) -> Question:
    choices = [(_("1 day"), "1 day"), (_("7 days"), "7 days"), (_("30 days"), "30 days")]
    return Question(_("For how long?"), columns(choices, 3), hint=_("7 days"))


def _by_taps(turn: Turn, given: Given) -> bool:
    # An invitation typed in one line has the defaults: one person, seven days.
    return turn.message.tapped is not None or given.guided


def _accept_uses(turn: Turn, given: Given, value: Fraction) -> int:
    if value.denominator != 1 or not 1 <= value <= invites.MOST_USES:
        raise Say(reply(_("A number of people from 1 to {most}, please.").format(most=invites.MOST_USES)))
    return int(value)


def _accept_days(turn: Turn, given: Given, value: Duration) -> int:
    days = -(-value.hours // 24)
    if not 1 <= days <= invites.MOST_DAYS:
        raise Say(reply(_("From 1 to {most} days, please.").format(most=invites.MOST_DAYS)))
    return int(days)


def _accept_role(turn: Turn, given: Given, value: str) -> Role:
    return Role.MANAGER if value == "manager" else Role.MEMBER


@dataclass(frozen=True, kw_only=True)
class InviteArguments(Arguments):
    """The role that a joining code gives, its number of uses, and its lifetime."""

    role: Role = Role.MEMBER
    uses: int = invites.INVITE_USES
    days: int = invites.INVITE_DAYS


def _invite(turn: Turn, arguments: InviteArguments) -> Reply:
    from bot.documents.labels.qr import qr_png  # noqa: PLC0415 - loads the QR library

    made = invites.invite(turn.context, arguments.role, arguments.uses, arguments.days)
    good = ngettext(
        "Good for {count} person until {when}. Only you can see it.",
        "Good for {count} people until {when}. Only you can see it.",
        made.uses,
    ).format(count=show_number(made.uses, 0), when=show_moment(made.until))
    blocks = [f"join {made.code}"]
    files: tuple[File, ...] = ()
    if turn.deep_link is not None:
        link = turn.deep_link("join_" + made.code.replace("-", "_"))
        blocks.append(link)
        files = (File("invite.png", qr_png(link), picture=True, caption=_("Scan it to join.")),)
    return reply(
        _("Send this to your new {role}:").format(role=_(ROLE_WORDS[made.role])), *blocks, good, files=files
    )


@dataclass(frozen=True, kw_only=True)
class JoinArguments(Arguments):
    """A joining code."""

    code: str


def _join(turn: Turn, arguments: JoinArguments) -> Reply:
    return join(turn, arguments.code)


# -- leaving, and a person's several bars ------------------------------------------------


@dataclass(frozen=True, kw_only=True)
class SureArguments(Arguments):
    """Whether the person has confirmed."""

    sure: bool = False


@dataclass(frozen=True, kw_only=True)
class BarsArguments(Arguments):
    """The bar to enter; none to show them all."""

    number: int | None = None


def _leave(turn: Turn, arguments: SureArguments) -> Reply:
    bar = turn.context.bar.name
    if turn.context.role is Role.OWNER:
        return reply(
            _("You own this bar: hand it over first."),
            _("Say: team owner, and a name. Or delete the bar: delete bar"),
            buttons=((Button(_("Team"), "team"),),),
        )
    if not arguments.sure:
        return reply(
            _("Leave {bar}? You will need a new code to come back.").format(bar=bar),
            buttons=((Button(_("Yes, leave"), "leave yes"),), (Button(_("Stay"), "start"),)),
        )
    team.leave(turn.context)
    return reply(
        _("You have left {bar}.").format(bar=bar),
        _("What you logged stays in its log under your name."),
        buttons=((Button(_("All of it as a file"), "export me"), Button(_("Forget me"), "forget me")),),
    )


def _bars(turn: Turn, arguments: BarsArguments) -> Reply:
    if arguments.number is not None:
        return _go_to(turn, arguments.number)
    known = people.bars_of(turn.unit, turn.presence)
    if not known:
        return stranger(turn)
    rows = [
        _("{bar}, {role}").format(bar=one.name, role=_(ROLE_WORDS[one.role]))
        + (", " + _("you are here") if one.here else "")
        for one in known
    ]
    buttons = tuple((Button(one.name, f"bars {one.id}"),) for one in known if not one.here)
    buttons += ((Button(_("Open another bar"), "another bar"),),)
    first = ngettext("You are in {count} bar", "You are in {count} bars", len(known))
    return reply(first.format(count=show_number(len(known), 0)), *rows, buttons=buttons)


def _go_to(turn: Turn, bar_id: int) -> Reply:
    there = people.switch(turn.unit, turn.presence, bar_id)
    if there is None or there.bar is None:
        return reply(_("You're not in that bar."), buttons=((Button(_("My bars"), "bars"),),))
    return reply(_("You are now at {bar}.").format(bar=there.bar.name), buttons=main_buttons())


def _role_values(line: LogLine, units: str) -> dict[str, str]:
    role = line.details.get("role")
    return {} if role is None else {"role": _(ROLE_WORDS[Role(str(role))])}


SURE_SLOT = Slot("sure", said)

COMMANDS = (
    Command(
        "join",
        N_("join a bar with a code"),
        _join,
        slots=(Slot("code", plain(str), ask_code, rule="free_slot"),),
        writes=True,
        anyone=True,
        private_only=True,
    ),
    Command(
        "team",
        N_("who is in the bar; invite someone"),
        _team,
        slots=(Slot("free", plain(str)),),
        writes=True,
        menu=70,
        wishes=(Wish("team", shows=True),),
    ),
    Command(
        "invite",
        N_("make a joining code for some people and days"),
        _invite,
        words=("team invite", "team add"),
        examples=(N_("invite"), N_("invite manager"), N_("invite 5 people 30 days")),
        slots=(
            Slot("role", _accept_role),
            Slot("uses", _accept_uses, _ask_uses, _by_taps),
            Slot("days", _accept_days, _ask_days, _by_taps),
        ),
        writes=True,
        manages=True,
        private_only=True,
        wishes=(Wish("invite", ("{role?}",)),),
    ),
    Command(
        "leave",
        N_("leave this bar"),
        _leave,
        words=("leave bar", "quit bar"),
        slots=(SURE_SLOT,),
        writes=True,
    ),
    Command(
        "bars",
        N_("the bars you are in, and going to another"),
        _bars,
        words=("my bars", "switch bar"),
        slots=(NUMBER_SLOT,),
        writes=True,
        anyone=True,
        private_only=True,
    ),
)

LOG_WORDS = (
    LogWords("invite", N_("made a joining code"), values=_role_values),
    LogWords("remove member", N_("took {name} out of the bar")),
    LogWords("leave", N_("left the bar")),
    LogWords("role", N_("made {name} {role}"), values=_role_values),
    LogWords("owner", N_("made {name} the owner")),
    LogWords("forget", N_("forgot a member's name")),
    LogWords("team chat", N_("made a group the bar's own chat")),
)
