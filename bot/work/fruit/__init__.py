"""Use cases for fruit: waste, weekly reports, peeled fruit, balance, acid.

Imported by chat and by the subjects above it in `bot.work`.
"""
