"""Sprayers: weigh one, show its output, and assign it to formulas."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import datetime
from fractions import Fraction
from itertools import pairwise

from bot.trade.formulas.ingredient_names.reading import plain_name
from bot.trade.liquids.ethanol import water_density_g_per_ml
from bot.trade.spray.sprayers import Evenness, PumpOutput, Weighing
from bot.work.context import Context, Role
from bot.work.errors import BadValueError, NotAllowedError, NotThereError
from bot.work.formulas import formulas, ingredients
from bot.work.formulas.spray_output import evenness_of, output_of, reckoned_ml, runs_of
from bot.work.people import bars
from bot.work.spray import dose
from bot.work.standing import Details, Value
from storage.tables import Formula, FormulaSprayer, Member, Sprayer, SprayerRun

_MOST_RUNS_AT_ONCE = 30


@dataclass(frozen=True, slots=True)
class RunView:
    """One weighing: g before and after and the scale's step, sprays, mL per spray, and its contents.

    `formula` is None for water.
    """

    id: int
    before_g: Fraction
    after_g: Fraction
    step_g: Fraction
    sprays: int
    ml_per_spray: Fraction
    priming: bool
    formula: str | None
    at: datetime
    by: str


@dataclass(frozen=True, slots=True)
class SprayerView:
    """A sprayer with its weighings. `spray_ml` is the range to compute with, None if not weighed.

    `formulas` are the names assigned to it; `for_all` means that it also applies to every other formula.
    """

    id: int
    name: str
    runs: tuple[RunView, ...]
    output: PumpOutput | None
    spray_ml: tuple[Fraction, Fraction] | None
    evenness: Evenness | None
    formulas: tuple[str, ...]
    for_all: bool

    @property
    def inside(self) -> str | None:
        """Its contents at the last weighing: a formula's name, or None for water."""
        return self.runs[-1].formula if self.runs else None


@dataclass(frozen=True, slots=True)
class Weighed:
    """The new runs, and the updated sprayer."""

    sprayer: SprayerView
    added: int


def listed(context: Context) -> list[SprayerView]:
    """Return the active sprayers, by name."""
    rows = context.book.all(Sprayer, Sprayer.archived_at.is_(None), order=Sprayer.match_key)
    return [_view(context, row) for row in rows]


def get(context: Context, sprayer_id: int) -> SprayerView:
    """Return a sprayer by number. Raises NotThereError."""
    row = context.book.get(Sprayer, sprayer_id)
    if row is None:
        raise NotThereError("sprayer", str(sprayer_id))
    return _view(context, row)


def _view(context: Context, row: Sprayer) -> SprayerView:
    runs = runs_of(context, row.id)
    output = output_of(runs)
    members = context.book.session.execute(context.book.rows(Member, Member.person_id, Member.name))
    names: dict[int, str] = {one.person_id: one.name for one in members}
    query = (
        context.book.rows(Formula, Formula.id, Formula.name, FormulaSprayer.sprayer_id)
        .outerjoin(
            FormulaSprayer,
            (FormulaSprayer.bar_id == Formula.bar_id) & (FormulaSprayer.formula_id == Formula.id),
        )
        .order_by(Formula.match_key)
    )
    known = context.book.session.execute(query).all()
    called = {one.id: one.name for one in known}
    return SprayerView(
        row.id,
        row.name,
        tuple(_run(run, called, names) for run in runs),
        output,
        None if output is None else reckoned_ml(output),
        evenness_of(runs),
        tuple(one.name for one in known if one.sprayer_id == row.id),
        context.bar.settings.sprayer == row.id,
    )


def _run(run: SprayerRun, formulas_: dict[int, str], people: dict[int, str]) -> RunView:
    ml = (run.before_g - run.after_g) / (run.sprays * run.density_g_per_ml)
    inside = None if run.formula_id is None else formulas_.get(run.formula_id, "?")
    return RunView(
        run.id,
        run.before_g,
        run.after_g,
        run.step_g,
        run.sprays,
        ml,
        run.priming,
        inside,
        run.at,
        people.get(run.by, "?"),
    )


def add(context: Context, name: str) -> SprayerView:
    """Add a sprayer, or return the existing one of that name. Raises BadValueError for an empty name."""
    clean = ingredients.clean_name(name, "sprayer name")
    row = context.book.one(Sprayer, Sprayer.match_key == plain_name(clean))
    if row is None:
        row = context.book.add(Sprayer(name=clean, match_key=plain_name(clean), made_at=context.now))
        context.log("sprayer", sprayer=row.id, name=clean)
    row.archived_at = None
    context.book.touched()
    return _view(context, row)


def weigh(
    context: Context,
    sprayer_id: int,
    masses_g: Sequence[Fraction],
    sprays: int,
    step_g: Fraction,
    formula_id: int | None,
    priming: bool = False,
) -> Weighed:
    """Add one run for each two consecutive masses, with `sprays` sprays between them.

    The mix's density at the bar's temperature is stored with the run; `formula_id` None means water. Raises
    NotThereError, BadValueError, OutOfRangeError when the bottle did not get lighter, and the errors of
    doses.density_of_mix.
    """
    row = context.book.get(Sprayer, sprayer_id)
    if row is None:
        raise NotThereError("sprayer", str(sprayer_id))
    runs = list(pairwise(masses_g))
    if not 0 < len(runs) <= _MOST_RUNS_AT_ONCE:
        raise BadValueError("number of weighings", str(len(masses_g)))
    for before, after in runs:
        Weighing(float(before), float(after), sprays, priming)  # rejects an impossible run
    density = _density(context, formula_id)
    ids = [
        context.book.add(
            SprayerRun(
                sprayer_id=sprayer_id,
                formula_id=formula_id,
                before_g=before,
                after_g=after,
                step_g=step_g,
                sprays=sprays,
                density_g_per_ml=density,
                priming=priming,
                at=context.now,
                by=context.person_id,
            )
        ).id
        for before, after in runs
    ]
    context.log("weighing", sprayer=sprayer_id, name=row.name, runs=ids)
    context.book.touched()
    return Weighed(_view(context, row), len(ids))


def _density(context: Context, formula_id: int | None) -> Fraction:
    temperature = context.bar.temperature_c
    if formula_id is None:
        value = water_density_g_per_ml(temperature)
    else:
        value = dose.density_of_mix(formulas.get(context, formula_id), temperature)
    return Fraction(str(round(value, 5)))


def use(context: Context, sprayer_id: int | None, formula_id: int | None) -> None:
    """Assign a sprayer to a formula, or with `formula_id` None to all without one; None unassigns.

    Raises NotAllowedError for a plain member, or NotThereError.
    """
    if not context.role.manages:
        raise NotAllowedError(Role.MANAGER)
    if sprayer_id is not None:
        get(context, sprayer_id)
    if formula_id is None:
        bars.change(context, sprayer=sprayer_id or 0)
        return
    name = formulas.get(context, formula_id).name
    before = _set_for(context, formula_id, sprayer_id)
    context.log("use sprayer", formula=formula_id, name=name, before=before, after=sprayer_id)
    context.book.touched()


def _set_for(context: Context, formula_id: int, sprayer_id: int | None) -> int | None:
    row = context.book.get(FormulaSprayer, formula_id)
    before = None if row is None else row.sprayer_id
    if row is not None and sprayer_id is None:
        context.book.session.delete(row)
        context.book.session.flush()
    elif row is not None and sprayer_id is not None:
        row.sprayer_id = sprayer_id
    elif sprayer_id is not None:
        context.book.add(FormulaSprayer(formula_id=formula_id, sprayer_id=sprayer_id))
    return before


def retire(context: Context, sprayer_id: int) -> str:
    """Retire a sprayer; return its name. Its formulas use the bar's spray size again.

    Raises NotThereError.
    """
    row = context.book.get(Sprayer, sprayer_id)
    if row is None:
        raise NotThereError("sprayer", str(sprayer_id))
    row.archived_at = context.now
    context.log("retire sprayer", sprayer=sprayer_id, name=row.name)
    context.book.touched()
    return row.name


def take_back_weighing(context: Context, details: Details) -> Details:
    """Undo weighings: mark them as undone."""
    return _mark(context, details, undone=True)


def put_back_weighing(context: Context, details: Details) -> Details:
    """Restore undone weighings."""
    return _mark(context, details, undone=False)


def _mark(context: Context, details: Details, undone: bool) -> Details:
    for number in details["runs"]:
        row = context.book.get(SprayerRun, number)
        if row is not None:
            row.undone_at = context.now if undone else None
    context.book.touched()
    return {}


def _read_use(context: Context, details: Details) -> int | None:
    row = context.book.get(FormulaSprayer, details["formula"])
    return None if row is None else row.sprayer_id


def _write_use(context: Context, details: Details, sprayer_id: int | None) -> None:
    _set_for(context, details["formula"], sprayer_id)
    context.book.touched()


USE = Value(_read_use, _write_use)
