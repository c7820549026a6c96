"""Use cases for received updates: stored, leased, marked as worked.

Imported by chat and by the subjects above it in `bot.work`.
"""
