"""The control endpoint, for tests and benchmarks with the server in a process of its own.

POST /control/<what> with a JSON object; the answer is {"ok": true, "result": ...} or, with status 400, {"ok":
false, "error": ...}.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import asdict
from typing import TYPE_CHECKING, Any

from tests.api.faults import Fault
from tests.api.load import drive
from tests.api.person import Person
from tests.api.refusals import JsonDict
from tests.api.seen import Followed

if TYPE_CHECKING:
    from tests.api.server import Server


class Control:
    """Answers control requests for one server."""

    def __init__(self, server: Server) -> None:
        self._server = server
        self._people: dict[int, Person] = {}

    async def __call__(self, what: str, given: JsonDict) -> Any:
        """Execute one request."""
        work: Callable[..., Any] | None = getattr(self, f"on_{what}", None)
        if work is None:
            raise LookupError(f"no such control: {what}")
        result = work(**given)
        return await result if hasattr(result, "__await__") else result

    def on_person(self, id: int, first_name: str = "Ana", language_code: str = "en") -> int:  # noqa: A002
        """Add a person."""
        self._people[id] = Person(self._server, id, first_name, language_code)
        return id

    async def on_says(self, person: int, text: str, **options: Any) -> JsonDict:
        """Let a person write; options as for `Person.says`, without chat."""
        return _followed(await self._people[person].says(text, **options))

    async def on_taps(self, person: int, button: str, **options: Any) -> JsonDict:
        """Let a person tap; options as for `Person.taps`, without chat."""
        return _followed(await self._people[person].taps(button, **options))

    def on_update(self, kind: str, body: JsonDict) -> bool:
        """Queue any update."""
        return self._server.world.updates.push(kind, body)

    def on_messages(self, chat: int) -> list[JsonDict]:
        """The bot's current messages in a chat."""
        return [seen.as_json() for seen in self._server.messages(chat)]

    def on_transcript(self, chat: int) -> str:
        """The transcript of a chat."""
        return self._server.transcript(chat)

    def on_violations(self) -> list[str]:
        """The bot's violations."""
        return self._server.violations

    def on_fail_next(self, method: str, fault: JsonDict, times: int = 1) -> bool:
        """Order a fault, given as the fields of `Fault`."""
        self._server.fail_next(method, Fault(**fault), times)
        return True

    def on_behind(self, addresses: list[str]) -> bool:
        """Set the addresses to which a proxy at the webhook's address passes updates, in turn."""
        self._server.world.updates.behind = addresses
        return True

    async def on_wait_quiet(self, within: float = 5.0) -> bool:
        """Wait until the bot has finished."""
        await self._server.wait_quiet(within)
        return True

    async def on_first_poll(self, since: float, within: float = 30.0) -> float | None:
        """When the bot first requested updates after `since`, by the machine's monotonic clock.

        None if it did not within that time.
        """
        polls = self._server.world.updates.polls
        if not await self._server.world.until(lambda: bool(polls) and polls[-1] >= since, within):
            return None
        return next(poll for poll in polls if poll >= since)

    async def on_load(self, people: list[int], texts: list[str], each: int, within: float = 10.0) -> JsonDict:
        """Let many people write at once; see `tests.api.load`."""
        driven = [self._people[person] for person in people]
        return asdict(await drive(self._server, driven, texts, each, within))


def _followed(followed: Followed) -> JsonDict:
    return {
        "said": followed.said,
        "toast": followed.toast,
        "seen": [seen.as_json() for seen in followed],
    }
