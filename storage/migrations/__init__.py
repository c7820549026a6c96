"""Alembic's home: each file in versions/ is one step, run by storage.migrate."""
