"""Use cases for export and import.

Imported by chat and by the subjects above it in `bot.work`.
"""
