"""Rules for the rest, check and discard dates of a batch.

Imported by work and chat; imports rules only.
"""
