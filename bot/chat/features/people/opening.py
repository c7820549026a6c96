"""The questions that open a bar: name and city, then a proposal of everything that follows from the city."""

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import dataclass, replace

from babel import Locale

from bot.chat.dialogue.arguments import Arguments
from bot.chat.dialogue.inputs.money import currency_named
from bot.chat.dialogue.inputs.names import short_name
from bot.chat.dialogue.slots import Given, Question, Slot, columns
from bot.chat.dialogue.turn import Say, Turn
from bot.chat.features.people.setting_values import CLOSING_CHOICES, read_clock, show_clock_minute
from bot.chat.i18n.language import _, tongue
from bot.chat.i18n.languages import languages
from bot.chat.i18n.locale_choice import zones_offered
from bot.chat.reply.message import Button, Text, reply
from bot.trade.safety.jurisdiction import Jurisdiction
from bot.trade.words import N_
from bot.work.errors import BadValueError
from bot.work.people import bars, places
from bot.work.people.places import Place

_JURISDICTIONS = {
    Jurisdiction.US: N_("United States"),
    Jurisdiction.EU: N_("European Union"),
    Jurisdiction.UK: N_("United Kingdom"),
    Jurisdiction.OTHER: N_("your own country's"),
}
_UNITS = {"metric": N_("ml and grams"), "us": N_("US fluid ounces"), "imperial": N_("imperial fluid ounces")}


def jurisdiction_name(value: str) -> str:
    """Return the name of a jurisdiction."""
    return _(_JURISDICTIONS[Jurisdiction(value)])


def units_name(value: str) -> str:
    """Return the name of the bar's units."""
    return _(_UNITS[value])


# -- opening a bar ----------------------------------------------------------------------


@dataclass(frozen=True, slots=True)
class NamedBar:
    """The name of a new bar, and the zone of the city that was said with it."""

    name: str
    zone: str = ""


def _ask_name(turn: Turn, given: Given) -> Question:
    suggested = _("{name}'s bar").format(name=turn.message.sender.name.split(" ")[0] or _("My"))
    about = _("I keep a small bar's amounts, batches and fruit waste, and remind you in time.")
    ask = _("What is your bar called? Add the city if you like: {example}").format(
        example=_("The Blue Door, Boston")
    )
    return Question(ask, (((suggested, suggested),),), blocks=(Text(about),), hint=_("The bar's name"))


def _accept_name(turn: Turn, given: Given, value: str) -> NamedBar:
    if value.strip().endswith("?") or value.strip().startswith("¿"):
        raise Say(reply(_("That looks like a question. What is the bar called? For help: help")))
    for comma in re.finditer(",", value):  # 'The Blue Door, Portland, Maine' names the city first
        name, found = value[: comma.start()], places.find(value[comma.end() :])
        if name.strip() and len(found) == 1:
            return NamedBar(short_name(name), found[0].zone)
    return NamedBar(short_name(value))


def _city(zone: str) -> str:
    return zone.rpartition("/")[2].replace("_", " ")


def choices_of_zone(turn: Turn) -> list[tuple[str, str]]:
    """Return cities to tap, likely for the phone's language."""
    return [(_city(zone), zone) for zone in zones_offered(turn.message.sender.language)]


def _ask_zone(turn: Turn, given: Given) -> Question:
    choices = columns(choices_of_zone(turn), 2)
    return Question(_("Which city are you in?"), choices, hint=_("A city"))


def accept_zone(turn: Turn, given: Given, value: str) -> str:
    """Turn a city, a country or the name of a clock into its IANA time zone.

    Raises Say where it names no place, and with the places to tap where it may be several.
    """
    found = places.find(value)
    if len(found) == 1:
        return found[0].zone
    if not found:
        raise Say(
            reply(
                _("I don't know a city “{city}”. Type a larger one near you, such as Madrid.").format(
                    city=value[:40]
                )
            )
        )
    buttons = tuple((Button(_place(one), turn.line_with(value, one.zone)),) for one in found)
    raise Say(reply(_("Which “{city}”?").format(city=value[:40]), buttons=buttons))


def _place(one: Place) -> str:
    land = Locale.parse(tongue().locale).territories.get(one.country, "")
    return ", ".join(part for part in (one.name, one.region, land) if part)


def _zone_of(given: Given) -> str:
    named = given.get(_NAME)
    return given.get(_ZONE) or ("" if named is None else named.zone)


@dataclass(frozen=True, slots=True)
class Proposal:
    """An answer to the proposed settings: what differs, or a wish to be asked each."""

    ask_each: bool = False
    jurisdiction: Jurisdiction | None = None
    currency: str | None = None
    units: str | None = None
    closing: int | None = None


def _ask_proposal(turn: Turn, given: Given) -> Question:
    likely = bars.likely_in(_zone_of(given))
    lines = (
        _("Clock: {city} time").format(city=_city(_zone_of(given))),
        _("Food rules: {place}").format(place=jurisdiction_name(likely.jurisdiction)),
        _("Money: {currency}").format(currency=likely.currency),
        _("Measures: {units}").format(units=units_name(likely.units)),
        _("Night ends by: {time}").format(time=show_clock_minute(bars.DEFAULT_CLOSING_MINUTE)),
        _("Language: {language}").format(language=languages()[tongue().language].name),
    )
    return Question(
        _("I'd set your bar up like this. Right?"),
        (((_("Looks right"), _LOOKS_RIGHT),), ((_("Change something"), _ASK_EACH),)),
        blocks=tuple(Text(line) for line in lines),
        hint=_("What differs: we close at 2am, euros, ml"),
    )


def _accept_proposal(turn: Turn, given: Given, value: str) -> Proposal:
    """Parse 'looks right', 'change something', or what differs: 'euros, ml, we close at 2am'."""
    plain = value.strip().casefold().rstrip(".!")
    if plain in {_ASK_EACH, "no", "change", _("Change something").casefold()}:
        return Proposal(ask_each=True)
    if plain in {_LOOKS_RIGHT, "yes", "ok", "right", _("Looks right").casefold(), _("yes"), _("right")}:
        return Proposal()
    known = Proposal()
    for part in _PARTS.split(value):
        known = _with(turn, given, known, part)
    return known


def _with(turn: Turn, given: Given, known: Proposal, part: str) -> Proposal:
    """Add the setting that a part of an answer names. Raises Say where it names none."""
    readers: tuple[tuple[str, Callable[[Turn, Given, str], object]], ...] = (
        ("units", accept_units),
        ("closing", accept_closing),
        ("jurisdiction", accept_jurisdiction),
        ("currency", accept_currency),
    )
    for name, accept in readers:
        try:
            return replace(known, **{name: accept(turn, given, part)})  # type: ignore[arg-type]
        except Say as refused:
            if refused.answer.buttons:
                raise
    raise Say(
        reply(
            _("I can't tell what “{words}” changes. Type it like: we close at 2am, euros, ml").format(
                words=part.strip()[:40]
            )
        )
    )


def _ask_jurisdiction(turn: Turn, given: Given) -> Question:
    likely = bars.likely_in(_zone_of(given)).jurisdiction
    order = [likely, *(one for one in Jurisdiction if one is not likely)]
    return Question(
        _("Which country's food and drink rules? Limits and cautions follow them."),
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
    likely = bars.likely_in(_zone_of(given)).currency
    order = [likely, *(code for code in ("EUR", "USD", "GBP") if code != likely)]
    return Question(_("Which currency?"), columns([(code, code) for code in order], 4), hint=_("EUR, USD, …"))


def accept_currency(turn: Turn, given: Given, value: str) -> str:
    """Parse a three-letter currency code, or a sign that is unambiguous here."""
    bar = turn.presence.bar
    zone = _zone_of(given) or ("" if bar is None else bar.zone)
    try:
        return bars.check_currency(currency_named(value, bars.likely_in(zone).currency if zone else ""))
    except BadValueError:
        raise Say(
            reply(
                _("“{code}” is no currency in use. Write its three letters, such as EUR.").format(
                    code=value[:20]
                )
            )
        ) from None


def _ask_units(turn: Turn, given: Given) -> Question:
    likely = bars.likely_in(_zone_of(given)).units
    order = [likely, *(one for one in bars.UNITS if one != likely)]
    return Question(_("How do you measure?"), columns([(units_name(one), one) for one in order], 1))


def accept_units(turn: Turn, given: Given, value: str) -> str:
    """Parse metric, us or imperial, or a unit of one of them; ask which ounces are meant outside the US."""
    plain = value.strip().casefold()
    for one in bars.UNITS:
        if plain in {one, _(one).casefold(), units_name(one).casefold()}:
            return one
    if plain in _METRIC:
        return "metric"
    if plain not in _OUNCES:
        raise Say(reply(_("Please answer metric, us or imperial.")))
    bar = turn.presence.bar
    zone = _zone_of(given) or ("" if bar is None else bar.zone)
    if zone and bars.likely_in(zone).units == "us":
        return "us"
    buttons = tuple((Button(units_name(one), turn.line_with(value, one)),) for one in ("us", "imperial"))
    raise Say(reply(_("US or imperial ounces?"), buttons=buttons))


def _ask_closing(turn: Turn, given: Given) -> Question:
    choices = columns(
        [(show_clock_minute(minute), show_clock_minute(minute)) for minute in CLOSING_CHOICES], 3
    )
    return Question(
        _("What's the latest you finish? Anything before then counts for the night before."),
        choices,
        hint="05:00",
    )


def accept_closing(turn: Turn, given: Given, value: str) -> int:
    """Parse a time of day as minutes from midnight, also within words: 'we close at 2am'."""
    found = _CLOCK_AT_THE_END.search(value)
    minute = read_clock(value if found is None else found[0])
    if minute is None or minute > 12 * 60:
        raise Say(reply(_("Please write a time from 00:00 to 12:00, such as 05:00.")))
    return minute


@dataclass(frozen=True, kw_only=True)
class OpenArguments(Arguments):
    """The answers for a new bar; what is None follows the place."""

    bar_name: NamedBar | None = None
    zone: str | None = None
    proposal: Proposal | None = None
    jurisdiction: Jurisdiction | None = None
    currency: str | None = None
    units: str | None = None
    closing: int | None = None


def _without_city(turn: Turn, given: Given) -> bool:
    named = given.get(_NAME)
    return named is None or not named.zone


def _asked_each(turn: Turn, given: Given) -> bool:
    proposal = given.get(_PROPOSAL)
    return proposal is not None and proposal.ask_each


_LOOKS_RIGHT, _ASK_EACH = "looks right", "change something"
_PARTS = re.compile(r"\s*[,;\n]\s*|\s+(?:and|y)\s+")
_CLOCK_AT_THE_END = re.compile(r"\b\d{1,2}(?:[:.h]\d{2})?\s*(?:[ap]\.?\s?m\.?)?$", re.IGNORECASE)
_METRIC = frozenset(
    {"ml", "cl", "millilitres", "milliliters", "grams", "g", "litres", "liters", "mililitros", "gramos"}
)
_OUNCES = frozenset({"oz", "ounces", "ounce", "fl oz", "fluid ounces", "onzas"})
_NAME = Slot("bar_name", _accept_name, _ask_name, rule="free_slot")
_ZONE = Slot("zone", accept_zone, _ask_zone, _without_city, rule="free_slot")
_PROPOSAL = Slot("proposal", _accept_proposal, _ask_proposal, rule="free_slot")
ABOUT_A_BAR = (
    _NAME,
    _ZONE,
    _PROPOSAL,
    Slot("jurisdiction", accept_jurisdiction, _ask_jurisdiction, _asked_each, rule="free_slot"),
    Slot("currency", accept_currency, _ask_currency, _asked_each, rule="free_slot"),
    Slot("units", accept_units, _ask_units, _asked_each, rule="free_slot"),
    Slot("closing", accept_closing, _ask_closing, _asked_each, rule="free_slot"),
)
