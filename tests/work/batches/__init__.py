"""Tests of `bot.work.batches`."""
