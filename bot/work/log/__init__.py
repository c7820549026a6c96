"""Use cases for the log of entries: history, corrections, undo.

Imported by chat and by the subjects above it in `bot.work`.
"""
