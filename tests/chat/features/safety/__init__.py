"""Tests of `bot.chat.features.safety`."""
