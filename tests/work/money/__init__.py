"""Tests of `bot.work.money`."""
