"""Send replies by Telegram: keyboards, edits, files, and the handling of failures."""

from __future__ import annotations

import asyncio
import logging
from collections.abc import Awaitable, Callable, Sequence
from dataclasses import dataclass, replace
from typing import Any

from telegram import (
    Bot,
    InlineQueryResultArticle,
    InputMediaPhoto,
    InputTextMessageContent,
    LinkPreviewOptions,
)
from telegram.constants import ParseMode
from telegram.error import TelegramError

from bot.channels.rendering import html_parts
from bot.channels.telegram.confirmation_gate import Hold
from bot.channels.telegram.http_client import call
from bot.channels.telegram.outcomes import Verdict, classify
from bot.chat.conversation.inline import Suggestion
from bot.chat.dialogue.slots import ANSWER, BACK, CANCEL
from bot.chat.i18n.language import Tongue, _, speaking
from bot.chat.reply.message import File, Reply, Text
from bot.work.reminders.delivery import Outcome

log = logging.getLogger(__name__)
_TRIES = 40  # with the pauses between them at least a quarter of an hour
_LONGEST_PAUSE = 60.0
_LONGEST_GROWN = 30.0
_MOST_REPEATS = 2  # per reply; each may be a duplicate
_ALBUM = 10
_CAPTION = 1024
_TITLE = 200
_NO_PREVIEW = {"is_disabled": True}


@dataclass(frozen=True, slots=True)
class Target:
    """The target of a reply: the chat, its topic, the message it answers and the one it may replace."""

    chat: str
    private: bool
    thread: int | None = None
    answers: int | None = None
    replaces: int | None = None


class Pace:
    """Limits the sends per second over all chats; 0 for no limit."""

    def __init__(self, per_second: int) -> None:
        self._gap = 1 / per_second if per_second else 0.0
        self._next = 0.0

    async def wait(self) -> None:
        """Wait for this send's slot."""
        if not self._gap:
            return
        loop = asyncio.get_running_loop()
        now = loop.time()
        turn = max(now, self._next)
        self._next = turn + self._gap
        if turn > now:
            await asyncio.sleep(turn - now)


class Postman:
    """Sends replies and reports the outcome."""

    def __init__(self, bot: Bot, per_second: int, moved: Callable[[str, str], Awaitable[None]]) -> None:
        self._bot = bot
        self._pace = Pace(per_second)
        self._moved = moved

    async def deliver(self, target: Target, reply: Reply, hold: Hold | None = None) -> Outcome:
        """Send a reply, retrying for as long as Telegram is away.

        After a send with unknown outcome, the repeated reply says that it may be a repeat. `hold` is released
        when the whole reply has left.
        """
        repeats = 0
        for attempt in range(_TRIES):
            try:
                await self._once(target, reply, hold)
                return Outcome.SENT
            except TelegramError as error:
                verdict = classify(error)
            if hold is not None:
                await hold.stuck()
            mended = await self._mend(target, reply, verdict)
            if mended is not None:
                target, reply = mended
                continue
            if verdict.outcome is Outcome.LEFT:
                return Outcome.LEFT
            if verdict.outcome in {Outcome.BLOCKED, Outcome.REFUSED}:
                log.warning("reply to chat not delivered: %s", verdict.what)
                return verdict.outcome
            if verdict.outcome is Outcome.UNSURE:
                if repeats >= _MOST_REPEATS:
                    return Outcome.UNSURE
                repeats += not verdict.away
                reply = may_be_repeat(reply)
            grown = min(0.5 * 2**attempt, _LONGEST_GROWN)
            await asyncio.sleep(min(max(verdict.wait, grown), _LONGEST_PAUSE))
        return Outcome.NOT_SENT

    async def once(self, target: Target, reply: Reply) -> Verdict:
        """Send a reply once; the caller decides how to handle a failure."""
        try:
            await self._once(target, reply)
        except TelegramError as error:
            verdict = classify(error)
            if verdict.moved_to is not None:
                await self._moved(target.chat, verdict.moved_to)
            return verdict
        return Verdict(Outcome.SENT)

    async def tell(self, target: Target, reply: Reply) -> Target:
        """Show progress once; return the target with the message to replace."""
        part = html_parts(reply)[0]
        if target.replaces is not None:
            await self._edit(target, reply, part)
            return target
        await self._pace.wait()
        sent = await self._call(
            "sendMessage",
            chat_id=target.chat,
            text=part,
            message_thread_id=target.thread,
            reply_parameters=_reply_to(target),
            disable_notification=True,
        )
        return replace(target, replaces=sent["message_id"])

    async def _call(self, method: str, hold: Hold | None = None, **fields: object) -> Any:
        fields |= {"parse_mode": ParseMode.HTML, "link_preview_options": _NO_PREVIEW}
        return await call(self._bot, method, fields, None if hold is None else hold.let_go)

    async def _mend(self, target: Target, reply: Reply, verdict: Verdict) -> tuple[Target, Reply] | None:
        """Return a target and reply that avoid the refusal, or None."""
        what = verdict.what.casefold()
        if verdict.moved_to is not None:
            await self._moved(target.chat, verdict.moved_to)
            return replace(target, chat=verdict.moved_to, answers=None, replaces=None), reply
        if target.replaces is not None and ("message to edit" in what or "can't be edited" in what):
            return replace(target, replaces=None), reply
        if target.thread is not None and "thread not found" in what:
            return replace(target, thread=None), reply
        if target.answers is not None and "replied" in what:
            return replace(target, answers=None), reply
        return None

    async def _once(self, target: Target, reply: Reply, hold: Hold | None = None) -> None:
        parts = html_parts(reply)
        if reply.files:
            hold = None  # they leave after the text
        if reply.edits and target.replaces is not None and len(parts) == 1:
            await self._edit(target, reply, parts[0], hold)
            await self._send_files(target, reply.files)
            return
        for number, part in enumerate(parts, start=1):
            await self._pace.wait()
            await self._call(
                "sendMessage",
                hold if number == len(parts) else None,
                chat_id=target.chat,
                text=part,
                message_thread_id=target.thread,
                reply_markup=_markup(reply, target) if number == len(parts) else None,
                reply_parameters=_reply_to(target) if number == 1 else None,
                disable_notification=reply.quiet,
            )
        await self._send_files(target, reply.files)

    async def _send_files(self, target: Target, files: tuple[File, ...]) -> None:
        """Send files one by one; pictures that the chat's server already holds go as albums."""
        held = [file for file in files if file.file_id is not None]
        for at in range(0, len(held), _ALBUM):
            await self._send_album(target, held[at : at + _ALBUM])
        for file in files:
            if file.draw is not None:
                await self._send_drawn(target, file, file.draw)
            elif file.file_id is None:
                await self._send_file(target, file, file.content)

    async def _send_drawn(self, target: Target, file: File, draw: Callable[[], bytes]) -> None:
        """Draw and send an unrequested picture; a failure is ignored because the answer has been sent."""
        try:
            await self._send_file(target, file, await asyncio.to_thread(draw))
        except TelegramError as error:
            log.warning("an unrequested picture was not sent: %s", error.message)
        except Exception:
            log.exception("an unrequested picture could not be drawn")

    async def _send_file(self, target: Target, file: File, content: bytes | str) -> None:
        await self._pace.wait()
        send: Any = self._bot.send_photo if file.picture else self._bot.send_document
        name = {} if file.picture or isinstance(content, str) else {"filename": file.name}
        await send(
            target.chat,
            content,
            caption=file.caption[:_CAPTION] or None,
            message_thread_id=target.thread,
            disable_notification=True,
            **name,
        )

    async def _send_album(self, target: Target, files: list[File]) -> None:
        if len(files) == 1:
            await self._send_file(target, files[0], files[0].file_id or "")
            return
        await self._pace.wait()
        await self._bot.send_media_group(
            target.chat,
            [InputMediaPhoto(file.file_id or "", caption=file.caption[:_CAPTION] or None) for file in files],
            message_thread_id=target.thread,
            disable_notification=True,
        )

    async def _edit(self, target: Target, reply: Reply, part: str, hold: Hold | None = None) -> None:
        await self._pace.wait()
        try:
            await self._call(
                "editMessageText",
                hold,
                chat_id=target.chat,
                message_id=target.replaces,
                text=part,
                reply_markup=_buttons(reply),
            )
        except TelegramError as error:
            # A double tap requests the text that is already there.
            if "not modified" not in str(error).casefold():
                raise


def articles(found: Sequence[Suggestion]) -> list[InlineQueryResultArticle]:
    """Return suggestions as inline query results."""
    return [_article(number, one) for number, one in enumerate(found, start=1)]


def _article(number: int, one: Suggestion) -> InlineQueryResultArticle:
    text = html_parts(one.said)[0]
    said = InputTextMessageContent(
        text, ParseMode.HTML, link_preview_options=LinkPreviewOptions(is_disabled=True)
    )
    return InlineQueryResultArticle(
        str(number), one.title[:_TITLE], said, description=one.description[:_TITLE]
    )


def may_be_repeat(reply: Reply) -> Reply:
    """Return the reply with a line that says it may have been sent before."""
    with speaking(Tongue(reply.language)):
        note = Text(_("(This may be a repeat.)"))
    if reply.blocks[-1:] == (note,):
        return reply
    return replace(reply, blocks=(*reply.blocks, note), edits=False)


def _reply_to(target: Target) -> dict[str, object] | None:
    if target.private or target.answers is None:
        return None
    return {"message_id": target.answers, "allow_sending_without_reply": True}


def _markup(reply: Reply, target: Target) -> dict[str, object] | None:
    if not target.private and reply.ask and _only_moves(reply):
        # In privacy mode the bot receives only replies, so the question forces one.
        return {"force_reply": True, "selective": True, "input_field_placeholder": reply.ask[:64]}
    return _buttons(reply)


def _buttons(reply: Reply) -> dict[str, object] | None:
    if not reply.buttons:
        return None
    rows = [
        [{"text": one.label[:64], "callback_data": one.line} for one in row] for row in reply.buttons if row
    ]
    return {"inline_keyboard": rows}


def _only_moves(reply: Reply) -> bool:
    """Whether the only buttons are Back and Cancel, so that the answer must be typed."""
    answers = [one.line.split(" ", 2) for row in reply.buttons for one in row]
    return all(len(parts) == 3 and parts[0] == ANSWER and parts[2] in {BACK, CANCEL} for parts in answers)
