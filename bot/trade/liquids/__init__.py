"""Rules for liquids: ethanol strength, density, sugar, flash point, spirit substitution.

Imported by work and chat; imports rules only.
"""
