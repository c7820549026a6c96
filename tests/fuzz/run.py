"""The fuzz run: two bars, a stranger, two groups, and random actions."""

from __future__ import annotations

import logging
from collections import deque
from dataclasses import dataclass, field
from datetime import UTC, datetime
from random import Random
from typing import Any

from bot.channels.telegram.channel import TelegramChannel
from storage.store import Store
from tests.api import Group, Person, Server
from tests.api.world import Query
from tests.channels.telegram.conftest import settings_for
from tests.fuzz.lines import known_lines, mutated, sendable
from tests.house import Hands

_BOT = "peel_ledger_test_bot"
_SECRETS = {
    "A": ("Zyxwolf", "Quarkbane", "Vorplum", "Abelone"),
    "B": ("Mumblethorpe", "Snarkbergamot", "Wizzlefig", "Bramblina"),
}
_SET_UP = ("Europe/Lisbon", "looks right")
_BROKEN = "Something broke here"


class _Errors(logging.Handler):
    """Collects the bot's logged errors."""

    def __init__(self) -> None:
        super().__init__(logging.ERROR)
        self.found: list[str] = []

    def emit(self, record: logging.LogRecord) -> None:
        self.found.append(logging.Formatter().format(record))


@dataclass
class Side:
    """One bar: its people, its group, and its private words."""

    key: str
    owner: Person
    member: Person
    group: Group
    lines: list[str]

    @property
    def chats(self) -> set[int]:
        """The chats that may contain this bar's words."""
        return {self.owner.id, self.member.id, self.group.id}


@dataclass
class Found:
    """The findings of a run, each with its steps, and the number of messages."""

    problems: list[str] = field(default_factory=list)
    sent: dict[str, int] = field(default_factory=dict)
    answers: int = 0
    not_understood: int = 0


class Fuzz:
    """Sends random messages one after another and checks everything the bot does."""

    def __init__(self, server: Server, store: Store, seed: int) -> None:
        self.server = server
        self.store = store
        self.random = Random(seed)
        self.clock = Hands(datetime(2026, 11, 25, 18, 0, tzinfo=UTC))
        self.channel = TelegramChannel(settings_for(server, store), store, self.clock)
        self.errors = _Errors()
        self.found = Found()
        self.sides: list[Side] = []
        self.history: deque[str] = deque(maxlen=12)
        self.seen_events = 0
        self.said: dict[int, deque[tuple[Person, int, Group | None]]] = {}

    async def start(self) -> None:
        """Start the bot and fill the two bars."""
        logging.getLogger().addHandler(self.errors)
        self.server.idle = lambda: self.channel.idle
        await self.channel.start()
        for key, names in _SECRETS.items():
            self.sides.append(await self._side(key, names))
        self.stranger = self.server.person("Eve")
        self.look()

    async def stop(self) -> None:
        """Stop and close everything."""
        await self.channel.stop()
        logging.getLogger().removeHandler(self.errors)

    async def _side(self, key: str, names: tuple[str, ...]) -> Side:
        bar, formula, fruit, who = names
        owner, member = self.server.person(f"{who} One"), self.server.person(f"{who} Two")
        await owner.says("/start")
        for answer in (f"The {bar}", *_SET_UP):
            await owner.says(answer)
        await self.join(owner, member)
        await owner.says(
            f"new formula {formula} mist\n{formula} oil 12 ml\npropylene glycol 22 ml\n"
            "neutral spirit 96 % 62 ml\nkind aroma mist\nfood-grade " + f"{formula} oil"
        )
        await owner.says(f"new formula {formula} syrup\nsugar 100 g\n{fruit} juice 100 ml\nkind syrup")
        await owner.says(f"price {fruit} 0.60 each")
        for line in (
            "batch #1 to 400 ml",
            "batch #1 to 8 x 50 ml",
            f"waste 3 {fruit} mouldy",
            "check 1 hazy",
        ):
            await owner.says(line)
        group = self.server.group(f"{bar} back bar", [owner, member])
        await owner.says(f"/start@{_BOT}", chat=group)
        own = [f"scale {formula} mist to 8 x 50 ml", f"waste 6 {fruit} mouldy", f"cost {formula} mist x2"]
        return Side(key, owner, member, group, known_lines() + own * 6)

    async def join(self, owner: Person, member: Person) -> None:
        """Add a member, or add them again."""
        shown = await owner.says("invite")
        code = next((line for line in shown.text.splitlines() if line.startswith("join ")), None)
        if code is not None:
            await member.says(code)

    # -- steps --------------------------------------------------------------------------------

    async def run(self, steps: int) -> Found:
        """Run this many steps; errors are in the result."""
        for step in range(steps):
            if step % 500 == 499:
                await self._back_to_work()
            await self._step()
            if step % 4 == 0:
                await self.server.wait_quiet()
                self.look()
        await self.server.wait_quiet()
        self.look()
        return self.found

    async def _step(self) -> None:
        kinds = (
            (self._says, 34), (self._taps, 34), (self._forged_tap, 6), (self._edits, 8), (self._photo, 5),
            (self._inline, 5), (self._turns, 3), (self._noise, 3), (self._twice, 2),
        )  # fmt: skip
        does = self.random.choices([kind for kind, _weight in kinds], [weight for _kind, weight in kinds])[0]
        name = does.__name__.strip("_")
        self.found.sent[name] = self.found.sent.get(name, 0) + 1
        await does()

    def _somebody(self) -> tuple[Side, Person, Group | None]:
        side = self.random.choice(self.sides)
        if self.random.random() < 0.06:
            return side, self.stranger, None
        person = self.random.choice((side.owner, side.owner, side.member))
        return side, person, side.group if self.random.random() < 0.12 else None

    def _line(self, side: Side, group: Group | None) -> str:
        line = mutated(self.random, self.random.choice(side.lines), side.lines)
        if group is not None and self.random.random() < 0.8:
            word, _space, rest = line.partition(" ")
            line = f"/{word}@{_BOT} {rest}"
        elif self.random.random() < 0.15:
            line = "/" + line
        return sendable(line)

    async def _says(self) -> None:
        side, person, group = self._somebody()
        # A stranger knows no words of a bar.
        line = self._line(side, group) if person is not self.stranger else sendable(self._plain(side))
        self._note(person, group, line)
        number = person.writes(line, chat=group)
        self._remember(person, number, group)

    def _plain(self, side: Side) -> str:
        others = known_lines()
        return mutated(self.random, self.random.choice(others), others)

    def _remember(self, person: Person, number: int, group: Group | None) -> None:
        self.said.setdefault(person.id, deque(maxlen=8)).append((person, number, group))

    async def _taps(self) -> None:
        side, person, group = self._somebody()
        place = group or person
        messages = [one for one in self.server.chat(place).messages.values() if one.by_bot and one.markup]
        if not messages:
            return
        # The newest messages most of the time, as people do; sometimes old ones.
        at = min(int(self.random.expovariate(0.7)), len(messages) - 1)
        message = messages[-1 - at]
        data = [
            button["callback_data"]
            for row in (message.markup or {}).get("inline_keyboard", ())
            for button in row
            if "callback_data" in button
        ]
        if data and person in {side.owner, side.member, self.stranger}:
            self._tap(person, place, message.id, self.random.choice(data))

    async def _forged_tap(self) -> None:
        """A tap with data that no button had, as a hostile client can send."""
        side, person, group = self._somebody()
        place = group or person
        messages = [one for one in self.server.chat(place).messages.values() if one.by_bot]
        # A message that forces a reply has no buttons, and Telegram lets nobody edit it.
        messages = [one for one in messages if "inline_keyboard" in (one.markup or {"inline_keyboard": []})]
        if messages:
            data = sendable(self._plain(side)).encode()[:64].decode("utf-8", "ignore")
            self._tap(person, place, self.random.choice(messages).id, data or "x")

    def _tap(self, person: Person, place: Person | Group, message_id: int, data: str) -> None:
        self._note(person, place if isinstance(place, Group) else None, f"[{data}] on {message_id}")
        world, chat = self.server.world, self.server.chat(place)
        number = world.number("query")
        query = Query(f"{person.id}{number:09d}", chat.id, f"a tap with {data!r}", world.clock())
        world.queries[query.id] = query
        body: dict[str, Any] = {
            "id": query.id,
            "from": person.user.as_json(),
            "message": chat.messages[message_id].data,
            "chat_instance": str(chat.id),
            "data": data,
        }
        world.updates.push("callback_query", body, lambda update: setattr(query, "update_id", update))

    async def _edits(self) -> None:
        side, person, _group = self._somebody()
        mine = self.said.get(person.id)
        if not mine or person is self.stranger:
            return
        who, number, group = self.random.choice(mine)
        line = self._line(side, group)
        self._note(person, group, f"(edits {number}) {line}")
        await who.edits(number, line, chat=group, wait=False)

    async def _photo(self) -> None:
        side, person, group = self._somebody()
        caption = "" if self.random.random() < 0.4 else self._line(side, group)[:1024]
        if person is self.stranger:
            caption = ""
        place = self.server.chat(group or person)
        bots = [one.id for one in place.messages.values() if one.by_bot and not one.deleted]
        reply_to = self.random.choice(bots[-6:]) if bots and self.random.random() < 0.6 else None
        self._note(person, group, f"(photo, replying to {reply_to}) {caption}")
        await person.sends_photo(caption, chat=group, reply_to=reply_to, wait=False)

    async def _inline(self) -> None:
        side, person, _group = self._somebody()
        text = "" if person is self.stranger else self._line(side, None)[:200]
        self._note(person, None, f"(inline) {text}")
        answer = await person.types_inline(text)
        shown = str(answer.results)
        for other in self.sides:
            # The stranger may have created a bar of her own by now; she may see nothing of these two.
            if (other is not side or person is self.stranger) and any(
                secret in shown for secret in _SECRETS[other.key]
            ):
                self._problem(f"{person.name} was shown words of bar {other.key}: {shown[:300]}")

    async def _turns(self) -> None:
        await self.server.wait_quiet()
        hours = self.random.choice((0.1, 1, 6, 12, 24))
        self._note(self.stranger, None, f"(the clock goes on {hours} hours)")
        self.clock.turn(hours=hours)
        await self.channel.ticker.tick()

    async def _noise(self) -> None:
        _side, person, _group = self._somebody()
        signs = [chr(self.random.choice((self.random.randint(1, 0x2FF), self.random.randint(1, 0x1FFFF))))
                 for _count in range(self.random.choice((1, 5, 40, 4000)))]  # fmt: skip
        line = sendable("".join(sign for sign in signs if not 0xD800 <= ord(sign) < 0xE000))
        self._note(person, None, line)
        person.writes(line)

    async def _twice(self) -> None:
        if self.random.random() < 0.5:
            self.server.duplicate_next_update()
        else:
            self.server.reorder_next_updates(2)
            await self._says()
        await self._says()

    async def _back_to_work(self) -> None:
        """Add members who left again, so that the run keeps its range."""
        await self.server.wait_quiet()
        for side in self.sides:
            await side.owner.says("cancel")
            if "not in a bar" in (await side.member.says("team")).text:
                await self.join(side.owner, side.member)
            await side.owner.says("restore bar")

    # -- checking -----------------------------------------------------------------------------

    def _note(self, person: Person, group: Group | None, what: str) -> None:
        self.history.append(f"{person.name}{' in the group' if group else ''}: {what[:160]!r}")

    def _problem(self, what: str) -> None:
        steps = "\n    ".join(self.history)
        self.found.problems.append(f"{what}\n  after:\n    {steps}")

    def look(self) -> None:
        """Check what the bot did since the last call."""
        for error in self.errors.found:
            self._problem(f"error: {error[-1800:]}")
        self.errors.found.clear()
        for violation in self.server.violations:
            if "inline query answered twice" in violation:
                continue  # a repeated update: an answer to it changes nothing
            self._problem(f"refused by Telegram: {violation}")
        self.server.violations.clear()
        events = self.server.world.events
        for event in events[self.seen_events :]:
            if event.seen is None:
                continue
            self.found.answers += 1
            labels = " ".join(event.seen.labels)
            self._look_at(event.chat_id, f"{event.seen.text}\n{labels}")
        self.seen_events = len(events)

    def _look_at(self, chat_id: int, shown: str) -> None:
        if _BROKEN in shown:
            self._problem(f"said that something broke: {shown[:200]}")
        if "I did not understand" in shown:
            self.found.not_understood += 1
        for side in self.sides:
            if chat_id in side.chats:
                continue
            for secret in _SECRETS[side.key]:
                if secret.casefold() in shown.casefold():
                    self._problem(f"bar {side.key}'s {secret} was shown in chat {chat_id}: {shown[:300]}")
