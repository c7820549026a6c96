"""Rules for the spray: sprayer output, dose, aroma release.

Imported by work and chat; imports rules only.
"""
