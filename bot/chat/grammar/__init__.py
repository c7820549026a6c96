"""The grammar: lexer, parser, transformer and syntax values.

Imported by dialogue and everything above it.
"""
