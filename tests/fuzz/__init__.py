"""Random and mutated messages, taps and orders of taps, sent over HTTP to a bot with two bars.

Invariants: no unhandled error, nothing that Telegram would refuse, and never a word of one bar in a chat of
another. `python -m tests.fuzz 20000` is the long run.
"""
