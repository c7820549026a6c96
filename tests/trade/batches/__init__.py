"""Tests of `bot.trade.batches`."""
