"""Data that bars still hold about a person who left them."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import datetime
from typing import Any

from sqlalchemy import select

from bot.work.context import BarView, Context, Role
from bot.work.people import team
from bot.work.people.bar_deletion import held_of_member, identity
from bot.work.people.people import Presence
from storage.tables import Bar, Member
from storage.unit import Unit


def bars_left(unit: Unit, presence: Presence) -> list[str]:
    """Return the names of the bars that a person left and that still hold their name, by number."""
    return [bar.name for bar, _member in _left(unit, presence)]


def _left(unit: Unit, presence: Presence) -> list[tuple[Bar, Member]]:
    query = (
        select(Bar, Member)
        .join(Member, Member.bar_id == Bar.id)
        .where(
            Member.person_id == presence.person_id,
            Member.left_at.is_not(None),
            Member.name != team.FORGOTTEN,
        )
        .order_by(Bar.id)
    )
    return [(bar, member) for bar, member in unit.session.execute(query)]


def held(unit: Unit, presence: Presence, now: datetime, source: str) -> dict[str, Any]:
    """Return the person's identity and, for each bar they left, their name and the rows they wrote.

    A row is its number, its times and its kind: the content belongs to the bar.
    """
    if presence.person_id is None:
        return {}
    bars = [held_of_member(context, content=False) for context in _contexts(unit, presence, now, source)]
    return {**identity(unit.session, presence.person_id), "bars_left": bars}


def forget(unit: Unit, presence: Presence, now: datetime, source: str) -> list[str]:
    """Remove a person's name from every bar they left; return the names of these bars.

    If they are in no other bar, the link to their chat account is deleted as well.
    """
    if presence.person_id is None:
        return []
    names = []
    for context in _contexts(unit, presence, now, source):
        context.book.hold()
        team.forget(context, presence.person_id)
        names.append(context.bar.name)
    rooms = [] if presence.room_id is None else [presence.room_id]
    team.forget_account(unit.session, presence.person_id, rooms)
    return names


def _contexts(unit: Unit, presence: Presence, now: datetime, source: str) -> Iterator[Context]:
    for bar, member in _left(unit, presence):
        yield Context(
            unit.bar(bar.id),
            BarView.of(bar),
            member.person_id,
            member.name,
            Role.MEMBER,
            presence.room_id or 0,
            now,
            source,
        )
