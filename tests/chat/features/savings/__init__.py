"""Tests of `bot.chat.features.savings`."""
