"""Send replies by Telegram: texts, edits and files, and the handling of failures."""

from __future__ import annotations

import asyncio
import logging
from collections.abc import Awaitable, Callable, Sequence
from dataclasses import dataclass, replace
from typing import Any

from telegram import (
    Bot,
    InlineQueryResultArticle,
    InputMediaDocument,
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
from bot.channels.telegram.parts import Part, Target, buttons, markup, may_be_repeat, parts_of, reply_to
from bot.chat.conversation.inline import Suggestion
from bot.chat.reply.message import File, Reply
from bot.work.reminders.delivery import Outcome

log = logging.getLogger(__name__)
_LONGEST_PAUSE = 30.0  # between attempts while Telegram is away or refuses for a time
_LONGEST_UNSURE_PAUSE = 600.0  # between attempts that may each have arrived
_LATE_AFTER = 60.0
_UPLOAD_SECONDS = 120.0
_MOST_MENDS = 4  # chat, thread, replaced and quoted message
_TITLE = 200
_NO_PREVIEW = {"is_disabled": True}


@dataclass(frozen=True, slots=True)
class Asked:
    """What an answer answers, and when that came, by the event loop's clock."""

    said: str
    at: float


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

    async def deliver(
        self,
        target: Target,
        parts: Sequence[Part],
        hold: Hold | None = None,
        asked: Asked | None = None,
        left: Callable[[int], Awaitable[None]] | None = None,
    ) -> Outcome:
        """Send the parts of an answer, each until it has left, however long Telegram is away.

        A part whose earlier attempt may have arrived says that it may be a repeat, and a late answer what it
        answers. `left` is told how many have left, after each but the last; then `hold` is released.
        """
        outcome = Outcome.SENT
        for number, part in enumerate(parts, start=1):
            is_last = number == len(parts)
            sent, target = await self._until_sent(target, part, hold, is_last, asked)
            if sent in {Outcome.LEFT, Outcome.BLOCKED}:
                return sent
            if sent is Outcome.REFUSED:
                outcome = sent
            if left is not None and not is_last:
                await left(number)
        return outcome

    async def _until_sent(
        self, target: Target, part: Part, hold: Hold | None, is_last: bool, asked: Asked | None
    ) -> tuple[Outcome, Target]:
        clock = asyncio.get_running_loop().time
        attempt = 0
        while True:
            if asked is not None and part.begins and clock() - asked.at > _LATE_AFTER:
                part = replace(part, answers=asked.said)
            try:
                await self._send(target, part, hold if is_last else None)
                return Outcome.SENT, target
            except TelegramError as error:
                verdict = classify(error)
            if hold is not None:
                await hold.stuck()
            mended = await self._mend(target, verdict)
            if mended is not None:
                target = mended
                continue
            if verdict.outcome is Outcome.LEFT:
                return Outcome.LEFT, target
            if verdict.outcome in {Outcome.BLOCKED, Outcome.REFUSED}:
                if target.person is not None and target.person != target.chat:
                    # The group does not take it: the person who asked has it privately.
                    target = Target(target.person, private=True)
                    continue
                log.warning("reply to chat not delivered: %s", verdict.what)
                return verdict.outcome, target
            if verdict.outcome is Outcome.UNSURE:
                part = may_be_repeat(part)
            await asyncio.sleep(_pause(verdict, attempt))
            attempt += 1

    async def once(self, target: Target, reply: Reply) -> Verdict:
        """Send a reply once; the caller decides how to handle a failure.

        A chat that has moved or a topic that is gone is no failure: the reply goes to the chat itself.
        """
        for part in parts_of([reply]):
            for _mend in range(_MOST_MENDS):
                try:
                    await self._send(target, part)
                except TelegramError as error:
                    verdict = classify(error)
                else:
                    break
                mended = await self._mend(target, verdict)
                if mended is None:
                    return verdict
                target = mended
        return Verdict(Outcome.SENT)

    async def tell(self, target: Target, reply: Reply) -> Target:
        """Show progress once; return the target with the message to replace."""
        part = parts_of([reply])[0]
        if target.replaces is not None:
            await self._edit(target, part)
            return target
        await self._pace.wait()
        sent = await self._call(
            "sendMessage",
            chat_id=target.chat,
            text=part.html(),
            message_thread_id=target.thread,
            reply_parameters=reply_to(target),
            disable_notification=True,
        )
        return replace(target, replaces=sent["message_id"])

    async def _call(self, method: str, hold: Hold | None = None, **fields: object) -> Any:
        fields |= {"parse_mode": ParseMode.HTML, "link_preview_options": _NO_PREVIEW}
        return await call(self._bot, method, fields, None if hold is None else hold.let_go)

    async def _mend(self, target: Target, verdict: Verdict) -> Target | None:
        """Return a target that avoids the refusal, or None."""
        what = verdict.what.casefold()
        if verdict.moved_to is not None:
            await self._moved(target.chat, verdict.moved_to)
            return replace(target, chat=verdict.moved_to, answers=None, replaces=None)
        if target.replaces is not None and ("message to edit" in what or "can't be edited" in what):
            return replace(target, replaces=None)
        if target.thread is not None and ("thread not found" in what or "topic_" in what):
            # The topic is deleted or closed, and so is a reply to a message in it.
            return replace(target, thread=None, answers=None)
        if target.answers is not None and "replied" in what:
            return replace(target, answers=None)
        return None

    async def _send(self, target: Target, part: Part, hold: Hold | None = None) -> None:
        if part.files:
            await self._send_files(target, part)
        elif part.alone and part.reply.edits and target.replaces is not None:
            await self._edit(target, part, hold)
        else:
            await self._pace.wait()
            await self._call(
                "sendMessage",
                hold,
                chat_id=target.chat,
                text=part.html(),
                message_thread_id=target.thread,
                reply_markup=markup(part.reply, target) if part.ends else None,
                reply_parameters=reply_to(target) if part.begins else None,
                disable_notification=part.reply.quiet,
            )

    async def _edit(self, target: Target, part: Part, hold: Hold | None = None) -> None:
        await self._pace.wait()
        try:
            await self._call(
                "editMessageText",
                hold,
                chat_id=target.chat,
                message_id=target.replaces,
                text=part.html(),
                reply_markup=buttons(part.reply),
            )
        except TelegramError as error:
            # A double tap requests the text that is already there.
            if "not modified" not in str(error).casefold():
                raise

    async def _send_files(self, target: Target, part: Part) -> None:
        draw = part.files[0].draw
        if draw is not None:
            await self._send_drawn(target, part, draw)
        elif len(part.files) == 1:
            await self._send_file(target, part, part.files[0])
        else:
            await self._pace.wait()
            media = [_medium(file, part.caption(file)) for file in part.files]
            await self._bot.send_media_group(target.chat, media, **_options(target))

    async def _send_drawn(self, target: Target, part: Part, draw: Callable[[], bytes]) -> None:
        """Draw and send an unrequested picture; a failure is ignored because the answer has been sent."""
        try:
            drawn = replace(part.files[0], content=await asyncio.to_thread(draw))
            await self._send_file(target, part, drawn)
        except TelegramError as error:
            log.warning("an unrequested picture was not sent: %s", error.message)
        except Exception:
            log.exception("an unrequested picture could not be drawn")

    async def _send_file(self, target: Target, part: Part, file: File) -> None:
        await self._pace.wait()
        caption = part.caption(part.files[0])
        content = file.content if file.file_id is None else file.file_id
        if file.picture:
            await self._bot.send_photo(target.chat, content, caption=caption, **_options(target))
        else:
            name = file.name if file.file_id is None else None
            await self._bot.send_document(
                target.chat, content, caption=caption, filename=name, **_options(target)
            )


def _pause(verdict: Verdict, attempt: int) -> float:
    certain = verdict.outcome is Outcome.NOT_SENT or verdict.away
    longest = _LONGEST_PAUSE if certain else _LONGEST_UNSURE_PAUSE
    grown = 0.5 * 2.0 ** min(attempt, 20)
    return max(verdict.wait, min(grown, longest))


def _options(target: Target) -> Any:
    return {
        "message_thread_id": target.thread,
        "disable_notification": True,
        # The response comes only after Telegram has stored the upload.
        "read_timeout": _UPLOAD_SECONDS,
        "write_timeout": _UPLOAD_SECONDS,
    }


def _medium(file: File, caption: str | None) -> InputMediaPhoto | InputMediaDocument:
    if file.picture:
        return InputMediaPhoto(file.file_id or file.content, caption=caption)
    name = file.name if file.file_id is None else None
    return InputMediaDocument(file.file_id or file.content, caption=caption, filename=name)


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
