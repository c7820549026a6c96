"""Tests of `bot.chat.conversation`."""
