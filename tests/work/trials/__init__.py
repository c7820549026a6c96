"""Tests of `bot.work.trials`."""
