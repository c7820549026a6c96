"""Tests of `bot.trade.spray`."""
