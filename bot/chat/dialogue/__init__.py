"""Turns, commands, slots, arguments and dialogues: what every feature builds on.

Imported by features, intent and conversation.
"""
