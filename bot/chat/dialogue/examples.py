"""Adapt examples to a bar's own names."""

from __future__ import annotations

import re
from collections.abc import Iterator
from fractions import Fraction

from bot.chat.dialogue.slots import columns
from bot.chat.dialogue.turn import Turn
from bot.chat.i18n.language import _
from bot.chat.i18n.plurals import counted_name
from bot.trade.formulas.kinds import IngredientKind
from bot.trade.formulas.measures import Dimension
from bot.trade.words import N_
from bot.work.formulas import formulas, ingredients
from bot.work.formulas.formulas import FormulaView
from bot.work.fruit import waste
from bot.work.menu import menu

# The names in the texts of examples, replaced by the bar's own if it has some.
_FORMULA = N_("grapefruit mist")
_INGREDIENTS = (N_("grapefruit oil"), N_("lime oil"))
_FIRST_FRUIT, _FIRST_FRUITS = N_("orange"), N_("oranges")
_SECOND_FRUIT, _SECOND_FRUITS = N_("lime"), N_("limes")
_DRINKS = (N_("negroni"), N_("old fashioned"))
# The usual waste of most bars, offered while a bar has few fruits of its own.
USUAL_FRUIT = (_FIRST_FRUIT, N_("lemon"), _SECOND_FRUIT, N_("grapefruit"))
_FEW = 6  # a bar with fewer fruits of its own is also offered the usual ones
_MANY = Fraction(2)


def example_of(turn: Turn, text: str, view: FormulaView | None = None) -> str:
    """Return a text in the current language, with the names in its examples replaced by the bar's own.

    `view` is the formula of the text, if any.
    """
    stock = [*_DRINKS, *_INGREDIENTS, _FORMULA, _FIRST_FRUIT, _FIRST_FRUITS, _SECOND_FRUIT, _SECOND_FRUITS]
    # The longest first, so that 'oranges' is not read as 'orange'.
    names = sorted((_(one) for one in stock), key=len, reverse=True)
    pattern = re.compile(rf"\b(?:{'|'.join(map(re.escape, names))})\b")
    if turn.presence.bar is None or not pattern.search(text):
        return text
    own = {_(name): said for name, said in _own_names(turn, view)}
    return pattern.sub(lambda found: own.get(found.group(), found.group()), text)


def _own_names(turn: Turn, view: FormulaView | None) -> Iterator[tuple[str, str]]:
    listed = menu.listed(turn.context)
    if len(listed) >= len(_DRINKS):
        yield from zip(_DRINKS, (one.name for one in listed), strict=False)
    about = view or first_formula(turn)
    if about is not None:
        yield _FORMULA, about.name
    liquid = _liquid(turn, view, about)
    if liquid:
        yield from ((name, liquid) for name in _INGREDIENTS)
    first, second = _two_fruits(turn, view)
    yield _FIRST_FRUIT, first
    yield _FIRST_FRUITS, counted_name(first, _MANY)
    yield _SECOND_FRUIT, second
    yield _SECOND_FRUITS, counted_name(second, _MANY)


def _liquid(turn: Turn, view: FormulaView | None, about: FormulaView | None) -> str:
    """Return a liquid of the given formula, else an oil or another liquid of the bar."""
    oils = [] if view is not None else ingredients.all_of(turn.context, IngredientKind.CITRUS_OIL)
    lines = () if about is None else about.lines
    poured = (line.ingredient.name for line in lines if line.dimension is Dimension.VOLUME)
    return oils[0].name if oils else next(poured, "")


def _two_fruits(turn: Turn, view: FormulaView | None) -> tuple[str, str]:
    of_formula = [] if view is None else [fruit_of(turn, view)]
    names = [*of_formula, *own_fruits(turn), *(_(one) for one in (_FIRST_FRUIT, _SECOND_FRUIT))]
    first, second, *_rest = dict.fromkeys(names)
    return first, second


def own_fruits(turn: Turn) -> list[str]:
    """Return the names of the bar's fruit, the most wasted first."""
    return list(_own_fruits(turn).values())


def _own_fruits(turn: Turn) -> dict[int, str]:
    own = {one.id: one.name for one in ingredients.all_of(turn.context, IngredientKind.FRUIT)}
    most = [number for number in waste.most_used(turn.context) if number in own]
    return {number: own[number] for number in dict.fromkeys([*most, *own])}


def fruit_choices(turn: Turn) -> tuple[tuple[tuple[str, str], ...], ...]:
    """Return fruit to tap: the bar's own, and the usual ones where it has few."""
    choices = [(name, f"#{number}") for number, name in list(_own_fruits(turn).items())[:8]]
    if len(choices) < _FEW:
        named = turn.vocabulary.named
        new = [one for one in USUAL_FRUIT if not (named(one, "INGREDIENT") or named(_(one), "INGREDIENT"))]
        choices += [(_(one), _(one)) for one in new]
    return columns(choices, 2)


def usual_fruit(turn: Turn) -> str:
    """Return the most wasted fruit of this bar, or the most usual fruit."""
    return next(iter(own_fruits(turn)), _(_FIRST_FRUIT))


def fruit_of(turn: Turn, view: FormulaView) -> str:
    """Return the fruit that a formula replaces, or one in its name or ingredients, or the usual one."""
    if view.garnish is not None:
        return view.garnish.name
    named = " ".join([view.name, *(line.ingredient.name for line in view.lines)])
    fruit = [*own_fruits(turn), *(_(one) for one in USUAL_FRUIT)]
    known = sorted(fruit, key=len, reverse=True)
    found = (one for one in known if re.search(rf"\b{re.escape(one)}\b", named, re.IGNORECASE))
    return next(found, fruit[0])


def first_formula(turn: Turn) -> FormulaView | None:
    """Return the bar's first formula, or None if it has none."""
    known = formulas.listed(turn.context)
    return formulas.get(turn.context, known[0].id) if known else None
