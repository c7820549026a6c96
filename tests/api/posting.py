"""Post to a webhook over persistent connections, with little load on the machine."""

from __future__ import annotations

import asyncio
from urllib.parse import urlsplit

_SECONDS = 10.0
_Line = tuple[asyncio.StreamReader, asyncio.StreamWriter]


class Sender:
    """Posts bodies to addresses on this machine."""

    def __init__(self) -> None:
        self._kept: dict[str, list[_Line]] = {}

    async def post(self, url: str, body: bytes, secret: str) -> int:
        """Post one update and return the HTTP status, 0 without a response."""
        where = urlsplit(url)
        kept = self._kept.setdefault(where.netloc, [])
        request = _request(where.netloc, where.path, body, secret)
        while kept:
            # A pooled connection may have been closed in the meantime; then try another.
            status = await self._tried(kept, kept.pop(), request)
            if status:
                return status
        try:
            async with asyncio.timeout(_SECONDS):
                line = await asyncio.open_connection(where.hostname, where.port)
        except (OSError, TimeoutError):
            return 0
        return await self._tried(kept, line, request)

    @staticmethod
    async def _tried(kept: list[_Line], line: _Line, request: bytes) -> int:
        stays = False
        try:
            async with asyncio.timeout(_SECONDS):
                status, stays = await _exchanged(line, request)
            return status
        except (OSError, EOFError, ValueError, TimeoutError):
            return 0
        finally:
            if stays:
                kept.append(line)
            else:
                line[1].close()

    async def close(self) -> None:
        """Close every connection."""
        for lines in self._kept.values():
            for _reader, writer in lines:
                writer.close()
        self._kept.clear()


def _request(host: str, path: str, body: bytes, secret: str) -> bytes:
    lines = [
        f"POST {path or '/'} HTTP/1.1",
        f"Host: {host}",
        "Content-Type: application/json",
        f"Content-Length: {len(body)}",
    ]
    if secret:
        lines.append(f"X-Telegram-Bot-Api-Secret-Token: {secret}")
    return "\r\n".join([*lines, "", ""]).encode() + body


async def _exchanged(line: _Line, request: bytes) -> tuple[int, bool]:
    """Send a request; return the status and whether the connection stays open."""
    reader, writer = line
    writer.write(request)
    await writer.drain()
    head = (await reader.readuntil(b"\r\n\r\n")).decode("latin-1")
    first, *rest = head.split("\r\n")
    headers = {name.lower(): value.strip() for name, _, value in (one.partition(":") for one in rest)}
    await reader.readexactly(int(headers.get("content-length", "0")))
    stays = first.startswith("HTTP/1.1") and headers.get("connection", "").lower() != "close"
    return int(first.split(" ")[1]), stays
