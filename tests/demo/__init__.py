"""Tests of `bot.demo`."""
