"""Use cases for stock: counts, deliveries, pars.

Imported by chat and by the subjects above it in `bot.work`.
"""
