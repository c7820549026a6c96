"""The command acid: make one juice as sour as another, by measured values and by the usual rule."""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal
from fractions import Fraction

from bot.chat.dialogue.arguments import Arguments
from bot.chat.dialogue.command import Command, Wish
from bot.chat.dialogue.inputs.shared_slots import quantity_in_ml
from bot.chat.dialogue.slots import Given, Question, Slot, columns
from bot.chat.dialogue.turn import Say, Turn
from bot.chat.grammar.syntax import Amount, Named, Unknown
from bot.chat.i18n.language import _, show_number
from bot.chat.reply.message import Block, Button, Grid, Reply, Text, reply
from bot.chat.reply.units import show_g, show_ml
from bot.trade.fruit.acidity import Acidity, AcidOutcome
from bot.trade.fruit.acidity_table import Juice
from bot.trade.numbers.ranges import Range
from bot.trade.words import N_
from bot.work.formulas import ingredients
from bot.work.fruit import acid_adjustment
from bot.work.fruit.acid_adjustment import Souring

_MOST_G_PER_L = 200


# -- choosing juice and amount -------------------------------------------------------------


def _ask_source(turn: Turn, given: Given) -> Question:
    choices = columns([(_(one), one) for one in ("orange", "grapefruit", "mandarin")], 3)
    return Question(_("Which juice?"), choices)


def _ask_sour(turn: Turn, given: Given) -> Question:
    return Question(_("As sour as which?"), (((_("lime"), _("lime")), (_("lemon"), _("lemon"))),))


def _accept_juice_name(turn: Turn, given: Given, value: Named) -> str:
    if isinstance(value, Unknown):
        name = value.text
    else:
        noun = turn.noun(value, "INGREDIENT", _("juice"))
        name = ingredients.get(turn.context, int(noun.id)).name
    if acid_adjustment.juice_named(name, turn.context.bar.language) is None:
        known = ", ".join(_(one.value) for one in Juice)
        raise Say(
            reply(
                _("I know no measured acidity of {name}.").format(name=name),
                _("Known: {names}.").format(names=known),
            )
        )
    return name


def _accept_volume(turn: Turn, given: Given, value: Amount) -> Fraction:
    return quantity_in_ml(turn, value)


def _accept_titrated(turn: Turn, given: Given, value: Fraction) -> Fraction:
    if not 1 <= value <= _MOST_G_PER_L:
        raise Say(
            reply(_("An acidity from 1 to {most} g/l, please, such as 9 g/l.").format(most=_MOST_G_PER_L))
        )
    return value


# -- answer --------------------------------------------------------------------------------


@dataclass(frozen=True, kw_only=True)
class AcidArguments(Arguments):
    """A juice, its amount in mL, the target juice, and own titrations of both in g/L."""

    source: str
    sour: str
    amount: Fraction = Fraction(1000)
    titrated: Fraction | None = None
    sour_titrated: Fraction | None = None


def _acid(turn: Turn, arguments: AcidArguments) -> Reply:
    units, ml = turn.context.bar.units, arguments.amount
    found = acid_adjustment.sour(
        turn.context, arguments.source, arguments.sour, ml, arguments.titrated, arguments.sour_titrated
    )
    title = _("{volume} {source} juice to {target} strength").format(
        volume=show_ml(ml, units), source=_(found.source.value), target=_(found.target.value)
    )
    if found.own is None and found.computed.already_there:
        return reply(
            _("{title}: no acid needed.").format(title=title),
            _("It is as sour as that already, as far as juices have been measured. Taste decides."),
        )
    acids = acid_words(*acid_adjustment.likely_acid_g(found))
    rows = _acid_rows(found)
    lines: list[Block] = [Grid(tuple(rows))]
    lines += [Text(one) for one in _beside(found)]
    buttons = []
    if found.own is not None:
        buttons.append((Button(found.own.name, f"scale #{found.own.formula_id} to {show_number(ml, 0)} ml"),))
    return Reply((Text(f"{title}: {acids}", strong=True), *lines), tuple(buttons))


def _acid_rows(found: Souring) -> list[tuple[str, str, str]]:
    one = found.computed
    rows = [("", _("citric"), _("malic"))]
    if found.own is not None:
        rows.append((_("your recipe"), *_both(found.own.outcome)))
    rows.append((_("computed"), _grams(one.citric_g), _grams(one.malic_g)))
    if not (one.citric_range_g.is_exact and one.malic_range_g.is_exact):
        rows.append((_("  from"), _grams(one.citric_range_g.low), _grams(one.malic_range_g.low)))
        rows.append((_("  to"), _grams(one.citric_range_g.high), _grams(one.malic_range_g.high)))
    if found.thumb is not None:
        rows.append((_("rule of thumb"), *_both(found.thumb)))
    return rows


def _both(one: AcidOutcome) -> tuple[str, str]:
    return _grams(one.citric_g), _grams(one.malic_g)


def _beside(found: Souring) -> list[str]:
    lines = []
    target = _(found.target.value)
    if found.own is not None:
        lines.append(
            _("{name} ends {share} the measured {target}.").format(
                name=found.own.name, share=_beyond(found.own.outcome.overshoot), target=target
            )
        )
    if found.thumb is not None:
        lines.append(
            _("The rule of thumb ends {share} the measured {target}.").format(
                share=_beyond(found.thumb.overshoot), target=target
            )
        )
    here, there = found.computed.source, found.computed.target
    text = _("{source} {here}, {target} {there}.").format(
        source=_(found.source.value).capitalize(), here=_acidity(here), target=target, there=_acidity(there)
    )
    if here.sources or there.sources:
        text += " " + _("Juices and papers differ: titrate it, or taste.")
    return [*lines, text]


def _acidity(one: Acidity) -> str:
    if not one.sources:
        return _("{acid} g/l as you measured it").format(acid=show_number(Fraction(one.likely_g_per_l), 1))
    ends = (one.range_g_per_l.low, one.range_g_per_l.high)
    low, high = (show_number(Fraction(round(end)), 0) for end in ends)
    return _("{low} to {high} g/l in print").format(low=low, high=high)


def _beyond(share: Range[Decimal]) -> str:
    low, high = (show_number(abs(Fraction(one)) * 100, 0) for one in (share.low, share.high))
    if low == high == "0":
        return _("level with")
    if share.low >= 0:
        return _("{low} to {high} % beyond").format(low=low, high=high)
    if share.high <= 0:
        return _("{low} to {high} % short of").format(low=high, high=low)
    return _("between {low} % short of and {high} % beyond").format(low=low, high=high)


def acid_words(citric: Decimal, malic: Decimal) -> str:
    """Write grams of citric and malic acid: '17.3 g citric + 8.7 g malic acid'."""
    parts = []
    if citric:
        parts.append(_("{grams} citric").format(grams=_grams(citric)))
    if malic:
        parts.append(_("{grams} malic acid").format(grams=_grams(malic)))
    elif citric:
        parts[-1] = _("{grams} citric acid").format(grams=_grams(citric))
    return " + ".join(parts) or _("no acid")


def _grams(grams: Decimal) -> str:
    return show_g(Fraction(round(grams, 1)))


COMMANDS = (
    Command(
        "acid",
        N_("acid that makes a juice as sour as another"),
        _acid,
        words=("acids", "sour"),
        examples=(N_("acid 280 ml orange juice to lime"), N_("acid 280 ml orange juice at 9 g/l to lime")),
        slots=(
            Slot("source", _accept_juice_name, _ask_source),
            Slot("amount", _accept_volume),
            Slot("titrated", _accept_titrated),
            Slot("sour", _accept_juice_name, _ask_sour),
            Slot("sour_titrated", _accept_titrated),
        ),
        menu=37,
        wishes=(Wish("acid", ("{amount} {item}", "{item?}")),),
    ),
)
