"""The command came back: what came back from an event, asked for each preparation with taps."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from bot.chat.dialogue.arguments import Arguments
from bot.chat.dialogue.command import Command, Wish
from bot.chat.dialogue.inputs.shared_slots import accept_formula, quantity_in_ml, undo_button
from bot.chat.dialogue.log_words import LogWords
from bot.chat.dialogue.slots import Given, Question, Slot, columns
from bot.chat.dialogue.turn import Say, Turn
from bot.chat.features.batches.at_event import offers, used_up_button
from bot.chat.features.events.event_words import only_one, result_lines, which_event
from bot.chat.grammar.syntax import CameBack, Factor
from bot.chat.i18n.language import _, ngettext, show_day
from bot.chat.reply.message import Button, Reply, reply
from bot.chat.reply.units import own_volume, show_ml
from bot.trade.formulas.measures import from_ml
from bot.trade.words import N_
from bot.work.batches import batches
from bot.work.events import events
from bot.work.events.events import EventView, Returned
from bot.work.events.needs import Part

_MOST_BOTTLES = 3  # on buttons


@dataclass(frozen=True, kw_only=True)
class BackArguments(Arguments):
    """An event, and the mL of each formula that came back."""

    number: int
    back: Returned


def _over(turn: Turn) -> list[EventView]:
    """Return the past events with something left to note, the last first."""
    today = turn.context.today
    return [one for one in events.listed(turn.context) if one.asked.day <= today and one.open_parts]


def _only(turn: Turn) -> tuple[str, object] | None:
    return only_one(_over(turn))


def _ask_number(turn: Turn, given: Given) -> Question:
    past = (one for one in events.listed(turn.context) if one.asked.day <= turn.context.today)
    known = _over(turn) or list(past)
    if not known:
        raise Say(reply(_("No event is over yet."), buttons=((Button(_("Events"), "events"),),)))
    return which_event(known)


def _accept_number(turn: Turn, given: Given, value: Fraction) -> int:
    found = events.get(turn.context, int(value))
    if found.asked.day > turn.context.today:
        text = _("That event is only on {day}. Note afterwards what came back.")
        raise Say(reply(text.format(day=show_day(found.asked.day))))
    return found.id


def _accept_back(turn: Turn, given: Given, value: CameBack | tuple[CameBack, ...]) -> Returned:
    found: dict[int, tuple[Fraction, Fraction | None]] = {}
    before = given.get(_BACK) or {}  # the answers to earlier questions
    event = events.get(turn.context, given[_NUMBER])
    for said in value if isinstance(value, tuple) else (value,):
        if said.what is not None:
            number = accept_formula(turn, given, said.what).id
            parts = [one for one in event.parts if one.formula.id == number]
            if not parts:
                raise Say(reply(_("{name} was not planned for that event.").format(name=_name(turn, said))))
        else:
            parts = _unanswered(event, {**before, **found})
            if given.guided or not isinstance(said.amount, Factor):
                parts = parts[:1]
        for part in parts:
            found[part.formula.id] = _returned(turn, event, part, said)
    return found


def _name(turn: Turn, said: CameBack) -> str:
    return getattr(said.what, "name", "") or getattr(said.what, "text", "")


def _unanswered(event: EventView, found: Returned) -> list[Part]:
    """Return the preparations without an answer: those without any note first."""
    left = [one for one in event.open_parts if one.formula.id not in found]
    return left or [one for one in event.parts if one.formula.id not in found]


def _returned(turn: Turn, event: EventView, part: Part, said: CameBack) -> tuple[Fraction, Fraction | None]:
    taken = None if said.taken is None else quantity_in_ml(turn, said.taken)
    in_all = event.taken_ml(part) if taken is None else taken
    if isinstance(said.amount, Factor):
        ml = said.amount.factor * in_all
    elif said.amount.unit in {"each", "bottle"}:
        ml = said.amount.number * part.bottle_ml
    else:
        ml = quantity_in_ml(turn, said.amount)
    if ml > in_all:
        units = turn.context.bar.units
        more = _("That is more than the {amount} on the list. If more was taken, say it: {example}")
        size = _typed(turn, ml)
        example = _("came back {number} {amount} of {amount} {name}").format(
            number=event.id, amount=size, name=part.formula.name
        )
        raise Say(reply(more.format(amount=show_ml(in_all, units), example=example)))
    return ml, taken


def _typed(turn: Turn, ml: Fraction) -> str:
    """Write a volume as one types it in this bar."""
    units = turn.context.bar.units
    if units == "metric":
        return f"{float(ml):g} ml"
    return f"{float(from_ml(ml, f'{units}_fluid_ounce').number):g} {own_volume(units)}"


def _ask_back(turn: Turn, given: Given) -> Question:
    event = events.get(turn.context, given[_NUMBER])
    part = _unanswered(event, given.get(_BACK) or {})[0]
    units, name = turn.context.bar.units, part.formula.name
    choices = [(_("All used"), "nothing"), (_("Half came back"), "half"), (_("All came back"), "all")]
    for count in range(1, min(_MOST_BOTTLES, part.bottles - 1) + 1):
        label = ngettext("{count} bottle", "{count} bottles", count).format(count=count)
        choices.append((label, str(count)))
    text = _("How much {name} came back, of {count} x {size}?")
    return Question(
        text.format(name=name, count=part.bottles, size=show_ml(part.bottle_ml, units)),
        columns(choices, 3),
        hint="120 ml" if units == "metric" else "4 oz",
    )


def _is_full(turn: Turn, given: Given) -> bool:
    event = events.get(turn.context, given[_NUMBER])
    return all(one.formula.id in (given.get(_BACK) or {}) for one in event.open_parts or event.parts)


def _back(turn: Turn, arguments: BackArguments) -> Reply:
    found = events.note_back(turn.context, arguments.number, arguments.back)
    first = _("Noted for {day}: what came back.").format(day=show_day(found.asked.day))
    missing = ", ".join(one.formula.name for one in found.open_parts)
    lines = [_("Still to note: {names}").format(names=missing)] if missing else []
    buttons = [Button(_("Note the rest"), f"came back {found.id}")] if missing else []
    buttons += [used_up_button(number) for number in _emptied(turn, found)]
    stock_lines, offered = offers(turn, found)
    lines, buttons = [*stock_lines, *lines], [*offered, *buttons]
    last = (Button(_("Show the event"), f"events {found.id}"), undo_button(turn))
    return reply(first, *result_lines(turn, found), *lines, buttons=(*((one,) for one in buttons), last))


def _emptied(turn: Turn, found: EventView) -> list[int]:
    """Return the open batches made for the event, if nothing of their formula came back."""
    return [
        one.number
        for one in batches.listed(turn.context)
        if one.number in found.batches and one.formula_id in found.back and not found.back[one.formula_id].ml
    ]


_NUMBER = Slot("number", _accept_number, _ask_number, only=_only)
_BACK = Slot("back", _accept_back, _ask_back, rule="back_answer_slot", many=True, full=_is_full)

COMMANDS = (
    Command(
        "came back",
        N_("note what came back from an event"),
        _back,
        words=("back from event", "brought back"),
        examples=(N_("came back 1 120 ml orange mist"), N_("came back 1 2 bottles orange mist")),
        slots=(_NUMBER, _BACK),
        writes=True,
        wishes=(
            Wish(
                "came back",
                ("{bottle_count} OF {formula}", "{amount} OF {formula}", "{bottle_count}", "{amount}"),
            ),
        ),
    ),
)

LOG_WORDS = (
    LogWords(
        "event back",
        N_("noted what came back from event {event}"),
        N_("what came back from event {event}"),
    ),
)
