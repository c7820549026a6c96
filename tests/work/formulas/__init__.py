"""Tests of `bot.work.formulas`."""
