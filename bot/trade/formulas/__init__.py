"""Rules for recipes: kinds, measures, amounts, rounding to tools.

Imported by work and chat; imports rules only.
"""
