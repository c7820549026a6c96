"""The reply model, its layout and the writing of units.

Imported by all of chat and by channels.
"""
