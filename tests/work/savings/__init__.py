"""Tests of `bot.work.savings`."""
