"""Slots and parsers that several features share: names, amounts, money, strengths, temperatures.

Imported by features; may import the other modules of `dialogue`.
"""
