"""Tests of `bot.chat.i18n`."""
