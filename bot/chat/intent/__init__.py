"""The intent of a message: a tap, a command, an answer or a guess.

Imported by conversation only.
"""
