"""Tests of `bot.work.stock`."""
