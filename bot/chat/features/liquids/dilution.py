"""Word the dilution, strengthening and mixing of spirits."""

from __future__ import annotations

from fractions import Fraction

from bot.chat.dialogue.inputs.strength import show_strength
from bot.chat.dialogue.turn import Say, Turn
from bot.chat.i18n.language import _, show_number
from bot.chat.reply.message import Block, Button, Caution, Grid, Reply, Text, reply
from bot.chat.reply.units import show_g, show_ml, show_percent, show_temperature
from bot.trade.formulas.kinds import IngredientKind
from bot.trade.liquids import strength
from bot.trade.safety.cautions import caution_by_id
from bot.work.formulas import ingredients

REFERENCE_C = 20.0
# mL as measured, % vol, and a name or ''
Part = tuple[Fraction, Fraction, str]
_FLAMMABLE_FROM = 40.0
_WEAKEST = Fraction(1, 10)  # % vol; below it a litre of spirit takes a tonne of water


def refuse_water(to: Fraction) -> None:
    """Refuse to dilute a spirit to almost zero."""
    if to < _WEAKEST:
        first = _("That is nearly plain water.") if to else _("Water never brings it to 0 % vol.")
        weakest = show_percent(float(_WEAKEST))
        raise Say(reply(first, _("The weakest I work out is {percent}.").format(percent=weakest)))


def water_down(turn: Turn, ml: Fraction, percent: Fraction, to: Fraction, temperature: float) -> Reply:
    """Return the water that dilutes a spirit; the volume is as measured at `temperature`, °C."""
    done = strength.dilute(float(ml), float(percent), float(to), temperature)
    first = _("{volume} of {strong} to {weak}: add {water} of water.").format(
        volume=ml_words(turn, done.spirit_ml),
        strong=short(percent),
        weak=show_percent(float(to)),
        water=ml_words(turn, done.water_ml),
    )
    rows = (
        (_("Water by volume"), ml_words(turn, done.water_ml)),
        (_("Water by weight"), _g(done.water_g)),
        (_("Makes"), ml_words(turn, done.final_ml_at_temperature)),
        shrinking(turn, done.contraction_ml),
    )
    other = Button(
        _("Make {volume} of it").format(volume=ml_words(turn, float(ml))),
        f"strength make {_said_ml(ml)} {said(percent)} to {said(to)}{_said_temperature(temperature, turn)}",
    )
    return _with_notes(turn, first, rows, temperature, float(percent), (other,))


def make_up(turn: Turn, total: Fraction, strong: Fraction, wanted: Fraction, temperature: float) -> Reply:
    """Return the spirit and water for a total (mL at 20 °C) of a weaker spirit."""
    if wanted > strong:
        raise Say(
            reply(
                _("{weak} cannot be made from {strong} with water.").format(
                    weak=show_percent(float(wanted)), strong=show_percent(float(strong))
                ),
                _("Start from a stronger spirit."),
            )
        )
    refuse_water(wanted)
    done = strength.make_up(float(total), float(strong), float(wanted), temperature)
    first = _("{volume} of {weak}: {spirit} of {strong} and {water} of water.").format(
        volume=ml_words(turn, float(total)),
        weak=short(wanted),
        spirit=ml_words(turn, done.spirit_ml),
        strong=short(strong),
        water=ml_words(turn, done.water_ml),
    )
    rows = (
        (_("Spirit by volume"), ml_words(turn, done.spirit_ml)),
        (_("Spirit by weight"), _g(done.spirit_g)),
        (_("Water by volume"), ml_words(turn, done.water_ml)),
        (_("Water by weight"), _g(done.water_g)),
        shrinking(turn, done.contraction_ml),
    )
    other = Button(
        _("Water down {volume}").format(volume=ml_words(turn, float(total))),
        f"strength {_said_ml(total)} {said(strong)} to {said(wanted)}{_said_temperature(temperature, turn)}",
    )
    return _with_notes(turn, first, rows, temperature, float(strong), (other,))


def bring_up(turn: Turn, ml: Fraction, percent: Fraction, to: Fraction, strong: Fraction | None) -> Reply:
    """Return the stronger spirit that strengthens a weaker one; ask for its strength if not given."""
    if strong is None:
        stronger = [
            one
            for one in ingredients.all_of(turn.context, IngredientKind.SPIRIT)
            if one.strength_percent is not None and one.strength_percent > to
        ]
        levels = list(
            dict.fromkeys([*(one.strength_percent or Fraction(0) for one in stronger), Fraction(96)])
        )
        line = f"strength {_said_ml(ml)} {said(percent)} to {said(to)} with "
        choices = tuple(Button(short(one), line + said(one)) for one in levels if one > to)[:4]
        first = _("{weak} to {strong} needs a stronger spirit. Which one?").format(
            weak=show_percent(float(percent)), strong=show_percent(float(to))
        )
        if choices:
            return reply(first, buttons=(choices,))
        other = f"strength make {_said_ml(ml)} {said(to)} to {said(percent)}"
        label = _("{volume} of {weak} from {strong}").format(
            volume=ml_words(turn, float(ml)), weak=short(percent), strong=short(to)
        )
        return reply(
            _("Nothing here is stronger than {percent}.").format(percent=show_percent(float(to))),
            _("Did you mean:"),
            buttons=((Button(label, other),),),
        )
    if strong <= to:
        raise Say(
            reply(
                _("The spirit to add has to be stronger than {percent}.").format(
                    percent=show_percent(float(to))
                )
            )
        )
    done = strength.strengthen(float(ml), float(percent), float(strong), float(to))
    first = _("{volume} of {weak} to {to}: add {add} of {strong}.").format(
        volume=ml_words(turn, float(ml)),
        weak=short(percent),
        to=show_percent(float(to)),
        add=ml_words(turn, done.add_ml),
        strong=short(strong),
    )
    rows = (
        (_("Add by volume"), ml_words(turn, done.add_ml)),
        (_("Add by weight"), _g(done.add_g)),
        (_("Makes"), ml_words(turn, done.result.volume_ml)),
        shrinking(turn, done.result.contraction_ml),
    )
    return _with_notes(turn, first, rows, REFERENCE_C, float(strong), ())


def blend(turn: Turn, total: Fraction, one: Fraction, other: Fraction, to: Fraction) -> Reply:
    """Return how much of two spirits gives a total (mL at 20 °C) of a strength between theirs."""
    weak, strong = sorted((one, other))
    if not weak < to < strong:
        first = _("{to} is not between {weak} and {strong}.")
        raise Say(reply(first.format(to=show_percent(float(to)), weak=short(weak), strong=short(strong))))
    per_ml = strength.strengthen(1.0, float(weak), float(strong), float(to))
    weak_ml = float(total) / per_ml.result.volume_ml
    strong_ml = weak_ml * per_ml.add_ml
    first = _("{volume} of {to}: {weak_ml} of {weak} and {strong_ml} of {strong}.").format(
        volume=ml_words(turn, float(total)),
        to=show_percent(float(to)),
        weak_ml=ml_words(turn, weak_ml),
        weak=short(weak),
        strong_ml=ml_words(turn, strong_ml),
        strong=short(strong),
    )
    rows = (
        (short(weak), _g(weak_ml * strength.Portion(1.0, float(weak)).mass_g)),
        (short(strong), _g(weak_ml * per_ml.add_g)),
        shrinking(turn, weak_ml * per_ml.result.contraction_ml),
    )
    return _with_notes(turn, first, rows, REFERENCE_C, float(strong), ())


def mixed(turn: Turn, parts: list[Part], temperature: float) -> Reply:
    """Return the result of mixing several spirits and waters."""
    done = strength.mix(strength.Portion(float(ml), float(level), temperature) for ml, level, _name in parts)
    first = _("Together {volume} at {percent}.").format(
        volume=ml_words(turn, done.volume_ml), percent=show_strength(turn, done.strength_percent)
    )
    rows = (
        *((name or show_percent(float(level)), ml_words(turn, float(ml))) for ml, level, name in parts),
        shrinking(turn, done.contraction_ml),
        (_("Weight"), _g(done.mass_g)),
    )
    return _with_notes(turn, first, rows, temperature, float(max(level for _ml_, level, _n in parts)), ())


def _with_notes(
    turn: Turn,
    first: str,
    rows: tuple[tuple[str, str], ...],
    temperature: float,
    strongest: float,
    buttons: tuple[Button, ...],
) -> Reply:
    blocks: list[Block] = [Grid(rows), Text(_temperature_note(turn, temperature))]
    if strongest >= _FLAMMABLE_FROM:
        blocks.append(Caution(_(caution_by_id("no-flame").text)))
    return Reply((Text(first, strong=True), *blocks), (buttons,) if buttons else ())


def _temperature_note(turn: Turn, temperature: float) -> str:
    if temperature == REFERENCE_C:
        return _(
            "By weight where you can: volumes shrink on mixing. Volumes and strengths at 20 °C, OIML R 22."
        )
    return _("Poured at {temperature}; the strengths hold at 20 °C. Densities: OIML R 22.").format(
        temperature=show_temperature(temperature, turn.context.bar.units)
    )


def ml_words(turn: Turn, ml: float) -> str:
    """Write a volume in mL in the bar's units."""
    return show_ml(Fraction(str(round(ml, 3))), turn.context.bar.units)


def _g(grams: float) -> str:
    return show_g(Fraction(str(round(grams, 3))))


def shrinking(turn: Turn, contraction_ml: float) -> tuple[str, str]:
    """Return the volume that mixing loses (or gains, with weak spirits) as a row."""
    label = _("Contraction") if contraction_ml >= 0 else _("Swells by")
    return label, ml_words(turn, abs(contraction_ml))


def short(percent: Fraction) -> str:
    """Write a strength briefly, for display."""
    return f"{show_number(percent, 1)} %"


def said(percent: Fraction) -> str:
    """Write a strength as typed."""
    return f"{show_number(percent, 2)} %"


def _said_ml(ml: Fraction) -> str:
    return f"{show_number(ml, 3)} ml"


def _said_temperature(temperature: float, turn: Turn) -> str:
    if temperature == turn.context.bar.temperature_c:
        return ""
    return f" at {show_number(Fraction(str(temperature)), 1)} C"
