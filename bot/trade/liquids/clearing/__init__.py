"""Rules for whether a mix stays one liquid: models, published data, mends.

Imported by work and chat; imports rules only.
"""
