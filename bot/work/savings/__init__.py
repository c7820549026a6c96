"""Use cases for what spraying saved against fresh fruit.

Imported by chat and by the subjects above it in `bot.work`.
"""
