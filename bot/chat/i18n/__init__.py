"""Languages and locales, one package for each language, with the use of their words, numbers and texts.

Imported by all of chat.
"""
