"""A minimal echo bot, the yardstick of the benchmarks."""

from __future__ import annotations

import sys
from typing import Any

from telegram import Update
from telegram.ext import ApplicationBuilder, MessageHandler, filters

from tests.api.world import TOKEN


async def _echo(update: Update, _context: Any) -> None:
    if update.message is not None and update.message.text is not None:
        await update.message.reply_text(update.message.text)


def main(port: int) -> None:
    """Run against the server on this port until the process ends."""
    application = (
        ApplicationBuilder()
        .token(TOKEN)
        .base_url(f"http://127.0.0.1:{port}/bot")
        .base_file_url(f"http://127.0.0.1:{port}/file/bot")
        .build()
    )
    application.add_handler(MessageHandler(filters.TEXT, _echo))
    application.run_polling(poll_interval=0)


if __name__ == "__main__":
    main(int(sys.argv[1]))
