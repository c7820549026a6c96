"""The pipeline from a message to its replies.

Imported by channels; it finds the features by their registered commands.
"""
