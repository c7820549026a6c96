"""Fixtures: a real python-telegram-bot `Bot` at the server, and a server that accepts violations."""

from __future__ import annotations

from collections.abc import AsyncIterator
from contextlib import asynccontextmanager
from typing import Any

import pytest
from telegram import Bot, Update
from telegram.ext import ApplicationBuilder, BaseHandler
from telegram.request import HTTPXRequest

from tests.api import Person, Server


def plain_request(read_timeout: float = 5) -> HTTPXRequest:
    """HTTP without TLS: loading certificates, which loopback never needs, takes 20 ms each time."""
    return HTTPXRequest(
        read_timeout=read_timeout,
        connection_pool_size=8,
        httpx_kwargs={"verify": False, "trust_env": False},
    )


def make_bot(server: Server, token: str | None = None, read_timeout: float = 5) -> Bot:
    """A bot that talks to the server; not yet initialized."""
    return Bot(
        token or server.token,
        base_url=server.base_url,
        base_file_url=server.base_file_url,
        request=plain_request(read_timeout),
        get_updates_request=plain_request(read_timeout),
    )


@pytest.fixture
async def server() -> AsyncIterator[Server]:
    """A server whose violations the test checks itself."""
    async with Server() as server:
        yield server


@pytest.fixture
async def bot(server: Server) -> AsyncIterator[Bot]:
    """A bot at that server."""
    async with make_bot(server) as bot:
        yield bot


@pytest.fixture
def ana(server: Server) -> Person:
    """A person who has started the bot; her first message is already answered."""
    ana = server.person("Ana")
    ana.writes("/start")
    server.world.updates.pending.clear()
    return ana


@asynccontextmanager
async def running(server: Server, *handlers: BaseHandler[Any, Any, Any]) -> AsyncIterator[None]:
    """A whole bot with its own poller and these handlers, inside the block."""
    application = (
        ApplicationBuilder()
        .token(server.token)
        .base_url(server.base_url)
        .base_file_url(server.base_file_url)
        .request(plain_request())
        .get_updates_request(plain_request())
        .build()
    )
    application.add_handlers(handlers)
    async with application:
        await application.start()
        assert application.updater is not None
        await application.updater.start_polling(poll_interval=0, allowed_updates=Update.ALL_TYPES)
        yield
        await application.updater.stop()
        await application.stop()
