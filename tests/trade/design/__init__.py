"""Tests of `bot.trade.design`."""
