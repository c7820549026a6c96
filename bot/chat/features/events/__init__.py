"""Commands for events.

The registry finds the modules of this package.
"""
