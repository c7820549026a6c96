"""Strength: of a formula, a batch or a bottle; watering down, bringing up, mixing, and the hydrometer."""

from __future__ import annotations

from fractions import Fraction
from typing import Any

from bot.chat.dialogue.command import Command
from bot.chat.dialogue.log_words import LogWords
from bot.chat.dialogue.shared_slots import accept_batch, never, quantity_in_ml
from bot.chat.dialogue.slots import Question, Slot, columns
from bot.chat.dialogue.strength_input import accept_level, ask_strength, percent_of, show_strength
from bot.chat.dialogue.temperature_input import TEMPERATURE_SLOT, temperature_of
from bot.chat.dialogue.turn import Given, Say, Turn
from bot.chat.features.liquids import dilution
from bot.chat.features.liquids.strength_words import (
    bottle_reply,
    mix_reply,
    plain_level_reply,
    reading_reply,
)
from bot.chat.grammar.syntax import Amount, Hash, Level, Named, Portion, Unknown
from bot.chat.i18n.language import _, show_number
from bot.chat.reply.message import Button, Reply, reply
from bot.chat.reply.units import show_percent
from bot.trade.formulas.kinds import IngredientKind
from bot.trade.words import N_
from bot.work.batches.batches import BatchView
from bot.work.formulas import formulas, ingredients
from bot.work.formulas.formulas import FormulaView
from bot.work.formulas.ingredients import IngredientView
from bot.work.liquids import strength as strengths

Subject = FormulaView | IngredientView


# -- what is known -------------------------------------------------------------------------


def accept_subject(turn: Turn, given: Given, value: Named) -> Subject:
    """Turn a name into the formula or the ingredient that it names."""
    if isinstance(value, Hash):
        return formulas.get(turn.context, value.id, value.version)
    if isinstance(value, Unknown):
        for kind in ("FORMULA", "INGREDIENT"):
            known = turn.vocabulary.named(value.text, kind)
            if known is not None:
                return accept_subject(turn, given, known)
        raise Say(_not_known(turn, value))
    if value.kind == "FORMULA":
        return formulas.get(turn.context, int(value.id), value.version)
    return ingredients.get(turn.context, int(value.id))


def _not_known(turn: Turn, value: Unknown) -> Reply:
    near = [name for kind in ("FORMULA", "INGREDIENT") for name in turn.near(value.text, kind)][:4]
    first = _("I know no formula or ingredient called “{name}”.").format(name=value.text)
    if not near:
        return reply(first)
    buttons = tuple((Button(name, turn.line_with(value.text, name)),) for name in near)
    return reply(first, _("Did you mean:"), buttons=buttons)


def _accept_ml(turn: Turn, given: Given, value: Amount) -> Fraction:
    ml = quantity_in_ml(turn, value)
    if ml <= 0:
        raise Say(reply(_("An amount above zero, please, such as 500 ml.")))
    return ml


def _accept_more(turn: Turn, given: Given, value: Any) -> tuple[tuple[Fraction, Fraction, str], ...]:
    portions: tuple[Portion, ...] = value if isinstance(value, tuple) else (value,)
    found = []
    for portion in portions:
        ml = _accept_ml(turn, given, portion.amount)
        if isinstance(portion.what, Level):
            percent, name = percent_of(turn, portion.what), ""
        else:
            percent, name = _named_strength(turn, portion.what)
        found.append((ml, percent, name))
    return tuple(found)


def _named_strength(turn: Turn, named: Named) -> tuple[Fraction, str]:
    if isinstance(named, Unknown) and named.text.casefold() in {"water", _("water").casefold()}:
        return Fraction(0), _("water")
    subject = accept_subject(turn, Given({}, {}), named)
    if isinstance(subject, IngredientView):
        return _own_strength(subject), subject.name
    found = strengths.of_formula(subject).strength
    if found is None:
        raise Say(ask_strength(turn, strengths.of_formula(subject).unknown[0], subject.name))
    return Fraction(str(round(found.strength_percent, 3))), subject.name


def _own_strength(ingredient: IngredientView) -> Fraction:
    if ingredient.strength_percent is not None:
        return ingredient.strength_percent
    if ingredient.kind is IngredientKind.WATER:
        return Fraction(0)
    raise Say(
        reply(
            _("How strong is {name}?").format(name=ingredient.name),
            _("Say it once: strength {name} 96").format(name=ingredient.name),
        )
    )


def _from_percent(given: Given) -> Fraction | None:
    """The strength of what there is: as said, else that of the spirit named."""
    # '500 ml from 96 to 70' says it too.
    level: Fraction | None = given.get("level", given.get("from_level"))
    if level is not None:
        return level
    subject = given.get("subject")
    return _own_strength(subject) if isinstance(subject, IngredientView) else None


# -- what to ask ---------------------------------------------------------------------------


def _is_about_volume(given: Given) -> bool:
    return any(name in given for name in ("amount", "total", "to_level", "from_level", "more"))


def _wants_amount(turn: Turn, given: Given) -> bool:
    if any(name in given for name in ("amount", "total", "batch", "reading")):
        return False
    if isinstance(given.get("subject"), FormulaView):
        return False
    return _is_about_volume(given) or not any(name in given for name in ("subject", "level"))


def _ask_amount(turn: Turn, given: Given) -> Question:
    metric = turn.context.bar.units == "metric"
    word = "US fl oz" if turn.context.bar.units == "us" else "imperial fl oz"
    sizes = ["100 ml", "500 ml", "700 ml", "1 l"] if metric else [f"{n} {word}" for n in (4, 16, 24, 32)]
    return Question(
        _("How much spirit is there? Or say: strength and a formula's name."),
        columns([(one, one) for one in sizes], 4 if metric else 2),
        hint="500 ml",
    )


def _wants_level(turn: Turn, given: Given) -> bool:
    if "level" in given or not ("amount" in given or "total" in given):
        return False
    if "from_level" in given and "to_level" in given:
        return False
    return not isinstance(given.get("subject"), Subject)


def _ask_level(turn: Turn, given: Given) -> Question:
    spirits = [
        one
        for one in ingredients.all_of(turn.context, IngredientKind.SPIRIT)
        if one.strength_percent is not None
    ]
    choices = [
        (
            f"{one.name} {show_number(one.strength_percent or 0, 1)} %",
            f"{show_number(one.strength_percent or 0, 2)} %",
        )
        for one in spirits[:6]
    ]
    return Question(_("How strong is it?"), columns(choices, 1), hint="96 %")


def _wants_to(turn: Turn, given: Given) -> bool:
    if _wants_level(turn, given):
        return False
    if any(name in given for name in ("to_level", "from_level", "more", "batch", "reading")):
        return False
    if "level" in given and isinstance(given.get("subject"), IngredientView):
        return False
    return ("amount" in given or "total" in given) and not isinstance(given.get("subject"), FormulaView)


def _ask_to(turn: Turn, given: Given) -> Question:
    percent = _from_percent(given) or Fraction(100)
    levels = [level for level in (80, 70, 60, 50, 40, 30, 20) if level < percent]
    text = _("From {percent} to what strength?").format(percent=dilution.short(percent))
    return Question(text, columns([(f"{one} %", f"{one} %") for one in levels], 4), hint="70 %")


def _accept_to(turn: Turn, given: Given, value: Any) -> Fraction:
    """Read the strength to reach; next to none would be nearly all water."""
    percent = accept_level(turn, given, value)
    dilution.refuse_water(percent)
    return percent


# -- answering -----------------------------------------------------------------------------


def _strength(turn: Turn, given: Given) -> Reply:
    subject = given.get("subject")
    if "batch" in given:
        batch: BatchView = given["batch"]
        return mix_reply(
            turn,
            strengths.of_batch(batch),
            _("Batch {number}, {name}").format(number=batch.number, name=batch.name),
        )
    if "reading" in given:
        return reading_reply(turn, given)
    if isinstance(subject, FormulaView):
        return mix_reply(turn, strengths.of_formula(subject), subject.name, subject)
    if isinstance(subject, IngredientView) and not _is_about_volume(given):
        return _set(turn, subject, given["level"]) if "level" in given else bottle_reply(turn, given, subject)
    if not _is_about_volume(given):
        return plain_level_reply(turn, given)
    return _volumes(turn, given)


def _volumes(turn: Turn, given: Given) -> Reply:
    temperature = temperature_of(turn, given)
    if "more" in given:
        return dilution.mixed(turn, _parts(given), temperature)
    percent, to = _from_percent(given), given.get("to_level")
    wanted, strong = _wanted_from(given)
    if wanted is not None and strong is not None:
        return dilution.make_up(turn, given.get("total", given.get("amount")), strong, wanted, temperature)
    if percent is None or to is None:
        raise Say(
            reply(
                _("I need what there is and where it should go."),
                _("For example: {example}").format(example=_("strength 500 ml 96 to 70")),
            )
        )
    if "total" in given:
        return dilution.make_up(turn, given["total"], percent, to, temperature)
    if to > percent:
        return dilution.bring_up(turn, given["amount"], percent, to, given.get("with_level"))
    return dilution.water_down(turn, given["amount"], percent, to, temperature)


def _wanted_from(given: Given) -> tuple[Fraction | None, Fraction | None]:
    """Return (wanted, strong) of '500 ml 70 from 96', where so much of the weaker one is wanted."""
    subject = given.get("subject")
    if "from_level" in given and "level" in given:
        return given["level"], given["from_level"]
    if "to_level" not in given and "level" in given and isinstance(subject, IngredientView):
        return given["level"], _own_strength(subject)
    return None, None


def _parts(given: Given) -> list[dilution.Part]:
    percent = _from_percent(given)
    if percent is None or "amount" not in given:
        raise Say(
            reply(
                _("Say each part with its strength."),
                _("For example: {example}").format(example=_("strength 50 ml 96 + 50 ml water")),
            )
        )
    return [(given["amount"], percent, ""), *given["more"]]


def _set(turn: Turn, one: IngredientView, percent: Fraction) -> Reply:
    if one.kind not in {IngredientKind.SPIRIT, IngredientKind.OTHER}:
        raise Say(
            reply(
                _("{name} is no spirit here but {kind}.").format(name=one.name, kind=_(one.kind)),
                _("A strength is kept for spirits, liqueurs and tinctures only."),
            )
        )
    done = strengths.set_of(turn.context, one.id, percent)
    first = _("{name}: {percent}").format(
        name=one.name, percent=show_strength(turn, float(done.ingredient.strength_percent or 0))
    )
    lines = []
    if done.before is not None and done.before != percent:
        lines.append(_("Before: {percent}.").format(percent=show_percent(float(done.before))))
    if done.formulas:
        lines.append(
            _("It counts at once in: {names}. Batches keep what they were made with.").format(
                names=", ".join(done.formulas[:6])
            )
        )
    buttons = ((Button(_("Undo"), "undo"),),) if done.before != percent else ()
    return reply(first, *lines, buttons=buttons)


COMMANDS = (
    Command(
        "strength",
        N_("how strong, and how to water down"),
        _strength,
        words=("abv", "how strong is", "dilute", "proof down", "water down"),
        examples=(
            N_("strength 500 ml 96 to 70"),
            N_("strength 500 ml 70 from 96"),
            N_("strength grapefruit mist"),
            N_("strength neutral spirit 96"),
            N_("strength 50 ml 96 + 50 ml water"),
        ),
        slots=(
            Slot("subject", _ask_amount, never, accept_subject),
            Slot("batch", _ask_amount, never, accept_batch),
            Slot("reading", _ask_level, never, accept_level),
            Slot("total", _ask_amount, never, _accept_ml),
            # Before the amount: a strength that cannot be reached is refused before anything is asked.
            Slot("to_level", _ask_to, _wants_to, _accept_to),
            Slot("amount", _ask_amount, _wants_amount, _accept_ml),
            Slot("level", _ask_level, _wants_level, accept_level),
            Slot("from_level", _ask_level, never, accept_level),
            Slot("with_level", _ask_level, never, accept_level),
            Slot("more", _ask_amount, never, _accept_more),
            TEMPERATURE_SLOT,
        ),
        writes=True,
        menu=12,
    ),
)

LOG_WORDS = (LogWords("strength", N_("strength of {name}"), N_("{name} has the strength it had before.")),)
