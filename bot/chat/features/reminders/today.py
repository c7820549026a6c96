"""The command today: one screen of what is due, each line with its tap."""

from __future__ import annotations

from collections.abc import Iterator

from bot.chat.dialogue.arguments import Arguments
from bot.chat.dialogue.command import Command, Wish
from bot.chat.dialogue.turn import Turn
from bot.chat.features.batches.batch_card import discard_words
from bot.chat.features.events.event_words import make_line
from bot.chat.features.planning.plan import amount_to_make
from bot.chat.features.reminders.reminder_words import closer_words, short
from bot.chat.i18n.language import _, ngettext, show_day, show_moment, show_money, show_number, show_time
from bot.chat.i18n.plurals import pieces
from bot.chat.reply.message import Button, Reply, Text
from bot.chat.reply.units import show_amount, show_ml
from bot.trade.words import N_
from bot.work.batches.batches import BatchView
from bot.work.context import Context
from bot.work.fruit.peeled import PeeledView
from bot.work.planning import today
from bot.work.planning.today import EventStep, EventTask, Today
from bot.work.reminders import own
from bot.work.stock.on_hand import OnHand

_MOST_SHOWN = 10

Task = tuple[str, Button]


def _today(turn: Turn, arguments: Arguments) -> Reply:
    return today_reply(turn.context, edits=False)


def today_reply(context: Context, done: str = "", *more: Button, edits: bool) -> Reply:
    """Show what is due, below what was just done."""
    found = today.due(context)
    tasks = list(_tasks(context, found))
    first = _("Nothing is due today.")
    if tasks:
        first = ngettext("{day}: {count} thing to do", "{day}: {count} things to do", len(tasks))
        first = first.format(day=show_day(context.today), count=len(tasks))
    lines = [line for line, _button in tasks[:_MOST_SHOWN]]
    if len(tasks) > _MOST_SHOWN:
        lines.append(_("and {count} more").format(count=len(tasks) - _MOST_SHOWN))
    closing, tap = closer_words(*own.closer(context))
    texts = [first, *(["\n".join(lines)] if lines else []), *([closing] if closing else [])]
    blocks = [Text(done, strong=True)] if done else []
    blocks += [Text(text, strong=not number and not done) for number, text in enumerate(texts)]
    buttons = [button for _line, button in tasks[:_MOST_SHOWN]] + tap
    rows = [tuple(buttons[at : at + 2]) for at in range(0, len(buttons), 2)]
    last = (Button(_("Reminders"), "reminders"), Button(_("Leave a note"), "note"), *more)
    return Reply(tuple(blocks), (*rows, last), edits=edits)


def _tasks(context: Context, found: Today) -> Iterator[Task]:
    """Word the tasks, the most urgent first."""
    for one in found.past:
        tap = _("Discard {number}").format(number=one.number)
        yield _batch_line(context, one), Button(tap, f"discard {one.number}")
    yield from (_peeled_task(context, one) for one in found.peeled)
    yield from (_event_task(context, task) for task in found.events)
    for one in found.last_days:
        tap = _("Batch {number}").format(number=one.number)
        yield _batch_line(context, one), Button(tap, f"batch {one.number}")
    for one in found.unseen:
        line = _("Batch {number}, {name}, has rested: check how it looks")
        tap = _("Check {number}").format(number=one.number)
        yield line.format(number=one.number, name=one.name), Button(tap, f"check {one.number}")
    for note in found.notes:
        yield _("Note: {text}").format(text=note.text), Button(f"✓ {short(note.text)}", f"tick {note.id}")
    for planned in found.reminders:
        tap = short(planned.text)
        due = planned.due
        when = show_time(due) if context.bar.day_of(due) == context.today else show_moment(due)
        yield f"{when}: {planned.text}", Button(tap, f"reminders {planned.id}")
    yield from _stock_tasks(context, found)


def _event_task(context: Context, one: EventTask) -> Task:
    day, number = show_day(one.event.asked.day), one.event.id
    event = Button(_("Event {number}").format(number=number), f"events {number}")
    if one.step is EventStep.NOTE_BACK:
        line = _("Event on {day}: what came back?").format(day=day)
        return line, Button(_("What came back"), f"came back {number}")
    if one.part is not None:
        name, units = one.part.part.formula.name, context.bar.units
        line = _("Make {amount} {name} for the event on {day}")
        line = line.format(amount=show_ml(one.part.make_ml, units), name=name, day=day)
        return line, Button(_("Make {name}").format(name=short(name)), make_line(one.event, one.part))
    if one.step is EventStep.PACK:
        return _("Pack for the event on {day}").format(day=day), event
    guests = show_number(one.event.asked.guests, 0)
    return _("Event today: {guests} guests").format(guests=guests), event


def _peeled_task(context: Context, one: PeeledView) -> Task:
    what = pieces(one.ingredient.name, one.left)
    line, label, command = _("{what} peeled, good until {when}"), _("Juiced: {what}"), "juiced"
    if one.lost_at <= context.now:
        line, label, command = _("{what} peeled, lost since {when}"), _("Binned: {what}"), "bin peeled"
    tap = Button(label.format(what=what), f"{command} {one.left} #{one.ingredient.id}")
    return line.format(what=what, when=show_moment(one.lost_at)), tap


def _stock_tasks(context: Context, found: Today) -> Iterator[Task]:
    units = context.bar.units
    for plan in found.make:
        amount = amount_to_make(plan, units)
        line = _("Make {amount} {name} today").format(amount=amount, name=plan.view.name)
        yield line, Button(_("Make {name}").format(name=short(plan.view.name)), f"plan #{plan.view.id}")
    if found.shopping is not None:
        count = len(found.shopping.lines)
        line = ngettext("{count} thing to buy by {day}", "{count} things to buy by {day}", count)
        line = line.format(count=count, day=show_day(found.shopping.until))
        cost = f", {show_money(found.shopping.cost)}" if found.shopping.cost else ""
        yield line + cost, Button(_("Shopping list"), "shopping")
    if found.low:
        yield _("Runs low: {names}").format(names=_low(found.low, units)), Button(_("Stock"), "stock")


def _batch_line(context: Context, batch: BatchView) -> str:
    line = _("Batch {number}, {name}: {discard}")
    words = discard_words(batch, context.today)
    return line.format(number=batch.number, name=batch.name, discard=words[0].lower() + words[1:])


def _low(low: tuple[OnHand, ...], units: str) -> str:
    return ", ".join(
        f"{one.ingredient.name} {show_amount(one.amount, one.dimension, units)}" for one in low[:4]
    )


COMMANDS = (
    Command(
        "today",
        N_("what is due today"),
        _today,
        words=(
            *("due", "due today", "what is due", "what's due", "whats due", "what is due today"),
            *("what's due today", "agenda", "to do", "todo", "tasks"),
        ),
        menu=2,
        wishes=(Wish("today"),),
    ),
)
