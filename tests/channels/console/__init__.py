"""Tests of `bot.channels.console`."""
