"""Use cases for printed labels.

Imported by chat and by the subjects above it in `bot.work`.
"""
