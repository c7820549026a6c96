"""Tests of `bot.documents.labels`."""
