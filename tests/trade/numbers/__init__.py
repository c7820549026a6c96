"""Tests of `bot.trade.numbers`."""
