"""Commands and wording for what spraying saved against fresh fruit.

May be imported by money and fruit.
"""
