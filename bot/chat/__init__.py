"""Parse messages and word replies, independent of the channel."""
