"""The other bars of a person. No other module reaches from the rows of one bar to those of another."""

from __future__ import annotations

from dataclasses import dataclass, replace

from sqlalchemy import select

from bot.work.context import BarView, Context, Role
from bot.work.errors import NotAllowedError, NotManagedError
from storage.tables import Bar, Member


@dataclass(frozen=True, slots=True)
class OtherBar:
    """Another bar of a person, and their role in it."""

    id: int
    name: str
    currency: str
    role: Role


def listed(context: Context) -> list[OtherBar]:
    """Return the person's bars beside this one, the earliest joined first."""
    query = (
        select(Bar.id, Bar.name, Bar.currency, Member.role)
        .join(Member, Member.bar_id == Bar.id)
        .where(
            Member.person_id == context.person_id,
            Member.left_at.is_(None),
            Bar.id != context.bar.id,
        )
        .order_by(Member.joined_at, Bar.id)
    )
    found = context.book.session.execute(query)
    return [OtherBar(row.id, row.name, row.currency, Role(row.role)) for row in found]


def hold(*those: Context) -> None:
    """Lock several bars until the transaction ends, always in the same order: two moves never deadlock."""
    for one in sorted(those, key=lambda one: one.bar.id):
        one.book.hold()


def at(context: Context, bar_id: int) -> Context:
    """Return the person's context in another bar, in the same transaction.

    Raises NotAllowedError unless they manage this bar, and NotManagedError unless they manage the other.
    """
    if not context.role.manages:
        raise NotAllowedError(Role.MANAGER)
    session = context.book.session
    member = session.get(Member, (bar_id, context.person_id))
    row = session.get(Bar, bar_id)
    if row is None or member is None or member.left_at is not None or bar_id == context.bar.id:
        raise NotManagedError("")
    if not Role(member.role).manages:
        raise NotManagedError(row.name)
    book = context.book.beside(bar_id)
    bar, role = BarView.of(row), Role(member.role)
    return replace(
        context, book=book, bar=bar, name=member.name, role=role, entry=None, replaced=None, said=""
    )
