"""Use cases for prices and cost.

Imported by chat and by the subjects above it in `bot.work`.
"""
