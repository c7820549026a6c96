"""Rules for stock: what runs low, what to buy in whole packs.

Imported by work and chat; imports rules only.
"""
