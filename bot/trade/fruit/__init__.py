"""Rules for fruit: sizes, juice, acidity, peeled fruit, the balance between counts.

Imported by work and chat; imports rules only.
"""
