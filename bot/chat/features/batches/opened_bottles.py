"""Opened bottles of ingredients: opening day, label data, last day of use."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date

from bot.chat.dialogue.arguments import Arguments
from bot.chat.dialogue.inputs.day import accept_past_day, read_day
from bot.chat.dialogue.inputs.shared_slots import undo_button
from bot.chat.dialogue.slots import Given, Question, Slot, columns
from bot.chat.dialogue.turn import Turn
from bot.chat.grammar.syntax import Day, Named
from bot.chat.i18n.language import _, show_full_day
from bot.chat.reply.message import Button, Caution, Reply, Text
from bot.trade.batches.shelf import OIL_SOURCE
from bot.trade.formulas.kinds import INGREDIENT_PROPERTIES, IngredientKind
from bot.trade.safety.cautions import caution_by_id
from bot.work.batches import shelf as shelves
from bot.work.batches.shelf import OpenedItem
from bot.work.formulas import ingredients
from bot.work.formulas.ingredients import IngredientView


def _ask_item(turn: Turn, given: Given) -> Question:
    known = ingredients.all_of(turn.context)
    oils = [one for one in known if one.kind is IngredientKind.CITRUS_OIL]
    rest = [one for one in known if one not in oils and INGREDIENT_PROPERTIES[one.kind].is_liquid]
    choices = [(one.name, one.name) for one in (*oils, *rest)[:12]]
    return Question(_("Which bottle was opened?"), columns(choices, 2), hint=_("An ingredient"))


def _accept_item(turn: Turn, given: Given, value: Named) -> IngredientView:
    noun = turn.noun(value, "INGREDIENT", _("ingredient"))
    return ingredients.get(turn.context, int(noun.id))


def _accept_best(turn: Turn, given: Given, value: Day) -> date:
    return read_day(turn, value)


def _accept_cold(turn: Turn, given: Given, value: str) -> bool:
    return value == "cold"


OPENED_SLOT = Slot("opened", _accept_item)
ASKED_SLOT = Slot("opened", _accept_item, _ask_item)
DETAIL_SLOTS = (Slot("day", accept_past_day), Slot("best", _accept_best), Slot("cold", _accept_cold))


@dataclass(frozen=True, kw_only=True)
class BottleArguments(Arguments):
    """A bottle of an ingredient: its opening day, its best-before day, and whether it is kept cold."""

    opened: IngredientView
    day: date | None = None
    best: date | None = None
    cold: bool | None = None


def opened_reply(turn: Turn, bottle: BottleArguments) -> Reply:
    """Log an opened bottle and name the last day for it and for batches made with it."""
    one = bottle.opened
    item = shelves.note_opened(turn.context, one.id, bottle.day, bottle.best, bottle.cold)
    opened = item.opened_on or turn.context.today
    first = _("{name}: opened {day}.").format(name=one.name, day=show_full_day(opened))
    blocks: list[Text | Caution] = [Text(line) for line in _lines(item)]
    if one.kind is IngredientKind.CITRUS_OIL:
        blocks.append(Caution(_(caution_by_id("old-oil").text)))
    rows: tuple[tuple[Button, ...], ...] = ((undo_button(turn),),)
    if shelves.is_oil(one):
        rows = ((_other_place(item, opened), undo_button(turn)),)
    return Reply((Text(first, strong=True), *blocks), rows, edits=turn.message.tapped is not None)


def _lines(item: OpenedItem) -> list[str]:
    if item.use_until is None:
        return [
            _("No best-before day is noted: opened {name} best before 2027-01-31").format(
                name=item.ingredient.name
            )
        ]
    day = show_full_day(item.use_until)
    if item.use_until == item.best_before:
        lines = [_("Use it until {day}, its best-before day.").format(day=day)]
    elif item.kept_cold:
        lines = [_("Use it until {day}: a year after opening, kept cold.").format(day=day)]
    else:
        lines = [_("Use it until {day}: half a year after opening; kept cold, a year.").format(day=day)]
    if shelves.is_oil(item.ingredient) and item.use_until != item.best_before:
        lines.append(
            _("Source: {source} ({how}).").format(source=_(OIL_SOURCE.title), how=_(OIL_SOURCE.how_known))
        )
    lines.append(_("What is made with it from now on is thrown out by that day at the latest."))
    return lines


def _other_place(item: OpenedItem, opened: date) -> Button:
    """Return the button for the other storage (cold or not), with the rest of the line unchanged."""
    line = f"bottle {item.ingredient.name} on {opened.isoformat()}"
    if item.best_before is not None:
        line += f", best before {item.best_before.isoformat()}"
    if item.kept_cold:
        return Button(_("It is not kept cold"), f"{line}, kept warm")
    return Button(_("It is kept cold"), f"{line}, kept cold")
