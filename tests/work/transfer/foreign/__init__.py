"""Tests of `bot.work.transfer.foreign`."""
