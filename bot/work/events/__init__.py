"""Use cases for events: plan one, and note what came back.

Imported by chat and by the log.
"""
