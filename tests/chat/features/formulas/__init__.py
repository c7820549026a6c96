"""Tests of `bot.chat.features.formulas`."""
