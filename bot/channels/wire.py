"""HTTP to the Bot API with less ceremony: the same connection pool, without the client around it.

The library's own request class goes through httpx, which builds and takes apart a client
request for every call; on a small machine that is most of what an answer costs. Uploads,
and machines behind a proxy, still go that way.
"""

from __future__ import annotations

import json
import ssl
from typing import Any
from urllib.parse import urlencode
from urllib.request import getproxies

import httpcore
from telegram._utils.defaultvalue import DefaultValue
from telegram.error import NetworkError, TimedOut
from telegram.request import BaseRequest, HTTPXRequest, RequestData

_KEEP_SECONDS = 60.0


class LeanRequest(HTTPXRequest):
    """A request class for python-telegram-bot that speaks to httpcore directly."""

    def __init__(self, connections: int, *, read_timeout: float = 5.0, encrypted: bool = True) -> None:
        # A server on this machine needs no certificates, and loading them takes its time.
        options: dict[str, Any] = {} if encrypted else {"verify": False, "trust_env": False}
        super().__init__(
            connection_pool_size=connections, read_timeout=read_timeout, httpx_kwargs=options or None
        )
        self._connections = connections
        self._ssl = ssl.create_default_context() if encrypted else None
        self._pool: httpcore.AsyncConnectionPool | None = None
        self._behind_proxy = encrypted and bool(getproxies())

    async def initialize(self) -> None:
        """Open the pool of connections."""
        await super().initialize()
        if self._pool is None:
            self._pool = httpcore.AsyncConnectionPool(
                ssl_context=self._ssl,
                max_connections=self._connections,
                keepalive_expiry=_KEEP_SECONDS,
            )

    async def shutdown(self) -> None:
        """Close every connection."""
        if self._pool is not None:
            await self._pool.aclose()
            self._pool = None
        await super().shutdown()

    async def updates(
        self, address: str, offset: int | None, seconds: int, allowed: list[str]
    ) -> list[dict[str, Any]]:
        """Ask for updates at `address` and return them as they are sent, waiting up to `seconds` for one.

        They are kept as text anyway: building the library's objects first would only cost.
        Raises TelegramError.
        """
        asked = {"timeout": str(seconds), "allowed_updates": json.dumps(allowed)}
        if offset is not None:
            asked["offset"] = str(offset)
        answer = await self.retrieve(f"{address}?{urlencode(asked)}")
        found: list[dict[str, Any]] = self.parse_json_payload(answer)["result"]
        return found

    async def do_request(
        self,
        url: str,
        method: str,
        request_data: RequestData | None = None,
        read_timeout: Any = BaseRequest.DEFAULT_NONE,
        write_timeout: Any = BaseRequest.DEFAULT_NONE,
        connect_timeout: Any = BaseRequest.DEFAULT_NONE,
        pool_timeout: Any = BaseRequest.DEFAULT_NONE,
    ) -> tuple[int, bytes]:
        """Send one request and return the status and body.

        Raises TimedOut or NetworkError, the httpcore error as its cause.
        """
        uploads = request_data is not None and request_data.contains_files
        if self._pool is None or self._behind_proxy or uploads:
            return await super().do_request(
                url, method, request_data, read_timeout, write_timeout, connect_timeout, pool_timeout
            )
        body = urlencode(request_data.json_parameters).encode() if request_data is not None else b""
        defaults = self._client.timeout
        timeouts = {
            "read": _or(read_timeout, defaults.read),
            "write": _or(write_timeout, defaults.write),
            "connect": _or(connect_timeout, defaults.connect),
            "pool": _or(pool_timeout, defaults.pool),
        }
        headers: dict[bytes | str, bytes | str] = {
            "Host": httpcore.URL(url).host.decode(),
            "User-Agent": self.USER_AGENT,
            "Content-Type": "application/x-www-form-urlencoded",
        }
        try:
            answer = await self._pool.request(
                method, url, headers=headers, content=body, extensions={"timeout": timeouts}
            )
        except httpcore.TimeoutException as error:
            raise TimedOut from error
        except (httpcore.NetworkError, httpcore.ProtocolError, httpcore.UnsupportedProtocol) as error:
            raise NetworkError(f"{type(error).__name__}: {error}") from error
        return answer.status, answer.content


def _or(value: Any, default: float | None) -> float | None:
    if isinstance(value, DefaultValue):
        return default
    return value  # type: ignore[no-any-return]
