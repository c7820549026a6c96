"""Alembic environment; storage.migrate runs the steps in versions/."""
