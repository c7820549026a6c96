"""Join the photos of an album, which arrive as updates of their own, into one message."""

from __future__ import annotations

import asyncio
import json
from collections.abc import Awaitable, Callable
from dataclasses import replace
from typing import Any

from bot.channels.telegram.updates import Incoming, photo_of
from bot.chat.reply.message import Message
from bot.work.inbox import inbox
from bot.work.inbox.inbox import Letter
from storage.store import Store
from storage.types import JsonObject

_ARRIVING_SECONDS = 0.7  # the photos of an album come within that; from experience, no source


class Albums:
    """Finds the photos of an album in the inbox: by the end of the pause all of them are stored."""

    def __init__(
        self,
        store: Store,
        read: Callable[[JsonObject], Incoming],
        in_worker: Callable[..., Awaitable[Any]],
    ) -> None:
        self._store = store
        self._read = read
        self._in_worker = in_worker

    async def whole(self, incoming: Incoming, message: Message, letter: Letter) -> Message | None:
        """Return the message with all captions and photos of its album; None if an earlier one has them.

        An edit of any caption corrects what the album logged.
        """
        if not incoming.album:
            return message
        if message.corrects is None:
            await asyncio.sleep(_ARRIVING_SECONDS)
        parts = await self._parts(incoming.album, letter)
        said = [self._read({"update_id": letter.update_id, "message": part}).message for part in parts]
        heard = [one for one in said if one is not None]
        first, own = heard[0].key, message.corrects or message.key
        if message.corrects is None and first != own:
            return None
        text = "\n".join(one.text for one in heard if one.text)
        photos = [photo for part in parts if (photo := photo_of(part)) is not None]
        return replace(
            message,
            key=first + message.key.removeprefix(own),
            corrects=None if message.corrects is None else first,
            text=text,
            photo=" ".join(photos) or None,
            notice="" if text or photos else message.notice,
        )

    async def _parts(self, album: str, letter: Letter) -> list[JsonObject]:
        """Return the messages of an album as they read now, this one included, the first one first."""
        words = f'"media_group_id": {json.dumps(album)}'
        payloads = await self._in_worker(inbox.payloads_with, self._store, letter.channel, words)
        updates = sorted(map(json.loads, {*payloads, letter.payload}), key=lambda one: int(one["update_id"]))
        said = (one.get("message") or one.get("edited_message") or {} for one in updates)
        # A reply to one of them holds their number too, within the message it replies to.
        parts = {int(one["message_id"]): one for one in said if one.get("media_group_id") == album}
        return [parts[number] for number in sorted(parts)]
