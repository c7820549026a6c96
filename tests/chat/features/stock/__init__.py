"""Tests of `bot.chat.features.stock`."""
