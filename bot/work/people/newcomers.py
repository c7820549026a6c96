"""Tell bars in their first week, which anybody can open, from others: their limits are lower."""

from __future__ import annotations

from datetime import timedelta

from sqlalchemy import select

from bot.work.context import Clock, Context
from storage.store import Store
from storage.tables import Bar, Member, Person

_NEW_FOR = timedelta(days=7)


def is_new(context: Context) -> bool:
    """Whether the bar is in its first week."""
    bar = context.book.session.get(Bar, context.bar.id)
    return bar is not None and context.now - bar.created_at < _NEW_FOR


def is_newcomer(store: Store, clock: Clock, channel: str, outside_id: str) -> bool:
    """Whether a person is in no bar that is older than its first week."""
    older = (
        select(Member.bar_id)
        .join(Person, Person.id == Member.person_id)
        .join(Bar, Bar.id == Member.bar_id)
        .where(
            Person.channel == channel,
            Person.outside_id == outside_id,
            Member.left_at.is_(None),
            Bar.created_at <= clock.now() - _NEW_FOR,
        )
        .limit(1)
    )
    with store.reading() as unit:
        return unit.session.scalar(older) is None
