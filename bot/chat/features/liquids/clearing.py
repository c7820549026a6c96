"""Commands for clearing, its mends, the aroma over time, and spirit substitution."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from bot.chat.dialogue.arguments import Arguments
from bot.chat.dialogue.command import Command, Wish
from bot.chat.dialogue.inputs.shared_slots import (
    FORMULA_SLOT,
    GRAMS_SLOT,
    LOSS_SLOT,
    MORE_DETAIL_SLOT,
    PICTURE_SLOT,
    SAID_TARGET_SLOT,
    TARGET_SLOT,
    SaidTarget,
)
from bot.chat.dialogue.inputs.strength import ask_strength
from bot.chat.dialogue.inputs.temperature import TEMPERATURE_SLOT, temperature_of
from bot.chat.dialogue.turn import Say, Turn
from bot.chat.features.liquids import clearing_words
from bot.chat.features.liquids.clearing_map import map_reply
from bot.chat.features.liquids.clearing_words import ESTIMATE
from bot.chat.features.liquids.spirit_substitution import SWAP_SLOT, wanted_view
from bot.chat.i18n.language import _, show_number
from bot.chat.reply.message import Block, Button, Grid, Reply, Text, reply
from bot.chat.reply.units import show_temperature
from bot.trade.liquids.clearing.mend import Band, State
from bot.trade.spray.release import Release, Stage
from bot.trade.words import N_
from bot.work.formulas import scaling
from bot.work.formulas.formulas import FormulaView
from bot.work.formulas.mixture import mix_of
from bot.work.liquids import clearing as clarity
from bot.work.liquids.clearing import ClearAnswer
from bot.work.liquids.spirit_substitution import Swapped, UnknownStrengthError

# -- clearing --------------------------------------------------------------------------------


@dataclass(frozen=True, kw_only=True)
class ClearArguments(Arguments):
    """A formula, perhaps with another spirit, and the size for the amounts of a mend."""

    formula: FormulaView
    loss: Fraction | None = None
    swap: Swapped | None = None
    target: SaidTarget | None = None
    grams: bool = False
    temperature: Fraction | None = None
    more_detail: bool = False
    picture: bool = False


def _clear(turn: Turn, arguments: ClearArguments) -> Reply:
    view = wanted_view(arguments.formula, arguments.swap)
    mix = mix_of(view)
    if not mix.has_oil:
        return reply(
            _("{name} holds no oil, so nothing in it can part.").format(name=view.name),
            _("Sugar, acid, juice and herbs may still leave a haze: the models know nothing of it."),
        )
    if mix.without_strength:
        raise Say(ask_strength(turn, mix.without_strength[0], view.name))
    if arguments.more_detail:
        return _aroma(view)
    temperature = temperature_of(turn, arguments.temperature)
    answer = clarity.answer(turn.context, view, temperature)
    if answer is None:
        raise UnknownStrengthError(view.name, view.name)
    if arguments.picture:
        return map_reply(turn, answer, temperature)
    return _worded(turn, arguments, answer, temperature)


def _worded(turn: Turn, arguments: ClearArguments, answer: ClearAnswer, temperature: float) -> Reply:
    units = turn.context.bar.units
    factor = _factor(arguments.target, answer.view)
    words = clearing_words.mends(answer, factor, units)
    lines = [
        *_withheld(answer),
        clearing_words.sightings_line(answer.seen),
        clearing_words.belief_line(answer),
        clearing_words.models_line(answer),
        clearing_words.strength_line(answer),
        clearing_words.oil_line(answer),
    ]
    blocks: list[Block] = [Text(line) for line in lines if line]
    if words:
        blocks.append(Text(_("To mend it, one of these for {what}:").format(what=_for_what(arguments))))
        blocks.append(Grid(tuple((one.what, one.amount) for one in words)))
    else:
        blocks += _without_mends(answer)
    cold = clearing_words.cold_line(temperature)
    if cold:
        blocks.append(Text(cold))
    if answer.clearing.partial:
        blocks.append(Text(_("Left out: {names}.").format(names=", ".join(answer.clearing.outside))))
    at = show_temperature(temperature, units)
    if answer.clearing.state is not State.WITHHELD:
        text = _("At {temperature}, original and Dortmund UNIFAC. {estimate}")
        blocks.append(Text(text.format(temperature=at, estimate=_(ESTIMATE))))
    return Reply(
        (Text(clearing_words.title(answer), strong=True), *blocks),
        _buttons(turn, arguments.swap is not None, answer, words),
    )


def _without_mends(answer: ClearAnswer) -> list[Block]:
    """Say what helps where the models name no change: what was seen counts more than they do."""
    worst = answer.seen.worst_last
    if answer.clearing.state is State.CLEAR:
        if worst is None:
            return []
        text = _("The models find it clear; the bottle counts more. See: why {number}")
        return [Text(text.format(number=worst.batch))]
    if answer.clearing.state is State.WITHHELD:
        return []
    return [
        Text(
            _(
                "No single change helps and keeps a quarter of the oil. Make it anew, with stronger spirit "
                "or with less oil and water."
            )
        )
    ]


def _withheld(answer: ClearAnswer) -> list[str]:
    if answer.clearing.state is not State.WITHHELD:
        return []
    share = 100 * answer.mixture.outside_ml / answer.mixture.total_ml if answer.mixture.total_ml else 100.0
    return [
        _("The models do not know {names}, {percent} % of it, so I give no answer.").format(
            names=", ".join(answer.clearing.outside), percent=show_number(Fraction(str(round(share, 1))), 1)
        ),
        _("Make a small bottle, let it rest and look: three clear looks count here."),
    ]


def _factor(target: SaidTarget | None, view: FormulaView) -> Fraction:
    """The factor of the amounts relative to the formula."""
    if target is None:
        return Fraction(1)
    from bot.trade.formulas.amounts import scale  # noqa: PLC0415 - only for a given size

    return scale(scaling.recipe_of(view), target[1], scaling.finished_share(view)).factor


def _for_what(arguments: ClearArguments) -> str:
    return arguments.words_for(TARGET_SLOT) or _("the formula as written")


def _buttons(
    turn: Turn, swapped: bool, answer: ClearAnswer, words: list[clearing_words.MendWords]
) -> tuple[tuple[Button, ...], ...]:
    view = answer.view
    rows: list[tuple[Button, ...]] = []
    if turn.context.role.manages and not swapped and view.version == view.latest:
        rows += [(one.button,) for one in words if one.button is not None]
    last = [Button(_("Scale it"), f"scale #{view.id}.{view.version}")]
    if answer.mixture.oil_ml > 0 and not swapped:
        last.append(Button(_("Aroma"), f"clear #{view.id}.{view.version} more"))
        last.append(Button(_("Map"), f"clear #{view.id}.{view.version} picture"))
    if answer.mixture.spirit_ml > 0:
        last.append(Button(_("Another spirit"), f"swap #{view.id}.{view.version}"))
    return (*rows, tuple(last))


# -- aroma -----------------------------------------------------------------------------------


def _aroma(view: FormulaView) -> Reply:
    found = clarity.release_of(view)
    if found is None:
        return reply(_("{name} holds no citrus oil, so I have no aroma to compare.").format(name=view.name))
    if not found.stages:
        return reply(
            _("{name}: aroma not known").format(name=view.name),
            _("The models do not know {names}.").format(names=", ".join(found.outside)),
        )
    rows = [
        (_("ethanol left"), _("of neat oil"), _("carrier")),
        *(
            (_share(stage), _percents(stage.pressure), _times(stage.against_carrier))
            for stage in found.stages
        ),
        (_("in a carrier oil"), _percents(found.carrier_pressure), "1×"),
    ]
    blocks: list[Block] = [Grid(tuple(rows)), Text(_meaning(found)), *_parted(found)]
    blocks.append(
        Text(
            _(
                "Limits: limonene alone, at 20 °C, by two models; how fast a film dries, other aromas and "
                "noses are not in it."
            )
        )
    )
    return Reply(
        (Text(_("{name}: aroma over the film as sprayed").format(name=view.name), strong=True), *blocks),
        ((Button(_("Will it clear?"), f"clear #{view.id}.{view.version}"),),),
    )


def _share(stage: Stage) -> str:
    return {1.0: _("all"), 0.5: _("half"), 0.1: _("a tenth")}[stage.ethanol_left]


def _ends(band: Band) -> tuple[float, float]:
    low, high = sorted((band.original or 0.0, band.dortmund or 0.0))
    return low, high


def _percents(band: Band) -> str:
    low, high = (show_number(round(100 * end), 0) for end in _ends(band))
    return f"{low} %" if low == high else f"{low}-{high} %"


def _times(band: Band) -> str:
    low, high = (show_number(Fraction(str(round(end, 1))), 1) for end in _ends(band))
    return f"{low}×" if low == high else f"{low}-{high}×"


def _meaning(found: Release) -> str:
    return _(
        "Over this spray the oil smells about {times} as strong at first as from the same share "
        "({percent} %) in a carrier oil, and {later} once nine tenths of the ethanol have left."
    ).format(
        times=_times(found.stages[0].against_carrier),
        later=_times(found.stages[-1].against_carrier),
        percent=show_number(Fraction(str(round(found.oil_percent, 1))), 1),
    )


def _parted(found: Release) -> list[Block]:
    if not any(stage.original_parted and stage.dortmund_parted for stage in found.stages[1:]):
        return []
    return [Text(_("As the ethanol leaves, drops of oil come free in the film: that is expected."))]


# -- another spirit --------------------------------------------------------------------------


COMMANDS = (
    Command(
        "clear",
        N_("will it stay clear?"),
        _clear,
        words=("will it clear", "clearing", "will it split"),
        examples=(
            N_("clear grapefruit mist"),
            N_("clear grapefruit mist more"),
            N_("clear grapefruit mist picture"),
        ),
        slots=(
            FORMULA_SLOT,
            LOSS_SLOT,
            SWAP_SLOT,
            SAID_TARGET_SLOT,
            GRAMS_SLOT,
            TEMPERATURE_SLOT,
            MORE_DETAIL_SLOT,
            PICTURE_SLOT,
        ),
        menu=13,
        wishes=(
            Wish("clear", ("{formula?} WITH {level}", "{formula?}")),
            Wish("map", ("{formula?} PICTURE",)),
        ),
    ),
)
