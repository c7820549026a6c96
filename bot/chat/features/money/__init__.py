"""Commands and wording for prices and cost.

May be imported by stock and log.
"""
