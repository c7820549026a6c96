"""Tests of `bot.work.planning`."""
