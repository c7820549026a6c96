"""Tests of `bot.work.transfer`."""
