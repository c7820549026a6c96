"""Rules for planning: the next batch and the fresh fruit to have.

Imported by work and chat; imports rules only.
"""
