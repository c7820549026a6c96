"""Word the tests of a hazy or split batch: what to do, and what each answer means."""

from __future__ import annotations

from fractions import Fraction

from bot.chat.i18n.language import _, show_moment, show_number
from bot.chat.reply.message import Button
from bot.chat.reply.units import show_ml, show_temperature
from bot.trade.liquids import ethanol
from bot.trade.liquids.clearing.diagnosis import Cause, Test
from bot.trade.words import N_
from bot.work.batches.batches import Clarity
from bot.work.liquids.diagnosis import Diagnosis

NEXT_WORDS = {
    Cause.REST: N_("let it rest"),
    Cause.COLD: N_("warm it"),
    Cause.STRENGTH: N_("weigh the spirit"),
    Cause.WATER: N_("make a dry sample"),
    Cause.WAX: N_("filter a sample"),
    Cause.OIL: N_("try more spirit on a sample"),
}
CLEAR_WORDS = N_("It can be bottled and used.")
_SAMPLE_ML = 10


def test_lines(found: Diagnosis, units: str) -> list[str]:
    """Return the lines of the shown test: what to do, and what each answer means."""
    return {
        Cause.REST: _rest,
        Cause.COLD: _cold,
        Cause.STRENGTH: _strength,
        Cause.WATER: _water,
        Cause.WAX: _wax,
        Cause.OIL: _oil,
    }[found.shown](found, units)


def add_button(found: Diagnosis) -> Button | None:
    """Return the button that adds the spirit, or None where no sensible amount is known."""
    ml = _sensible_ml(found)
    if ml is None or found.spirit is None:
        return None
    amount = show_number(ml, 1)
    line = f"batch {found.batch.number} add {amount} ml #{found.spirit.ingredient_id}"
    return Button(_("Add {amount} ml {name}").format(amount=amount, name=found.spirit.name), line)


def _sensible_ml(found: Diagnosis) -> Fraction | None:
    """Return the spirit to add, None if it is more than the batch itself."""
    if found.add_ml is None or found.add_ml > float(found.batch.total_ml):
        return None
    return Fraction(str(found.add_ml))


def _rest(found: Diagnosis, units: str) -> list[str]:
    return [
        _("Leave it closed at room temperature until {when}, then look again.").format(
            when=show_moment(found.batch.rest_until)
        ),
        _("Clear then: it only needed time. Still not: the next test."),
    ]


def _cold(found: Diagnosis, units: str) -> list[str]:
    warm = _("Stand it closed at {warm} for some hours, swirl, and look: check {number} clear at {warm}")
    return [
        warm.format(warm=show_temperature(20.0, units), number=found.batch.number),
        _("Clear then: the cold did it, so keep it warmer, or filter it cold. Still not: the next test."),
    ]


def _strength(found: Diagnosis, units: str) -> list[str]:
    spirit = found.spirit
    if spirit is None:
        return [_("It holds no spirit, and oil needs one to dissolve.")]
    lines = [
        _("Weigh 100 ml of {name} at 20 °C: {percent} % weighs {grams} g.").format(
            name=spirit.name, percent=_percent(spirit.percent), grams=_grams(spirit.percent)
        )
    ]
    if found.weakest_percent is not None and found.weakest_percent < spirit.percent:
        weak = _("From {grams} g on it is {percent} % or weaker, too weak here. Lighter: the next test.")
        return [
            *lines,
            weak.format(grams=_grams(found.weakest_percent), percent=_percent(found.weakest_percent)),
        ]
    return [*lines, _("Heavier means weaker: make it anew with the stronger one. Right: the next test.")]


def _grams(percent: float) -> str:
    grams = 100 * ethanol.spirit_density_g_per_ml(percent)
    return show_number(Fraction(str(round(grams, 1))), 1)


def _percent(percent: float) -> str:
    return show_number(Fraction(str(round(percent, 1))), 1)


def _water(found: Diagnosis, units: str) -> list[str]:
    lines = [
        _("Make {sample} of it from the same bottles in dry glass, let it rest, and look.").format(
            sample=show_ml(Fraction(_SAMPLE_ML), units)
        ),
        _("Clear: water was in the glassware; dry it, and add spirit to this batch. Not: the next test."),
    ]
    if found.water_ml:
        share = show_ml(Fraction(str(found.water_ml)), units)
        lines.append(
            _("About {water} of water are enough to cloud a batch of this size.").format(water=share)
        )
    return lines


def _wax(found: Diagnosis, units: str) -> list[str]:
    return [
        _("Filter a glass of it through paper, and look the next day."),
        _(
            "Clear and stays so: it was wax or fine solids, so filter the rest: filtered {number}, lost 12 ml"
        ).format(number=found.batch.number),
        _("Hazy again: not wax; the next test."),
    ]


def _oil(found: Diagnosis, units: str) -> list[str]:
    if found.spirit is None:
        return [_("It holds no spirit, and oil needs one to dissolve.")]
    ml = _sensible_ml(found)
    if ml is None:
        return [_("That would take more spirit than there is batch: make it anew, with less oil.")]
    sample = ml / found.batch.total_ml * _SAMPLE_ML
    return [
        _("Add {share} of {name} to {sample} of it, swirl, and wait an hour.").format(
            share=show_ml(Fraction(f"{float(sample):.2g}"), units),
            name=found.spirit.name,
            sample=show_ml(Fraction(_SAMPLE_ML), units),
        ),
        _("Clear: add {amount} to the batch. Not: make it anew with less oil.").format(
            amount=show_ml(ml, units)
        ),
    ]


def status_words(found: Diagnosis, test: Test, units: str) -> str:
    """Return what is known of a test: done, with what was seen, or still to do."""
    if not test.done:
        return _("to do")
    if test.cause is Cause.REST:
        return _("yes")
    if test.cause is Cause.COLD:
        return show_temperature(found.temperature_c, units)
    return _("done")


def headline(found: Diagnosis) -> str:
    """Return the answer: how the batch looks, and what to do next."""
    looks = {Clarity.CLEAR: _("clear"), Clarity.HAZY: _("hazy"), Clarity.SPLIT: _("split")}
    return _("Batch {number}, {clarity}: {next}").format(
        number=found.batch.number, clarity=looks[found.clarity], next=_(NEXT_WORDS[found.shown])
    )
