"""The command start: open a bar, or join one by a code."""

from __future__ import annotations

from dataclasses import dataclass, replace

from bot.chat.dialogue.arguments import Arguments
from bot.chat.dialogue.command import Command
from bot.chat.dialogue.inputs.money import currency_of_sign
from bot.chat.dialogue.inputs.names import short_name
from bot.chat.dialogue.slots import Given, Question, Slot, columns, plain
from bot.chat.dialogue.turn import Say, Turn
from bot.chat.features.people.deep_links import is_scan, join, main_buttons, scan
from bot.chat.features.people.setting_values import CLOSING_CHOICES, clock_text, read_clock, show_clock_minute
from bot.chat.i18n.language import _, show_moment, tongue
from bot.chat.i18n.locale_choice import zones_offered
from bot.chat.reply.message import Button, Reply, reply
from bot.trade.safety.jurisdiction import Jurisdiction
from bot.trade.words import N_
from bot.work.context import Role
from bot.work.errors import BadValueError
from bot.work.people import bars, people, team

_JURISDICTIONS = {
    Jurisdiction.US: N_("United States"),
    Jurisdiction.EU: N_("European Union"),
    Jurisdiction.UK: N_("United Kingdom"),
    Jurisdiction.OTHER: N_("somewhere else"),
}
_UNITS = {"metric": N_("ml and grams"), "us": N_("US fluid ounces"), "imperial": N_("imperial fluid ounces")}


def jurisdiction_name(value: str) -> str:
    """Return the name of a jurisdiction."""
    return _(_JURISDICTIONS[Jurisdiction(value)])


def units_name(value: str) -> str:
    """Return the name of the bar's units."""
    return _(_UNITS[value])


# -- opening a bar ----------------------------------------------------------------------


def _ask_name(turn: Turn, given: Given) -> Question:
    suggested = _("{name}'s bar").format(name=turn.message.sender.name.split(" ")[0] or _("My"))
    return Question(_("What is your bar called?"), (((suggested, suggested),),), hint=_("The bar's name"))


def _accept_name(turn: Turn, given: Given, value: str) -> str:
    if value.strip().endswith("?") or value.strip().startswith("¿"):
        raise Say(reply(_("That looks like a question. What is the bar called? For help: help")))
    return short_name(value)


def _city(zone: str) -> str:
    return zone.rpartition("/")[2].replace("_", " ")


def choices_of_zone(turn: Turn) -> list[tuple[str, str]]:
    """Return cities to tap, likely for the phone's language."""
    return [(_city(zone), zone) for zone in zones_offered(turn.message.sender.language)]


def _ask_zone(turn: Turn, given: Given) -> Question:
    choices = columns(choices_of_zone(turn), 2)
    return Question(
        _("Which city's time does it keep? Tap one, or type another city."), choices, hint=_("A city")
    )


def accept_zone(turn: Turn, given: Given, value: str) -> str:
    """Turn a city into its IANA time zone; offer near ones if there are several or none."""
    found = bars.find_zones(value)
    if len(found) == 1:
        return found[0]
    if not found:
        raise Say(
            reply(
                _("I know no time zone for “{city}”. Type a larger city near you, such as Madrid.").format(
                    city=value[:40]
                )
            )
        )
    buttons = tuple((Button(zone.replace("_", " "), turn.line_with(value, zone)),) for zone in found[:6])
    raise Say(
        reply(_("“{city}” could be more than one place. Which?").format(city=value[:40]), buttons=buttons)
    )


def _ask_jurisdiction(turn: Turn, given: Given) -> Question:
    likely = bars.likely_in(given[_ZONE]).jurisdiction
    order = [likely, *(one for one in Jurisdiction if one is not likely)]
    return Question(
        _("Whose food and drink rules apply there? Limits and cautions follow this."),
        columns([(jurisdiction_name(one), one.value) for one in order], 2),
    )


def accept_jurisdiction(turn: Turn, given: Given, value: str) -> Jurisdiction:
    """Parse US, EU, UK or other, or the country's name."""
    plain = value.strip().casefold()
    for one in Jurisdiction:
        if plain in {one.value.casefold(), _(one.value).casefold(), jurisdiction_name(one).casefold()}:
            return one
    raise Say(reply(_("Please answer US, EU, UK or other.")))


def _ask_currency(turn: Turn, given: Given) -> Question:
    likely = bars.likely_in(given[_ZONE]).currency
    order = [likely, *(code for code in ("EUR", "USD", "GBP") if code != likely)]
    return Question(
        _("Which money do you count in?"), columns([(code, code) for code in order], 4), hint=_("EUR, USD, …")
    )


def accept_currency(turn: Turn, given: Given, value: str) -> str:
    """Parse a three-letter currency code, or a sign that is unambiguous here."""
    bar = turn.presence.bar
    zone = given.get(_ZONE) or ("" if bar is None else bar.zone)
    try:
        return bars.check_currency(currency_of_sign(value, bars.likely_in(zone).currency if zone else ""))
    except BadValueError:
        raise Say(
            reply(
                _("“{code}” is no currency in use. Write its three letters, such as EUR.").format(
                    code=value[:20]
                )
            )
        ) from None


def _ask_units(turn: Turn, given: Given) -> Question:
    likely = bars.likely_in(given[_ZONE]).units
    order = [likely, *(one for one in bars.UNITS if one != likely)]
    return Question(_("How do you measure?"), columns([(units_name(one), one) for one in order], 1))


def accept_units(turn: Turn, given: Given, value: str) -> str:
    """Parse metric, us or imperial."""
    plain = value.strip().casefold()
    for one in bars.UNITS:
        if plain in {one, _(one).casefold(), units_name(one).casefold()}:
            return one
    raise Say(reply(_("Please answer metric, us or imperial.")))


def _ask_closing(turn: Turn, given: Given) -> Question:
    choices = columns(
        [(show_clock_minute(minute), show_clock_minute(minute)) for minute in CLOSING_CHOICES], 3
    )
    return Question(
        _("When is a night surely over? What is logged before then counts for the day before."),
        choices,
        hint="05:00",
    )


def accept_closing(turn: Turn, given: Given, value: str) -> int:
    """Parse a time of day as minutes from midnight."""
    minute = read_clock(value)
    if minute is None or minute > 12 * 60:
        raise Say(reply(_("Please write a time from 00:00 to 12:00, such as 05:00.")))
    return minute


@dataclass(frozen=True, kw_only=True)
class OpenArguments(Arguments):
    """A new bar's name, place and units."""

    bar_name: str
    zone: str
    jurisdiction: Jurisdiction
    currency: str
    units: str
    closing: int


@dataclass(frozen=True, kw_only=True)
class StartArguments(Arguments):
    """The code of a link; or the answers for a new bar."""

    code: str = ""
    bar_name: str | None = None
    zone: str | None = None
    jurisdiction: Jurisdiction | None = None
    currency: str | None = None
    units: str | None = None
    closing: int | None = None


def _start(turn: Turn, arguments: StartArguments) -> Reply:
    code = arguments.code
    if code:
        return scan(turn, code) if is_scan(code) else join(turn, code)
    presence = turn.presence
    if presence.bar is None and not turn.message.place.private:
        return _claim_group(turn)
    opening = _opening_of(arguments)
    return _welcome_back(turn) if opening is None else _open(turn, opening)


def _opening_of(said: StartArguments) -> OpenArguments | None:
    """Return the answers for a new bar, or None if the person is in one."""
    if said.bar_name is None or said.zone is None or said.jurisdiction is None:
        return None
    if said.currency is None or said.units is None or said.closing is None:
        return None
    return OpenArguments(
        bar_name=said.bar_name,
        zone=said.zone,
        jurisdiction=said.jurisdiction,
        currency=said.currency,
        units=said.units,
        closing=said.closing,
    )


def _open(turn: Turn, arguments: OpenArguments) -> Reply:
    """Open a bar with the given answers, and make it the person's current bar."""
    bar = bars.open_bar(
        turn.unit,
        turn.presence,
        turn.message.sender.name,
        turn.message.place.private,
        turn.clock.now(),
        name=arguments.bar_name,
        zone=arguments.zone,
        jurisdiction=arguments.jurisdiction,
        currency=arguments.currency,
        units=arguments.units,
        closing_minute=arguments.closing,
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
            (Button(_("Add a formula"), "new formula"),),
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


_ZONE = Slot("zone", accept_zone, _ask_zone, rule="free_slot")
_CODE = Slot("code", plain(str), rule="free_slot")
_ABOUT_A_BAR = (
    Slot("bar_name", _accept_name, _ask_name, rule="free_slot"),
    _ZONE,
    Slot("jurisdiction", accept_jurisdiction, _ask_jurisdiction, rule="free_slot"),
    Slot("currency", accept_currency, _ask_currency, rule="free_slot"),
    Slot("units", accept_units, _ask_units, rule="free_slot"),
    Slot("closing", accept_closing, _ask_closing, rule="free_slot"),
)


COMMANDS = (
    Command(
        "start",
        N_("open a bar, or see where you are"),
        _start,
        slots=(
            _CODE,
            *(replace(slot, wanted=_opening) for slot in _ABOUT_A_BAR),
        ),
        writes=True,
        anyone=True,
    ),
    Command(
        "another bar",
        N_("open another bar of your own"),
        _open,
        words=("open another bar", "open a bar", "new bar", "second bar"),
        slots=_ABOUT_A_BAR,
        writes=True,
        private_only=True,
    ),
)
