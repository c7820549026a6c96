"""Load generator: many chats at once, each sending its next message after the previous reply."""

from __future__ import annotations

import asyncio
import time
from collections.abc import Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from tests.api.person import Person
    from tests.api.server import Server


@dataclass(frozen=True, slots=True)
class Load:
    """The result of a load: seconds from update to reply for each message, total time, replies seen."""

    seconds: list[float]
    elapsed: float
    requests: int
    replies: int


async def drive(
    server: Server, people: Sequence[Person], texts: Sequence[str], each: int, within: float
) -> Load:
    """Let every person send `each` messages, taken from `texts` in turn, one at a time.

    The time is measured from the update being available to the first reply in the chat being accepted.
    `within` is the longest wait for one reply; a silent bot is an error; more than one reply per message
    shows in `replies`.
    """
    mark = server.mark()
    begun = time.monotonic()
    lots = await asyncio.gather(
        *(_turn(server, person, texts, each, within, at) for at, person in enumerate(people))
    )
    elapsed = time.monotonic() - begun
    await server.wait_quiet(within)
    ids = {person.id for person in people}
    replies = sum(
        1 for event in server.world.events[mark:] if event.kind == "message" and event.chat_id in ids
    )
    return Load([one for lot in lots for one in lot], elapsed, each * len(people), replies)


async def _turn(
    server: Server, person: Person, texts: Sequence[str], each: int, within: float, at: int
) -> list[float]:
    taken = []
    for turn in range(each):
        answered = asyncio.get_running_loop().create_future()
        server.world.on_message[person.id] = answered
        begun = time.monotonic()
        person.writes(texts[(at + turn) % len(texts)])
        try:
            ended = await asyncio.wait_for(answered, within)
        except TimeoutError as error:
            said = texts[(at + turn) % len(texts)]
            raise AssertionError(f"no reply to {said!r} from {person.name} within {within} s") from error
        taken.append(ended - begun)
    return taken
