"""Tests of `bot.chat.features.liquids`."""
