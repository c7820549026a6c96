"""Tests of `bot.trade.liquids.clearing`."""
