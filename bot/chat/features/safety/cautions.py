"""The command cautions: the handling cautions of one formula or all, a page at a time."""

from __future__ import annotations

from dataclasses import dataclass
from itertools import groupby

from bot.chat.dialogue.arguments import Arguments
from bot.chat.dialogue.command import Command, Wish
from bot.chat.dialogue.inputs.shared_slots import NUMBER_SLOT, SAID_FORMULA_SLOT
from bot.chat.dialogue.turn import Turn
from bot.chat.features.safety.caution_blocks import cautions_at
from bot.chat.i18n.language import _
from bot.chat.reply.message import Button, Reply, reply
from bot.trade.safety.caution import Caution as TradeCaution
from bot.trade.safety.caution import Step
from bot.trade.words import N_
from bot.work.formulas.formulas import FormulaView

_CAUTIONS_A_PAGE = 5


@dataclass(frozen=True, kw_only=True)
class CautionsArguments(Arguments):
    """A formula, None for the whole list, and the first caution of the page."""

    formula: FormulaView | None = None
    number: int = 1


def _cautions(turn: Turn, arguments: CautionsArguments) -> Reply:
    view, start = arguments.formula, arguments.number
    if view is None:
        return _all_cautions(start)
    found: dict[str, TradeCaution] = {}
    for step in Step:
        for caution in cautions_at(turn, view, step):
            found.setdefault(caution.id, caution)
    title = _("Cautions for {name}").format(name=view.name)
    return _caution_page(title, list(found.values()), start, f"cautions #{view.id}")


def _all_cautions(start: int) -> Reply:
    from bot.trade.safety.cautions import CAUTIONS  # noqa: PLC0415 - only for the full list

    return _caution_page(_("Handling cautions"), list(CAUTIONS), start, "cautions")


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
        words=("caution", "handling"),
        slots=(SAID_FORMULA_SLOT, NUMBER_SLOT),
        menu=85,
        quick=True,
        wishes=(Wish("cautions", ("{formula?}",)),),
    ),
)
