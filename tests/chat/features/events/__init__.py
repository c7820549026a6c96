"""Tests of `bot.chat.features.events`."""
