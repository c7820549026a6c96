"""Groups: creation, members, topics, and the upgrade to a supergroup."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING, Literal

from tests.api.person import Person
from tests.api.refusals import JsonDict
from tests.api.talk import bot_standing
from tests.api.world import BOT_USERNAME, Chat, Message

if TYPE_CHECKING:
    from tests.api.server import Server


class Group:
    """A group of people with the bot among them.

    The methods only queue the updates that Telegram would send; `Server.wait_quiet` waits until the bot has
    processed them.
    """

    def __init__(self, server: Server, chat: Chat, founder: Person) -> None:
        self.server = server
        self.place = chat
        self.founder = founder

    @classmethod
    def made(
        cls,
        server: Server,
        title: str,
        members: Sequence[Person],
        *,
        forum: bool = False,
        privacy: bool = True,
        supergroup: bool = False,
        announce: bool = True,
    ) -> Group:
        """Create a group; the first member is its creator. `announce` tells the bot that it was added."""
        founder = members[0]
        chat = _new_chat(server, title, "supergroup" if forum or supergroup else "group")
        chat.forum, chat.privacy = forum, privacy
        chat.members = {member.id: "member" for member in members} | {founder.id: "creator"}
        group = cls(server, chat, founder)
        if announce:
            group.adds_bot()
        return group

    @property
    def id(self) -> int:
        """The number of the chat, a new one after `migrate`."""
        return self.place.id

    # -- the bot joins and leaves --------------------------------------------------------------

    def adds_bot(self, by: Person | None = None, payload: str | None = None) -> None:
        """Add the bot, as by a startgroup link if there is a payload."""
        by = by or self.founder
        self._bot_becomes("member", by, old="left")
        self._service(by, {"new_chat_members": [self.server.world.bot_user()]}, f"(added @{BOT_USERNAME})")
        if payload is not None:
            by.writes(f"/start@{BOT_USERNAME} {payload}", chat=self)

    def removes_bot(self, by: Person | None = None, *, kicked: bool = True) -> None:
        """Remove the bot; with `kicked` it may not come back."""
        by = by or self.founder
        # Basic groups still send a service message about it, supergroups do not.
        if self.place.kind == "group":
            self._service(
                by, {"left_chat_member": self.server.world.bot_user()}, f"(removed @{BOT_USERNAME})"
            )
        self._bot_becomes("kicked" if kicked else "left", by)

    def promotes_bot(self, by: Person | None = None) -> None:
        """Make the bot an administrator, which also lets it read every message."""
        self._bot_becomes("administrator", by or self.founder)

    def _bot_becomes(self, status: str, by: Person, old: str | None = None) -> None:
        body = bot_standing(self.server.world, self.place, by.user, old or self.place.bot_status, status)
        self.place.bot_status = status
        self.server.world.updates.push("my_chat_member", body)

    def other_bot_says(self, text: str) -> None:
        """Another bot writes: from now on bare commands no longer go to our bot. Bots do not receive this."""
        self.place.bot_spoke_last = False
        self.server.world.note(self.place, "other bot", text)

    # -- people join and leave -----------------------------------------------------------------

    def adds(self, person: Person, by: Person | None = None) -> None:
        """Add a person."""
        self.place.members[person.id] = "member"
        self._service(
            by or self.founder, {"new_chat_members": [person.user.as_json()]}, f"(added {person.name})"
        )

    def removes(self, person: Person, by: Person | None = None) -> None:
        """A person leaves, or is removed by `by`."""
        self._service(by or person, {"left_chat_member": person.user.as_json()}, f"({person.name} is out)")
        self.place.members.pop(person.id)

    def promotes(self, person: Person) -> None:
        """Make a person an administrator."""
        self.place.members[person.id] = "administrator"

    # -- topics -------------------------------------------------------------------------------

    def opens_topic(self, name: str) -> int:
        """Open a topic in a forum; returns its number."""
        if not self.place.forum:
            raise AssertionError(f"{self.place.title} has no topics")
        about = {"name": name, "icon_color": 7322096}
        message = self._message(self.founder, {"forum_topic_created": about})
        message.data |= {"message_thread_id": message.id, "is_topic_message": True}
        self.place.topics[message.id] = name
        self._publish(self.founder, message, f"(opened #{name})")
        return message.id

    def closes_topic(self, topic: int) -> None:
        """Close a topic: only administrators may write there."""
        self.place.closed_topics.add(topic)
        thread: JsonDict = {"message_thread_id": topic, "is_topic_message": True}
        name = self.place.topics[topic]
        self._service(self.founder, {"forum_topic_closed": {}, **thread}, f"(closed #{name})")

    def deletes_topic(self, topic: int) -> None:
        """Delete a topic with all its messages; the bot is not told."""
        del self.place.topics[topic]
        for message in self.place.messages.values():
            if message.data.get("message_thread_id") == topic:
                message.deleted = True

    # -- messages and the move ----------------------------------------------------------------

    def deletes(self, message_id: int) -> None:
        """A person deletes a message; the bot is not told."""
        self.place.messages[message_id].deleted = True

    def migrate(self, *, forum: bool = False, first: Literal["to", "from"] = "to") -> int:
        """Become a supergroup; returns the new number, which this object then has.

        The bot is told that it is in the new chat, and by one service message in each chat, in the order
        given by `first`; it is never told that it left the old one (tdlib/telegram-bot-api #266).
        """
        world = self.server.world
        old = self.place
        new = _new_chat(self.server, old.title, "supergroup")
        new.forum, new.privacy, new.bot_status = forum, old.privacy, old.bot_status
        new.members, new.bot_spoke_last = dict(old.members), old.bot_spoke_last
        world.updates.push(
            "my_chat_member", bot_standing(world, new, self.founder.user, "left", old.bot_status)
        )

        def leave() -> None:
            self.place = old
            self._service(self.founder, {"migrate_to_chat_id": new.id}, "(became a supergroup)")

        def arrive() -> None:
            self.place = new
            self._service(self.founder, {"migrate_from_chat_id": old.id}, "(was a group)")

        for step in (leave, arrive) if first == "to" else (arrive, leave):
            step()
        old.migrated_to = new.id
        self.place = new
        return new.id

    def _message(self, by: Person, content: JsonDict) -> Message:
        world = self.server.world
        data: JsonDict = {
            "message_id": world.next_message_id(self.place),
            "from": by.user.as_json(),
            "chat": self.place.as_json(),
            "date": int(world.clock()),
            **content,
        }
        message = Message(data, by_bot=False)
        self.place.messages[message.id] = message
        return message

    def _publish(self, by: Person, message: Message, shown: str) -> None:
        """Service messages reach every bot of the group, whatever its privacy mode."""
        self.server.world.note(self.place, by.name, shown)
        if self.place.bot_status in {"member", "administrator"}:
            self.server.world.updates.push("message", message.data)

    def _service(self, by: Person, content: JsonDict, shown: str) -> None:
        self._publish(by, self._message(by, content), shown)


def _new_chat(server: Server, title: str, kind: Literal["group", "supergroup"]) -> Chat:
    number = server.world.number(kind)
    # Telegram's two ranges: basic groups are small negative numbers, supergroups -100 and ten digits.
    chat_id = -(4_000_000 + number) if kind == "group" else -(1_001_000_000_000 + number)
    chat = server.world.chats[chat_id] = Chat(chat_id, kind, title)
    chat.numbers = 1  # a supergroup's first message is its creation; in forums 1 stands for General
    return chat
