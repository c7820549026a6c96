"""Tests of `bot.chat.features.transfer`."""
