"""Turns, commands, slots and questions: what every feature builds on.

Imported by features, intent and conversation.
"""
