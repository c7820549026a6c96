"""The commands correct and again: change or repeat the last thing that the person logged here tonight."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction

from bot.chat.dialogue import filling
from bot.chat.dialogue.arguments import Arguments
from bot.chat.dialogue.command import Command, Wish
from bot.chat.dialogue.inputs.names import is_known
from bot.chat.dialogue.inputs.settling import in_place
from bot.chat.dialogue.log_words import Retold
from bot.chat.dialogue.registry import all_commands, all_log_words, words_of
from bot.chat.dialogue.rights import barred
from bot.chat.dialogue.slots import Given, Slot, plain
from bot.chat.dialogue.turn import Say, Turn
from bot.chat.features.log.changes import finish
from bot.chat.features.log.entries import thing_words
from bot.chat.grammar import parser
from bot.chat.grammar.lexer import Noun
from bot.chat.grammar.syntax import Amount, Factor, Filled, Hash, PackPrice, Unknown
from bot.chat.i18n.keywords import keyword_for
from bot.chat.i18n.language import _, show_moment, tongue
from bot.chat.i18n.plurals import counted_name
from bot.chat.reply.layout import LABEL_LENGTH, shortened
from bot.chat.reply.message import Button, Reply, reply
from bot.trade.formulas.measures import (
    HOUSE_MEASURES,
    AmbiguousUnit,
    Dimension,
    Quantity,
    dimension,
    to_count,
    to_g,
    to_ml,
)
from bot.trade.words import N_
from bot.work.log import chain, thread
from bot.work.log.chain import State
from bot.work.log.edits import Earlier, Edit

_ENTRY = re.compile(r"^(?:@\d{1,12} )?undo (\d{1,9})$")
_MOST_OFFERED = 3
_MOST_LOOKED = 8
_AMOUNTS = ("waste_amount", "drinks_count")
_MEASURED = ("spilt", "amount", "bottles")  # a bare number keeps the unit or the size
_NAMES = ("fruit", "item", "batch", "counted_drink")


@dataclass(frozen=True, kw_only=True)
class CorrectArguments(Arguments):
    """What it was rather, what it wrongly was, and the entry if it is not the last one."""

    entry: int | None = None
    rather: str = ""
    wrongly: str = ""


@dataclass(frozen=True, kw_only=True)
class AgainArguments(Arguments):
    """Other words for the same command, and the entry if it is not the last one."""

    entry: int | None = None
    further: str = ""


# -- the last thing ------------------------------------------------------------------------


def answered(turn: Turn) -> State | None:
    """Return what was logged by the message of the bot to which this one replies."""
    for line in turn.message.answers:
        found = _ENTRY.match(line)
        if found is not None:
            return chain.state(turn.context, int(found[1]))
    return None


def last_things(turn: Turn, entry: int | None = None) -> list[State]:
    """Return what the words may mean, the likeliest first: an entry, a reply's, or those of tonight here."""
    if entry is not None:
        return [chain.state(turn.context, entry)]
    found = answered(turn)
    return [found] if found is not None else thread.tonight(turn.context, turn.message.chat_key)


def none_left(turn: Turn, line: str, fresh: tuple[tuple[Button, ...], ...] = ()) -> Say:
    """Return the answer where nothing was logged here tonight: what was logged before, to tap.

    `fresh` are the buttons where nothing was logged before either.
    """
    before = thread.before(turn.context)
    if before is None:
        return Say(reply(_("You have logged nothing here tonight."), buttons=fresh))
    return Say(
        reply(
            _("You have logged nothing here tonight."),
            _("Do you mean this, of {when}?").format(when=show_moment(before.last.at)),
            buttons=((_entry_button(turn, before, line.format(entry=before.last.id)),),),
        )
    )


def _entry_button(turn: Turn, found: State, line: str) -> Button:
    return Button(shortened(thing_words(turn, found)), line)


def _retold(turn: Turn, found: State) -> Retold | None:
    retold = all_log_words()[found.what].retold
    return None if retold is None else retold(turn, found)


# -- correct -------------------------------------------------------------------------------


def _correct(turn: Turn, arguments: CorrectArguments) -> list[Reply]:
    found = last_things(turn, arguments.entry)
    rather, wrongly = arguments.rather, arguments.wrongly
    said = f"{rather} {keyword_for('NOT')} {wrongly}" if wrongly else rather
    if not said:
        raise Say(reply(_("What was it really? Such as: make it 5, or: sorry, lemons")))
    if not found:
        raise none_left(turn, "correct #{entry} " + said)
    first, *rest = found[:_MOST_LOOKED]
    lines = corrected(turn, first, rather, wrongly)
    if len(lines) == 1:
        return _log_instead(turn, first, lines[0])
    if lines:
        raise Say(_which_line(turn, first, said))
    others = [one for one in rest if corrected(turn, one, rather, wrongly)]
    raise Say(_does_not_fit(turn, first, others, "correct #{entry} " + said, said))


def _log_instead(turn: Turn, found: State, new: Retold) -> list[Reply]:
    """Log the new words in the place of the old ones."""
    if new == _retold(turn, found):
        raise Say(reply(_("It says so already: {thing}").format(thing=thing_words(turn, found))))
    edit = Edit(turn.context, Earlier((found,)), ())
    try:
        return finish(turn, edit, _start(turn, new))
    except Say as refused:
        raise Say(in_place(refused.answer, (found,))) from None


def _start(turn: Turn, new: Retold) -> list[Reply]:
    command, rest = all_commands()[new.command], new.rest
    turn.line = f"{command.name} {rest}"
    refused = barred(turn, command)
    if refused is not None:
        raise Say(refused)
    done = filling.start(turn, command, Given.of(parser.read(command.rule, rest, turn.vocabulary)))
    return done if isinstance(done, list) else [done]


def _which_line(turn: Turn, found: State, said: str) -> Reply:
    """Ask which of several things of one entry is meant."""
    retold = _retold(turn, found)
    rows = []
    for line in () if retold is None else retold.lines:
        words = [line[slot] for slot in (*_AMOUNTS, *_NAMES) if line.get(slot)]
        rows.append(
            (
                Button(
                    _label(turn, line),
                    f"correct #{found.last.id} {said} {keyword_for('NOT')} {' '.join(words)}",
                ),
            )
        )
    return reply(_("Which one do you mean?"), thing_words(turn, found), buttons=tuple(rows))


def _label(turn: Turn, line: Mapping[str, str]) -> str:
    """Return a line in short: '2 oranges'."""
    amount = next((line[slot] for slot in _AMOUNTS if line.get(slot)), "")
    name = next((line[slot] for slot in _NAMES if line.get(slot)), "")
    if name.startswith("#"):
        name = turn.noun(Hash(int(name[1:])), "INGREDIENT", _("fruit")).name
    count = Fraction(amount) if amount and " " not in amount else Fraction(2)
    return f"{amount} {counted_name(name, count) if name else ''}".strip()


def _does_not_fit(turn: Turn, found: State, others: list[State], line: str, said: str) -> Reply:
    """Say that the words do not fit the last thing, and offer the earlier things that they fit."""
    first = _("“{words}” does not fit what you logged last: {thing}.").format(
        words=said[:LABEL_LENGTH], thing=thing_words(turn, found)
    )
    if not others:
        return reply(first, buttons=((Button(_("Undo"), f"undo {found.last.id}"),),))
    rows = ((_entry_button(turn, one, line.format(entry=one.last.id)),) for one in others[:_MOST_OFFERED])
    return reply(first, _("Did you mean:"), buttons=tuple(rows))


def corrected(turn: Turn, found: State, rather: str, wrongly: str) -> list[Retold]:
    """Return what an entry says with other words; several if they fit several of its lines, [] if none."""
    before = _retold(turn, found)
    if before is None:
        return []
    command, keys = all_commands()[before.command], before.lines[0]
    if not wrongly and _lines_said(turn, before.command, rather, several=True):
        return [Retold(before.command, ({"lines": rather.strip(" ,")},))]
    new = _pieces(turn, command, keys, rather)
    old = _pieces(turn, command, keys, wrongly) if wrongly else {}
    if new is None or old is None:
        return []
    at = list(range(len(before.lines)))
    if old:
        at = [one for one in at if _says(turn, command, before.lines[one], old)]
    elif named := {slot: one for slot, one in new.items() if slot in _NAMES}:
        at = [one for one in at if _says(turn, command, before.lines[one], named)] or at
    else:  # 'sorry, 95' after 'drinks 90, 20 orange' means all drinks
        at = [one for one in at if not any(before.lines[one].get(slot) for slot in _NAMES)] or at
    return [_with(before, one, new) for one in at]


def _with(before: Retold, at: int, new: Mapping[str, Filled]) -> Retold:
    line = dict(before.lines[at])
    for slot, one in new.items():
        line[slot] = one.value.of(line[slot]) if isinstance(one.value, Factor) else one.text
        if isinstance(one.value, PackPrice) and one.value.pack is not None:
            line["pack"] = ""
    return Retold(before.command, (*before.lines[:at], line, *before.lines[at + 1 :]))


def _lines_said(turn: Turn, name: str, text: str, several: bool = False) -> bool:
    """Whether a command takes a text whole; with `several`, as several things: '5 limes, 2 lemons'."""
    phrase = all_commands()[name].phrase(turn, text) if text else None
    return phrase is not None and (not several or bool(phrase.lines))


def _pieces(turn: Turn, command: Command, line: Mapping[str, str], text: str) -> dict[str, Filled] | None:
    """Return the slots of a logged line that a text fills: by the command's rule, or a single one."""
    number = _read("number_said", text, turn)
    if number and (measured := _same_unit(turn, command, line, number["number"].text)):
        return measured
    share = _read("share_slot", text, turn) or _read("share_of_it_said", text, turn)
    if share:
        return {slot: share["share"] for slot in (*_AMOUNTS, "target") if slot in line} or None
    found = _read(command.rule, text, turn)
    if found and set(found) <= set(line) and all(map(is_known, found.values())):
        return found
    alone = [
        (slot.name, one)
        for slot in command.slots
        if slot.name in line
        for one in _read(slot.reads_by, text, turn).values()
        if is_known(one)
    ]
    same = [one for one in alone if _shape(one[1].value) == _shape(_now(turn, command, line, one[0]))]
    return dict((same or alone)[:1]) or None


def _same_unit(turn: Turn, command: Command, line: Mapping[str, str], number: str) -> dict[str, Filled]:
    """Return an amount that is logged with its unit or size with another number: 'sorry, 150' for 100 ml."""
    for slot in command.slots:
        _number, _space, unit = line.get(slot.name, "").partition(" ")
        if slot.name in _MEASURED and unit and unit.count(" x ") == 0:
            return _read(slot.reads_by, f"{number} {unit}", turn)
    return {}


def _read(rule: str, text: str, turn: Turn) -> dict[str, Filled]:
    phrase = parser.try_read(rule, text.strip(" .!,"), turn.vocabulary)
    return {} if phrase is None or phrase.lines else phrase.slots


def _now(turn: Turn, command: Command, line: Mapping[str, str], name: str) -> object:
    """Return the value of a slot of a logged line."""
    slot = next(one for one in command.slots if one.name == name)
    return next((one.value for one in _read(slot.reads_by, line[name], turn).values()), None)


def _says(turn: Turn, command: Command, line: Mapping[str, str], said: Mapping[str, Filled]) -> bool:
    return all(_plain(one.value) == _plain(_now(turn, command, line, slot)) for slot, one in said.items())


def _plain(value: object) -> object:
    """Return a value in a form that is equal however it was typed."""
    match value:
        case Hash():
            return str(value.id)
        case Noun():
            return value.id
        case Amount():
            return _base(value)
        case PackPrice():
            return value.price.number
        case _:
            return value


def _base(amount: Amount) -> object:
    """Return an amount in the unit of its dimension: 2 kg and 2000 g are the same."""
    if isinstance(amount.unit, AmbiguousUnit) or amount.unit in HOUSE_MEASURES:
        return amount.number, amount.unit
    to_base = {Dimension.VOLUME: to_ml, Dimension.MASS: to_g, Dimension.COUNT: to_count}
    kind = dimension(amount.unit)
    number = to_base[kind](Quantity(amount.number, amount.unit))
    return number if kind is Dimension.COUNT else (number, kind)


def _shape(value: object) -> object:
    """Return what kind of value it is, so that '300 ml' corrects the juice and '3' the fruit."""
    if isinstance(value, Amount) and value.unit != "each":
        return None if isinstance(value.unit, AmbiguousUnit) else dimension(value.unit)
    if isinstance(value, Hash | Noun | Unknown):
        return Noun
    return Fraction if isinstance(value, Fraction | Amount | int) else type(value)


# -- again ---------------------------------------------------------------------------------


def _again(turn: Turn, arguments: AgainArguments) -> list[Reply]:
    found, further = last_things(turn, arguments.entry), arguments.further
    line = "again #{entry} " + further
    if not found:
        word = words_of(all_commands()["waste"], tongue().language)[0]
        new = Button(f"{word} {further}", f"waste {further}")
        raise none_left(turn, line, ((new,),) if _lines_said(turn, "waste", further) else ())
    first, *rest = found[:_MOST_LOOKED]
    lines = repeated(turn, first, further)
    if lines is not None:
        return _start(turn, lines)
    others = [one for one in rest if repeated(turn, one, further) is not None]
    raise Say(_does_not_fit(turn, first, others, line, further or _("again")))


def repeated(turn: Turn, found: State, further: str) -> Retold | None:
    """Return an entry as one could type it again, or the same command with other words for the same day."""
    before = _retold(turn, found)
    if before is None or not further:
        return before
    command = all_commands()[before.command]
    more = f"{before.further} {further}"
    if before.further and command.phrase(turn, more) is not None:
        further = more
    phrase = command.phrase(turn, further)
    if phrase is None or not phrase.filled:
        return None
    if not all(map(is_known, phrase.filled)):
        return None
    day = before.lines[0].get("day", "")
    return Retold(before.command, ({"day": "" if "day" in phrase.slots else day, "lines": further},))


def _accept_entry(turn: Turn, given: Given, value: Hash) -> int:
    return value.id


_ENTRY_SLOT = Slot("entry", _accept_entry)

COMMANDS = (
    Command(
        "correct",
        N_("change the last thing you logged"),
        _correct,
        examples=(N_("correct 5"), N_("correct 5 limes, not 6")),
        slots=(_ENTRY_SLOT, Slot("rather", plain(str)), Slot("wrongly", plain(str))),
        writes=True,
        wishes=(
            Wish(
                "correct",
                ("{quantity?} {fruit} {reason?}", "{quantity}", "{reason}", "{clarity}", "{day}", "{money}"),
            ),
        ),
    ),
    Command(
        "again",
        N_("log the same once more, or with other words"),
        _again,
        examples=(N_("again"), N_("again 3 limes")),
        slots=(_ENTRY_SLOT, Slot("further", plain(str))),
        writes=True,
        wishes=(Wish("same again"),),
    ),
)
