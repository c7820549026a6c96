"""Use cases for planning: usage, next batches, shopping, fruit par.

Imported by chat and by the subjects above it in `bot.work`.
"""
