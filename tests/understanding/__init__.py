"""How well free lines are understood: training of the ranker, and measurement on lines held out of it.

Run it with `python -m tests.understanding`.
"""
