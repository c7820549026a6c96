"""Word a sprayer: its spray volume, the uncertainty, and the drinks from a bottle."""

from __future__ import annotations

from fractions import Fraction

from bot.chat.i18n.language import _, local, ngettext, show_day, show_number
from bot.chat.reply.message import Block, Grid, Text
from bot.trade.numbers.ranges import Range
from bot.trade.spray.sprayers import (
    SPRAYS_PER_DRINK_PRACTICE,
    Evenness,
    PumpOutput,
    drinks_per_bottle,
    sprays_to_weigh,
)
from bot.trade.words import N_
from bot.work.spray.sprayers import RunView, SprayerView

_BOTTLE_ML = 50.0
_RUNS_WANTED = 3
_MOST_RUNS = 6
_EVENNESS = {
    Evenness.EVEN: N_("Single sprays are even, by the yardstick of nasal sprays (USP <601>)."),
    Evenness.DOUBTFUL: N_("Single sprays vary: weigh more of them (yardstick: USP <601>, nasal sprays)."),
    Evenness.UNEVEN: N_("Single sprays are uneven, by the yardstick of nasal sprays (USP <601>)."),
}


def ml_spray(ml: Fraction | float) -> str:
    """Write the volume of a spray, to a tenth of a microlitre."""
    return show_number(Fraction(str(round(float(ml), 4))), 4)


def range_words(view: SprayerView) -> str:
    """Return the range in use, or a note that the sprayer is not weighed yet."""
    if view.spray_ml is None:
        return _("not weighed yet")
    low, high = (ml_spray(end) for end in view.spray_ml)
    if low == high:
        return _("{ml} ml a spray").format(ml=low)
    return _("{low} to {high} ml a spray").format(low=low, high=high)


def title(view: SprayerView) -> str:
    """Return the sprayer's name and mean spray."""
    output = view.output
    if output is None:
        return _("{name}: not weighed yet").format(name=view.name)
    count = len(output.runs_ml)
    runs = ngettext("{count} run", "{count} runs", count).format(count=count)
    return _("{name}: {ml} ml a spray ({runs})").format(
        name=view.name, ml=ml_spray(output.ml_per_spray), runs=runs
    )


def figures(view: SprayerView, sprays: tuple[Fraction, Fraction] | None) -> list[Block]:
    """Return mean, spread, interval and drinks a bottle, with doubts about them."""
    output = view.output
    if output is None or view.spray_ml is None:
        return [
            Text(_("Fill it, spray until it gives its full dose, then weigh before and after 20 sprays."))
        ]
    rows = [(_("mean"), _ml(output.ml_per_spray))]
    if output.standard_deviation_ml is not None:
        rows.append((_("spread of runs"), _ml(output.standard_deviation_ml)))
    if output.interval_95_ml is not None:
        interval = output.interval_95_ml
        rows.append((_("95 % interval"), f"{ml_spray(interval.low)}-{ml_spray(interval.high)} ml"))
    per_drink = SPRAYS_PER_DRINK_PRACTICE if sprays is None else Range(float(sprays[0]), float(sprays[1]))
    low, high = view.spray_ml
    drinks = drinks_per_bottle(_BOTTLE_ML, Range(float(low), float(high)), per_drink)
    most = drinks.fewest if drinks.most is None else drinks.most
    rows.append((_("drinks in 50 ml"), f"{show_number(drinks.fewest)}-{show_number(most)}"))
    return [Grid(tuple(rows)), *(Text(line) for line in _doubts(view, output))]


def _ml(value: float) -> str:
    return _("{ml} ml").format(ml=ml_spray(value))


def _doubts(view: SprayerView, output: PumpOutput) -> list[str]:
    lines = []
    missing = _RUNS_WANTED - len(output.runs_ml)
    if missing > 0:
        lines.append(
            ngettext(
                "{count} more run and you can trust the interval.",
                "{count} more runs and you can trust the interval.",
                missing,
            ).format(count=missing)
        )
    if output.drift_share is not None:
        lines.append(_drift(output))
    if output.scale_too_coarse:
        lines.append(_coarse(view, output))
    if view.evenness is not None:
        lines.append(_(_EVENNESS[view.evenness]))
    return lines


def _drift(output: PumpOutput) -> str:
    percent = show_number(round(100 * abs(output.drift_share or 0.0)))
    if (output.drift_share or 0.0) < 0:
        text = _(
            "Each run gives less than the one before, {percent} % less by the last: is the nozzle clogging?"
        )
    else:
        text = _("Each run gives more than the one before, {percent} % more by the last: was it primed?")
    return text.format(percent=percent)


def _coarse(view: SprayerView, output: PumpOutput) -> str:
    run = view.runs[-1]
    density = float((run.before_g - run.after_g) / (run.sprays * run.ml_per_spray))
    step = max(one.step_g for one in view.runs)
    sprays = sprays_to_weigh(output.ml_per_spray, density, float(step))
    percent = Fraction(str(round(output.scale_error_percent or 0.0, 1)))
    return _("Your scale's last figure is {percent} % of a run. Weigh {sprays} sprays a run instead.").format(
        percent=show_number(percent, 1), sprays=show_number(sprays)
    )


def used_for(view: SprayerView) -> str:
    """Return the uses of this sprayer in calculations."""
    names = ", ".join(view.formulas)
    if view.for_all and names:
        return _("Used for {names} and for every formula without a sprayer of its own.").format(names=names)
    if view.for_all:
        return _("Used for every formula without a sprayer of its own.")
    if names:
        return _("Used for {names}.").format(names=names)
    return _("Not in use yet.")


def run_lines(view: SprayerView) -> str:
    """Return the latest runs, one a line."""
    return "\n".join(_run_line(run) for run in view.runs[-_MOST_RUNS:])


def _run_line(run: RunView) -> str:
    text = _("{day}: {before} - {after} g, {sprays} sprays: {ml} ml ({who})").format(
        day=show_day(local(run.at).date()),
        before=show_number(run.before_g, 3),
        after=show_number(run.after_g, 3),
        sprays=show_number(run.sprays),
        ml=ml_spray(run.ml_per_spray),
        who=run.by,
    )
    return _("{run}, priming: not counted").format(run=text) if run.priming else text
