"""The command strength: of a formula, batch or bottle; dilute, strengthen, mix, read a hydrometer."""

from __future__ import annotations

from dataclasses import dataclass, replace
from fractions import Fraction

from bot.chat.dialogue.arguments import Arguments
from bot.chat.dialogue.command import Command, Wish
from bot.chat.dialogue.inputs.shared_slots import SHOWN_BATCH_SLOT, quantity_in_ml
from bot.chat.dialogue.inputs.strength import accept_level, ask_strength, percent_of, show_strength
from bot.chat.dialogue.inputs.temperature import TEMPERATURE_SLOT, temperature_of
from bot.chat.dialogue.log_words import LogWords
from bot.chat.dialogue.slots import Given, Question, Slot, columns
from bot.chat.dialogue.turn import Say, Turn
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
from bot.chat.reply.units import show_percent, sizes_offered
from bot.trade.formulas.kinds import IngredientKind
from bot.trade.words import N_
from bot.work.batches.batches import BatchView
from bot.work.formulas import formulas, ingredients
from bot.work.formulas.formulas import FormulaView
from bot.work.formulas.ingredients import IngredientView
from bot.work.liquids import strength as strengths

Subject = FormulaView | IngredientView


# -- known values --------------------------------------------------------------------------


def accept_subject(turn: Turn, given: Given, value: Named) -> Subject:
    """Turn a name into its formula or ingredient."""
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


def _accept_more(
    turn: Turn, given: Given, value: Portion | tuple[Portion, ...]
) -> tuple[tuple[Fraction, Fraction, str], ...]:
    portions = value if isinstance(value, tuple) else (value,)
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


def _from_percent(
    level: Fraction | None, from_level: Fraction | None, subject: Subject | None
) -> Fraction | None:
    """The strength of the starting liquid: as typed, else that of the named spirit."""
    if level is not None:
        return level
    if from_level is not None:  # '500 ml from 96 to 70' gives it too
        return from_level
    return _own_strength(subject) if isinstance(subject, IngredientView) else None


# -- questions -----------------------------------------------------------------------------


def _wants_amount(turn: Turn, given: Given) -> bool:
    if any(slot in given for slot in (_AMOUNT, _TOTAL, _BATCH, _READING)):
        return False
    if isinstance(given.get(_SUBJECT), FormulaView):
        return False
    about_volume = any(slot in given for slot in (_TO_LEVEL, _FROM_LEVEL, _MORE))
    return about_volume or not (_SUBJECT in given or _LEVEL in given)


def _ask_amount(turn: Turn, given: Given) -> Question:
    units = turn.context.bar.units
    metric = units == "metric"
    sizes = ["100 ml", "500 ml", "700 ml", "1 l"] if metric else [f"{n} oz" for n in (4, 16, 24, 32)]
    return Question(
        _("How much spirit is there? Or say: strength and a formula's name."),
        columns(sizes_offered(sizes, units), 4 if metric else 2),
        hint="500 ml",
    )


def _wants_level(turn: Turn, given: Given) -> bool:
    if _LEVEL in given or not (_AMOUNT in given or _TOTAL in given):
        return False
    if _FROM_LEVEL in given and _TO_LEVEL in given:
        return False
    return _SUBJECT not in given


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
    if any(slot in given and given.get(slot) is None for slot in (_AMOUNT, _LEVEL)):
        return False  # given, and accepted after this slot
    if any(slot in given for slot in (_TO_LEVEL, _FROM_LEVEL, _MORE, _BATCH, _READING)):
        return False
    if _LEVEL in given and isinstance(given.get(_SUBJECT), IngredientView):
        return False
    return (_AMOUNT in given or _TOTAL in given) and not isinstance(given.get(_SUBJECT), FormulaView)


def _ask_to(turn: Turn, given: Given) -> Question:
    said = _from_percent(given.get(_LEVEL), given.get(_FROM_LEVEL), given.get(_SUBJECT))
    percent = said or Fraction(100)
    levels = [level for level in (80, 70, 60, 50, 40, 30, 20) if level < percent]
    text = _("From {percent} to what strength?").format(percent=dilution.short(percent))
    return Question(text, columns([(f"{one} %", f"{one} %") for one in levels], 4), hint="70 %")


def _accept_to(turn: Turn, given: Given, value: Level) -> Fraction:
    """Read the target strength; near zero it would be almost all water."""
    percent = accept_level(turn, given, value)
    dilution.refuse_water(percent)
    return percent


# -- answers -------------------------------------------------------------------------------


@dataclass(frozen=True, kw_only=True)
class StrengthArguments(Arguments):
    """The available or wanted spirit in mL and % vol, or the subject of a strength to show or set."""

    subject: Subject | None = None
    batch: BatchView | None = None
    reading: Fraction | None = None
    total: Fraction | None = None
    amount: Fraction | None = None
    level: Fraction | None = None
    from_level: Fraction | None = None
    with_level: Fraction | None = None
    to_level: Fraction | None = None
    more: tuple[dilution.Part, ...] = ()
    temperature: Fraction | None = None

    @property
    def is_about_volume(self) -> bool:
        """Whether the command mixes or dilutes a volume, instead of showing or setting a strength."""
        return bool(self.more) or not (self.amount is self.total is self.to_level is self.from_level is None)

    @property
    def from_percent(self) -> Fraction | None:
        """The strength of the starting liquid, % vol."""
        return _from_percent(self.level, self.from_level, self.subject)


def _strength(turn: Turn, arguments: StrengthArguments) -> Reply:
    subject, batch, temperature = (
        arguments.subject,
        arguments.batch,
        temperature_of(turn, arguments.temperature),
    )
    if batch is not None:
        title = _("Batch {number}, {name}").format(number=batch.number, name=batch.name)
        return mix_reply(turn, strengths.of_batch(batch), title)
    if arguments.reading is not None:
        return reading_reply(turn, arguments.reading, temperature)
    if isinstance(subject, FormulaView):
        return mix_reply(turn, strengths.of_formula(subject), subject.name, subject)
    if arguments.is_about_volume:
        return _volumes(turn, arguments, temperature)
    level = arguments.level
    if subject is not None:
        return bottle_reply(turn, subject, temperature) if level is None else _set(turn, subject, level)
    if level is None:
        raise ValueError("a volume is asked for where nothing is said")
    return plain_level_reply(turn, level, temperature)


def _volumes(turn: Turn, arguments: StrengthArguments, temperature: float) -> Reply:
    if arguments.more:
        return dilution.mixed(turn, _parts(arguments), temperature)
    percent, to = arguments.from_percent, arguments.to_level
    wanted, strong = _wanted_from(arguments)
    amount, total = arguments.amount, arguments.total
    makes = amount if total is None else total
    if makes is not None and wanted is not None and strong is not None:
        return dilution.make_up(turn, makes, strong, wanted, temperature)
    if makes is None or percent is None or to is None:
        raise Say(
            reply(
                _("I need what there is and where it should go."),
                _("For example: {example}").format(example=_("strength 500 ml 96 to 70")),
            )
        )
    if total is not None and arguments.with_level is not None:
        return dilution.blend(turn, total, percent, arguments.with_level, to)
    if total is not None:
        return dilution.make_up(turn, total, percent, to, temperature)
    if to > percent:
        return dilution.bring_up(turn, makes, percent, to, arguments.with_level)
    return dilution.water_down(turn, makes, percent, to, temperature)


def _wanted_from(arguments: StrengthArguments) -> tuple[Fraction | None, Fraction | None]:
    """Return (wanted, strong) of '500 ml 70 from 96', where the volume is that of the weaker spirit."""
    level, subject = arguments.level, arguments.subject
    if level is not None and arguments.from_level is not None:
        return level, arguments.from_level
    if level is not None and arguments.to_level is None and isinstance(subject, IngredientView):
        return level, _own_strength(subject)
    return None, None


def _parts(arguments: StrengthArguments) -> list[dilution.Part]:
    percent = arguments.from_percent
    if percent is None or arguments.amount is None:
        raise Say(
            reply(
                _("Say each part with its strength."),
                _("For example: {example}").format(example=_("strength 50 ml 96 + 50 ml water")),
            )
        )
    return [(arguments.amount, percent, ""), *arguments.more]


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


_BATCH = replace(SHOWN_BATCH_SLOT, ask=None)
_SUBJECT = Slot("subject", accept_subject)
_READING = Slot("reading", accept_level)
_TOTAL = Slot("total", _accept_ml)
_AMOUNT = Slot("amount", _accept_ml, _ask_amount, _wants_amount)
_LEVEL = Slot("level", accept_level, _ask_level, _wants_level)
_FROM_LEVEL = Slot("from_level", accept_level)
_TO_LEVEL = Slot("to_level", _accept_to, _ask_to, _wants_to)
_MORE = Slot("more", _accept_more)

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
            _SUBJECT,
            _BATCH,
            _READING,
            _TOTAL,
            # Before the amount: refuse an impossible strength before asking anything.
            _TO_LEVEL,
            _AMOUNT,
            _LEVEL,
            _FROM_LEVEL,
            Slot("with_level", accept_level),
            _MORE,
            TEMPERATURE_SLOT,
        ),
        writes=True,
        menu=12,
        wishes=(
            Wish(
                "strength",
                ("{amount} {level} TO {level}", "{level} TO {level}", "BATCH {batch}", "{subject}", ""),
                shows=True,
            ),
        ),
    ),
)

LOG_WORDS = (LogWords("strength", N_("strength of {name}"), N_("strength of {name}, {percent} %")),)
