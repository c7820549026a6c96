"""Use cases for reminders: plan, claim and settle them.

Imported by chat and by the subjects above it in `bot.work`.
"""
