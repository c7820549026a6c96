"""Tests of `bot.trade.liquids`."""
