"""Tests of `bot.chat.features.spray`."""
