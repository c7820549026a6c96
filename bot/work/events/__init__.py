"""Use cases for events: plan one, change or cancel it, and note what came back.

Imported by chat, planning, transfer and the log.
"""
