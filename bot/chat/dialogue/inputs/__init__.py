"""Slots and readings that several features share: names, amounts, money, strengths, temperatures.

Imported by features; it stands above the other modules of `dialogue`.
"""
