"""Commands and wording for making, checking, opening and ending batches.

May be imported by people and log.
"""
