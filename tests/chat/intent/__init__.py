"""Tests of `bot.chat.intent`."""
