"""Tests of `bot.work.people`."""
