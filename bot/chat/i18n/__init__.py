"""Languages and locales: catalogues, keywords, command words, numbers and plurals.

Imported by all of chat.
"""
