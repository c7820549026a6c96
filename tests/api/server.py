"""The server for tests: start it, inspect it, inject faults, wait."""

from __future__ import annotations

import asyncio
import json
import socket
import time
from collections.abc import Callable, Sequence
from types import TracebackType

from tests.api.control import Control
from tests.api.faults import Fault, Faults, Predicate
from tests.api.group import Group
from tests.api.menus import menu_for
from tests.api.person import Person
from tests.api.refusals import JsonDict
from tests.api.seen import Followed, Seen
from tests.api.sending import look
from tests.api.wire import Wire
from tests.api.world import BOT_USERNAME, TOKEN, Call, Chat, Event, World

__all__ = ["BOT_USERNAME", "TOKEN", "Server", "free_port"]

_VISIBLE = {"message", "edit", "delete", "inline"}


def free_port() -> int:
    """Return a port of loopback that nothing listens on."""
    with socket.socket() as looked_for:
        looked_for.bind(("127.0.0.1", 0))
        return int(looked_for.getsockname()[1])


class Server:
    """A Bot API server on 127.0.0.1 for one bot.

    `patience` is how long an action waits for the bot, `settle` how long the bot must be silent before it
    counts as finished. A test that runs the bot in its own process can pass `idle`, a function that says
    whether the bot has nothing left to do for its confirmed updates. Then a wait is neither longer than
    needed nor cut short.
    """

    def __init__(self) -> None:
        self.world = World()
        self.faults = Faults()
        self.wire = Wire(self.world, self.faults, Control(self))
        self.patience = 60.0  # the machine may be busy
        self.settle = 0.03
        self.idle: Callable[[], bool] | None = None
        self._unanswered_reported = False

    # -- lifecycle ----------------------------------------------------------------------------

    async def start(self, port: int = 0) -> None:
        """Begin to listen."""
        await self.wire.start(port)

    async def stop(self) -> list[str]:
        """Stop, and return all violations, including unanswered taps."""
        self._report_unanswered()
        await self.world.updates.close()
        await self.wire.stop()
        return self.world.violations

    async def __aenter__(self) -> Server:
        await self.start()
        return self

    async def __aexit__(
        self, kind: type[BaseException] | None, error: BaseException | None, trace: TracebackType | None
    ) -> None:
        await self.stop()

    def _report_unanswered(self) -> None:
        if self._unanswered_reported:
            return
        self._unanswered_reported = True
        waiting = {queued.id for queued in self.world.updates.pending if not queued.handed}
        for query in self.world.queries.values():
            if query.answered or query.expired or query.update_id in waiting or query.update_id is None:
                continue
            self.world.violate(f"{query.what} never answered: the phone shows a clock on the button")

    @property
    def token(self) -> str:
        """The only token this server knows."""
        return self.world.token

    @property
    def base_url(self) -> str:
        """For ApplicationBuilder.base_url."""
        return f"http://127.0.0.1:{self.wire.port}/bot"

    @property
    def base_file_url(self) -> str:
        """For ApplicationBuilder.base_file_url."""
        return f"http://127.0.0.1:{self.wire.port}/file/bot"

    # -- people and groups --------------------------------------------------------------------

    def person(self, first_name: str = "Ana", language_code: str = "en") -> Person:
        """A new person, who has not written to the bot yet."""
        return Person(self, 1000 + self.world.number("person"), first_name, language_code)

    def group(
        self,
        title: str,
        members: Sequence[Person],
        *,
        forum: bool = False,
        privacy: bool = True,
        supergroup: bool = False,
        announce: bool = True,
    ) -> Group:
        """A group of these people, created by the first one, with the bot in it."""
        return Group.made(
            self, title, members, forum=forum, privacy=privacy, supergroup=supergroup, announce=announce
        )

    def chat(self, place: Person | Group | int) -> Chat:
        """The chat of a person, a group or a number."""
        return self.world.chats[place if isinstance(place, int) else place.id]

    # -- inspection ---------------------------------------------------------------------------

    @property
    def violations(self) -> list[str]:
        """Actions of the bot that Telegram refuses or that harm a phone."""
        return self.world.violations

    @property
    def calls(self) -> list[Call]:
        """The requests of the bot, oldest first (the last 20000)."""
        return list(self.world.calls)

    def messages(self, place: Person | Group | int) -> list[Seen]:
        """The bot's current messages in the chat, without the deleted ones."""
        chat = self.chat(place)
        return [
            look(self.world, chat, message, edited="edit_date" in message.data)
            for message in chat.messages.values()
            if message.by_bot and not message.deleted
        ]

    def transcript(self, place: Person | Group | int) -> str:
        """The transcript as lines "who: text", buttons as [label]."""
        return "\n".join(self.chat(place).notes)

    def menu(self, person: Person, place: Group | None = None) -> list[str]:
        """The commands offered by the person's phone there, without the slash."""
        commands = menu_for(self.world, person.user, self.chat(place or person))
        return [str(command["command"]) for command in commands]

    # -- faults -------------------------------------------------------------------------------

    def fail_next(self, method: str, how: Fault, times: int = 1, when: Predicate | None = None) -> None:
        """Let the next `times` calls of `method` fail; `when` looks at the raw parameters.

        "*" stands for any method, "file" for the download of a file.
        """
        self.faults.order(method, how, times, when)

    def duplicate_next_update(self) -> None:
        """Deliver the next update twice, with the same id."""
        self.world.updates.duplicate_next()

    def reorder_next_updates(self, count: int = 2) -> None:
        """Hold the next updates until there are `count`, then number them in the opposite order."""
        self.world.updates.reorder_next(count)

    def expire_queries(self) -> None:
        """Expire all taps and inline queries so far, as after a long stop."""
        for query in self.world.queries.values():
            query.expired = not query.answered

    async def post_to_webhook(self, kind: str, body: JsonDict, secret: str | None = None) -> int:
        """Post one update to the webhook now, outside the queue; returns the HTTP status.

        `secret` replaces the one set by the bot, "" omits the header.
        """
        number = self.world.updates.next_id
        self.world.updates.next_id += 1
        return await self.world.updates.post(json.dumps({"update_id": number, kind: body}).encode(), secret)

    # -- waiting ------------------------------------------------------------------------------

    def mark(self) -> int:
        """A point in time, for `follow`."""
        return len(self.world.events)

    async def wait_quiet(self, within: float | None = None) -> None:
        """Wait until the bot has received and confirmed all updates and has finished with them."""
        within = self.patience if within is None else within
        if not await self.world.until(lambda: not self.world.updates.pending, within):
            waiting = len(self.world.updates.pending)
            raise AssertionError(f"the bot has not confirmed {waiting} updates within {within} s")
        await self._settled(within)

    async def _settled(self, within: float) -> None:
        deadline = time.monotonic() + within
        while True:
            if self.idle is not None:
                if not self.world.in_flight and not self.world.updates.pending and self.idle():
                    return
                pause = 0.002
            else:
                pause = self.settle - (time.monotonic() - self.world.active_at)
                if pause <= 0 and not self.world.in_flight:
                    return
            if time.monotonic() > deadline:
                raise AssertionError(f"the bot is still busy after {within} s")
            await asyncio.sleep(max(pause, 0.001))

    async def follow(
        self,
        place: Person | Group | int,
        mark: int,
        *,
        expects: int = 1,
        within: float | None = None,
        said: int | None = None,
        query_id: str | None = None,
    ) -> Followed:
        """The bot's messages in the chat after `mark`: at least `expects`, or none if it is 0.

        Fails with the transcript if there are too few in time, or any when silence was expected.
        """
        chat = self.chat(place)
        within = self.patience if within is None else within

        def count() -> int:
            return sum(1 for event in self._events(chat.id, mark, query_id) if _is_visible(event))

        if expects:
            await self._wait_for(lambda: count() >= expects, within)
            if count() < expects:
                what = "nothing" if not count() else f"only {count()} of {expects}"
                raise AssertionError(f"{what} within {within} s from the bot in:\n{self.transcript(chat.id)}")
            await self._settled(within)
        else:
            await self.wait_quiet(within)
            if self.idle is None:
                await asyncio.sleep(3 * self.settle)
            if count():
                raise AssertionError(f"silence was expected in:\n{self.transcript(chat.id)}")
        return self._followed(chat.id, mark, said, query_id)

    async def _wait_for(self, ready: Callable[[], bool], within: float) -> None:
        """Wait until `ready`, or until the bot has certainly finished without it."""
        if self.idle is None:
            await self.world.until(ready, within)
            return
        deadline = time.monotonic() + within
        while not ready() and time.monotonic() < deadline:
            # Polled by time: the end of work inside the bot is not an event of this server.
            if not self.world.updates.pending and not self.world.in_flight and self.idle():
                return
            await self.world.until(ready, 0.005)

    def _events(self, chat_id: int, mark: int, query_id: str | None) -> list[Event]:
        return [
            event
            for event in self.world.events[mark:]
            if event.chat_id == chat_id
            and (event.kind not in {"toast", "inline"} or event.detail.get("query") == query_id)
        ]

    def _followed(self, chat_id: int, mark: int, said: int | None, query_id: str | None) -> Followed:
        events = self._events(chat_id, mark, query_id)
        toasts = [event.detail for event in events if event.kind == "toast" and event.detail["text"]]
        return Followed(
            seen=tuple(event.seen for event in events if event.seen is not None),
            said=said,
            toast=toasts[-1]["text"] if toasts else None,
            alert=bool(toasts and toasts[-1]["alert"]),
            deleted=tuple(
                event.message_id
                for event in events
                if event.kind == "delete" and event.message_id is not None
            ),
        )


def _is_visible(event: Event) -> bool:
    return event.kind in _VISIBLE or (event.kind == "toast" and bool(event.detail["text"]))
