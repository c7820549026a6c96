"""Use cases for the drink list: spec cards, and the use of each preparation by the drinks counted.

Imported by chat and by the subjects above it in `bot.work`.
"""
