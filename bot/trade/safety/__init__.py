"""Rules for safety: limits, food grade, allergens, cautions, jurisdiction.

Imported by work and chat; imports rules only.
"""
