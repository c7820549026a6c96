"""Tests of `bot.work.inbox`."""
