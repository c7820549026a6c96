"""Peeled fruit: storage limits, use, and juice yield."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date, datetime, timedelta
from decimal import Decimal
from fractions import Fraction

from sqlalchemy import func, select

from bot.trade.days import business_day, instant_of, local_time
from bot.trade.fruit.handbook import ExpectedJuice, Squeezed, expected_juice
from bot.trade.fruit.peeled import Keeping, PeeledClock, peeled_clock
from bot.trade.numbers.uncertainty import to_decimal
from bot.work.context import BarView, Context
from bot.work.errors import BadValueError, NotThereError
from bot.work.formulas.ingredients import IngredientView, get, handbook_key
from bot.work.reminders import planning
from storage.tables import Batch, Juicing, PeeledFruit, PeeledUse
from storage.types import JsonObject

MOST = 10_000
_MOST_ML = 1_000_000
_MEASUREMENTS = 60  # the number of the bar's last yield measurements to use
JUICED, BINNED, BATCH = "juiced", "binned", "batch"


@dataclass(frozen=True, slots=True)
class PeeledView:
    """Peeled fruit and the pieces left of it; `lost_at` is when they count as lost."""

    id: int
    ingredient: IngredientView
    count: Fraction
    left: Fraction
    at: datetime
    lost_at: datetime


@dataclass(frozen=True, slots=True)
class PeeledLogged:
    """A logged peeling, its time limit, and the expected juice (None if no handbook has the fruit)."""

    peeled: PeeledView
    clock: PeeledClock
    juice: ExpectedJuice | None
    entry: int


@dataclass(frozen=True, slots=True)
class JuicedView:
    """A logged juicing: pieces and mL; `usual` is the expected juice, if known."""

    ingredient: IngredientView
    count: Fraction
    volume_ml: Fraction
    from_peeled: Fraction
    usual: ExpectedJuice | None
    own: ExpectedJuice | None
    entry: int


def clock_of(bar: BarView) -> PeeledClock:
    """Return the storage limit of peeled fruit in this bar: its own hours, else common practice."""
    said = bar.settings.peeled_hours
    if said in {one.name.casefold() for one in Keeping}:
        return peeled_clock(Keeping[said.upper()])
    return peeled_clock() if not said else peeled_clock(hours=Decimal(said))


def peel(context: Context, ingredient_id: int, count: Fraction, day: date | None = None) -> PeeledLogged:
    """Log peeled fruit, and plan the reminder before it is lost. Raises BadValueError.

    Fruit of an earlier day counts as peeled at noon: the time is unknown, and noon promises no extra hours.
    """
    _check(count)
    at = context.moment(day)
    if at != context.now and day is not None:
        at = instant_of(day, 12 * 60, context.bar.zone)
    ingredient = get(context, ingredient_id)
    clock = clock_of(context.bar)
    row = context.book.add(
        PeeledFruit(
            ingredient_id=ingredient_id,
            count_milli=round(count * 1000),
            business_day=day or context.today,
            lost_at=at + _hours(clock.lost_after_hours),
            at=at,
            by=context.person_id,
        )
    )
    if row.lost_at > context.now:
        usual = max(context.now, at + _hours(clock.remind_after_hours))
        due = _before_lost(context.bar, usual, context.now, row.lost_at)
        planning.plan_peeled(context.book, row.id, ingredient.id, due, context.person_id)
    entry = context.log("peeled", peeled=row.id, name=ingredient.name)
    view = PeeledView(row.id, ingredient, count, count, row.at, row.lost_at)
    return PeeledLogged(view, clock, juice_of(context, ingredient, count), entry)


def bring_in(context: Context, ingredient_id: int, count: Fraction, at: datetime, lost_at: datetime) -> int:
    """Add fruit from a file that was peeled earlier and is still there; return its number.

    Plans the reminder if there is still time for one. Raises BadValueError.
    """
    _check(count)
    ingredient = get(context, ingredient_id)
    row = context.book.add(
        PeeledFruit(
            ingredient_id=ingredient_id,
            count_milli=round(count * 1000),
            business_day=business_day(at, context.bar.zone, context.bar.closing_minute),
            lost_at=lost_at,
            at=at,
            by=context.person_id,
        )
    )
    if lost_at > context.now:
        usual = max(context.now, at + _hours(clock_of(context.bar).remind_after_hours))
        due = min(lost_at, _before_lost(context.bar, usual, context.now, lost_at))
        planning.plan_peeled(context.book, row.id, ingredient.id, due, context.person_id)
    return row.id


def _check(count: Fraction) -> None:
    if not 0 < count <= MOST:
        raise BadValueError("amount", str(float(count)))


def _hours(hours: Decimal) -> timedelta:
    return timedelta(hours=float(hours))


def _before_lost(bar: BarView, due: datetime, now: datetime, lost_at: datetime) -> datetime:
    """Move a reminder out of the quiet hours: to their end if that is in time, else to before their start."""
    settings = bar.settings
    later = planning.past_quiet(bar, due)
    if later == due or later < lost_at:
        return later
    minute = local_time(due, bar.zone)
    into = (minute.hour * 60 + minute.minute - settings.quiet_from) % (24 * 60)
    return max(now, due - timedelta(minutes=into + 1))


def juice_of(context: Context, ingredient: IngredientView, count: Fraction) -> ExpectedJuice | None:
    """Return the expected juice of these pieces: the published yield, weighted with the bar's own."""
    key = handbook_key(ingredient.name, context.bar.language)
    if key is None:
        return None
    return expected_juice(key, to_decimal(count), measured(context, ingredient.id))


def measured(context: Context, ingredient_id: int) -> list[Squeezed]:
    """Return the bar's own yield measurements, the newest first."""
    rows = context.book.session.scalars(
        context.book.select(Juicing)
        .where(Juicing.ingredient_id == ingredient_id)
        .order_by(Juicing.id.desc())
        .limit(_MEASUREMENTS)
    ).all()
    void = {row.corrects for row in rows if row.void}
    return [
        Squeezed(Decimal(row.count_milli) / 1000, to_decimal(row.volume_ml))
        for row in rows
        if not row.void and row.id not in void
    ]


def waiting(context: Context, ingredient_id: int | None = None) -> list[PeeledView]:
    """Return the peeled fruit that is left, by time of loss."""
    book = context.book
    gone = (
        select(PeeledUse.peeled_id, func.sum(PeeledUse.count_milli).label("gone"))
        .where(PeeledUse.bar_id == book.bar_id)
        .group_by(PeeledUse.peeled_id)
        .subquery()
    )
    query = (
        book.rows(PeeledFruit, PeeledFruit, func.coalesce(gone.c.gone, 0))
        .outerjoin(gone, gone.c.peeled_id == PeeledFruit.id)
        .where(PeeledFruit.count_milli > func.coalesce(gone.c.gone, 0))
        .order_by(PeeledFruit.lost_at, PeeledFruit.id)
    )
    if ingredient_id is not None:
        query = query.where(PeeledFruit.ingredient_id == ingredient_id)
    return [
        PeeledView(
            row.id,
            get(context, row.ingredient_id),
            Fraction(row.count_milli, 1000),
            Fraction(row.count_milli - int(taken), 1000),
            row.at,
            row.lost_at,
        )
        for row, taken in book.session.execute(query)
    ]


# -- use of peeled fruit ---------------------------------------------------------------------


def settle(context: Context, ingredient_id: int, count: Fraction, what: str, **because: int) -> Fraction:
    """Take pieces from the peeled fruit, oldest first; return how many there were.

    Fruit that is gone needs no reminder.
    """
    wanted = count
    for view in waiting(context, ingredient_id):
        if wanted <= 0:
            break
        taken = min(wanted, view.left)
        wanted -= taken
        context.book.add(
            PeeledUse(
                peeled_id=view.id,
                what=what,
                count_milli=round(taken * 1000),
                at=context.now,
                by=context.person_id,
                **because,
            )
        )
        if taken == view.left:
            planning.settle_peeled(context.book, view.id, context.person_id)
    return count - wanted


def unsettle(context: Context, rows: Sequence[PeeledUse]) -> None:
    """Undo uses, each by a row of the opposite sign; the restored fruit is reminded of again."""
    for row in rows:
        if context.book.one(PeeledUse, PeeledUse.corrects == row.id) is not None:
            continue
        context.correct(row, count_milli=-row.count_milli)
        planning.revive_peeled(context.book, row.peeled_id)


def juice(
    context: Context, ingredient_id: int, count: Fraction, volume_ml: Fraction, day: date | None = None
) -> JuicedView:
    """Log the juice from fruit; peeled fruit is used first. Raises BadValueError."""
    _check(count)
    if not 0 < volume_ml <= _MOST_ML:
        raise BadValueError("volume", str(float(volume_ml)))
    ingredient = get(context, ingredient_id)
    usual = juice_of(context, ingredient, count)
    row = context.book.add(
        Juicing(
            ingredient_id=ingredient_id,
            count_milli=round(count * 1000),
            volume_ml=volume_ml,
            business_day=day or context.today,
            at=context.moment(day),
            by=context.person_id,
        )
    )
    from_peeled = settle(context, ingredient_id, count, JUICED, juicing_id=row.id)
    entry = context.log("juiced", juicing=row.id, name=ingredient.name)
    own = juice_of(context, ingredient, Fraction(1))
    return JuicedView(ingredient, count, volume_ml, from_peeled, usual, own, entry)


def into_batch(context: Context, ingredient_id: int, count: Fraction, batch_id: int) -> Fraction:
    """Log that peeled fruit went into a batch; return how many pieces there were.

    Raises BadValueError, or NotThereError without peeled fruit of this kind.
    """
    _check(count)
    ingredient = get(context, ingredient_id)
    if context.book.get(Batch, batch_id) is None:
        raise NotThereError("batch", str(batch_id))
    taken = settle(context, ingredient_id, count, BATCH, batch_id=batch_id)
    if not taken:
        raise NotThereError("peeled fruit", ingredient.name)
    rows = context.book.all(
        PeeledUse, PeeledUse.batch_id == batch_id, PeeledUse.at == context.now, PeeledUse.corrects.is_(None)
    )
    context.log("peeled in batch", rows=[row.id for row in rows], name=ingredient.name, batch=batch_id)
    return taken


def take_back(context: Context, details: JsonObject) -> None:
    """Undo a logged peeling: remove what is left of it from the list, and its reminder."""
    row = context.book.get(PeeledFruit, details["peeled"])
    if row is None:
        return
    gone = context.book.rows(PeeledUse, func.coalesce(func.sum(PeeledUse.count_milli), 0)).where(
        PeeledUse.peeled_id == row.id
    )
    left = row.count_milli - int(context.book.session.scalar(gone) or 0)
    if left > 0:
        context.book.add(
            PeeledUse(peeled_id=row.id, what="undone", count_milli=left, at=context.now, by=context.person_id)
        )
    planning.settle_peeled(context.book, row.id, context.person_id)


def take_back_juice(context: Context, details: JsonObject) -> None:
    """Undo a juicing: drop the measurement and restore the peeled fruit."""
    row = context.book.get(Juicing, details["juicing"])
    if row is None or context.book.one(Juicing, Juicing.corrects == row.id) is not None:
        return
    context.correct(row, void=True)
    unsettle(
        context, context.book.all(PeeledUse, PeeledUse.juicing_id == row.id, PeeledUse.corrects.is_(None))
    )


def take_back_batch(context: Context, details: JsonObject) -> None:
    """Undo the use of peeled fruit in a batch."""
    found = [context.book.get(PeeledUse, number) for number in details["rows"]]
    unsettle(context, [row for row in found if row is not None])


def take_back_making(context: Context, batch_id: int) -> None:
    """Undo the use by a batch that itself was undone."""
    unsettle(
        context, context.book.all(PeeledUse, PeeledUse.batch_id == batch_id, PeeledUse.corrects.is_(None))
    )


def take_back_waste(context: Context, waste_id: int) -> None:
    """Undo the use of peeled fruit by a line of waste."""
    unsettle(
        context, context.book.all(PeeledUse, PeeledUse.waste_id == waste_id, PeeledUse.corrects.is_(None))
    )
