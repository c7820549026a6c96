"""Use cases for the savings of spray over fresh fruit.

Imported by chat and by the subjects above it in `bot.work`.
"""
