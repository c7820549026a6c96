"""Tests of `bot.trade.formulas`."""
