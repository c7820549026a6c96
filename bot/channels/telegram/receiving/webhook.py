"""The webhook server for updates and monitoring, behind a proxy that terminates TLS.

POST /telegram takes one update and responds once it is on disk. /health reports that the process lives,
/ready that it can work, /metrics its figures; these three are for internal use only.
"""

from __future__ import annotations

import asyncio
import hmac
import json
import logging
from collections.abc import Awaitable, Callable
from typing import Any

from tornado.httpserver import HTTPServer
from tornado.web import Application, RequestHandler

from bot.channels.telegram.receiving.intake import Intake

log = logging.getLogger(__name__)
PATH = "/telegram"
SECRET_HEADER = "X-Telegram-Bot-Api-Secret-Token"  # noqa: S105 - the header's name
MOST_BYTES = 1024 * 1024
_BODY_SECONDS = 10
_IDLE_SECONDS = 75

Gauges = Callable[[], Awaitable[dict[str, tuple[str, float]]]]


class Door:
    """Listens at an address until it is shut."""

    def __init__(
        self,
        address: str,
        secret: str | None,
        intake: Intake,
        gauges: Gauges,
        not_ready: Callable[[], Awaitable[str]],
    ) -> None:
        """`secret` is the token that Telegram sends along; None when polling."""
        host, _, port = address.rpartition(":")
        self._host, self._port = host.strip("[]"), int(port)
        handlers: list[Any] = [
            ("/health", _Health),
            ("/ready", _Ready, {"not_ready": not_ready}),
            ("/metrics", _Metrics, {"gauges": gauges, "intake": intake}),
        ]
        if secret is not None:
            handlers.append((PATH, _Update, {"secret": secret, "intake": intake}))
        # Addresses and bodies contain people's texts, so requests are not logged.
        application = Application(handlers, log_function=lambda _handler: None)
        self._server = HTTPServer(
            application,
            max_body_size=MOST_BYTES,
            max_buffer_size=2 * MOST_BYTES,
            body_timeout=_BODY_SECONDS,
            idle_connection_timeout=_IDLE_SECONDS,
        )

    def open(self) -> None:
        """Begin to listen. Raises OSError if the address is in use or not local."""
        self._server.listen(self._port, self._host)

    async def shut(self) -> None:
        """Accept no more connections, and close the open ones."""
        self._server.stop()
        await self._server.close_all_connections()


class _Plain(RequestHandler):
    """Answers errors in one word, without an error page."""

    def set_default_headers(self) -> None:
        self.clear_header("Server")
        self.set_header("Content-Type", "text/plain; charset=utf-8")
        self.set_header("Cache-Control", "no-store")

    def write_error(self, status_code: int, **_: Any) -> None:
        self.finish("no\n")


class _Update(_Plain):
    def initialize(self, secret: str, intake: Intake) -> None:
        self._secret = secret.encode()
        self._intake = intake

    async def post(self) -> None:
        sent = self.request.headers.get(SECRET_HEADER, "").encode("utf-8", "replace")
        # In constant time: the duration must not reveal how much of the secret was right.
        if not hmac.compare_digest(sent, self._secret):
            self._refuse(403, "forged")
            return
        try:
            update = json.loads(self.request.body)
            number = update["update_id"]
        except (ValueError, TypeError, KeyError, RecursionError):
            self._refuse(400, "unreadable")
            return
        if not isinstance(number, int) or isinstance(number, bool):
            self._refuse(400, "unreadable")
            return
        if not await self._intake.take_in([update]):
            # Telegram sends it again, at growing intervals.
            self.set_header("Retry-After", "1")
            self._refuse(503, "not kept")

    def _refuse(self, status: int, why: str) -> None:
        self._intake.figures.went_wrong(why)
        log.warning("an update was refused: %s", why)
        self.set_status(status)
        self.finish("no\n")


class _Health(_Plain):
    def get(self) -> None:
        self.finish("alive\n")


class _Ready(_Plain):
    def initialize(self, not_ready: Callable[[], Awaitable[str]]) -> None:
        self._not_ready = not_ready

    async def get(self) -> None:
        why = await self._not_ready()
        if why:
            self.set_status(503)
        self.finish(f"not ready: {why}\n" if why else "ready\n")


class _Metrics(_Plain):
    def initialize(self, gauges: Gauges, intake: Intake) -> None:
        self._gauges = gauges
        self._intake = intake

    async def get(self) -> None:
        try:
            looked_up = await asyncio.wait_for(self._gauges(), 2)
        except Exception as error:
            log.warning("metrics without the database: %s", type(error).__name__)
            looked_up = {}
        page, kind = self._intake.figures.text(looked_up)
        self.set_header("Content-Type", kind)
        self.finish(page)
