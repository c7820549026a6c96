"""Turns, commands, slots, arguments and dialogues: the base of every feature.

Imported by features, intent and conversation.
"""
