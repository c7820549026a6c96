"""Locks between programs: on a database, on the right to lead, on a file."""
