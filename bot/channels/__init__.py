"""Channels to people: Telegram and the console. They only translate."""
