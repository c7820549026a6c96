"""Phones: people who write, tap and send pictures, and wait for the replies."""

from __future__ import annotations

from typing import TYPE_CHECKING

from tests.api.keyboards import button_rows, payload_is_valid, payload_of
from tests.api.pictures import size_of, small_png
from tests.api.refusals import JsonDict
from tests.api.seen import Button, Followed, InlineAnswer, Seen
from tests.api.talk import bot_standing, command_entities, reaches_bot
from tests.api.world import Chat, Message, Query, User

if TYPE_CHECKING:
    from tests.api.group import Group
    from tests.api.server import Server

_LONGEST = 4096


class Person:
    """A person with a phone.

    Actions wait until the bot has shown at least `expects` messages in that chat (0: until it certainly shows
    none) and return them. With `wait=False` they only send.
    """

    def __init__(
        self,
        server: Server,
        id: int,  # noqa: A002
        first_name: str,
        language_code: str = "en",
    ) -> None:
        self.server = server
        self.user = User(id, first_name, language_code)
        self.world = server.world
        self.world.users[id] = self.user
        self.world.chats.setdefault(id, Chat(id, "private", first_name, started=False))

    @property
    def id(self) -> int:
        """The person's number, also that of the private chat."""
        return self.user.id

    @property
    def name(self) -> str:
        """The first name."""
        return self.user.first_name

    # -- writing ------------------------------------------------------------------------------

    async def says(
        self,
        text: str,
        *,
        chat: Group | None = None,
        reply_to: Seen | int | None = None,
        thread: int | None = None,
        expects: int = 1,
        within: float | None = None,
        wait: bool = True,
    ) -> Followed:
        """Write a text."""
        mark = self.server.mark()
        place = self.server.chat(chat or self)
        said = self.writes(text, chat=chat, reply_to=reply_to, thread=thread)
        return await self._after(place, mark, said, expects, within, wait=wait)

    def writes(
        self,
        text: str,
        *,
        chat: Group | None = None,
        reply_to: Seen | int | None = None,
        thread: int | None = None,
    ) -> int:
        """Write a text without waiting; returns the number of the message."""
        if not 0 < len(text) <= _LONGEST:
            raise ValueError("a phone sends 1 to 4096 characters at a time")
        content: JsonDict = {"text": text}
        entities = command_entities(text)
        if entities:
            content["entities"] = entities
        return self.sends(content, chat=chat, reply_to=reply_to, thread=thread, shown=text)

    def sends(
        self,
        content: JsonDict,
        *,
        chat: Group | None = None,
        reply_to: Seen | int | None = None,
        thread: int | None = None,
        shown: str = "(something)",
        file_id: str | None = None,
    ) -> int:
        """Send a message of any content, given as the fields of the Message object."""
        place = self._enter(chat)
        reply = self._find(place, reply_to)
        data = self._message(place, content, reply, thread)
        delivered, meant = reaches_bot(place, data.get("text") or data.get("caption") or "", reply)
        message = Message(data, by_bot=False, html=shown, meant_for_bot=meant, file_id=file_id)
        place.messages[message.id] = message
        topic = place.topics.get(thread or 0)
        self.world.note(place, f"{self.name} #{topic}" if topic else self.name, shown)
        message.delivered = delivered and self.world.updates.push("message", data)
        return message.id

    async def edits(
        self,
        message: Followed | int,
        text: str,
        *,
        chat: Group | None = None,
        expects: int = 1,
        within: float | None = None,
        wait: bool = True,
    ) -> Followed:
        """Edit the person's own text; `message` is the result of `says`, or the number."""
        place = self.server.chat(chat or self)
        number = message if isinstance(message, int) else message.said
        own = place.messages[number or 0]
        if own.data["from"]["id"] != self.id:
            raise AssertionError(f"{self.name} cannot edit the message of somebody else")
        mark = self.server.mark()
        own.data = {**own.data, "text": text, "edit_date": int(self.world.clock())}
        own.data.pop("entities", None)
        entities = command_entities(text)
        if entities:
            own.data["entities"] = entities
        self.world.note(place, f"{self.name} (edited)", text)
        delivered = reaches_bot(place, text, None)[0] or own.meant_for_bot
        own.delivered = delivered and self.world.updates.push("edited_message", own.data)
        return await self._after(place, mark, own.id, expects, within, wait=wait)

    def deletes(self, message: Followed | int, *, chat: Group | None = None) -> None:
        """Delete the person's own message; bots are not told."""
        place = self.server.chat(chat or self)
        place.messages[(message if isinstance(message, int) else message.said) or 0].deleted = True
        self.world.note(place, self.name, "(deleted a message)")

    async def sends_photo(
        self,
        caption: str = "",
        *,
        content: bytes | None = None,
        chat: Group | None = None,
        reply_to: Seen | int | None = None,
        thread: int | None = None,
        expects: int = 1,
        within: float | None = None,
        wait: bool = True,
    ) -> Followed:
        """Send a picture, a small grey one unless `content` is given."""
        fields, file_id = self._photo(content or small_png(64, 48), caption)
        mark = self.server.mark()
        shown = f"<photo> {caption}".strip()
        said = self.sends(fields, chat=chat, reply_to=reply_to, thread=thread, shown=shown, file_id=file_id)
        return await self._after(self.server.chat(chat or self), mark, said, expects, within, wait=wait)

    async def sends_album(self, *captions: str, chat: Group | None = None, expects: int = 1) -> Followed:
        """Send a photo for each caption, all in one album."""
        mark = self.server.mark()
        group = {"media_group_id": str(self.world.number("album"))}
        for caption in captions:
            fields, file_id = self._photo(small_png(64, 48), caption)
            said = self.sends({**fields, **group}, chat=chat, shown=f"<photo> {caption}", file_id=file_id)
        return await self._after(self.server.chat(chat or self), mark, said, expects, None, wait=True)

    def _photo(self, content: bytes, caption: str) -> tuple[JsonDict, str]:
        file_id, unique_id = self.world.store_file(content, "photo", "photo.png")
        width, height = size_of(content) or (64, 48)
        size = {"width": width, "height": height, "file_size": len(content)}
        fields: JsonDict = {"photo": [{"file_id": file_id, "file_unique_id": unique_id, **size}]}
        return {**fields, "caption": caption} if caption else fields, file_id

    async def sends_document(
        self,
        name: str,
        content: bytes,
        caption: str = "",
        *,
        chat: Group | None = None,
        expects: int = 1,
        within: float | None = None,
        wait: bool = True,
    ) -> Followed:
        """Send a file."""
        file_id, unique_id = self.world.store_file(content, "document", name)
        about = {
            "file_id": file_id,
            "file_unique_id": unique_id,
            "file_name": name,
            "file_size": len(content),
        }
        fields: JsonDict = {"document": about}
        if caption:
            fields["caption"] = caption
        mark = self.server.mark()
        said = self.sends(fields, chat=chat, shown=f"<file {name}> {caption}".strip(), file_id=file_id)
        return await self._after(self.server.chat(chat or self), mark, said, expects, within, wait=wait)

    async def opens_link(
        self, payload: str, *, expects: int = 1, within: float | None = None, wait: bool = True
    ) -> Followed:
        """Follow a link to the bot with a start payload, unblocking the bot if necessary."""
        if not payload_is_valid(payload):
            raise AssertionError(f"a phone drops this start payload: {payload!r}")
        if self.server.chat(self).blocked:
            self._set_blocked(blocked=False)
        return await self.says(f"/start {payload}", expects=expects, within=within, wait=wait)

    # -- tapping ------------------------------------------------------------------------------

    async def taps(
        self,
        button: str,
        message: Seen | int | None = None,
        *,
        chat: Group | None = None,
        expects: int = 1,
        within: float | None = None,
        wait: bool = True,
    ) -> Followed:
        """Tap the button with this label or callback data, on the latest bot message that has buttons.

        A message given as `Seen` may have lost the button since: this is the tap of a phone that lags behind.
        """
        place = self.server.chat(chat or self)
        target, found = self._button(place, button, message)
        if found.url is not None:
            payload = payload_of(found.url)
            if payload is None:
                raise AssertionError(f"[{found.label}] leaves Telegram for {found.url}")
            return await self.opens_link(payload, expects=expects, within=within, wait=wait)
        if found.data is None:
            return await self.says(found.label, chat=chat, expects=expects, within=within, wait=wait)
        mark = self.server.mark()
        self.world.note(place, f"{self.name} taps", f"[{found.label}]")
        query = Query(
            f"{self.id}{self.world.number('query'):09d}",
            place.id,
            f"the tap on [{found.label}]",
            self.world.clock(),
        )
        self.world.queries[query.id] = query
        shown: JsonDict = target.data
        if target.deleted:
            shown = {"chat": place.as_json(), "message_id": target.id, "date": 0}
        body = {
            "id": query.id,
            "from": self.user.as_json(),
            "message": shown,
            "chat_instance": str(place.id),
            "data": found.data,
        }
        self.world.updates.push("callback_query", body, lambda number: setattr(query, "update_id", number))
        if not wait:
            return Followed(())
        return await self.server.follow(place.id, mark, expects=expects, within=within, query_id=query.id)

    def _button(self, place: Chat, wanted: str, message: Seen | int | None) -> tuple[Message, Button]:
        if message is None:
            holding = [
                one for one in place.messages.values() if one.by_bot and one.markup and not one.deleted
            ]
            if not holding:
                raise AssertionError(f"no message with buttons in:\n{self.server.transcript(place.id)}")
            target = holding[-1]
        else:
            target = place.messages[message if isinstance(message, int) else message.message_id]
        rows = list(button_rows(target.markup))
        if isinstance(message, Seen):
            rows += message.buttons
        buttons = [button for row in rows for button in row]
        for button in buttons:
            if wanted == button.label:
                return target, button
        for button in buttons:
            if wanted == button.data:
                return target, button
        raise AssertionError(f"no button {wanted!r}, only {[button.label for button in buttons]}")

    async def types_inline(
        self, query: str, *, offset: str = "", within: float | None = None
    ) -> InlineAnswer:
        """Type @bot and a query in any chat; returns the list of results."""
        mark = self.server.mark()
        asked = Query(
            f"{self.id}{self.world.number('query'):09d}", self.id, "the inline query", self.world.clock()
        )
        self.world.queries[asked.id] = asked
        body = {"id": asked.id, "from": self.user.as_json(), "query": query, "offset": offset}
        self.world.updates.push("inline_query", body, lambda number: setattr(asked, "update_id", number))
        await self.server.follow(self, mark, within=within, query_id=asked.id)
        detail = next(
            event.detail for event in self.world.events[mark:] if event.detail.get("query") == asked.id
        )
        return InlineAnswer(
            tuple(detail["results"]), detail["cache_time"], detail["is_personal"], detail["next_offset"]
        )

    # -- blocking the bot ---------------------------------------------------------------------

    def blocks_bot(self) -> None:
        """Block the bot: it is told, and may no longer write."""
        self._set_blocked(blocked=True)

    def unblocks_bot(self) -> None:
        """Let the bot write again."""
        self._set_blocked(blocked=False)

    def _set_blocked(self, *, blocked: bool) -> None:
        place = self.server.chat(self)
        place.blocked = blocked
        self.world.note(place, self.name, "(blocked the bot)" if blocked else "(unblocked the bot)")
        old, new = ("member", "kicked") if blocked else ("kicked", "member")
        self.world.updates.push("my_chat_member", bot_standing(self.world, place, self.user, old, new))

    # -- internals ----------------------------------------------------------------------------

    def _enter(self, chat: Group | None) -> Chat:
        place = self.server.chat(chat or self)
        if place.kind == "private":
            if place.blocked:
                raise AssertionError(f"{self.name} has blocked the bot and cannot write to it")
            place.started = True
        elif place.migrated_to is not None or self.id not in place.members:
            raise AssertionError(f"{self.name} is not in {place.title}")
        return place

    def _find(self, place: Chat, wanted: Seen | int | None) -> Message | None:
        if wanted is None:
            return None
        return place.messages[wanted if isinstance(wanted, int) else wanted.message_id]

    def _message(self, place: Chat, content: JsonDict, reply: Message | None, thread: int | None) -> JsonDict:
        if thread is not None and thread not in place.topics:
            raise AssertionError(f"{place.title} has no topic {thread}")
        data: JsonDict = {
            "message_id": self.world.next_message_id(place),
            "from": self.user.as_json(),
            "chat": place.as_json(),
            "date": int(self.world.clock()),
            **content,
        }
        if reply is not None:
            data["reply_to_message"] = {
                name: value for name, value in reply.data.items() if name != "reply_to_message"
            }
            if place.forum and thread is None and reply.data.get("is_topic_message"):
                thread = reply.data["message_thread_id"]
            elif place.kind == "supergroup" and not place.forum:
                # A reply in a supergroup opens a thread, which is not a topic and must not be sent to.
                data["message_thread_id"] = reply.data.get("message_thread_id", reply.id)
        if thread is not None:
            data |= {"message_thread_id": thread, "is_topic_message": True}
        return data

    async def _after(
        self, place: Chat, mark: int, said: int, expects: int, within: float | None, *, wait: bool
    ) -> Followed:
        if not wait:
            return Followed((), said=said)
        if expects and not place.messages[said].delivered:
            raise AssertionError(f"not delivered to the bot:\n{place.notes[-1]}")
        return await self.server.follow(place.id, mark, expects=expects, within=within, said=said)
