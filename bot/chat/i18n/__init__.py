"""Languages and locales: one package for each language, and how its words, numbers and texts are used.

Imported by all of chat.
"""
