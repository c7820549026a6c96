"""Commands and wording for savings of spray compared with fresh fruit.

May be imported by money and fruit.
"""
