"""The command cautions: the handling cautions of one formula or all, a page at a time."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from itertools import groupby

from bot.chat.dialogue.arguments import Arguments
from bot.chat.dialogue.command import Command, Wish
from bot.chat.dialogue.inputs.shared_slots import NUMBER_SLOT
from bot.chat.dialogue.slots import Given, Slot, said
from bot.chat.dialogue.turn import Turn
from bot.chat.features.safety.caution_blocks import cautions_at
from bot.chat.grammar.syntax import Hash, Named, Unknown
from bot.chat.i18n.language import _
from bot.chat.reply.message import Button, Reply, reply
from bot.trade.formulas.kinds import IngredientKind, guess_kind
from bot.trade.safety.caution import Caution as TradeCaution
from bot.trade.safety.caution import Contents, Step
from bot.trade.safety.cautions import FIRE_CAUTIONS, HELD_CAUTIONS, caution_by_id, cautions_for
from bot.trade.safety.grade import GradeReason
from bot.trade.safety.held_substances import held_in
from bot.trade.safety.jurisdiction import Jurisdiction
from bot.trade.words import N_
from bot.work.formulas import formulas
from bot.work.formulas.formulas import FormulaView
from bot.work.safety import grade as grades

_CAUTIONS_A_PAGE = 5
_NAME_WORDS = 4


@dataclass(frozen=True, kw_only=True)
class CautionsArguments(Arguments):
    """A formula or the name of anything, None for the whole list; `fire` puts those about fire first."""

    subject: FormulaView | str | None = None
    fire: bool = False
    number: int = 1

    @property
    def first(self) -> Sequence[TradeCaution]:
        """The cautions to show first: on fire if asked for, else on the substances held."""
        return FIRE_CAUTIONS if self.fire else HELD_CAUTIONS

    @property
    def fire_word(self) -> str:
        """The word that asks for the cautions on fire in a button's line, or ''."""
        return " flammable" if self.fire else ""


def _accept_subject(turn: Turn, given: Given, value: Named) -> FormulaView | str:
    if isinstance(value, Hash):
        return formulas.get(turn.context, value.id, value.version)
    if isinstance(value, Unknown):
        known = turn.vocabulary.named(value.text, "FORMULA")
        return value.text if known is None else _accept_subject(turn, given, known)
    if value.kind == "FORMULA":
        return formulas.get(turn.context, int(value.id), value.version)
    return value.name


def _cautions(turn: Turn, arguments: CautionsArguments) -> Reply:
    subject, start = arguments.subject, arguments.number
    fire, first = arguments.fire_word, arguments.first
    if subject is None:
        from bot.trade.safety.cautions import CAUTIONS  # noqa: PLC0415 - only for the full list

        found = _sorted(CAUTIONS, FIRE_CAUTIONS if arguments.fire else ())
        return _caution_page(_("Handling cautions"), found, start, f"cautions{fire}")
    if isinstance(subject, str):
        return _about_name(turn, subject, arguments)
    found = _sorted((one for step in Step for one in cautions_at(turn, subject, step)), first)
    title = _("Cautions for {name}").format(name=subject.name)
    return _caution_page(title, found, start, f"cautions #{subject.id}{fire}")


def _about_name(turn: Turn, name: str, arguments: CautionsArguments) -> Reply:
    """Return the cautions on anything by its name: what stops it and what is in it come first."""
    question = grades.question_about(name)
    if question is not None and question.reason is GradeReason.NOT_FOR_DRINKS:
        first = _(question.text)
        if len(name.split()) <= _NAME_WORDS:  # a longer one is a sentence
            first = f"{name}: {first}"
        return reply(first, _(caution_by_id("only-drinking-spirit").text))
    kind = guess_kind(name)
    contents = Contents(frozenset({kind or IngredientKind.OTHER}), names=(name,))
    jurisdiction = Jurisdiction(turn.context.bar.jurisdiction)
    found = _sorted(
        (one for step in Step for one in cautions_for(step, contents, jurisdiction, None)), arguments.first
    )
    if kind is None and not held_in((name,)):
        return reply(
            _("I have no caution on {name}. That clears nothing.").format(name=name),
            _("Ask the supplier for its food papers, and a licensed adviser."),
            buttons=((Button(_("All cautions"), "cautions"),),),
        )
    title = _("Cautions for {name}").format(name=name)
    return _caution_page(title, found, arguments.number, f"cautions {name}{arguments.fire_word}")


def _sorted(cautions: Iterable[TradeCaution], first: Sequence[TradeCaution]) -> list[TradeCaution]:
    """Return each caution once, in the given order but for the `first` ones."""
    found = list({one.id: one for one in cautions}.values())
    return sorted(found, key=lambda one: one not in first)


def _caution_page(title: str, cautions: list[TradeCaution], start: int, line: str) -> Reply:
    """Show one phone screen of cautions, each with its source, and a button for the rest."""
    first = min(max(start, 1), max(len(cautions), 1))
    last = min(first + _CAUTIONS_A_PAGE - 1, len(cautions))
    numbered = enumerate(cautions[first - 1 : last], start=first)
    shown: list[str] = []
    for source, run in groupby(numbered, key=lambda one: _source(one[1])):
        together = list(run)
        shown += [f"{number}. {_(one.text)}" for number, one in together]
        named = source
        if len(together) > 1:
            named = _("{first} to {last}: {source}").format(
                first=together[0][0], last=together[-1][0], source=source
            )
        shown[-1] += f" ({named})"
    if last < len(cautions) or first > 1:
        title += " " + _("({first} to {last} of {count})").format(first=first, last=last, count=len(cautions))
    if last == len(cautions):
        return reply(title, *shown, _closing_words())
    return reply(title, *shown, buttons=((Button(_("More"), f"{line} more {last + 1}"),),))


def _source(caution: TradeCaution) -> str:
    return _(caution.source.title)


def _closing_words() -> str:
    return _("Local codes and licensed practice come first; this list is not complete.")


COMMANDS = (
    Command(
        "cautions",
        N_("handling cautions"),
        _cautions,
        words=("caution", "handling", "handling cautions"),
        examples=(N_("cautions grapefruit mist"), N_("cautions tonka")),
        slots=(Slot("subject", _accept_subject), Slot("fire", said), NUMBER_SLOT),
        menu=85,
        quick=True,
        wishes=(Wish("cautions", ("{formula?}",)),),
    ),
)
