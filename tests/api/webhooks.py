"""Switching between polling and a webhook."""

from __future__ import annotations

import re
from typing import Any

from telegram.constants import WebhookLimit

from tests.api.params import Params
from tests.api.refusals import JsonDict, bad
from tests.api.updates import Webhook
from tests.api.world import World

_LOOPBACK = re.compile(r"http://(127\.0\.0\.1|localhost|\[::1\])[:/]")


def allow(world: World, params: Params) -> None:
    """Apply allowed_updates; without it the previous value stays."""
    allowed = params.json("allowed_updates")
    if allowed is not None:
        world.updates.allowed = [str(kind) for kind in allowed]


def set_webhook(world: World, params: Params) -> bool:
    """setWebhook: https as with Telegram, or plain http on loopback, which only this server accepts."""
    url = params.text("url") or ""
    if url and not url.startswith("https://") and not _LOOPBACK.match(url):
        raise bad("bad webhook: An HTTPS URL must be provided for webhook")
    secret = params.text("secret_token") or ""
    if secret and not re.fullmatch(
        rf"[A-Za-z0-9_-]{{1,{int(WebhookLimit.MAX_SECRET_TOKEN_LENGTH)}}}", secret
    ):
        raise bad("secret token contains illegal characters")
    connections = params.integer("max_connections") or 40
    allow(world, params)
    world.updates.set_webhook(
        Webhook(url, secret, connections), drop_pending=params.flag("drop_pending_updates")
    )
    return True


def delete_webhook(world: World, params: Params) -> bool:
    """deleteWebhook."""
    world.updates.set_webhook(Webhook(), drop_pending=params.flag("drop_pending_updates"))
    return True


def get_webhook_info(world: World, _params: Params) -> JsonDict:
    """getWebhookInfo."""
    return world.updates.info()


METHODS: dict[str, Any] = {
    "setwebhook": set_webhook,
    "deletewebhook": delete_webhook,
    "getwebhookinfo": get_webhook_info,
}
