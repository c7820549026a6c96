"""Use cases for formulas and ingredients, scaling, and the mixture that chemistry needs.

Imported by chat and by the subjects above it in `bot.work`.
"""
