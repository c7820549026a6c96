"""Read a free line: tokens, the ranker of wishes, typed pieces, frames.

Imported by the other modules of `intent`.
"""
