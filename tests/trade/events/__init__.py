"""Tests of `bot.trade.events`."""
