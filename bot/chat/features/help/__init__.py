"""Help by subject and the cancel command.

Nothing imports it.
"""
