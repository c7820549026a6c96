"""Use cases for formulas and ingredients, scaling, and mixtures for the chemistry rules.

Imported by chat and by the subjects above it in `bot.work`.
"""
