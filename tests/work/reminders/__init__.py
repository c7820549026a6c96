"""Tests of `bot.work.reminders`."""
