"""Rules for stock: low stock, and shopping in whole packs.

Imported by work and chat; imports rules only.
"""
