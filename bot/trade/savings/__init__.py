"""Rules for comparing fresh garnish with spray.

Imported by work and chat; imports rules only.
"""
