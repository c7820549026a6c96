"""Label sheets as PDF and previews as PNG from plain values.

May be imported by work.
"""
