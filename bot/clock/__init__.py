"""Deliver reminders: claim those that are due, send them, and retry."""
