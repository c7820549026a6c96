"""Use cases for trials, tasting and blind bottles.

Imported by chat and by the subjects above it in `bot.work`.
"""
