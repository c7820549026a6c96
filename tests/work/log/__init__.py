"""Tests of `bot.work.log`."""
