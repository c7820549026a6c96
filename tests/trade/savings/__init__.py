"""Tests of `bot.trade.savings`."""
