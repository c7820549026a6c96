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

        A message without an album, and an edit, are returned as they are.
        """
        if not incoming.album or message.corrects is not None:
            return message
        await asyncio.sleep(_ARRIVING_SECONDS)
        words = f'"media_group_id": {json.dumps(incoming.album)}'
        payloads = await self._in_worker(inbox.payloads_with, self._store, letter.channel, words)
        updates = {one["update_id"]: one for one in map(json.loads, payloads) if "message" in one}
        updates[letter.update_id] = json.loads(letter.payload)
        parts = [updates[number] for number in sorted(updates)]
        said = [one for one in map(self._read, parts) if one.message is not None]
        if said[0].update_id != incoming.update_id:
            return None
        texts = [one.message.text for one in said if one.message is not None and one.message.text]
        photos = [photo for one in parts if (photo := photo_of(one["message"])) is not None]
        return replace(
            message,
            text="\n".join(texts),
            photo=" ".join(photos) or None,
            notice="" if texts or photos else message.notice,
        )
