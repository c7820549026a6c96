"""Tests of `bot.trade.money`."""
