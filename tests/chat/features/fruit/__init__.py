"""Tests of `bot.chat.features.fruit`."""
