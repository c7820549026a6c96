"""The command dose: oil, glycol and ethanol in a drink and an evening, compared with published limits."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from bot.chat.dialogue.arguments import Arguments
from bot.chat.dialogue.command import Command, Wish
from bot.chat.dialogue.inputs.shared_slots import FORMULA_SLOT, accept_formula, accept_sprays, quantity_in_ml
from bot.chat.dialogue.inputs.strength import ask_strength
from bot.chat.dialogue.slots import Given, Question, Slot, columns, said
from bot.chat.dialogue.turn import Say, Turn
from bot.chat.features.safety.caution_blocks import caution_blocks
from bot.chat.features.spray.dose_words import (
    held_lines,
    limit_lines,
    mend_line,
    others_line,
    sources_reply,
    state_words,
    table,
)
from bot.chat.grammar.syntax import Amount, Level, Portion
from bot.chat.i18n.language import _, ngettext, show_number
from bot.chat.reply.message import Block, Button, Reply, Text, reply
from bot.chat.reply.units import show_ml, show_range, sizes_offered
from bot.trade.formulas.measures import Dimension
from bot.trade.safety.caution import Step
from bot.trade.safety.jurisdiction import Jurisdiction
from bot.trade.safety.limits import NO_LIMIT_ON_FILE
from bot.trade.spray.sprayers import USUAL_PUMPS_ML
from bot.trade.words import N_
from bot.work.formulas import scaling
from bot.work.formulas.formulas import FormulaView, in_base
from bot.work.liquids.spirit_substitution import UnknownStrengthError
from bot.work.spray import dose
from bot.work.spray.dose import DoseAnswer, DoseQuestion

_MOST_DRINKS = 20


# -- known values --------------------------------------------------------------------------


def _ask_drink(turn: Turn, given: Given) -> Question:
    return Question(
        _("How large is the drink, without the spray?"),
        columns(
            sizes_offered(_sizes(turn), turn.context.bar.units),
            3 if turn.context.bar.units == "metric" else 2,
        ),
        hint="90 ml",
    )


def _sizes(turn: Turn) -> list[str]:
    """Return usual sizes of a drink in this bar."""
    if turn.context.bar.units == "metric":
        return [f"{size} ml" for size in (60, 75, 90, 120, 150, 200)]
    return [f"{size} oz" for size in (2, 3, 4, 5)]


def _accept_drink(turn: Turn, given: Given, value: Amount) -> Fraction:
    ml = quantity_in_ml(turn, value)
    if not 1 <= ml <= 5000:
        raise Say(reply(_("A drink from 1 ml to 5 l, please, such as 90 ml.")))
    return ml


def _ask_drinks(turn: Turn, given: Given) -> Question:
    choices = columns([(str(n), str(n)) for n in (1, 2, 3, 4, 5, 6)], 3)
    return Question(_("How many such drinks does one guest have?"), choices, hint="3")


def _accept_drinks(turn: Turn, given: Given, value: Fraction) -> int:
    if value.denominator != 1 or not 1 <= value <= _MOST_DRINKS:
        raise Say(reply(_("A whole number of drinks from 1 to {most}, please.").format(most=_MOST_DRINKS)))
    return int(value)


def _wants_taken(turn: Turn, given: Given) -> bool:
    view = given.get(FORMULA_SLOT)
    return view is not None and _SPRAYED not in given and not scaling.is_sprayed(view)


def _ask_taken(turn: Turn, given: Given) -> Question:
    view = given[FORMULA_SLOT]
    sizes = ("1 ml", "2.5 ml", "5 ml", "15 ml", "30 ml")
    choices = [(one, f"{show_number(Fraction(one.split()[0]), 1)} ml") for one in sizes]
    return Question(
        _("How much {name} goes into a drink?").format(name=view.name), columns(choices, 3), hint="5 ml"
    )


def _accept_taken(turn: Turn, given: Given, value: Amount) -> Fraction:
    ml = quantity_in_ml(turn, value)
    if not 0 < ml <= 1000:
        raise Say(reply(_("Above 0 and up to 1000 ml, please.")))
    return ml


def _accept_beside(turn: Turn, given: Given, value: Portion) -> tuple[FormulaView, Fraction]:
    if isinstance(value.what, Level):
        example = _("dose grapefruit mist in 90 ml + 5 ml lime tincture")
        raise Say(
            reply(
                _("I can add another preparation of this bar."),
                _("For example: {example}").format(example=example),
            )
        )
    return accept_formula(turn, given, value.what), quantity_in_ml(turn, value.amount)


def _accept_weight(turn: Turn, given: Given, value: Amount) -> Fraction:
    grams, kind = in_base(turn.context.bar, turn.quantity(value, False))
    if kind is not Dimension.MASS or not 10_000 <= grams <= 300_000:
        raise Say(reply(_("A body weight from 10 to 300 kg, please, such as 70 kg.")))
    return grams / 1000


# -- answers -------------------------------------------------------------------------------


@dataclass(frozen=True, kw_only=True)
class DoseArguments(Arguments):
    """A formula in a drink: the amount in each, the number of drinks, and the drinkers."""

    formula: FormulaView
    drink: Fraction
    sprayed: tuple[Fraction, Fraction] | None = None
    taken: Fraction | None = None
    drinks: int = 1
    weight: Fraction | None = None
    beside: tuple[FormulaView, Fraction] | None = None
    soft: bool = False
    sources: bool = False


def _dose(turn: Turn, arguments: DoseArguments) -> Reply:
    view = arguments.formula
    question = DoseQuestion(
        drink_ml=arguments.drink,
        drinks=arguments.drinks,
        sprays=arguments.sprayed,
        taken_ml=arguments.taken,
        body_weight_kg=arguments.weight,
        alcoholic=not arguments.soft,
        beside=() if arguments.beside is None else (arguments.beside,),
    )
    try:
        answer = dose.answer(turn.context, view, question)
    except UnknownStrengthError as error:
        raise Say(ask_strength(turn, error.name, view.name)) from None
    if arguments.sources:
        return sources_reply(answer)
    units = turn.context.bar.units
    first = _("{name} in {drink}, {drinks}: {state}").format(
        name=view.name,
        drink=show_ml(question.drink_ml, units),
        drinks=ngettext("{count} drink", "{count} drinks", question.drinks).format(count=question.drinks),
        state=state_words(answer),
    )
    lines = [
        *held_lines(answer, Jurisdiction(turn.context.bar.jurisdiction)),
        mend_line(answer),
        *limit_lines(answer),
        _how_dosed(answer, units),
        *_besides(answer, units),
        others_line(answer),
    ]
    if _is_unweighed(answer):
        pumps = show_range(Fraction(str(USUAL_PUMPS_ML.low)), Fraction(str(USUAL_PUMPS_ML.high)), 2)
        lines.append(
            _("Nobody has weighed this spray yet: pumps give {pumps} ml. Weigh yours.").format(pumps=pumps)
        )
    if not answer.has_composition_limit:
        lines.append(_(NO_LIMIT_ON_FILE))
    if answer.guessed_density:
        lines.append(
            _("No density known, so I weighed it as water: {names}.").format(
                names=", ".join(answer.guessed_density)
            )
        )
    amounts, *shares = table(answer)
    blocks: list[Block] = [amounts, *(Text(line) for line in lines if line), *shares]
    blocks += caution_blocks(turn, view, Step.SERVING)
    return Reply((Text(first, strong=True), *blocks), _buttons(turn, arguments, answer))


def _is_unweighed(answer: DoseAnswer) -> bool:
    """Whether the size of a spray is only the usual one."""
    return answer.question.taken_ml is None and not answer.view.sprayer


def _besides(answer: DoseAnswer, units: str) -> list[str]:
    return [
        _("With {volume} {name} in the same drink, counted in all figures.").format(
            volume=show_ml(ml, units), name=view.name
        )
        for view, ml in answer.question.beside
    ]


def _how_dosed(answer: DoseAnswer, units: str) -> str:
    spray = answer.serving.spray_ml
    volume = show_range(Fraction(str(round(spray.low, 3))), Fraction(str(round(spray.high, 3))), 3)
    if answer.question.taken_ml is not None:
        return _("{volume} ml of it in a drink.").format(volume=volume)
    most = answer.serving.sprays.high
    sprays = ngettext("{count} spray", "{count} sprays", 1 if most == 1 else 2).format(
        count=show_range(Fraction(str(answer.serving.sprays.low)), Fraction(str(most)), 1)
    )
    if answer.view.sprayer:
        sprays = _("{sprays} by {sprayer}").format(sprays=sprays, sprayer=answer.view.sprayer)
    return _("{sprays}, {volume} ml, if all of it lands in the drink.").format(sprays=sprays, volume=volume)


def _buttons(turn: Turn, arguments: DoseArguments, answer: DoseAnswer) -> tuple[tuple[Button, ...], ...]:
    view = answer.view
    texts = {name: arguments.words[name] for name in _SAID if name in arguments.words}

    def line(**changes: str) -> str:
        said = {**texts, **changes}
        if answer.question.taken_ml is not None:
            said["taken"] = f"with {texts['taken'].removeprefix('with ')}"
        if "beside" in texts:
            said["beside"] = f"+ {texts['beside'].removeprefix('+ ')}"
        parts = [f"in {said.pop('drink')}", *(said[name] for name in _SAID if said.get(name))]
        return f"dose #{view.id}.{view.version} " + ", ".join(parts)

    drinks = answer.question.drinks
    texts["drinks"] = f"{drinks} drinks"
    if "sprayed" in texts and not texts["sprayed"].endswith(("s", "y")):
        texts["sprayed"] += " sprays"
    rows: list[tuple[Button, ...]] = [(Button(_("Sources"), line() + ", sources"),)]
    other = [size for size in _sizes(turn)[::2] if size != texts["drink"]][:2]
    rows.append(
        (
            *(Button(_("In {size}").format(size=size), line(drink=size)) for size in other),
            Button(
                ngettext("{count} drink", "{count} drinks", drinks + 1).format(count=drinks + 1),
                line(drinks=f"{drinks + 1} drinks"),
            ),
        )
    )
    if _is_unweighed(answer):
        rows.append((Button(_("Weigh the sprayer"), "weigh"),))
    if turn.context.bar.jurisdiction == Jurisdiction.US and not arguments.soft:
        rows.append((Button(_("In a drink without alcohol"), line(soft="without alcohol")),))
    return tuple(rows)


_SAID = ("drink", "drinks", "sprayed", "taken", "weight", "beside", "soft")

_SPRAYED = Slot("sprayed", accept_sprays, rule="sprays_slot")

COMMANDS = (
    Command(
        "dose",
        N_("what is in a drink, and the limits"),
        _dose,
        words=("doses", "dose of", "dosage"),
        examples=(
            N_("dose grapefruit mist in 90 ml, 3 drinks"),
            N_("dose grapefruit mist 2 sprays in 60 ml, 70 kg"),
            N_("dose lime tincture with 5 ml in 120 ml"),
            N_("dose grapefruit mist in 90 ml + 5 ml lime tincture"),
        ),
        slots=(
            FORMULA_SLOT,
            _SPRAYED,
            Slot("taken", _accept_taken, _ask_taken, _wants_taken),
            Slot("drink", _accept_drink, _ask_drink),
            Slot(
                "drinks",
                _accept_drinks,
                _ask_drinks,
                lambda turn, given: given.guided,
                rule="drinks_answer_slot",
            ),
            Slot("weight", _accept_weight),
            Slot("beside", _accept_beside),
            Slot("soft", said),
            Slot("sources", said),
        ),
        menu=14,
        wishes=(
            Wish(
                "dose",
                (
                    "{formula?} {sprays} IN {amount}",
                    "{formula?} IN {amount}",
                    "{formula?} {sprays}",
                    "{formula?} {drinks}",
                    "{formula?}",
                ),
            ),
        ),
    ),
)
