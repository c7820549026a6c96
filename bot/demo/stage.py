"""The stage of the demo: the bar, its people, and a clock that advances with each act."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import dataclass, field
from datetime import date, datetime, timedelta
from random import Random

from bot.demo import book
from bot.trade.days import business_day, instant_of, is_service_day
from bot.work.context import BarView, Context, Role
from bot.work.people import people
from bot.work.people.people import Presence
from storage.unit import Book, Unit

_SEED = 20


@dataclass(frozen=True, slots=True)
class Act:
    """One action at a moment: a use case, called with the person's context."""

    at: datetime
    who: str
    does: Callable[[Context], object]


@dataclass
class Stage:
    """One bar being filled. Numbers of earlier acts are kept for later ones.

    Service nights are counted back from the last one, which is night 0.
    """

    unit: Unit
    now: datetime
    channel: str  # of the owner
    bar: BarView | None = None
    cast: dict[str, Presence] = field(default_factory=dict)
    ingredients: dict[str, int] = field(default_factory=dict)
    formulas: dict[str, int] = field(default_factory=dict)
    batches: dict[str, int] = field(default_factory=dict)
    acts: int = 0
    # One unit for all acts: it knows that this transaction changed data, and so never uses a stale cache.
    _book: Book | None = None

    def __post_init__(self) -> None:
        last = business_day(self.now, book.ZONE, book.CLOSING_MINUTE) - timedelta(days=1)
        days = [last - timedelta(days=back) for back in range(7 * book.WEEKS + 1)]
        self.last_day = last
        self.nights = [day for day in days if is_service_day(day, book.SERVICE_DAYS)]

    @property
    def first_day(self) -> date:
        """The day of the bar's first entry."""
        return self.last_day - timedelta(days=7 * book.WEEKS)

    def night(self, nights_ago: int) -> date:
        """Return the day of a service night; before the first one, the day of the first entry."""
        return self.nights[nights_ago] if nights_ago < len(self.nights) else self.first_day

    def at(self, when: date | int, clock: str) -> datetime:
        """Return the instant of a day, or of a night so many ago; '25:10' is 01:10 on the next day."""
        hours, minutes = clock.split(":")
        day = self.night(when) if isinstance(when, int) else when
        return instant_of(day, int(hours) * 60 + int(minutes), book.ZONE)

    @staticmethod
    def chance(part: str) -> Random:
        """Return the random generator of one part of the story; a new part does not change the others."""
        return Random(f"{_SEED} {part}")  # noqa: S311 - invented data must be the same every time

    def enter(self, who: str, channel: str, outside_id: str, room: str, name: str) -> Presence:
        """Register a person of a channel."""
        found = people.meet(self.unit, channel, outside_id, name, None, room, True, "")
        self.cast[who] = found
        return found

    @property
    def opened(self) -> BarView:
        """The bar. Raises ValueError before it is open."""
        if self.bar is None:
            raise ValueError("the bar is not open yet")
        return self.bar

    @property
    def people(self) -> list[int]:
        """The person ids of the cast, in the order of their entrance."""
        return [one.person_id for one in self.cast.values() if one.person_id is not None]

    def context(self, who: str, at: datetime) -> Context:
        """Return a context for a cast member at a moment."""
        presence = self.cast[who]
        bar = self.opened
        if presence.person_id is None or presence.room_id is None:
            raise ValueError(f"{who} is not in the bar yet")
        if self._book is None:
            self._book = self.unit.bar(bar.id)
        self.acts += 1
        role = Role(who)  # cast members are named by role
        return Context(
            self._book,
            bar,
            presence.person_id,
            presence.name,
            role,
            presence.room_id,
            at,
            f"demo {self.acts}",
        )

    def play(self, acts: Iterable[Act]) -> None:
        """Run acts in the order of their moments, omitting those after the last night."""
        end = self.at(self.last_day, "29:00")
        for act in sorted(acts, key=lambda act: act.at):
            if act.at <= end:
                context = self.context(act.who, act.at)
                act.does(context)
                self.bar = context.bar
