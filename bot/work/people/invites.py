"""Joining codes with limited uses and days, hard to guess."""

from __future__ import annotations

import hashlib
import hmac
import secrets
from dataclasses import dataclass
from datetime import datetime, timedelta

from bot.work.context import BarView, Context, Role
from bot.work.errors import BadValueError, NotAllowedError, TooManyTriesError
from bot.work.people.people import Presence, enter
from storage.tables import Bar, Invite, Member, Person
from storage.unit import Unit

_CODE_LETTERS = "ABCDEFGHJKMNPQRSTVWXYZ23456789"  # without characters that look alike
_CODE_LENGTH = 10
INVITE_DAYS = 7
INVITE_USES = 1
MOST_DAYS, MOST_USES = 90, 50
# After this many consecutive wrong codes, a person has to wait.
TRIES = 5
WAIT = timedelta(hours=1)


def _hash(code: str) -> str:
    return hashlib.sha256(code.encode()).hexdigest()


@dataclass(frozen=True, slots=True)
class Invited:
    """A joining code with its uses and expiry."""

    code: str
    role: Role
    uses: int
    until: datetime


def invite(
    context: Context, role: Role = Role.MEMBER, uses: int = INVITE_USES, days: int = INVITE_DAYS
) -> Invited:
    """Create a joining code for this bar and store only its hash.

    Raises NotAllowedError for a plain member, or BadValueError for uses or days out of range.
    """
    if not context.role.manages or (role is Role.MANAGER and context.role is not Role.OWNER):
        raise NotAllowedError(Role.OWNER if role is Role.MANAGER else Role.MANAGER)
    if not 1 <= uses <= MOST_USES:
        raise BadValueError("number of people", str(uses))
    if not 1 <= days <= MOST_DAYS:
        raise BadValueError("number of days", str(days))
    secret = "".join(secrets.choice(_CODE_LETTERS) for _ in range(_CODE_LENGTH))
    until = context.now + timedelta(days=days)
    row = context.book.add(
        Invite(
            code_hash=_hash(secret),
            role=role,
            made_by=context.person_id,
            made_at=context.now,
            expires_at=until,
            uses_left=uses,
        )
    )
    context.log("invite", invite=row.id, role=role, uses=uses, days=days)
    return Invited(f"{context.bar.id}-{row.id}-{secret}", role, uses, until)


def join(unit: Unit, presence: Presence, code: str, name: str, private: bool, now: datetime) -> BarView:
    """Add a person to the bar of a joining code.

    Raises BadValueError for a code that is wrong, used up or expired: always the same error, so that trying
    reveals nothing. Raises TooManyTriesError after several consecutive ones.
    """
    person = None if presence.person_id is None else unit.session.get(Person, presence.person_id)
    if person is None:
        raise ValueError("meet the person first")
    _not_too_often(person, now)
    row = _invite_of(unit, code, now)
    bar = None if row is None else unit.session.get(Bar, row.bar_id)
    if row is None or bar is None:
        person.wrong_codes += 1
        person.wrong_code_at = now
        unit.session.flush()
        raise BadValueError("joining code", code[:40])
    person.wrong_codes = 0
    member = unit.session.get(Member, (row.bar_id, person.id))
    if member is None or member.left_at is not None:
        row.uses_left -= 1
    enter(unit, row.bar_id, presence, Role(row.role), name, private, now)
    unit.bar(row.bar_id).touched()
    return BarView.of(bar)


def _not_too_often(person: Person, now: datetime) -> None:
    if person.wrong_code_at is None or now >= person.wrong_code_at + WAIT:
        person.wrong_codes = 0
    elif person.wrong_codes >= TRIES:
        raise TooManyTriesError(person.wrong_code_at + WAIT)


def _invite_of(unit: Unit, code: str, now: datetime) -> Invite | None:
    """Return the invite of a code, or None; its row stays locked so that no use counts twice."""
    parts = code.strip().split("-")
    if len(parts) != 3 or len(code) > 64 or not all(part.isascii() and part.isdigit() for part in parts[:2]):
        return None
    bar_id, number = int(parts[0]), int(parts[1])
    if max(bar_id, number) >= 2**62:
        return None
    row = unit.session.get(Invite, (bar_id, number), with_for_update=True)
    if row is None or not hmac.compare_digest(row.code_hash, _hash(parts[2].upper())):
        return None
    return row if row.uses_left >= 1 and row.expires_at > now else None
