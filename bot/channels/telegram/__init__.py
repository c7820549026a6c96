"""The Telegram channel: receive updates, answer them, send replies.

Telegram types stop here; imported by `bot.__main__` only.
"""
