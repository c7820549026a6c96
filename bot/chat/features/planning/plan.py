"""The command plan: the next batches, their shopping list, and fresh fruit for each morning."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date, timedelta
from fractions import Fraction

from bot.chat.dialogue.arguments import Arguments
from bot.chat.dialogue.command import Command, Wish
from bot.chat.dialogue.examples import example_of
from bot.chat.dialogue.inputs.shared_slots import SAID_FORMULA_SLOT
from bot.chat.dialogue.slots import Slot, plain
from bot.chat.dialogue.turn import Turn
from bot.chat.features.people.setting_values import day_names
from bot.chat.features.planning import use_words
from bot.chat.features.stock.on_hand import accept_item, amount_words
from bot.chat.i18n.language import _, ngettext, show_day, show_full_day, show_money, show_number
from bot.chat.reply.message import Block, Button, Grid, Reply, Text, reply
from bot.chat.reply.units import show_ml, show_quantity
from bot.trade.planning.fruit_par import Backing, Par
from bot.trade.planning.use import WeekdayUse
from bot.trade.words import N_
from bot.work.formulas.formulas import FormulaView
from bot.work.formulas.ingredients import IngredientView
from bot.work.money.prices import PriceView
from bot.work.planning import fruit_par, plan
from bot.work.planning.event_stock import EventStock
from bot.work.planning.fruit_par import FruitPar
from bot.work.planning.plan import FormulaPlan, ShoppingLine

_MOST_SHOWN = 8
_FAR_DAYS = 60
_BACKING = {
    Backing.FEW_WEEKS: N_("few weeks of data, so a rough guess"),
    Backing.SOME_WEEKS: N_("some weeks of data"),
    Backing.MANY_WEEKS: N_("many weeks of data"),
}


def _ml(value: float, units: str) -> str:
    """Write an estimate to two digits, or to ten mL from one litre."""
    return show_ml(Fraction(round(value, -1)) if value >= 1000 else Fraction(f"{value:.2g}"), units)


@dataclass(frozen=True, kw_only=True)
class PlanArguments(Arguments):
    """A formula, or a part of the plan: shopping or fruit; neither for the whole plan."""

    formula: FormulaView | None = None
    part: str = ""


@dataclass(frozen=True, kw_only=True)
class FruitParArguments(Arguments):
    """A fruit, or None for all fruit."""

    item: IngredientView | None = None


def _plan(turn: Turn, arguments: PlanArguments) -> Reply:
    if arguments.part == "shopping":
        return _shopping(turn, arguments)
    if arguments.part == "fruits":
        return _fruit(turn, FruitParArguments())
    if arguments.formula is not None:
        return _one(turn, plan.plan_for(turn.context, arguments.formula))
    return _all(turn)


def _all(turn: Turn) -> Reply:
    known = plan.plan_all(turn.context)
    planned = [one for one in known if one.use is not None]
    if not known:
        return reply(
            _("Nothing to plan yet: write down what you make."),
            buttons=((Button(_("Add a formula"), "new formula"), Button(_("Fruit"), "fruit par")),),
        )
    units = turn.context.bar.units
    coming = use_words.for_events(EventStock(turn.context).plans(), units)
    if not planned:
        return reply(
            _("I can't plan yet: I don't know how much you use."),
            *use_words.how_to_tell(known[0]),
            *coming,
            buttons=((Button(_("Batches"), "batches"), Button(_("Fruit"), "fruit par")),),
        )
    today = turn.context.today
    due = [one for one in planned if one.batch is not None and one.size_ml is not None]
    rows = tuple(_row(one, units) for one in due[:_MOST_SHOWN])
    blocks: list[Block] = [Text(_first(due, units, today), strong=True)]
    if rows:
        blocks.append(Grid(rows))
    blocks += [Text(line) for line in (*coming, *_remarks(known, planned))]
    buttons = [(Button(one.view.name, f"plan #{one.view.id}"),) for one in due[:3]]
    if any(one.evidence.doubts for one in known):
        buttons.append((_drinks_a_week(),))
    last = (Button(_("Shopping list"), "shopping"), Button(_("Fruit"), "fruit par"))
    return Reply(tuple(blocks), (*buttons, last))


def _drinks_a_week() -> Button:
    return Button(_("Drinks a week"), "bar drinks a week")


def _first(due: list[FormulaPlan], units: str, today: date) -> str:
    if not due or due[0].batch is None or due[0].size_ml is None:
        return _("Nothing to make: what you have lasts.")
    one = due[0]
    assert one.batch is not None and one.size_ml is not None  # noqa: S101, PT018 - checked above
    if one.batch.make_on == today:
        return _("Make {amount} {name} today.").format(amount=show_ml(one.size_ml, units), name=one.view.name)
    return _("Next: {amount} {name} on {day}.").format(
        amount=show_ml(one.size_ml, units), name=one.view.name, day=show_day(one.batch.make_on)
    )


def _row(one: FormulaPlan, units: str) -> tuple[str, ...]:
    assert one.batch is not None  # noqa: S101 - checked by the caller
    return one.view.name, show_day(one.batch.make_on), amount_to_make(one, units)


def amount_to_make(one: FormulaPlan, units: str) -> str:
    """Write the size of a planned batch."""
    return "" if one.size_ml is None else show_ml(one.size_ml, units)


def _remarks(known: list[FormulaPlan], planned: list[FormulaPlan]) -> list[str]:
    lines = []
    late = [one.view.name for one in planned if one.batch is not None and one.batch.dry_days > 0]
    if late:
        lines.append(_("You'll run out before the next is ready: {names}").format(names=", ".join(late)))
    spoils = [one.view.name for one in planned if one.batch is not None and one.size_ml is None]
    if spoils:
        lines.append(_("Would go off before it is needed: {names}").format(names=", ".join(spoils)))
    lines += use_words.how_sure_all(planned)
    unknown = [one.view.name for one in known if one.use is None]
    if unknown:
        lines.append(_("I don't know how much you use of: {names}").format(names=", ".join(unknown[:6])))
    return lines


# -- one formula ------------------------------------------------------------------------------


def _one(turn: Turn, one: FormulaPlan) -> Reply:
    name, units = one.view.name, turn.context.bar.units
    coming = use_words.for_events(EventStock(turn.context).plans(), units, one.view.id)
    if one.use is None:
        return reply(
            _("I don't know how much {name} you use.").format(name=name),
            *use_words.how_to_tell(one),
            *use_words.left_out(one.evidence),
            *coming,
            buttons=((Button(_("Batches"), "batches"), Button(_("Plan"), "plan")),),
        )
    blocks: list[Block] = [Text(_title(turn, one), strong=True)]
    blocks += [Text(line) for line in _when(one, units)]
    sure = (*coming, use_words.how_sure(one, units), *use_words.left_out(one.evidence))
    blocks += [*_use_blocks(one.use, units), *(Text(line) for line in sure)]
    row = [Button(_("Shopping list"), "shopping"), Button(_("Plan"), "plan")]
    if one.size_ml is not None:
        row.insert(0, Button(_("Make it"), f"batch #{one.view.id} to {int(one.size_ml)} ml"))
    doubt = ((_drinks_a_week(),),) if one.evidence.doubts else ()
    return Reply(tuple(blocks), (*doubt, tuple(row)))


def _use_blocks(use: WeekdayUse, units: str) -> list[Block]:
    opened = {number: mean for number, mean in enumerate(use.means) if mean}
    if len(set(opened.values())) == 1:
        return [Text(_("You use about {amount} a day.").format(amount=_ml(use.a_week / len(opened), units)))]
    names = day_names()
    rows = tuple((names[number], _ml(mean, units)) for number, mean in opened.items())
    return [Text(_("You use about, a day:")), Grid(rows)]


def _title(turn: Turn, one: FormulaPlan) -> str:
    name, units = one.view.name, turn.context.bar.units
    if one.batch is None:
        return _("{name}: nothing to make, what you have lasts.").format(name=name)
    day = show_day(one.batch.make_on)
    if one.size_ml is None:
        return _("{name}: a batch would go off before it is needed.").format(name=name)
    return _("Make {amount} {name} on {day}.").format(amount=show_ml(one.size_ml, units), name=name, day=day)


def _when(one: FormulaPlan, units: str) -> list[str]:
    batch = one.batch
    if batch is None:
        return []
    lines = [
        _("What you have lasts to {last}. The new one is ready {ready}; discard it after {gone}.").format(
            last=show_day(batch.run_out_on - timedelta(days=1)),
            ready=show_day(batch.ready_on),
            gone=show_full_day(batch.discard_on - timedelta(days=1)),
        )
    ]
    if batch.largest >= 1:
        lines.append(
            _("You'd use about {most} before it expires (9 in 10).").format(most=_ml(batch.largest, units))
        )
    if batch.dry_days:
        lines.append(
            ngettext(
                "{count} day without it: it rests longer than your stock lasts.",
                "{count} days without it: it rests longer than your stock lasts.",
                batch.dry_days,
            ).format(count=batch.dry_days)
        )
    if batch.lost >= 1:
        lines.append(
            _("{amount} of what you have expires before you'd use it.").format(amount=_ml(batch.lost, units))
        )
    return lines


# -- shopping ---------------------------------------------------------------------------------


def _shopping(turn: Turn, arguments: Arguments) -> Reply:
    found = plan.shopping(turn.context)
    units = turn.context.bar.units
    row = (Button(_("Plan"), "plan"), Button(_("Stock"), "stock"))
    made = ", ".join(
        f"{one.view.name} {show_ml(one.size_ml, units)}" for one in found.batches if one.size_ml is not None
    )
    made_for = [_("For: {batches}").format(batches=made)] if made else []
    made_for += use_words.for_events(found.events, units)
    if not found.lines:
        return reply(
            _("Nothing to buy until {day}.").format(day=show_day(found.until)), *made_for, buttons=(row,)
        )
    priced = any(line.need.cost is not None for line in found.lines)
    money = show_money(found.cost) if priced else _("no price yet")
    first = _("To buy by {day}: {money}").format(day=show_day(found.until), money=money)
    rows = tuple(
        (
            line.ingredient.name,
            _packs(turn, line),
            "?" if line.need.cost is None else show_money(line.need.cost),
        )
        for line in found.lines
    )
    notes = [*made_for, *use_words.how_sure_all(found.batches)]
    never_counted = [line.ingredient.name for line in found.lines if not line.counted]
    if never_counted:
        notes.append(_("Never counted, so I assume none: {names}").format(names=", ".join(never_counted)))
    if found.no_price:
        notes.append(_("No price, so not in the sum: {names}").format(names=", ".join(found.no_price)))
    if found.unclear:
        notes.append(
            _("Measured differently in formula and stock, density unknown: {names}").format(
                names=", ".join(found.unclear)
            )
        )
    return Reply((Text(first, strong=True), Grid(rows), *(Text(note) for note in notes)), (row,))


def _packs(turn: Turn, line: ShoppingLine) -> str:
    if not line.packs:
        return amount_words(turn, line.need.short, line.dimension)
    return ", ".join(f"{count} x {_pack(price)}" for price, count in line.packs)


def _pack(price: PriceView) -> str:
    return show_quantity(price.pack) if price.pack.unit != "each" or price.pack.number != 1 else _("1 piece")


# -- fruit ------------------------------------------------------------------------------------


def _fruit(turn: Turn, arguments: FruitParArguments) -> Reply:
    if arguments.item is not None:
        return _fruit_card(turn, fruit_par.fruit_par(turn.context, arguments.item))
    known = fruit_par.pars(turn.context)
    ready = [one for one in known if one.by_weekday]
    if not ready:
        unpriced = [one.fruit.name for one in known]
        more = (
            _("Its price is missing: {names}").format(names=", ".join(unpriced))
            if unpriced
            else example_of(
                turn, _("Count what is there at close, log what is peeled, or count drinks: drinks 45 orange")
            )
        )
        return reply(_("I cannot say yet how much fruit to have."), more)
    blocks: list[Block] = [Text(_("Fruit to have in the morning"), strong=True)]
    blocks += [Text(_fruit_line(one)) for one in ready[:6]]
    few = [one for one in ready if _backing(one) is Backing.FEW_WEEKS]
    if few:
        blocks.append(
            Text(
                _("Few weeks of data, so a rough guess: {names}").format(
                    names=", ".join(one.fruit.name for one in few)
                )
            )
        )
    buttons = tuple((Button(one.fruit.name, f"fruit par #{one.fruit.id}"),) for one in ready[:4])
    return Reply(tuple(blocks), (*buttons, (Button(_("Plan"), "plan"),)))


def _backing(one: FruitPar) -> Backing:
    order = list(Backing)
    return min((par.backing for par in one.by_weekday.values()), key=order.index)


def _fruit_line(one: FruitPar) -> str:
    names = day_names()
    days = ", ".join(f"{names[number]} {par.quantity}" for number, par in one.by_weekday.items())
    return f"{one.fruit.name}: {days}"


def _fruit_card(turn: Turn, one: FruitPar) -> Reply:
    if not one.by_weekday:
        lines = [
            _("Count what is there at close, log what is peeled, or count drinks: drinks 45 {name}").format(
                name=one.fruit.name
            )
        ]
        if one.price is None:
            lines = [_("It has no price: price {name} 0.60 each").format(name=one.fruit.name)]
        return reply(_("I cannot say yet how much {name} to have.").format(name=one.fruit.name), *lines)
    names = day_names()
    rows: list[tuple[str, ...]] = [("", _("have"), _("between"), _("nights"))]
    rows += [(names[number], *_par_cells(par)) for number, par in one.by_weekday.items()]
    share = show_number(Fraction(one.spoiled_share) * 100, 0)
    spoils = (
        _("Nobody counts what is left at close, so I assume all of it is lost.")
        if one.assumed
        else _("Of what is left at close, {share} % are thrown out.").format(share=share)
    )
    covered = show_number(Fraction(one.fractile or 0) * 100, 0)
    lines = [
        _("By {source}.").format(source=_(one.source) if one.source else ""),
        spoils,
        _("Running one short costs {times} times its price, so have enough on {percent} % of nights.").format(
            times=show_number(fruit_par.missing_times(turn.context.bar) - 1, 1), percent=covered
        ),
        _("{backing}; the best number is in that range, about 4 chances in 5.").format(
            backing=_(_BACKING[_backing(one)]).capitalize()
        ),
    ]
    if any(None in {par.low, par.high} for par in one.by_weekday.values()):
        lines.append(_("“?”: too few nights yet to say where it ends."))
    if one.event_days:
        lines.append(use_words.event_nights(one.event_days))
    if any(par.at_least for par in one.by_weekday.values()):
        lines.append(_("It ran out on some nights (+): the true number may be higher."))
    return Reply(
        (
            Text(_("{name}: how many to have in the morning").format(name=one.fruit.name), strong=True),
            Grid(tuple(rows)),
            *(Text(line) for line in lines),
        ),
        ((Button(_("All fruit"), "fruit par"), Button(_("Plan"), "plan")),),
    )


def _par_cells(par: Par) -> tuple[str, str, str]:
    low = "?" if par.low is None else str(par.low)
    high = "?" if par.high is None else str(par.high)
    have = f"{par.quantity}+" if par.at_least else str(par.quantity)
    return have, f"{low}-{high}", str(par.days)


COMMANDS = (
    Command(
        "plan",
        N_("what to make next, what to buy, fruit to have"),
        _plan,
        words=(*("next batch", "what to make", "planning", "what should i make", "what should we make"),),
        examples=(N_("plan grapefruit mist"), N_("plan shopping"), N_("plan fruit")),
        slots=(SAID_FORMULA_SLOT, Slot("part", plain(str))),
        menu=32,
        wishes=(Wish("plan", ("{formula?}",)),),
    ),
    Command(
        "shopping",
        N_("what to buy this week, in whole packs"),
        _shopping,
        words=("shopping list", "to buy", "plan shopping"),
        menu=34,
    ),
    Command(
        "fruit_par",
        N_("fresh fruit to have each morning"),
        _fruit,
        words=("fruit par", "fruit pars", "plan fruit"),
        examples=(N_("fruit par orange"),),
        slots=(Slot("item", accept_item),),
        wishes=(Wish("fruit_par", ("{fruit?}",)),),
    ),
)
