"""Numbers for the rules: ranges, roots, Student's t, uncertainty.

Imported by work and chat; imports rules only.
"""
