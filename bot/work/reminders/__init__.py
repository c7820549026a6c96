"""Use cases for reminders: plan them, claim and settle them.

Imported by chat and by the subjects above it in `bot.work`.
"""
