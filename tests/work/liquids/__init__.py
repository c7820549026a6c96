"""Tests of `bot.work.liquids`."""
