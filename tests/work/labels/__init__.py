"""Tests of `bot.work.labels`."""
