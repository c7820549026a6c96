"""The demo bar: an invented bar with twelve weeks of work.

Imported by `bot.__main__` only.
"""
