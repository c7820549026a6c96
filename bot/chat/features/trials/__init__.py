"""Commands and wording for trials and tasting.

Nothing imports it.
"""
