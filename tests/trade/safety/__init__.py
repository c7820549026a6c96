"""Tests of `bot.trade.safety`."""
