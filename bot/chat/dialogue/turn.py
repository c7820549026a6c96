"""One turn of talk: who speaks at which desk, and what is offered to every command."""

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

NEAR_ENOUGH = 70  # of 100: below this a word is not offered as what was meant


class Say(Exception):  # noqa: N818 - it is an answer, not a fault
    """Stop here and answer this instead. Whatever the command had begun is undone."""

    def __init__(self, answer: Reply) -> None:
        super().__init__(answer.first_line)
        self.answer = answer


def presence_of(unit: Unit, message: Message) -> Presence:
    """Return who says a message, where, and which question they were last asked there."""
    place = message.place
    return people.find(unit, message.channel, message.sender.outside_id, place.outside_id, place.private)


@dataclass
class Turn:
    """All that a command needs to answer one message.

    `desk` is None while the person stands in no bar. `line` is the message as one
    could type it, command word first; corrections are offered by changing it.
    """

    unit: Unit
    message: Message
    presence: Presence
    vocabulary: Vocabulary
    clock: Clock
    line: str = ""
    deep_link: Callable[[str], str] | None = None
    assumed: set[str] = field(default_factory=set)  # house measures of which a default was taken
    hurried: bool = False  # others wait meanwhile: what would take long is not begun

    @cached_property
    def context(self) -> Context:
        """The desk of the person's bar."""
        context = self.presence.context(self.unit, self.clock.now(), self.message.key)
        context.hurried = self.hurried
        return context

    @cached_property
    def pending(self) -> Pending | None:
        """The question in progress, and the lines behind its buttons."""
        return pending_of(self.presence.question)

    def afresh(self, line: str) -> Turn:
        """Return the turn with nothing begun: for what is said after a command was rolled back."""
        return replace(self, line=line, assumed=set())

    def without_question(self) -> Turn:
        """Return the turn as if no question were in progress."""
        return replace(self.afresh(self.line), presence=replace(self.presence, question=None))

    # -- names -------------------------------------------------------------------------

    def noun(self, named: Named, kind: str, what: str) -> Noun:
        """Return the thing that was named. Says what is near when there is none of that name."""
        if isinstance(named, Noun):
            return named
        if isinstance(named, Hash):
            for noun in self.vocabulary.of_kind(kind):
                if noun.id == str(named.id):
                    return Noun(noun.kind, noun.id, noun.name, named.version)
            # Put away or from an old button: the use case knows whether it ever was.
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
        """Return names of this kind spelt like `text`, nearest first."""
        from rapidfuzz import fuzz, process  # noqa: PLC0415 - only for unknown names

        known = list(dict.fromkeys(noun.name for noun in self.vocabulary.of_kind(kind)))
        found = process.extract(
            text, known, scorer=fuzz.WRatio, processor=str.casefold, limit=most, score_cutoff=NEAR_ENOUGH
        )
        return [name for name, _score, _index in found]

    def line_with(self, old: str, new: str) -> str:
        """Return what was said with one part replaced."""
        before, found, after = self.line.rpartition(old)
        return f"{before}{new}{after}" if found else new

    # -- amounts -----------------------------------------------------------------------

    def quantity(self, amount: Amount, liquid: bool | None) -> Quantity:
        """Return the amount in a canonical unit. Asks when the bar's settings leave the unit open."""
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
        """Return what was said with an ambiguous unit word replaced by the unit's full name."""
        import re  # noqa: PLC0415 - only when something is ambiguous

        from bot.chat.reply.units import UNIT_LONG_WORDS  # noqa: PLC0415 - see _which_unit
        from bot.trade.formulas.unit_words import look_up  # noqa: PLC0415

        full = UNIT_LONG_WORDS[unit]

        def swap(found: re.Match[str]) -> str:
            known = look_up(found.group())
            return full if isinstance(known, AmbiguousUnit) and known.word == word else found.group()

        return re.sub(r"[^\W\d_]+(?: (?:oz|ozs|ounces?)\b)?", swap, self.line, flags=re.IGNORECASE)
