"""Commands and wording for the next batches, shopping and what can be made.

Nothing imports it.
"""
