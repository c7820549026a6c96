"""Tests of `bot.work.fruit`."""
