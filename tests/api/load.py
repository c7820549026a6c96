"""Many chats at once, each sending its next message when the last one was answered."""

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
    """What a load showed: seconds from update to reply for each message, the whole time, replies seen."""

    seconds: list[float]
    elapsed: float
    requests: int
    replies: int


async def drive(
    server: Server, people: Sequence[Person], texts: Sequence[str], each: int, within: float
) -> Load:
    """Let every person send `each` messages, taken from `texts` in turn, one at a time.

    Time runs from the moment the update can be fetched to the moment the first reply in the chat is
    accepted. `within` is the longest wait for one reply; a bot that stays silent is an error, one that
    says more than one thing per message shows in `replies`.
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
