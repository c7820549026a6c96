"""Tests of `bot.work.design`."""
