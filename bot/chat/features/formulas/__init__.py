"""Commands and wording for formulas: the book, scaling, weigh sheets, overheads.

May be imported by batches, money and trials.
"""
