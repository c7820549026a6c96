"""Commands of the drink list.

The registry finds the modules of this package.
"""
