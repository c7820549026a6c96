"""The console: the conversation in a terminal.

Imported by `bot.__main__` only.
"""
