"""Commands and wording for strength, density and clearing.

May be imported by formulas, batches and money.
"""
