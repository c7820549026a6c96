"""Charts as PNG from plain values.

May be imported by chat and work.
"""
