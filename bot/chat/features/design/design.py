"""The command design: a spray to order, its others, each one tap to add to the book."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from bot.chat.dialogue.arguments import Arguments
from bot.chat.dialogue.command import Command, Wish
from bot.chat.dialogue.inputs.names import words_of
from bot.chat.dialogue.inputs.shared_slots import accept_sprays, quantity_in_ml
from bot.chat.dialogue.inputs.strength import percent_of
from bot.chat.dialogue.inputs.temperature import TEMPERATURE_SLOT
from bot.chat.dialogue.slots import Given, Question, Slot, columns, said
from bot.chat.dialogue.turn import Say, Turn
from bot.chat.features.design import design_words
from bot.chat.grammar.syntax import Amount, Bottles, Level, Named, Total
from bot.chat.i18n.language import _
from bot.chat.i18n.plurals import singular
from bot.chat.reply.message import Reply, reply
from bot.trade.formulas.amounts import ByBottles, ByTotal
from bot.trade.formulas.kinds import is_peel_oil_name
from bot.trade.words import N_
from bot.work.design import design
from bot.work.design.bench import Names, Wishes

_FRUIT = (N_("orange"), N_("lemon"), N_("lime"), N_("grapefruit"))
_MOST_ML, _MOST_OIL = 20_000, 50


@dataclass(frozen=True, kw_only=True)
class DesignArguments(Arguments):
    """The fruit of a spray, and all that it should be."""

    designed: str
    oil_amount: Fraction | None = None
    oil_share: Fraction | None = None
    spirit_level: Fraction | None = None
    size: ByTotal | ByBottles | None = None
    glycol_limit: Fraction | None = None
    drink: Fraction | None = None
    sprayed: tuple[Fraction, Fraction] | None = None
    temperature: Fraction | None = None
    cheapest: bool = False


def _ask_fruit(turn: Turn, given: Given) -> Question:
    choices = columns([(_(one), _(one)) for one in _FRUIT], 2)
    return Question(_("Which fruit should it smell of?"), choices, hint=_("A fruit"))


def _accept_fruit(turn: Turn, given: Given, value: Named) -> str:
    """Return the citrus fruit in a name: of 'orange mist' the orange."""
    for word in words_of(value).split():
        if is_peel_oil_name(f"{singular(word)} oil") or is_peel_oil_name(f"aceite de {singular(word)}"):
            return singular(word).casefold()
    raise Say(
        reply(
            _("I design sprays of citrus oil. Which fruit?"),
            buttons=design_words.fruit_buttons([_(one) for one in _FRUIT]),
        )
    )


def _accept_ml(turn: Turn, given: Given, value: Amount) -> Fraction:
    ml = quantity_in_ml(turn, value)
    if not 0 < ml <= _MOST_ML:
        raise Say(reply(_("An amount above 0 and up to 20 l, please.")))
    return ml


def _accept_share(turn: Turn, given: Given, value: Fraction) -> Fraction:
    if not 0 < value <= _MOST_OIL:
        raise Say(reply(_("A share of oil above 0 and up to 50 %, please.")))
    return value


def _accept_level(turn: Turn, given: Given, value: Level) -> Fraction:
    return percent_of(turn, value)


def _accept_size(turn: Turn, given: Given, value: Bottles | Total) -> ByTotal | ByBottles:
    if isinstance(value, Total):
        return ByTotal(_accept_ml(turn, given, value.amount))
    if value.count.denominator != 1 or not 0 < value.count <= 1000:
        raise Say(reply(_("Please write a whole number of bottles, such as 8 x 50 ml.")))
    loss = Fraction(turn.context.bar.settings.loss_percent) / 100
    return ByBottles(int(value.count), _accept_ml(turn, given, value.size), loss)


def _accept_limit(turn: Turn, given: Given, value: Fraction) -> Fraction:
    """Return g/l of what was typed in g/l, mg/l or mg/ml."""
    unit = given.words["glycol_limit"].casefold().replace(" ", "").lstrip("0123456789.,/")
    factors = {"g/l": Fraction(1), "mg/l": Fraction(1, 1000), "mg/ml": Fraction(1)}
    if unit not in factors or value <= 0:
        raise Say(reply(_("A limit such as 1 g/l or 500 mg/l, please.")))
    return value * factors[unit]


def _design(turn: Turn, arguments: DesignArguments) -> Reply:
    wishes = Wishes(
        fruit=arguments.designed,
        oil_ml=arguments.oil_amount,
        oil_percent=arguments.oil_share,
        spirit_percent=arguments.spirit_level,
        target=arguments.size,
        glycol_g_per_l=arguments.glycol_limit,
        drink_ml=arguments.drink,
        sprays=arguments.sprayed,
        temperature_c=None if arguments.temperature is None else float(arguments.temperature),
        cheapest=arguments.cheapest,
    )
    names = Names(
        oil=_("{fruit} oil").format(fruit=wishes.fruit),
        glycol=_("propylene glycol"),
        spirit=_("neutral spirit"),
        other_spirit=_("strong spirit"),
    )
    found = design.propose(turn.context, wishes, names)
    if found.designs:
        return design_words.designed(turn, found)
    return design_words.given_up(turn, found, arguments.words)


COMMANDS = (
    Command(
        "design",
        N_("propose a spray that meets your wishes"),
        _design,
        words=("propose", "design a", "propose a"),
        examples=(
            N_("design orange mist"),
            N_("design orange mist 8 x 50 ml with 75.5 % spirit"),
            N_("design orange mist at most 1 g/l glycol in 60 ml with 3 sprays, cheapest"),
        ),
        slots=(
            Slot("designed", _accept_fruit, _ask_fruit),
            Slot("oil_amount", _accept_ml),
            Slot("oil_share", _accept_share),
            Slot("spirit_level", _accept_level),
            Slot("size", _accept_size),
            Slot("glycol_limit", _accept_limit),
            Slot("drink", _accept_ml),
            Slot("sprayed", accept_sprays),
            TEMPERATURE_SLOT,
            Slot("cheapest", said),
        ),
        menu=44,
        wishes=(Wish("design", ("{fruit?} WITH {level} SPIRIT", "{fruit?} {bottles?}")),),
    ),
)
