"""Tests of `bot.chat.grammar`."""
