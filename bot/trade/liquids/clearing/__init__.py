"""Rules for whether a mix stays one liquid: models, published data, remedies.

Imported by work and chat; imports rules only.
"""
