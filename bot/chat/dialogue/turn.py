"""The context of one message: the person, the bar, and helpers for every command."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, field, replace
from fractions import Fraction
from functools import cached_property

from bot.chat.dialogue.state import Pending, pending_of
from bot.chat.grammar.lexer import Noun, Vocabulary
from bot.chat.grammar.syntax import Amount, Hash, Named, Unknown
from bot.chat.i18n.language import _
from bot.chat.reply.message import Button, Message, Reply, reply
from bot.trade.formulas.measures import HOUSE_MEASURES, AmbiguousUnit, Quantity
from bot.trade.formulas.unit_words import AmbiguousUnitError, resolve_unit
from bot.work.context import Clock, Context
from bot.work.people import people
from bot.work.people.people import Presence
from storage.unit import Unit

NEAR_ENOUGH = 70  # of 100: a word below this is not suggested


class Say(Exception):  # noqa: N818 - it is an answer, not a fault
    """Stop here with this answer. The changes of the command are rolled back."""

    def __init__(self, answer: Reply) -> None:
        super().__init__(answer.first_line)
        self.answer = answer


def presence_of(unit: Unit, message: Message) -> Presence:
    """Return the author and place of a message, and the last question asked there."""
    place = message.place
    return people.find(unit, message.channel, message.sender.outside_id, place.outside_id, place.private)


@dataclass
class Turn:
    """The context in which a command answers one message.

    `context` needs a person who is in a bar. `line` is the message as typed, command word first; suggested
    corrections change it.
    """

    unit: Unit
    message: Message
    presence: Presence
    vocabulary: Vocabulary
    clock: Clock
    line: str = ""
    deep_link: Callable[[str], str] | None = None
    assumed: set[str] = field(default_factory=set)  # house measures with a default value in use
    new_names: list[str] = field(default_factory=list)  # common fruit that the bar did not have yet
    changed_strengths: dict[int, Fraction] = field(default_factory=dict)  # confirmed, by ingredient
    sure: bool = False  # an amount beyond the usual was confirmed
    finishing: bool = False  # every question is answered, and the dialogue's command runs
    hurried: bool = False  # other messages wait, so long work is refused
    prepared: object = None  # work done for this message on a copy of its bar
    shown: str = ""  # the last line here that only showed something, if nothing was logged since
    offered: tuple[str, ...] = ()  # the lines that the last answer here offers to tap
    waits: bool = False  # the last answer here waits for a yes or to be left
    offering: bool = False  # the answer logs nothing and offers what may be meant
    alone: bool = False  # long work is done in the transaction, because its copies were outdated

    @cached_property
    def context(self) -> Context:
        """The use-case context of the person's bar."""
        context = self.presence.context(self.unit, self.clock.now(), self.message.key)
        context.hurried = self.hurried
        return context

    @cached_property
    def pending(self) -> Pending | None:
        """The question in progress, and the lines behind its buttons."""
        return pending_of(self.presence.question)

    def afresh(self, line: str) -> Turn:
        """Return a fresh turn, for the answer after a command was rolled back."""
        return replace(
            self,
            line=line,
            assumed=set(),
            new_names=[],
            changed_strengths={},
            sure=False,
            finishing=False,
        )

    def without_question(self) -> Turn:
        """Return the turn without its question in progress."""
        return replace(self.afresh(self.line), presence=replace(self.presence, question=None))

    # -- names -------------------------------------------------------------------------

    def noun(self, named: Named, kind: str, what: str) -> Noun:
        """Return the named thing. Suggest near names if there is none of that name."""
        if isinstance(named, Noun):
            return named
        if isinstance(named, Hash):
            for noun in self.vocabulary.of_kind(kind):
                if noun.id == str(named.id):
                    return Noun(noun.kind, noun.id, noun.name, named.version)
            # Archived, or from an old button: the use case knows whether it ever existed.
            return Noun(kind, str(named.id), f"#{named.id}", named.version)
        raise Say(self.not_known(named, kind, what))

    def not_known(self, named: Unknown, kind: str, what: str) -> Reply:
        """Word 'I know no … called …', with the nearest names to tap."""
        first = _("I know no {what} called “{name}”.").format(what=what, name=named.text)
        near = self.near(named.text, kind)
        if not near:
            list_them = ((Button(_("Formulas"), "formulas"),),) if kind == "FORMULA" else ()
            return reply(first, buttons=list_them)
        buttons = tuple((Button(name, self.line_with(named.text, name)),) for name in near)
        return reply(first, _("Did you mean:"), buttons=buttons)

    def near(self, text: str, kind: str, most: int = 3) -> list[str]:
        """Return names of this kind with a spelling near `text`, nearest first."""
        from rapidfuzz import fuzz, process  # noqa: PLC0415 - only for unknown names

        known = list(dict.fromkeys(noun.name for noun in self.vocabulary.of_kind(kind)))
        found = process.extract(
            text, known, scorer=fuzz.WRatio, processor=str.casefold, limit=most, score_cutoff=NEAR_ENOUGH
        )
        return [name for name, _score, _index in found]

    def line_with(self, old: str, new: str) -> str:
        """Return the line with one part replaced."""
        before, found, after = self.line.rpartition(old)
        return f"{before}{new}{after}" if found else new

    # -- amounts -----------------------------------------------------------------------

    def quantity(self, amount: Amount, liquid: bool | None) -> Quantity:
        """Return the amount in a canonical unit. Ask if the bar's settings leave the unit ambiguous."""
        unit = amount.unit
        if isinstance(unit, AmbiguousUnit):
            try:
                unit = resolve_unit(unit.word, self.context.bar.sense(liquid))
            except AmbiguousUnitError as error:
                raise Say(self._which_unit(amount.number, error)) from None
        if unit in HOUSE_MEASURES and self.context.bar.house.is_default(unit):
            self.assumed.add(unit)
        return Quantity(amount.number, unit)

    def _which_unit(self, number: Fraction, error: AmbiguousUnitError) -> Reply:
        from bot.chat.reply.units import (  # noqa: PLC0415 - wording of units imports talk
            unit_name,
            unit_size,
        )

        rows = []
        for choice in error.choices:
            label = f"{unit_name(choice)} ({unit_size(choice)})"
            rows.append((Button(label, self.line_with_unit(error.word, choice)),))
        return reply(
            _("“{word}” can mean more than one thing here. Which is it?").format(word=error.word),
            _("To settle it for this bar: /bar ounces, or /bar spoons and cups."),
            buttons=tuple(rows),
        )

    def line_with_unit(self, word: str, unit: str) -> str:
        """Return the line with an ambiguous unit replaced by the unit's full name."""
        import re  # noqa: PLC0415 - only for ambiguous units

        from bot.chat.reply.units import UNIT_LONG_WORDS  # noqa: PLC0415 - see _which_unit
        from bot.trade.formulas.unit_words import look_up  # noqa: PLC0415

        full = UNIT_LONG_WORDS[unit]

        def swap(found: re.Match[str]) -> str:
            known = look_up(found.group())
            return full if isinstance(known, AmbiguousUnit) and known.word == word else found.group()

        return re.sub(r"[^\W\d_]+(?: (?:oz|ozs|ounces?)\b)?", swap, self.line, flags=re.IGNORECASE)
