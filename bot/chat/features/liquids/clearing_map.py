"""The map of clearing: a ternary picture around a formula, with its mends and what the bar saw."""

from __future__ import annotations

import math
from collections.abc import Sequence
from fractions import Fraction
from typing import TYPE_CHECKING

from bot.chat.dialogue.turn import Turn
from bot.chat.features.liquids import clearing_words
from bot.chat.i18n.language import _, show_number, tongue
from bot.chat.reply.message import File, Reply, Text, reply
from bot.chat.reply.units import show_temperature
from bot.trade.formulas.kinds import IngredientKind
from bot.trade.liquids.clearing import regions as rule
from bot.trade.liquids.clearing.mend import Mend, State
from bot.trade.liquids.clearing.mixture import Mixture
from bot.trade.liquids.clearing.regions import STEPS, Regions
from bot.trade.words import N_
from bot.work.batches.batches import Clarity
from bot.work.formulas.formulas import FormulaView
from bot.work.liquids import evidence
from bot.work.liquids.clearing import ClearAnswer
from bot.work.liquids.evidence import OilLook
from storage.memory import Memory

if TYPE_CHECKING:
    from bot.documents.charts.ternary import Mark

_KINDS = {State.CLEAR: 0, State.BORDERLINE: 1, State.WILL_SPLIT: 2}
_KIND_WORDS = (N_("clear by both models"), N_("borderline: the models disagree"), N_("splits by both models"))
_MARKS = {Clarity.CLEAR: 0, Clarity.HAZY: 1, Clarity.SPLIT: 2}
_MARK_WORDS = (N_("seen clear here, by batch number"), N_("seen hazy here"), N_("seen split here"))
_ALIKE_DEGREES = 5.0  # looks further from the temperature of the map are not on it
_MOST_ARROWS, _MOST_NUMBERS = 3, 3
_ONE_PLACE = 3.0  # steps: looks closer than this share a mark
_pictures = Memory(64)


def map_reply(turn: Turn, answer: ClearAnswer, temperature: float) -> Reply:
    """Draw the map of a formula at a temperature, or say why there is none."""
    view, mixture = answer.view, answer.mixture
    if answer.clearing.state is State.WITHHELD:
        return reply(
            _("{name}: no map").format(name=view.name),
            _("The models do not know {names}.").format(names=", ".join(answer.clearing.outside)),
        )
    if mixture.oil_ml == 0:
        return reply(_("{name}: no map").format(name=view.name), _("It holds no citrus oil."))
    mends = [one for one in answer.clearing.mends if rule.on_map(one.mixture, mixture)][:_MOST_ARROWS]
    looks = _looks(turn, view, mixture, temperature)
    points = [mixture, *(one.mixture for one in mends), *(one.mixture for one in looks)]
    cut = rule.cut_for(points)
    key = (tongue(), view.name, _names(view), mixture.rounded(), tuple(mends), looks, cut, temperature)
    dark = turn.context.bar.settings.dark_pictures

    def draw() -> bytes:
        turn.context.take_time()
        found = rule.regions(mixture, cut, temperature)
        return _drawn(turn, answer, mends, looks, found, dark)

    png = _pictures.get((*key, dark), draw)
    title = _("{name}: map of clearing").format(name=view.name)
    file = File("clearing.png", png, picture=True, caption=title)
    first = Text(clearing_words.title(answer), strong=True)
    says = Text(_("By the models alone, drawn around your formula; the rested bottle decides."))
    return Reply((first, says), ((clearing_words.clear_button(view),),), files=(file,))


def _looks(turn: Turn, view: FormulaView, mixture: Mixture, temperature: float) -> tuple[OilLook, ...]:
    """Return the last look at each batch with the same oil that lies on the map."""
    oil = evidence.oil_in(view)
    found = () if oil is None else evidence.looks_at(turn.context, oil)
    near = [one for one in found if abs(one.temperature_c - temperature) <= _ALIKE_DEGREES]
    last = {(one.batch, one.mix): one for one in near if rule.on_map(one.mixture, mixture)}
    return tuple(last.values())


def _names(view: FormulaView) -> tuple[str, str, str]:
    """Return the names of oil, glycol and everything else, as the corners say them."""
    kinds = {line.ingredient.kind: line.ingredient.name for line in view.lines}
    oil = kinds.get(IngredientKind.CITRUS_OIL, _("citrus oil"))
    glycol = kinds.get(IngredientKind.PROPYLENE_GLYCOL, _("propylene glycol"))
    usual = {IngredientKind.CITRUS_OIL, IngredientKind.PROPYLENE_GLYCOL}
    rest = [line.ingredient for line in view.lines if line.ingredient.kind not in usual]
    words = [
        one.name
        if one.strength_percent is None or one.name.endswith("%")
        else f"{one.name} {show_number(one.strength_percent, 1)} %"
        for one in rest
    ]
    return oil, glycol, " + ".join(words) or _("neutral spirit")


def _drawn(
    turn: Turn,
    answer: ClearAnswer,
    mends: Sequence[Mend],
    looks: Sequence[OilLook],
    found: Regions,
    dark: bool,
) -> bytes:
    from bot.documents.charts import ternary  # noqa: PLC0415 - loads the drawing library

    percent = 100.0 * (1.0 - found.cut)
    oil, glycol, rest = _names(answer.view)
    up_to = _("up to {percent} % {name}")
    corners = (
        ternary.Corner(up_to.format(percent=round(percent), name=oil), percent),
        ternary.Corner(up_to.format(percent=round(percent), name=glycol), percent),
        ternary.Corner(rest, 100.0),
    )
    kinds = [[_KINDS[found.states[i, j]] for j in range(STEPS + 1 - i)] for i in range(STEPS + 1)]
    units = turn.context.bar.units
    words = [clearing_words.mend_words(answer, mend, Fraction(1), units) for mend in mends]
    at = show_temperature(answer.clearing.temperature_c, units)
    return ternary.ternary(
        _("{name}: map of clearing").format(name=answer.view.name),
        _("% of the volume poured, at {temperature}").format(temperature=at),
        ternary.Triangle(kinds, corners),
        [_(one) for one in _KIND_WORDS],
        (found.place(answer.mixture), _("your formula")),
        [
            (found.place(mend.mixture), f"{one.what}: {one.amount}")
            for mend, one in zip(mends, words, strict=True)
        ],
        _marks(found, looks),
        [_(one) for one in _MARK_WORDS],
        dark=dark,
    ).png()


def _marks(found: Regions, looks: Sequence[OilLook]) -> list[Mark]:
    """Return a mark for each place and look, with the numbers of the batches."""
    from bot.documents.charts import ternary  # noqa: PLC0415 - loads the drawing library

    groups: list[tuple[tuple[float, float], Clarity, list[int]]] = []
    for one in looks:
        place = found.place(one.mixture)
        near = (group for group in groups if math.dist(group[0], place) < _ONE_PLACE)
        group = next((group for group in near if group[1] is one.clarity), None)
        if group is None:
            group = (place, one.clarity, [])
            groups.append(group)
        group[2].append(one.batch)
    return [ternary.Mark(place, _MARKS[seen], _numbers_words(batches)) for place, seen, batches in groups]


def _numbers_words(batches: Sequence[int]) -> str:
    shown = ", ".join(str(one) for one in batches[-_MOST_NUMBERS:])
    return shown if len(batches) <= _MOST_NUMBERS else f"… {shown}"
