"""Reminders: what is due, claimed, sent, tried again."""
