"""Tests of `bot.documents.charts`."""
