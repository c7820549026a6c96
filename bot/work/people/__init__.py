"""Use cases for bars, settings, team, invites and bar deletion.

Imported by chat and by the subjects above it in `bot.work`.
"""
