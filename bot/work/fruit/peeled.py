"""Peeled fruit: storage limits, use, and juice yield."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date, datetime, timedelta
from decimal import Decimal
from fractions import Fraction

from sqlalchemy import ColumnElement, func, select

from bot.trade.days import instant_of, local_time
from bot.trade.fruit.handbook import ExpectedJuice, Squeezed, expected_juice
from bot.trade.fruit.peeled import Keeping, PeeledClock, peeled_clock
from bot.trade.numbers.uncertainty import to_decimal
from bot.work import standing
from bot.work.context import BarView, Context
from bot.work.errors import BadValueError, NotThereError, UsedSinceError
from bot.work.formulas.ingredients import IngredientView, get, handbook_key
from bot.work.reminders import planning
from bot.work.standing import Details, stands
from storage.tables import Batch, Juicing, PeeledFruit, PeeledUse
from storage.types import exact_text

MOST = 10_000
_MOST_ML = 1_000_000
_MEASUREMENTS = 60  # the number of the bar's last yield measurements to use
JUICED, BINNED, BATCH, UNDONE = "juiced", "binned", "batch", "undone"
# The kind of row that a use belongs to; '' for none.
CAUSES = {JUICED: "juicing", BINNED: "waste", BATCH: "batch", UNDONE: ""}


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
    entry = context.log("peeled", peeled=row.id, name=ingredient.name, amount=exact_text(count))
    view = PeeledView(row.id, ingredient, count, count, row.at, row.lost_at)
    return PeeledLogged(view, clock, juice_of(context, ingredient, count), entry)


def bring_in(context: Context, row: PeeledFruit, uses: Sequence[PeeledUse]) -> int:
    """Add fruit from a file that was peeled earlier, with its uses; return its number.

    Plans the reminder if something is left and there is still time for one. Raises BadValueError.
    """
    left = row.count_milli - sum(one.count_milli for one in uses)
    _check(Fraction(row.count_milli, 1000))
    if left < 0:
        raise BadValueError("amount", str(left / 1000))
    context.book.add(row)
    for one in uses:
        one.peeled_id = row.id
    context.book.add_all(uses)
    if left and row.lost_at > context.now:
        usual = max(context.now, row.at + _hours(clock_of(context.bar).remind_after_hours))
        due = min(row.lost_at, _before_lost(context.bar, usual, context.now, row.lost_at))
        planning.plan_peeled(context.book, row.id, row.ingredient_id, due, context.person_id)
    return row.id


def _check(count: Fraction) -> None:
    if not standing.LEAST <= count <= MOST:
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
        .where(Juicing.ingredient_id == ingredient_id, stands(Juicing))
        .order_by(Juicing.first.desc())
        .limit(_MEASUREMENTS)
    ).all()
    return [Squeezed(Decimal(row.count_milli) / 1000, to_decimal(row.volume_ml)) for row in rows]


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


def settled(context: Context, ingredient_id: int, first: date, last: date, *what: str) -> Fraction:
    """Return the pieces peeled in these days that ended as one of `what`."""
    query = (
        context.book.rows(PeeledUse, func.coalesce(func.sum(PeeledUse.count_milli), 0))
        .join(PeeledFruit, (PeeledFruit.bar_id == PeeledUse.bar_id) & (PeeledFruit.id == PeeledUse.peeled_id))
        .where(
            PeeledFruit.ingredient_id == ingredient_id,
            PeeledFruit.business_day.between(first, last),
            PeeledUse.what.in_(what),
        )
    )
    return Fraction(int(context.book.session.scalar(query) or 0), 1000)


# -- use of peeled fruit ---------------------------------------------------------------------


def settle(context: Context, ingredient_id: int, count: Fraction, what: str, **because: int) -> Fraction:
    """Take pieces from the peeled fruit, oldest first; return how many there were.

    Fruit that is gone needs no reminder.
    """
    wanted = count
    for view in waiting(context, ingredient_id):
        if wanted < standing.LEAST:
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


def unsettle(context: Context, *where: ColumnElement[bool]) -> list[PeeledUse]:
    """Undo uses, each by a row of the opposite sign, and revive the reminders. Return the uses."""
    rows = context.book.all(PeeledUse, *where, stands(PeeledUse), order=PeeledUse.id)
    for row in rows:
        standing.reverse(context, row)
        planning.revive_peeled(context.book, row.peeled_id)
    return list(rows)


def settle_again(context: Context, numbers: Sequence[int]) -> list[int]:
    """Restore undone uses; return the numbers of the new rows.

    Raises UsedSinceError if the fruit is no longer there.
    """
    again = []
    for number in numbers:
        row = context.book.get(PeeledUse, number)
        if row is None:
            continue
        left = {view.id: view for view in waiting(context)}.get(row.peeled_id)
        count = Fraction(row.count_milli, 1000)
        if left is None or left.left < count:
            raise used_since(context, row.peeled_id)
        restored = standing.restore(context, row)
        if restored is None:
            continue
        again.append(restored.id)
        if left.left == count:
            planning.settle_peeled(context.book, row.peeled_id, context.person_id)
    return again


def used_since(context: Context, peeled_id: int) -> UsedSinceError:
    """Return the error that names the use of peeled fruit."""
    uses = context.book.all(PeeledUse, PeeledUse.peeled_id == peeled_id, stands(PeeledUse))
    count = sum((Fraction(one.count_milli, 1000) for one in uses), Fraction(0))
    row = context.book.get(PeeledFruit, peeled_id)
    name = "" if row is None else get(context, row.ingredient_id).name
    return UsedSinceError(uses[-1].what if uses else UNDONE, name, count)


def juice(
    context: Context, ingredient_id: int, count: Fraction, volume_ml: Fraction, day: date | None = None
) -> JuicedView:
    """Log the juice from fruit; peeled fruit is used first. Raises BadValueError."""
    _check(count)
    if not 0 < volume_ml <= _MOST_ML:
        raise BadValueError("volume", str(float(volume_ml)))
    ingredient = get(context, ingredient_id)
    usual = juice_of(context, ingredient, count)
    row = context.add(
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
    amounts: Details = {"amount": exact_text(count), "volume_ml": exact_text(volume_ml)}
    entry = context.log("juiced", juicing=row.id, name=ingredient.name, **amounts)
    own = juice_of(context, ingredient, Fraction(1))
    return JuicedView(ingredient, count, volume_ml, from_peeled, usual, own, entry)


def into_batch(context: Context, ingredient_id: int, count: Fraction, batch_id: int) -> Fraction:
    """Log that peeled fruit went into a batch; return how many pieces there were.

    Raises BadValueError, or NotThereError without peeled fruit of this kind.
    """
    _check(count)
    ingredient = get(context, ingredient_id)
    batch = context.book.get(Batch, batch_id)
    if batch is None or batch.state == UNDONE:
        raise NotThereError("batch", str(batch_id))
    last = context.book.session.scalar(context.book.rows(PeeledUse, func.max(PeeledUse.id))) or 0
    taken = settle(context, ingredient_id, count, BATCH, batch_id=batch_id)
    if not taken:
        raise NotThereError("peeled fruit", ingredient.name)
    rows = context.book.all(PeeledUse, PeeledUse.id > last, PeeledUse.batch_id == batch_id)
    uses = [row.id for row in rows]
    context.log("peeled in batch", rows=uses, name=ingredient.name, batch=batch_id, amount=exact_text(taken))
    return taken


def uses_of(context: Context) -> dict[int, list[PeeledUse]]:
    """Return the valid uses of all peeled fruit, by its number."""
    found: dict[int, list[PeeledUse]] = {}
    for row in context.book.all(PeeledUse, stands(PeeledUse), order=PeeledUse.first):
        found.setdefault(row.peeled_id, []).append(row)
    return found


def drop_imported(context: Context, peeled_id: int) -> None:
    """Remove peeled fruit of a file from the list, with the uses that nothing else in the bar explains."""
    nothing = (column.is_(None) for column in (PeeledUse.waste_id, PeeledUse.juicing_id, PeeledUse.batch_id))
    unsettle(context, PeeledUse.peeled_id == peeled_id, PeeledUse.what != UNDONE, *nothing)
    drop(context, peeled_id)


def drop(context: Context, peeled_id: int) -> None:
    """Remove the rest of some peeled fruit from the list; its uses stay."""
    for view in waiting(context):
        if view.id == peeled_id:
            context.book.add(
                PeeledUse(
                    peeled_id=view.id,
                    what=UNDONE,
                    count_milli=round(view.left * 1000),
                    at=view.at,
                    by=context.person_id,
                )
            )
            planning.settle_peeled(context.book, view.id, context.person_id)


def take_back_making(context: Context, batch_id: int) -> list[int]:
    """Undo the use by a batch that itself was undone; return the numbers of the uses."""
    return [row.id for row in unsettle(context, PeeledUse.batch_id == batch_id)]


def take_back_waste(context: Context, waste_id: int) -> None:
    """Undo the use of peeled fruit by a line of waste."""
    unsettle(context, PeeledUse.waste_id == waste_id)


def take_back_juicing(context: Context, juicing_id: int) -> None:
    """Undo the use of peeled fruit by a juicing."""
    unsettle(context, PeeledUse.juicing_id == juicing_id)
