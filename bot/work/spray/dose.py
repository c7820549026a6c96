"""Dose of a sprayed or dosed drink, compared with the limits of the bar's jurisdiction."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction

from bot.trade.formulas.kinds import IngredientKind
from bot.trade.numbers.ranges import Range
from bot.trade.safety.held_substances import HeldSubstance, held_in
from bot.trade.safety.jurisdiction import Jurisdiction
from bot.trade.safety.limits import LimitKind, Part, has_composition_limit, limits_for
from bot.trade.spray import dose as rules
from bot.trade.spray.dose import (
    GLYCOL_DENSITY_G_PER_ML,
    OIL_DENSITY_G_PER_ML,
    LimitState,
    PartDose,
    Serving,
    Verdict,
)
from bot.work.context import Context
from bot.work.errors import WorkError
from bot.work.formulas.formulas import FormulaView
from bot.work.formulas.mixture import Mix, Poured, mix_of
from bot.work.liquids.spirit_substitution import UnknownStrengthError

_ORDER = (LimitState.UNDER, LimitState.NEAR, LimitState.OVER)


@dataclass
class NothingToDoseError(WorkError):
    """A formula contains neither oil, glycol nor alcohol, so it has no dose."""

    name: str


@dataclass(frozen=True, slots=True)
class DoseQuestion:
    """How a drink is served: its volume in mL without the spray, drinks per evening, and dosing.

    `sprays` per drink (low, high), or `taken_ml` if it is measured in rather than sprayed. `body_weight_kg`
    is for daily intakes; `alcoholic` says whether the drink itself contains alcohol. `beside` are other
    preparations in the same drink, each with its mL.
    """

    drink_ml: Fraction
    drinks: int = 1
    sprays: tuple[Fraction, Fraction] | None = None
    taken_ml: Fraction | None = None
    body_weight_kg: Fraction | None = None
    alcoholic: bool = True
    beside: tuple[tuple[FormulaView, Fraction], ...] = ()


@dataclass(frozen=True, slots=True)
class DoseAnswer:
    """The dose of each part and the verdict on each limit; `guessed_density` names those weighed as water.

    `held` are substances of the ingredients whose amount nobody can compute.
    """

    view: FormulaView
    question: DoseQuestion
    serving: Serving
    doses: Mapping[Part, PartDose]
    verdicts: tuple[Verdict, ...]
    has_composition_limit: bool
    guessed_density: tuple[str, ...]
    held: tuple[HeldSubstance, ...] = ()

    @property
    def parts(self) -> tuple[PartDose, ...]:
        """The parts contained in the mix."""
        return tuple(one for one in self.doses.values() if one.mg_per_drink.high > 0)

    @property
    def worst(self) -> LimitState | None:
        """The worst state of all verdicts, None without any."""
        return max((one.state for one in self.verdicts), key=_ORDER.index, default=None)


def answer(context: Context, view: FormulaView, question: DoseQuestion) -> DoseAnswer:
    """Compute a dose. Raises UnknownStrengthError, NothingToDoseError, and those of the trade rule."""
    mixed, guessed = mix_shares(view)
    if question.taken_ml is not None:
        sprays, spray = Range(1.0, 1.0), Range.exactly(float(question.taken_ml))
    else:
        low, high = question.sprays or view.sprays or (Fraction(1), Fraction(1))
        sprays = Range(float(low), float(high))
        spray = Range(float(view.spray_ml[0]), float(view.spray_ml[1]))
    shares = [(*mix_shares(one), float(ml)) for one, ml in question.beside]
    guessed = (*guessed, *(name for _, names, _ in shares for name in names))
    drink = Range.exactly(float(question.drink_ml))
    others = [(mix, ml) for mix, _, ml in shares]
    served = rules.serving(sprays, spray, drink, question.drinks, others=others)
    jurisdiction = Jurisdiction(context.bar.jurisdiction)
    weight = rules.ADULT_BODY_WEIGHT_KG if question.body_weight_kg is None else float(question.body_weight_kg)
    limits = [
        one
        for one in limits_for(jurisdiction, alcoholic=question.alcoholic)
        if mixed.share(one.part) > 0 or served.beside.of(one.part) > 0
    ]
    return DoseAnswer(
        view,
        question,
        served,
        rules.dose(mixed, served),
        tuple(rules.judge(mixed, served, limits, weight)),
        has_composition_limit(jurisdiction),
        guessed,
        tuple(
            held_in(
                line.ingredient.name
                for one in (view, *(v for v, _ml in question.beside))
                for line in one.lines
            )
        ),
    )


def composition(answer_: DoseAnswer) -> list[Verdict]:
    """Return the verdicts on the composition limits."""
    return [one for one in answer_.verdicts if one.limit.kind is LimitKind.COMPOSITION]


def mix_shares(view: FormulaView) -> tuple[rules.Mix, tuple[str, ...]]:
    """Return the composition of one millilitre of a formula, and the names with a guessed density.

    Raises UnknownStrengthError or NothingToDoseError.
    """
    mix = mix_of(view)
    if mix.without_strength:
        raise UnknownStrengthError(mix.without_strength[0], view.name)
    strength = mix.strength
    if strength is None or strength.volume_ml <= 0:
        raise NothingToDoseError(view.name)
    oils = [one for one in mix.poured if one.is_oil]
    glycols = [one for one in mix.poured if one.kind is IngredientKind.PROPYLENE_GLYCOL]
    oil_ml, glycol_ml = _volume(oils), _volume(glycols)
    if oil_ml == glycol_ml == strength.ethanol_ml == 0:
        raise NothingToDoseError(view.name)
    grams, guessed = weight(mix)
    return (
        rules.Mix(
            oil_share=oil_ml / strength.volume_ml,
            glycol_share=glycol_ml / strength.volume_ml,
            ethanol_share=strength.ethanol_ml / strength.volume_ml,
            density_g_per_ml=grams / strength.volume_ml,
            oil_density_g_per_ml=_density(oils, OIL_DENSITY_G_PER_ML),
            glycol_density_g_per_ml=_density(glycols, GLYCOL_DENSITY_G_PER_ML),
        ),
        guessed,
    )


def weight(mix: Mix, temperature_c: float = 20.0) -> tuple[float, tuple[str, ...]]:
    """Return the mass of a mix in g, and the names of liquids weighed as water."""
    grams = 0.0
    guessed = []
    for one in mix.poured:
        volume = one.volume_ml
        if volume is None:
            continue
        density = one.density(temperature_c)
        if density is None:
            guessed.append(one.name)
            density = 1.0
        grams += volume * density
    return grams, tuple(guessed)


def density_of_mix(view: FormulaView, temperature_c: float = 20.0) -> float:
    """Return g/mL of a finished formula. Raises UnknownStrengthError or NothingToDoseError."""
    mix = mix_of(view)
    if mix.without_strength:
        raise UnknownStrengthError(mix.without_strength[0], view.name)
    strength = mix.strength
    if strength is None or strength.volume_ml <= 0:
        raise NothingToDoseError(view.name)
    return weight(mix, temperature_c)[0] / strength.volume_ml


def _volume(parts: list[Poured]) -> float:
    return sum(one.volume_ml or 0.0 for one in parts)


def _density(parts: list[Poured], default: float) -> float:
    """Return the density of several ingredients together, g/mL; the default if there are none."""
    volume = _volume(parts)
    if not volume:
        return default
    return sum((one.volume_ml or 0.0) * (one.density(20.0) or default) for one in parts) / volume
