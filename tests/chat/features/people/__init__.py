"""Tests of `bot.chat.features.people`."""
