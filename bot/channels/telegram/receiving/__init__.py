"""Receive updates by polling or webhook; store each once and process it in the order of its chat.

Imported by the channel only.
"""
