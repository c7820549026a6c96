"""Ways in for updates: polling or webhook, stored once, in the order of each chat.

Imported by the channel only.
"""
