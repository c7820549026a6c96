"""Refusals of the server: Telegram's status, sentence and parameters.

The sentences are those of the open Bot API server (tdlib/telegram-bot-api, `Client.cpp`) and of TDLib, or
were seen in public reports of its answers; the few that are from memory say so where they are raised.
"""

from __future__ import annotations

from typing import Any

JsonDict = dict[str, Any]
# Of messages that nothing is wrong with: the server's and those of the MTProto API.
REFUSED_MESSAGES = (
    (400, "Bad Request: not enough rights to send text messages to the chat"),
    (400, "Bad Request: CHAT_WRITE_FORBIDDEN"),
    (400, "Bad Request: TOPIC_CLOSED"),
    (400, "Bad Request: message thread not found"),
    (400, "Bad Request: group chat was deactivated"),
    (400, "Bad Request: PEER_ID_INVALID"),
    (403, "Forbidden: bot was kicked from the supergroup chat"),
    (403, "Forbidden: user is deactivated"),
    (401, "Unauthorized"),
    (404, "Not Found"),
    (409, "Conflict: terminated by other getUpdates request"),
)


class RefusalError(Exception):
    """One refused request; `breach` marks a request that a correct bot never makes."""

    def __init__(
        self, code: int, description: str, parameters: JsonDict | None = None, *, breach: bool = False
    ) -> None:
        super().__init__(description)
        self.code = code
        self.description = description
        self.parameters = parameters
        self.breach = breach

    def body(self) -> JsonDict:
        """The answer's JSON."""
        body: JsonDict = {"ok": False, "error_code": self.code, "description": self.description}
        if self.parameters:
            body["parameters"] = self.parameters
        return body


def bad(sentence: str) -> RefusalError:
    """400 for a mistake of the bot: it is added to the server's list of violations."""
    return RefusalError(400, f"Bad Request: {sentence}", breach=True)


def stale(sentence: str) -> RefusalError:
    """400 for a normal race: the message is gone, the button is old, nothing changed."""
    return RefusalError(400, f"Bad Request: {sentence}")


def forbidden(sentence: str) -> RefusalError:
    """403: blocked, kicked, or never added."""
    return RefusalError(403, f"Forbidden: {sentence}")


def conflict(sentence: str) -> RefusalError:
    """409: two receivers of updates at once."""
    return RefusalError(409, f"Conflict: {sentence}")


def migrated(new_chat_id: int) -> RefusalError:
    """400 with the number of the supergroup that the group has become."""
    return RefusalError(
        400,
        "Bad Request: group chat was upgraded to a supergroup chat",
        {"migrate_to_chat_id": new_chat_id},
    )


def too_many_requests(retry_after: int) -> RefusalError:
    """429 with the seconds to wait."""
    return RefusalError(429, f"Too Many Requests: retry after {retry_after}", {"retry_after": retry_after})
