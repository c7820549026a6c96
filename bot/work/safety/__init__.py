"""Use cases for food grade and allergens.

Imported by chat and by the subjects above it in `bot.work`.
"""
