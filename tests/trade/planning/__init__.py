"""Tests of `bot.trade.planning`."""
