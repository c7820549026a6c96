"""Tests of `bot.chat.dialogue`."""
