"""Tests of `bot.trade.fruit`."""
