"""Use cases for received updates: store, lease, mark as done.

Imported by chat and by the subjects above it in `bot.work`.
"""
