"""The operator commands: doctor, live checks, backups, logs.

Imported by `bot.__main__` and by channels for logging.
"""
