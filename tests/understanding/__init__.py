"""Training of the ranker of free lines, and measurement on lines held out of it.

Run it with `python -m tests.understanding`.
"""
