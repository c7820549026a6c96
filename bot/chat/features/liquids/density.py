"""The command density: the mass of a millilitre, its source, and the bar's own weighing."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from bot.chat.dialogue.arguments import Arguments
from bot.chat.dialogue.command import Command, Wish
from bot.chat.dialogue.inputs.temperature import TEMPERATURE_SLOT, temperature_of
from bot.chat.dialogue.log_words import LogWords
from bot.chat.dialogue.slots import Given, Question, Slot, columns, plain
from bot.chat.dialogue.turn import Say, Turn
from bot.chat.features.liquids.strength import Subject, accept_subject
from bot.chat.i18n.language import _, local, show_full_day, show_number
from bot.chat.reply.message import Block, Button, Grid, Reply, Text, reply
from bot.chat.reply.units import show_temperature
from bot.trade.formulas.kinds import INGREDIENT_PROPERTIES
from bot.trade.formulas.measures import Dimension
from bot.trade.liquids.densities import Correction, Density, density_of
from bot.trade.words import N_
from bot.work.errors import NotAllowedError
from bot.work.formulas import ingredients
from bot.work.formulas.formulas import FormulaView
from bot.work.formulas.ingredients import IngredientView

_LEAST, _MOST = Fraction(1, 2), Fraction(3)


def _ask_subject(turn: Turn, given: Given) -> Question:
    known = [one for one in ingredients.all_of(turn.context) if INGREDIENT_PROPERTIES[one.kind].is_liquid]
    choices = [(one.name, one.name) for one in known[:12]]
    return Question(_("The density of what?"), columns(choices, 2), hint=_("An ingredient or a formula"))


def _accept_density(turn: Turn, given: Given, value: Fraction) -> Fraction:
    if not _LEAST <= value <= _MOST:
        raise Say(reply(_("A density from 0.5 to 3 g/ml, please, such as 0.85.")))
    return value


@dataclass(frozen=True, kw_only=True)
class DensityArguments(Arguments):
    """An ingredient or a formula, a temperature, and the bar's own density with a note of its source."""

    subject: Subject
    density: Fraction | None = None
    temperature: Fraction | None = None
    note: str = ""


def _density(turn: Turn, arguments: DensityArguments) -> Reply:
    subject, temperature = arguments.subject, temperature_of(turn, arguments.temperature)
    if isinstance(subject, FormulaView):
        return _of_formula(turn, temperature, subject)
    if arguments.density is not None:
        return _set(turn, subject, arguments.density, arguments.note)
    return _one(turn, temperature, subject)


def _set(turn: Turn, one: IngredientView, density: Fraction, note: str) -> Reply:
    if not turn.context.role.manages:
        raise NotAllowedError("manager")
    day = show_full_day(local(turn.context.now).date())
    source = note or _("weighed here, {day}").format(day=day)
    done = ingredients.set_density(turn.context, one.id, density, source)
    lines = [_("Source: {source}. It is used for every weight from now on.").format(source=source)]
    found = _handbook(done, 20.0)
    if found is not None and not found.low <= float(density) <= found.high:
        lines.append(
            _(
                "The handbook has {low} to {high}: is it the right bottle, and was it weighed at 20 °C?"
            ).format(low=_number(found.low), high=_number(found.high))
        )
    return reply(
        _("{name}: {density} g/ml").format(name=one.name, density=show_number(density, 4)),
        *lines,
        buttons=((Button(_("Undo"), "undo"),),),
    )


def _handbook(one: IngredientView, temperature: float) -> Density | None:
    percent = None if one.strength_percent is None else float(one.strength_percent)
    return density_of(one.kind, one.name, percent, temperature)


def _one(turn: Turn, temperature: float, one: IngredientView) -> Reply:
    own = one.density_g_per_ml
    found = _handbook(one, temperature)
    if own is None and found is None:
        return reply(
            _("{name}: density not known").format(name=one.name),
            _("Weigh 10 ml of it, divide by 10, and say: density {name} 0.95").format(name=one.name),
        )
    at = show_temperature(temperature, turn.context.bar.units)
    if own is not None:
        lines = [_("This bar's own: {source}.").format(source=one.density_source or "")]
        if found is not None:
            lines.append(
                _("Handbook at {temperature}: {density}").format(temperature=at, density=_with_range(found))
            )
        return reply(_("{name}: {density} g/ml").format(name=one.name, density=show_number(own, 4)), *lines)
    assert found is not None  # noqa: S101 - checked above
    return reply(
        _("{name}: {density} at {temperature}").format(
            name=one.name, density=_with_range(found), temperature=at
        ),
        *_source_lines(found),
        _("If you weighed it: density {name} {density}").format(name=one.name, density=_number(found.middle)),
    )


def _number(value: float) -> str:
    return show_number(Fraction(str(round(value, 4))), 4)


def _with_range(found: Density) -> str:
    if found.is_exact:
        return _("{density} g/ml").format(density=_number(found.middle))
    return _("{density} g/ml ({low} to {high})").format(
        density=_number(found.middle), low=_number(found.low), high=_number(found.high)
    )


def _source_lines(found: Density) -> list[str]:
    source = found.source
    line = _("{source} ({how})").format(source=_(source.title), how=_(source.how_known))
    if found.published != "formula":
        line = _("Printed as {published}: {source}").format(published=found.published, source=line)
    lines = [line]
    if found.correction is Correction.NOT_DONE:
        lines.append(
            _("It is for {temperature}: {correction}.").format(
                temperature=show_temperature(found.published_at_c), correction=_(found.correction)
            )
        )
    if found.crystal:
        lines.append(_("This is the density of its crystals, not of a spoonful."))
    return lines


def _of_formula(turn: Turn, temperature: float, view: FormulaView) -> Reply:
    rows: list[tuple[str, str]] = []
    sources: list[str] = []
    for line in view.lines:
        if line.dimension is not Dimension.VOLUME:
            continue
        one = line.ingredient
        if one.density_g_per_ml is not None:
            rows.append((one.name, _("{density} own").format(density=show_number(one.density_g_per_ml, 4))))
            sources.append(f"{one.name}: {one.density_source or ''}")
            continue
        found = _handbook(one, temperature)
        if found is None:
            rows.append((one.name, "?"))
            continue
        rows.append((one.name, _number(found.middle) if found.is_exact else _span(found)))
        sources.append(f"{one.name}: {_(found.source.title)} ({_(found.source.how_known)})")
    if not rows:
        return reply(_("{name} is weighed throughout.").format(name=view.name))
    blocks: list[Block] = [Grid(tuple(rows)), *(Text(source) for source in dict.fromkeys(sources))]
    return Reply(
        (
            Text(
                _("{name}: g/ml at {temperature}").format(
                    name=view.name, temperature=show_temperature(temperature, turn.context.bar.units)
                ),
                strong=True,
            ),
            *blocks,
        )
    )


def _span(found: Density) -> str:
    return f"{_number(found.low)}-{_number(found.high)}"


COMMANDS = (
    Command(
        "density",
        N_("what a millilitre weighs, and the source"),
        _density,
        words=("densities", "density of"),
        examples=(N_("density grapefruit oil"), N_("density grapefruit oil 0.85: weighed here")),
        slots=(
            Slot("subject", accept_subject, _ask_subject),
            Slot("density", _accept_density),
            Slot("note", plain(str)),
            TEMPERATURE_SLOT,
        ),
        writes=True,
        wishes=(Wish("density", ("{subject}", ""), shows=True),),
    ),
)

LOG_WORDS = (LogWords("density", N_("density of {name}"), N_("density of {name}")),)
