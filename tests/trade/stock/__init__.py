"""Tests of `bot.trade.stock`."""
