"""Commands and wording for export and import.

Nothing imports it.
"""
