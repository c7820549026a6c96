"""Classify send errors in one table, used by every send."""

from __future__ import annotations

import re
from dataclasses import dataclass

import httpx
from telegram.error import (
    BadRequest,
    ChatMigrated,
    Conflict,
    Forbidden,
    InvalidToken,
    NetworkError,
    RetryAfter,
    TelegramError,
    TimedOut,
)

from bot.channels.telegram.http_client import BrokeOffError, LeftToAnotherError, NeverLeftError
from bot.work.reminders.delivery import Outcome


@dataclass(frozen=True, slots=True)
class Verdict:
    """The outcome of a send; `wait` is seconds before a retry, `moved_to` the chat's new id.

    `what` is Telegram's word for a refusal. `away` marks an unknown outcome that is most likely a failure:
    the server answered nobody.
    """

    outcome: Outcome
    wait: float = 0.0
    moved_to: str | None = None
    what: str = ""
    away: bool = False


# Raised before anything left this machine, so nothing can have arrived.
_NEVER_LEFT = (
    NeverLeftError,
    httpx.ConnectTimeout,
    httpx.PoolTimeout,
    httpx.ConnectError,
    httpx.UnsupportedProtocol,
)
_TURNED_AWAY = re.compile(r"\(4\d\d\)")  # how the library ends an error for a status without a class
_OUT_OF_USE = 5.0  # seconds between attempts while Telegram does not take the token
_BROKE_OFF = (BrokeOffError, httpx.HTTPError)


def classify(error: TelegramError) -> Verdict:
    """Classify an error. BadRequest and TimedOut are subclasses of NetworkError, so the order counts."""
    if isinstance(error, RetryAfter):
        after = error.retry_after
        seconds = after.total_seconds() if hasattr(after, "total_seconds") else float(after)
        return Verdict(Outcome.NOT_SENT, wait=seconds, what="flood")
    if isinstance(error, ChatMigrated):
        return Verdict(Outcome.NOT_SENT, moved_to=str(error.new_chat_id), what="migrated")
    if isinstance(error, Forbidden):
        return Verdict(Outcome.BLOCKED, what=error.message)
    if isinstance(error, BadRequest):
        if "chat not found" in error.message.casefold():
            return Verdict(Outcome.BLOCKED, what=error.message)
        return Verdict(Outcome.REFUSED, what=error.message)
    if isinstance(error, TimedOut | NetworkError):
        return _network(error)
    if isinstance(error, InvalidToken | Conflict):
        # About the bot and not about the message: it is kept until the bot may send again.
        return Verdict(Outcome.NOT_SENT, wait=_OUT_OF_USE, what=error.message)
    # An unreadable response arrived; whether the message was accepted is unknown.
    return Verdict(Outcome.UNSURE, wait=1.0, what=error.message)


def _network(error: NetworkError) -> Verdict:
    cause = error.__cause__
    if isinstance(cause, LeftToAnotherError):
        return Verdict(Outcome.LEFT, what=error.message)
    if isinstance(cause, _NEVER_LEFT):
        return Verdict(Outcome.NOT_SENT, wait=1.0, what=type(cause).__name__)
    if not isinstance(error, TimedOut) and not isinstance(cause, _BROKE_OFF):
        if _TURNED_AWAY.search(error.message):
            return Verdict(Outcome.NOT_SENT, wait=1.0, what=error.message)
        # 5xx: a proxy in front of Telegram returns it even if only the response to an accepted message was
        # lost.
        return Verdict(Outcome.UNSURE, wait=1.0, what=error.message, away=True)
    # An interrupted read or write: the message may have arrived.
    return Verdict(Outcome.UNSURE, wait=1.0, what=type(cause).__name__ if cause else error.message)
