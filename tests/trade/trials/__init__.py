"""Tests of `bot.trade.trials`."""
