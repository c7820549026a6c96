"""Accept what a line of waste names: a thing, bottles of it, and a reason."""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import replace
from fractions import Fraction

from bot.chat.dialogue.inputs.fruit import accept_fruit, ask_volume, stop_at_packs
from bot.chat.dialogue.inputs.names import known_ingredient
from bot.chat.dialogue.inputs.naming import may_be_fruit, what_is
from bot.chat.dialogue.slots import Given
from bot.chat.dialogue.turn import Say, Turn
from bot.chat.grammar.lexer import Reader
from bot.chat.grammar.syntax import Amount, Named, Unknown
from bot.chat.i18n.language import _
from bot.chat.i18n.plurals import singular
from bot.chat.reply.message import Button, Text, reply
from bot.trade.formulas.kinds import INGREDIENT_PROPERTIES, IngredientKind, guess_kind, is_fruit_name
from bot.trade.formulas.measures import Dimension, Quantity, dimension
from bot.work.formulas.ingredients import IngredientView
from bot.work.money import prices


def accept_thing(turn: Turn, given: Given, value: Named) -> IngredientView:
    """Turn a name into what was thrown out; juice, or a volume of something new, is no fruit."""
    if not isinstance(value, Unknown) or known_ingredient(turn, value) is not None:
        return accept_fruit(turn, given, value)
    stop_at_packs(value.text)
    said, kind = _dimensions(given.words.get("waste_amount", ""), turn), guess_kind(value.text)
    bottled = "wasted_bottles" in given.words
    poured = kind not in {None, IngredientKind.OTHER} and INGREDIENT_PROPERTIES[kind].is_liquid
    if poured and not said and not bottled:
        raise ask_volume(value.text)
    is_volume = bottled or Dimension.VOLUME in said
    if not may_be_fruit(value.text) or (is_volume and not is_fruit_name(singular(value.text))):
        raise what_is(turn, value.text, fruit=False)
    return accept_fruit(turn, given, value)


def _dimensions(words: str, turn: Turn) -> set[Dimension]:
    """Return what the units in an amount measure; none for a bare number."""
    reader = Reader(words, turn.vocabulary)
    options = [one for at in range(len(reader.pieces)) for one in reader.options(at)]
    return {dimension(one.value) for one in options if one.terminal == "UNIT" and isinstance(one.value, str)}


def accept_reason(turn: Turn, given: Given, value: Named) -> str:
    """Return the reason that the words name; offer one at their end ('very mouldy'). Raises Say."""
    if not isinstance(value, Unknown):
        return str(value.id)
    words = value.text.split()
    ends = (turn.vocabulary.named(" ".join(words[at:]), "REASON") for at in range(1, len(words)))
    near = [str(one.id) for one in ends if one is not None][:1] or turn.near(value.text, "REASON", 1)
    said = _("“{name}” is not one of this bar's reasons. Tap one:").format(name=value.text)
    choices = [*turn.context.bar.settings.reasons]
    if near:
        said = _("I know no reason “{name}”. Did you mean:").format(name=value.text)
        choices = [*near, "other"]
    rows = tuple((Button(_(one), turn.line_with(value.text, _(one))),) for one in choices)
    raise Say(reply(said, _("Nothing is logged until you tap."), buttons=rows))


def bottle_of(turn: Turn, item: IngredientView) -> Quantity:
    """Return what a bottle of something holds: by its last price, else the bar's bottle. Raises Say."""
    known = prices.history(turn.context, item.id)
    packs = [one.pack for one in known if one.dimension is Dimension.VOLUME and one.pack.number != 1]
    return packs[-1] if packs else turn.quantity(Amount(Fraction(1), "bottle"), liquid=True)


@contextmanager
def together(lines: int) -> Iterator[None]:
    """Say with the refusal of one of several lines that none of them is logged."""
    try:
        yield
    except Say as refused:
        if lines == 1:
            raise
        note = Text(_("Nothing of the message was logged."))
        raise Say(replace(refused.answer, blocks=(*refused.answer.blocks, note))) from refused
