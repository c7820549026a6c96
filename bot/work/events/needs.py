"""The need of each preparation of an event: by its sprays, or by what earlier events of the bar used."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date
from fractions import Fraction
from typing import NamedTuple

from bot.trade.events import amounts
from bot.trade.events.amounts import Need
from bot.trade.formulas.measures import Quantity, to_ml
from bot.work.context import Context
from bot.work.formulas import formulas
from bot.work.formulas.formulas import FormulaView
from bot.work.menu import menu
from storage.tables import Event

# The bottles that go along: for a sprayed preparation and for any other. Common practice, no source.
_METRIC_BOTTLES = (Fraction(50), Fraction(500))  # mL
_OUNCE_BOTTLES = (Fraction(2), Fraction(16))  # fluid ounces of the bar


@dataclass(frozen=True, slots=True)
class Asked:
    """An event as asked: the day, guests, drinks for each, and the formulas or drinks of the list."""

    day: date
    guests: int
    each: Fraction
    formulas: tuple[int, ...]
    drinks: tuple[int, ...]

    @property
    def in_all(self) -> Fraction:
        """The drinks expected in all."""
        return self.guests * self.each

    @property
    def subjects(self) -> int:
        """How many formulas and drinks share them."""
        return len(self.formulas) + len(self.drinks)


@dataclass(frozen=True, slots=True)
class Part:
    """One preparation of an event: its need, what to take along, and the latest days to make it.

    `drinks` are those expected with it. `plain` is the need by the sprays alone. `learned_from` counts the
    earlier events behind `need`, and `ran_out` those of them from which nothing came back. `make_by` leaves
    time for a second try, `start_by` does not.
    """

    formula: FormulaView
    drinks: Fraction
    need: Need
    plain: Need
    learned_from: int
    ran_out: int
    bottles: int
    bottle_ml: Fraction
    sprayers: int
    make_by: date
    start_by: date

    @property
    def take_ml(self) -> Fraction:
        """The mL to take along, in whole bottles."""
        return self.bottles * self.bottle_ml


def asked_of(row: Event) -> Asked:
    """Return what was asked of an event."""
    said = row.plan
    return Asked(
        row.day, said["guests"], Fraction(said["each"]), tuple(said["formulas"]), tuple(said["drinks"])
    )


def parts(context: Context, asked: Asked, earlier: Sequence[Event]) -> tuple[Part, ...]:
    """Share the drinks among the subjects evenly, and add up the need of each formula."""
    subjects = asked.subjects
    used = _used(context, earlier)
    return tuple(
        _part(
            context,
            asked,
            view,
            _Drinks(asked.in_all / subjects, subjects > 1, servings),
            used.get(view.id, []),
        )
        for view, servings in _served(context, asked).values()
    )


class _Serving(NamedTuple):
    """The sprays of a preparation in one drink and the mL of a spray, each low and high."""

    sprays: tuple[float, float]
    spray_ml: tuple[float, float]


@dataclass(frozen=True, slots=True)
class _Drinks:
    """The drinks of each subject with a formula, and its servings in them."""

    each: Fraction
    shared: bool
    servings: list[_Serving]

    @property
    def in_all(self) -> Fraction:
        return self.each * len(self.servings)


def _served(context: Context, asked: Asked) -> dict[int, tuple[FormulaView, list[_Serving]]]:
    """Return each formula with its serving in every subject that holds it."""
    one = (Fraction(1), Fraction(1))
    found: dict[int, tuple[FormulaView, list[_Serving]]] = {}
    for number in asked.formulas:
        view = formulas.get(context, number)
        serving = _Serving(_floats(view.sprays or one), _floats(view.spray_ml))
        found.setdefault(view.id, (view, []))[1].append(serving)
    for number in asked.drinks:
        for line in menu.get(context, number).lines:
            ml = Fraction(1) if line.ml is None else line.ml
            size = line.formula.spray_ml if line.sprays is not None else (ml, ml)
            serving = _Serving(_floats(line.sprays or one), _floats(size))
            found.setdefault(line.formula.id, (line.formula, []))[1].append(serving)
    return found


def _floats(ends: tuple[Fraction, Fraction]) -> tuple[float, float]:
    return float(ends[0]), float(ends[1])


def _part(context: Context, asked: Asked, view: FormulaView, drinks: _Drinks, used: list[_Used]) -> Part:
    loss = float(Fraction(context.bar.settings.loss_percent)) / 100
    needs = [
        amounts.need(float(drinks.each), drinks.shared, one.sprays, one.spray_ml, loss)
        for one in drinks.servings
    ]
    plain = Need(sum(one.likely_ml for one in needs), sum(one.enough_ml for one in needs))
    ran_out = sum(one.all_of_it for one in used)
    need = plain
    if used:
        need = amounts.learned_need(float(drinks.in_all), drinks.shared, [one.ml_a_drink for one in used])
        if ran_out and need.enough_ml < plain.enough_ml:
            need = plain  # more might have been used
    bottle = _bottle_ml(context.bar.units, sprayed=view.sprays is not None)
    count = max(1, math.ceil(need.enough_ml / float(bottle)))
    sprayers = min(count, amounts.sprayers(asked.guests)) if view.sprays is not None else 0
    make_by, start_by = (amounts.latest_to_make(asked.day, float(view.rest_hours), tries) for tries in (2, 1))
    return Part(
        view, drinks.in_all, need, plain, len(used), ran_out, count, bottle, sprayers, make_by, start_by
    )


def _bottle_ml(units: str, sprayed: bool) -> Fraction:
    if units == "metric":
        return _METRIC_BOTTLES[not sprayed]
    return to_ml(Quantity(_OUNCE_BOTTLES[not sprayed], f"{units}_fluid_ounce"))


# -- earlier events -------------------------------------------------------------------------------


@dataclass(frozen=True, slots=True)
class _Used:
    """The use of an earlier event for each expected drink; `all_of_it` means that nothing came back."""

    ml_a_drink: float
    all_of_it: bool


def _used(context: Context, earlier: Sequence[Event]) -> dict[int, list[_Used]]:
    """Return what earlier events used, by formula."""
    found: dict[int, list[_Used]] = {}
    for row in earlier:
        asked, taken = asked_of(row), row.plan.get("taken", {})
        served = _served(context, asked)
        for number, back in (row.back or {}).items():
            used = Fraction(taken.get(number, "0")) - Fraction(back)
            if used > 0 and int(number) in served:
                drinks = float(asked.in_all) / asked.subjects * len(served[int(number)][1])
                found.setdefault(int(number), []).append(_Used(float(used) / drinks, Fraction(back) == 0))
    return found
