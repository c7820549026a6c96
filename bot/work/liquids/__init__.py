"""Use cases for strength, clearing and spirit substitution.

Imported by chat and by the subjects above it in `bot.work`.
"""
