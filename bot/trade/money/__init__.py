"""Rules for money and for the cost of a batch.

Imported by work and chat; imports rules only.
"""
