"""Use cases for batches: make, check, open, use up, discard.

Imported by chat and by the subjects above it in `bot.work`.
"""
