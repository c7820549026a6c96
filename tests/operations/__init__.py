"""Tests of `bot.operations`."""
