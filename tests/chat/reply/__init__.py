"""Tests of `bot.chat.reply`."""
