"""Use cases for sprayers, dose and drinks served.

Imported by chat and by the subjects above it in `bot.work`.
"""
