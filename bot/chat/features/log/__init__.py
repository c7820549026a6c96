"""Commands and wording for the log of entries and for undo.

Nothing imports it.
"""
