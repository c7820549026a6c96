"""What a message means: a tap, a command, an answer or a guess.

Imported by conversation only.
"""
