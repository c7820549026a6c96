"""Tests of `bot.chat.features.batches`."""
