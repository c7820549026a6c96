"""The commands, one package for each subject.

Imported by channels and the clock for wording; found by the registry at start.
"""
